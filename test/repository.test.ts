import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { sources } from '../calculators/sources.ts';
import { filesBelow, root } from './support/imports.ts';

const read = (path: string): string => readFileSync(join(root, path), 'utf8');

interface Package {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly dependencies?: Readonly<Record<string, string>>;
  readonly devDependencies?: Readonly<Record<string, string>>;
  readonly scripts?: Readonly<Record<string, string>>;
}

const own = JSON.parse(read('package.json')) as Package;
const lockText = read('package-lock.json');
const lock = (JSON.parse(lockText) as { packages: Readonly<Record<string, Package>> }).packages;

const textEndings = ['.ts', '.js', '.mjs', '.astro', '.mdx', '.md', '.yaml', '.json', '.css', '.csv', '.svg'];
const ourFiles = [
  ...['calculators', 'content', 'site', 'scripts', 'test'].flatMap((folder) =>
    filesBelow(folder, textEndings),
  ),
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'tsconfig.json',
  'astro.config.mjs',
];

describe('the top level', () => {
  it('holds what a newcomer needs to see and nothing else', () => {
    const fixed = [
      ...['calculators', 'content', 'site', 'scripts', 'test'],
      ...['package.json', 'package-lock.json', 'tsconfig.json', 'astro.config.mjs'],
      ...['README.md', 'DEVELOPERS.md', 'LICENSE'],
    ];
    const made = read('.gitignore')
      .split('\n')
      .map((line) => line.replace(/\/$/u, ''));
    const there = readdirSync(root).filter((name) => !name.startsWith('.') && !made.includes(name));
    expect(there.sort()).toEqual(fixed.sort());
  });
});

