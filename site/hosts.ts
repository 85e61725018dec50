import { headers, strictTransport } from './headers.ts';

/**
 * What a static host has to be told, in the forms that hosts read it: the same table of headers and times for each. All
 * addresses are below the folder that the guide was built for, so that one file serves any place on a host.
 */

/** How long browsers and caches in between may keep a file without asking again. */
interface Keeping {
  /** What it is for, for whoever reads the file. */
  readonly why: string;
  /** Beginning of the address below the guide's folder; empty for everything else. */
  readonly path: string;
  readonly value: string;
}

/** A year [s]: the longest that caches keep to (RFC 9111 sets no limit; common practice). */
const year = 31_536_000;

/** From the general to the particular: where several fit, the last one holds. */
export const keeping: readonly Keeping[] = [
  {
    why: 'Pages, figures and worksheets change with an edition: ask each time, which costs a line where nothing has changed.',
    path: '',
    value: 'public, no-cache',
  },
  {
    why: 'The names of these files change with their content: never ask again.',
    path: 'assets/',
    value: `public, max-age=${year}, immutable`,
  },
];

/** The service worker must never come out of a cache in between, or readers would keep an old edition for a day. */
const workerKeeping = { path: 'sw.js', value: 'no-cache' } as const;

const all: Readonly<Record<string, string>> = { ...headers, ...strictTransport };

/** A text in double quotes; none of ours has one inside. */
const quoted = (text: string): string => `"${text}"`;

const lines = (...parts: readonly (string | readonly string[])[]): string => `${parts.flat().join('\n')}\n`;

/** The form `_headers`: an address, then its headers indented. Where two rules fit, the later one must win. */
function headersFile(base: string): string {
  const rule = (path: string, values: Readonly<Record<string, string>>): string[] => [
    path,
    ...Object.entries(values).map(([name, value]) => `  ${name}: ${value}`),
  ];
  return lines(
    '# Headers of the guide for hosts that read a file _headers at the top of a site. It must lie there.',
    rule(`${base}*`, all),
    keeping.flatMap(({ why, path, value }) =>
      path === '' ? [] : [`# ${why}`, ...rule(`${base}${path}*`, { 'Cache-Control': value })],
    ),
    rule(`${base}${workerKeeping.path}`, { 'Cache-Control': workerKeeping.value }),
  );
}

/** The form `.htaccess`, as the Apache HTTP Server and those that follow it read it. Needs mod_headers. */
function htaccess(base: string): string {
  const set = ([name, value]: readonly [string, string]): string =>
    `  Header always set ${name} ${quoted(value)}`;
  const [rest, hashed] = keeping;
  return lines(
    '# Headers of the guide for hosts that read .htaccess.',
    `ErrorDocument 404 ${base}404.html`,
    'DirectoryIndex index.html',
    'Options -Indexes',
    'AddType text/yaml .yaml',
    'AddType font/woff2 .woff2',
    'AddDefaultCharset utf-8',
    '<IfModule mod_headers.c>',
    Object.entries(all).map(set),
    `  # ${rest?.why ?? ''}`,
    `  Header always set Cache-Control ${quoted(rest?.value ?? '')}`,
    `  # ${hashed?.why ?? ''}`,
    `  Header always set Cache-Control ${quoted(hashed?.value ?? '')} "expr=%{REQUEST_URI} =~ m#/${hashed?.path ?? ''}#"`,
    '</IfModule>',
    '<IfModule mod_deflate.c>',
    '  AddOutputFilterByType DEFLATE text/html text/css text/javascript application/javascript application/json application/xml image/svg+xml text/yaml text/plain',
    '</IfModule>',
  );
}

/** A snippet for nginx, to be included in a `server` block. Headers of an outer block are lost in an inner one. */
function nginx(base: string): string {
  const add = (values: Readonly<Record<string, string>>): string[] =>
    Object.entries(values).map(([name, value]) => `    add_header ${name} ${quoted(value)} always;`);
  const [rest, hashed] = keeping;
  const block = (how: string, cache: string, more: readonly string[] = []): string[] => [
    `location ${how} {`,
    ...more,
    ...add({ ...all, 'Cache-Control': cache }),
    '}',
  ];
  return lines(
    '# Headers of the guide for nginx: include this file in the server block of the site.',
    'charset utf-8;',
    'gzip on;',
    'gzip_types text/css text/javascript application/javascript application/json application/xml image/svg+xml text/yaml text/plain;',
    `# ${hashed?.why ?? ''}`,
    block(`^~ ${base}${hashed?.path ?? ''}`, hashed?.value ?? ''),
    block(`= ${base}${workerKeeping.path}`, workerKeeping.value),
    `# ${rest?.why ?? ''}`,
    block(base, rest?.value ?? '', [
      '    index index.html;',
      '    try_files $uri $uri/ =404;',
      `    error_page 404 ${base}404.html;`,
    ]),
  );
}

/** The same table as JSON, for hosts that are told by a program: rules in order, of which the last that fits holds. */
function json(base: string): string {
  const rules = [
    { path: `${base}*`, headers: { ...all, 'Cache-Control': keeping[0]?.value } },
    ...keeping
      .slice(1)
      .map(({ path, value }) => ({ path: `${base}${path}*`, headers: { 'Cache-Control': value } })),
    { path: `${base}${workerKeeping.path}`, headers: { 'Cache-Control': workerKeeping.value } },
  ];
  return `${JSON.stringify({ notFound: `${base}404.html`, index: 'index.html', trailingSlash: true, rules }, null, 2)}\n`;
}

/** The files that tell a host, by name, for a guide that lies in the folder `base` of it. */
export const hostFiles = (base: string): Readonly<Record<string, string>> => ({
  _headers: headersFile(base),
  '.htaccess': htaccess(base),
  'host/nginx.conf': nginx(base),
  'host/headers.json': json(base),
});

/** Files that speak to hosts and to visiting programs: readers have no use for them without a network. */
export const forHosts = [
  '_headers',
  '.htaccess',
  'host/',
  'robots.txt',
  'sitemap.xml',
  'preview.png',
] as const;

/** Pages that no one should come to from a search: the whole guide over again, and what is empty without a question. */
const unlisted = ['404.html', 'book/', 'search/'];

/**
 * The map of a site for search engines (sitemaps.org, 0.9).
 *
 * @param site whole address of the guide, with a slash at the end
 * @param pages addresses from the top of the guide
 */
export const sitemap = (site: string, pages: readonly string[]): string =>
  lines(
    '<?xml version="1.0" encoding="UTF-8"?>',
    '<urlset xmlns="http://www.sitemaps.org/schemas/sitemap/0.9">',
    pages
      .filter((page) => !unlisted.includes(page))
      .map((page) => `  <url><loc>${new URL(page, site).href}</loc></url>`),
    '</urlset>',
  );

/** What robots may read (RFC 9309): everything. Hosts look for it at their top alone. */
export const robots = (site: string | undefined): string =>
  lines(
    'User-agent: *',
    'Allow: /',
    ...(site === undefined ? [] : [`Sitemap: ${new URL('sitemap.xml', site).href}`]),
  );
