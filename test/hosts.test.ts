import { describe, expect, it } from 'vitest';
import { siteOf } from '../scripts/build.ts';
import { headers } from '../site/headers.ts';
import { hostFiles, robots, sitemap } from '../site/hosts.ts';

const bases = ['/', '/winter/', '/offices/north/'];

describe.each(bases)('what a host is told of a guide at %s', (base) => {
  const files = hostFiles(base);
  const json = JSON.parse(files['host/headers.json'] ?? '') as {
    rules: { path: string; headers: Record<string, string> }[];
    notFound: string;
  };

  it.each(Object.keys(files))(
    '%s has every header of the table and keeps hashed files for a year',
    (name) => {
      const text = files[name]?.replaceAll('\\"', '"') ?? '';
      for (const [header, value] of Object.entries(headers)) {
        expect(text).toContain(header);
        expect(text).toContain(value);
      }
      expect(text).toContain('max-age=31536000, immutable');
      expect(text).toContain(
        `${base}${name === '_headers' ? 'assets/' : name === '.htaccess' ? '404.html' : ''}`,
      );
      expect(text).not.toMatch(/unsafe-inline|unsafe-eval|https?:/u);
    },
  );

  it('the last rule that fits an address says how long it is kept', () => {
    const keptFor = (path: string): string | undefined =>
      json.rules
        .filter((rule) =>
          rule.path.endsWith('*') ? path.startsWith(rule.path.slice(0, -1)) : path === rule.path,
        )
        .map((rule) => rule.headers['Cache-Control'])
        .findLast((value) => value !== undefined);
    expect(keptFor(`${base}assets/a.1234.js`)).toMatch(/immutable/u);
    expect(keptFor(`${base}bench/`)).toBe('public, no-cache');
    expect(keptFor(`${base}sw.js`)).toBe('no-cache');
    expect(json.notFound).toBe(`${base}404.html`);
  });

  it('no two rules of _headers say how long one file is kept, as hosts that read it join what both say', () => {
    const rules = [...(files['_headers'] ?? '').matchAll(/^(\/\S*)\n((?: {2}.*\n)+)/gmu)];
    const keeping = rules
      .filter(([, , lines = '']) => lines.includes('Cache-Control'))
      .map(([, path]) => path);
    expect(keeping).toEqual([`${base}assets/*`, `${base}sw.js`]);
  });

  it('the braces of the nginx snippet are closed, and each block repeats the headers, as blocks inherit none', () => {
    const text = files['host/nginx.conf'] ?? '';
    expect(text.split('{').length).toBe(text.split('}').length);
    const blocks = text.match(/location[^}]*\}/gu) ?? [];
    expect(blocks).toHaveLength(3);
    for (const block of blocks) for (const header of Object.keys(headers)) expect(block).toContain(header);
  });
});

describe('for search engines', () => {
  it('a map holds whole addresses of pages that stand on their own', () => {
    const map = sitemap('https://guide.example/winter/', ['', '404.html', 'bench/', 'book/', 'search/']);
    expect([...map.matchAll(/<loc>(.*?)<\/loc>/gu)].map(([, address]) => address)).toEqual([
      'https://guide.example/winter/',
      'https://guide.example/winter/bench/',
    ]);
    expect(robots('https://guide.example/winter/')).toMatch(
      /^Sitemap: https:\/\/guide\.example\/winter\/sitemap\.xml$/mu,
    );
    expect(robots(undefined)).not.toMatch(/Sitemap/u);
  });

  it('the address of a guide is that which was said, or its region’s where it leads anywhere', () => {
    expect(siteOf('https://guide.example/winter', undefined, undefined)).toBe(
      'https://guide.example/winter/',
    );
    expect(siteOf('https://guide.example', undefined, '/winter/')).toBe('https://guide.example/winter/');
    // The invented regions lie at names that lead nowhere.
    expect(siteOf(undefined, 'tallow', undefined)).toBeUndefined();
    expect(siteOf(undefined, undefined, '/winter/')).toBeUndefined();
    expect(() => siteOf('guide.example', undefined, undefined)).toThrow(
      /must be an address.*Found: guide\.example/u,
    );
    expect(() => siteOf('https://guide.example/a/', undefined, '/b/')).toThrow(/two folders/u);
  });
});