describe('packages', () => {
  const direct = { ...own.dependencies, ...own.devDependencies };

  it('are pinned to one version each', () => {
    expect(Object.keys(direct).length).toBeGreaterThan(10);
    const loose = Object.entries(direct).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/u.test(version));
    expect(loose).toEqual([]);
  });

  it('are in the lock file in the same version, with a checksum each', () => {
    for (const [name, version] of Object.entries(direct))
      expect([name, lock[`node_modules/${name}`]?.version]).toEqual([name, version]);
    const unchecked = Object.entries(lock).filter(([path, entry]) => path !== '' && !('integrity' in entry));
    expect(unchecked.map(([path]) => path)).toEqual([]);
  });

  it('come from no named host', () => {
    expect(lockText).not.toMatch(/"resolved"|https?:\/\/[^"]*\.tgz/u);
  });

  /** Packages whose code, fonts or output reach a reader, with all that they bring along. */
  const reaching = [
    '@expo-google-fonts/inter',
    '@fontsource/stix-two-math',
    '@pdf-lib/fontkit',
    'katex',
    'pdf-lib',
    'uqr',
    'yaml',
    'zod',
  ];

  /** The lock file's path of a dependency, looked for as Node does: from the folder of the one who asks, upward. */
  function pathOf(name: string, from: string): string | undefined {
    for (let folder = from; ; folder = folder.replace(/\/?node_modules\/(?:@[^/]+\/)?[^/]+$/u, '')) {
      const path = `${folder === '' ? '' : `${folder}/`}node_modules/${name}`;
      if (path in lock) return path;
      if (folder === '') return undefined;
    }
  }

  function withAllBelow(names: readonly string[]): string[] {
    const found = new Set<string>();
    const visit = (name: string, from: string): void => {
      const path = pathOf(name, from);
      if (path === undefined) throw new Error(`${name} is not in the lock file`);
      if (found.has(path)) return;
      found.add(path);
      for (const below of Object.keys(lock[path]?.dependencies ?? {})) visit(below, path);
    };
    for (const name of names) visit(name, '');
    return [...found];
  }

  /** Licences that ask for no more than their own text beside what is passed on. */
  const free =
    /^\(?(MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|OFL-1\.1|Zlib)( AND (MIT|OFL-1\.1|Zlib))*\)?$/u;

  it('that reach a reader have licences which let them be passed on', () => {
    const paths = withAllBelow(reaching);
    expect(paths.length).toBeGreaterThan(reaching.length);
    expect(
      paths.map((path) => [path, lock[path]?.license]).filter(([, licence]) => !free.test(licence ?? '')),
    ).toEqual([]);
  });

  it('that only build and check have licences known to us', () => {
    // Weaker duties are fine here: none of it leaves the machine.
    const known =
      /^\(?(MIT|ISC|0BSD|BSD-2-Clause|BSD-3-Clause|Apache-2\.0|OFL-1\.1|Zlib|BlueOak-1\.0\.0|MPL-2\.0|CC0-1\.0|CC-BY-3\.0|Python-2\.0|LGPL-3\.0-or-later)( (AND|OR) [\w.-]+)*\)?$/u;
    const unknown = Object.entries(lock).filter(
      ([path, { license }]) => path !== '' && !known.test(license ?? ''),
    );
    expect(unknown.map(([path, { license }]) => [path, license])).toEqual([]);
  });

  it('are each named with their reason in DEVELOPERS.md', () => {
    const words = read('DEVELOPERS.md');
    expect(Object.keys(direct).filter((name) => !words.includes(`\`${name}\``))).toEqual([]);
  });
});

describe('the commands', () => {
  const scripts = own.scripts ?? {};

  it('all go through set-up, and each has its file', () => {
    for (const [name, line] of Object.entries(scripts)) {
      expect(line).toBe(`node scripts/run.mjs ${name}`);
      expect(existsSync(join(root, 'scripts', `${name}.ts`)), `scripts/${name}.ts`).toBe(true);
    }
  });

  it.each(['README.md', 'DEVELOPERS.md'])('named in %s exist, as do the files', (file) => {
    const text = read(file);
    const code = [...text.matchAll(/```[\s\S]*?```|`[^`\n]+`/gu)].map((match) => match[0]).join('\n');
    const commands = [...code.matchAll(/\bnpm (?:run )?([a-z]+)/gu)].map((match) => match[1] ?? '');
    expect(commands.length).toBeGreaterThan(2);
    const ofNpm = ['install', 'ci'];
    expect(commands.filter((name) => !(name in scripts) && !ofNpm.includes(name))).toEqual([]);

    const paths = [...text.matchAll(/`((?:calculators|content|site|scripts|test)\/[\w./-]*)`/gu)].map(
      (match) => match[1] ?? '',
    );
    expect(paths.length).toBeGreaterThan(2);
    expect(paths.filter((path) => !path.includes('NAME') && !existsSync(join(root, path)))).toEqual([]);
  });

  it('open the README: what it is for, then the two commands', () => {
    const [title = '', first = '', second = ''] = read('README.md').split(/\n\n+/u);
    expect(title).toMatch(/^# /u);
    expect(first).toMatch(/^[A-Z]/u);
    expect(second).toMatch(/npm start/u);
    expect(second).toMatch(/npm test/u);
  });
});

describe('the sources', () => {
  const everything = ourFiles
    .filter((path) => path !== 'calculators/sources.ts' && path !== 'test/repository.test.ts')
    .map((path) => [path, read(path)] as const);
  /** `cite('key', …)` and `source: 'key'` in code, `<Cite source="key" …>` in chapters and pages. */
  const citations = everything.flatMap(([path, text]) =>
    [...text.matchAll(/\bcite\(\s*['"]([^'"]+)['"]|<Cite\b[^>]*?\bsource=(?:"([^"]+)"|\{'([^']+)'\})/gu)].map(
      (match) => [path, match[1] ?? match[2] ?? match[3] ?? ''] as const,
    ),
  );

  it('that are cited are all known', () => {
    expect(citations.length).toBeGreaterThan(20);
    expect(citations.filter(([, key]) => !(key in sources))).toEqual([]);
  });

  it('that are listed are all cited', () => {
    const all = everything.map(([, text]) => text).join('\n');
    const cited = (key: string) =>
      citations.some(([, name]) => name === key) ||
      new RegExp(`\\bsource: ['"]?${key}['"]?\\b`, 'u').test(all);
    expect(Object.keys(sources).filter((key) => !cited(key))).toEqual([]);
  });

  it('have a title and say who is behind them', () => {
    for (const [key, { title, by }] of Object.entries(sources))
      expect([key, title.trim() !== '', by.trim() !== '']).toEqual([key, true, true]);
  });
});

describe('the files', () => {
  // Put together here so that this file does not find itself.
  const stray: readonly (readonly [what: string, pattern: RegExp])[] = [
    [
      'a note for later',
      new RegExp(`\\b(${['TO' + 'DO', 'FIX' + 'ME', 'XX' + 'X', 'HA' + 'CK'].join('|')})\\b`, 'u'),
    ],
    [
      'a test that is left out',
      new RegExp(
        `\\b(it|test|describe|suite)\\.(${['ski' + 'p', 'onl' + 'y', 'tod' + 'o'].join('|')})\\b`,
        'u',
      ),
    ],
    [
      'a path of one machine',
      new RegExp(`["'\`( ]/(${['wo' + 'rk', 'ho' + 'me', 'ro' + 'ot', 'Us' + 'ers'].join('|')})/\\w`, 'u'),
    ],
    [
      'the host of a package registry',
      new RegExp(['registry\\.n' + 'pmjs', 'registry\\.y' + 'arnpkg', 'npm\\.pkg\\.'].join('|'), 'u'),
    ],
    ['a conflict that was not solved', new RegExp(`^(${'<'.repeat(7)}|${'>'.repeat(7)}) `, 'mu')],
  ];

  it.each(stray)('hold no %s', (_what, pattern) => {
    expect(ourFiles.filter((path) => pattern.test(read(path)))).toEqual([]);
  });

  it('would be found out', () => {
    const planted = [
      '// TO' + 'DO: later',
      'it.ski' + "p('x')",
      "'/wo" + "rk/main'",
      'https://registry.n' + 'pmjs.org/',
      '<'.repeat(7) + ' HEAD',
    ];
    expect(stray.map(([, pattern], index) => pattern.test(planted[index] ?? ''))).toEqual(
      stray.map(() => true),
    );
  });
});
