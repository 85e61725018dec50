import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { Matrix, solve } from 'ml-matrix';
import { PDFDocument } from 'pdf-lib';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { findUnit, quantities, type QuantityName } from '../calculators/quantities/quantity.ts';
import { ensureFonts } from '../scripts/fonts.ts';
import { worksheet as command } from '../scripts/worksheet.ts';
import type { FiguresFile } from '../site/figures.ts';
import { runAlone, runHere } from './support/command.ts';
import { root } from './support/imports.ts';
import { expectNear } from './support/near.ts';

const example = (id: string): string => join(root, 'content/benches', `${id}.yaml`);
const firstRow = readFileSync(example('first-row'), 'utf8');

const all = mkdtempSync(join(tmpdir(), 'worksheet-'));
afterAll(() => rmSync(all, { recursive: true, force: true }));
let folder = '';
let made = 0;
beforeEach(() => {
  folder = join(all, String(++made));
  mkdirSync(folder);
});

/** Runs the command in a folder of its own. */
const worksheet = (...args: string[]) => runHere(command, folder, args);

/** The same as a process of its own. */
const worksheetAlone = (...args: string[]) => runAlone('worksheet.ts', folder, args);

function bench(text: string, name = 'bench.yaml'): string {
  writeFileSync(join(folder, name), text);
  return name;
}

const pagesOf = async (file: string) => (await PDFDocument.load(readFileSync(join(folder, file)))).getPages();

// The first command would otherwise make the fonts, and its time with it.
await ensureFonts();

describe('npm run worksheet', { timeout: 60_000 }, () => {
  it('helps', () => {
    const ran = worksheetAlone('--help');
    expect(ran.status).toBe(0);
    for (const word of ['BENCH.yaml', 'TABLE.csv', '--region', '--paper', '--out', '--figures', '--help'])
      expect(ran.stdout).toContain(word);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('puts BENCH.pdf into the present folder and says where it is', async () => {
    const ran = worksheetAlone(example('first-row'));
    expect(ran.stderr).toBe('');
    expect(ran.status).toBe(0);
    expect(ran.stdout).toContain(`Worksheet: ${join(folder, 'first-row.pdf')}`);
    expect(readdirSync(folder)).toEqual(['first-row.pdf']);
    // Two leaves of A4, 210 mm × 297 mm (ISO 216), in points of 1/72 in.
    const pages = await pagesOf('first-row.pdf');
    expect(pages).toHaveLength(4);
    for (const page of pages) {
      expectNear(page.getWidth(), (210 / 25.4) * 72, 0.5);
      expectNear(page.getHeight(), (297 / 25.4) * 72, 0.5);
    }
  });

  it('makes the same bytes again, in this process and in another', async () => {
    worksheetAlone(example('north-house'), '--out', 'one.pdf');
    await worksheet(example('north-house'), '--out', 'two.pdf');
    expect(readFileSync(join(folder, 'one.pdf')).equals(readFileSync(join(folder, 'two.pdf')))).toBe(true);
  });

  it('takes the paper and the region that it is told', async () => {
    const ran = await worksheet(
      example('first-row'),
      '--paper',
      'letter',
      '--region',
      'tallow',
      '--out',
      'out.pdf',
    );
    expect(ran.status).toBe(0);
    expect(ran.stdout).toMatch(/Place: +Millpond, Tallow County/u);
    expect(ran.stdout).toMatch(/°F/u);
    // US Letter, 8½ in × 11 in (ANSI/ASME Y14.1).
    for (const page of await pagesOf('out.pdf')) {
      expectNear(page.getWidth(), 8.5 * 72, 0.5);
      expectNear(page.getHeight(), 11 * 72, 0.5);
    }
  });
});

describe('the figures', { timeout: 60_000 }, () => {
  const known = new Map<string, FiguresFile>();
  /** What the command says of an example; it is asked once. */
  const figuresIn = async (id: string): Promise<FiguresFile> => {
    const before = known.get(id);
    if (before) return before;
    const ran = await worksheet(example(id), '--figures', 'figures.json');
    expect([ran.stderr, ran.status]).toEqual(['', 0]);
    expect(readdirSync(folder).sort()).toEqual(['figures.json', `${id}.pdf`]);
    const file = JSON.parse(readFileSync(join(folder, 'figures.json'), 'utf8')) as FiguresFile;
    known.set(id, file);
    return file;
  };

  it.each(['first-row', 'north-house'])('of %s have the shape that is promised', async (id) => {
    const file = await figuresIn(id);
    expect(Object.keys(file)).toEqual(['format', 'figures', 'network', 'night', 'warnings']);
    expect(file.format).toBe(1);
    const names = [
      ...['winding.pitch', 'winding.gap', 'winding.turns', 'winding.powerPerPipeLength'],
      ...['loop.volume', 'loop.fluidMass', 'loop.expansionVolume', 'loop.rise'],
      ...['mix.concentrateVolume', 'mix.waterVolume', 'mix.freezingPoint'],
      ...['circuit.current', 'circuit.voltageDrop', 'circuit.smallestBreaker'],
      ...['watts.required', 'watts.installed', 'roots.withoutHeat', 'roots.withHeat'],
      ...['night.lowestRootTemperature', 'outage.hoursToRootLimit', 'outage.hoursToLoopFreezing'],
      ...['season.energy', 'season.cost'],
    ];
    for (const name of names) {
      const [group = '', figure = ''] = name.split('.');
      expect([name, typeof file.figures[group]?.[figure]?.value]).toEqual([name, 'number']);
    }
    for (const [group, figure] of [
      ['night', 'lowestRootTemperature'],
      ['season', 'energy'],
      ['season', 'cost'],
    ] as const) {
      const { value, low, high } = file.figures[group]?.[figure] ?? { value: NaN };
      expect(low, `${group}.${figure}`).toBeLessThan(value);
      expect(high, `${group}.${figure}`).toBeGreaterThan(value);
    }
    const { time, outside, power, nodes } = file.night;
    expect(time.length).toBeGreaterThan(100);
    for (const one of [outside, power, ...Object.values(nodes)]) expect(one).toHaveLength(time.length);
    const lowest = Math.min(...[1, 2, 3].flatMap((layer) => nodes[`roots-${layer}`] ?? []));
    expectNear(lowest, file.figures.night?.lowestRootTemperature?.value ?? NaN, 1e-9);
    const bases = new Set(Object.values(quantities).map(({ base }) => base as string));
    for (const members of Object.values(file.figures))
      for (const [name, figure] of Object.entries(members)) {
        const promised = ['value', 'unit', 'low', 'high', 'beyond', 'words', 'sources'];
        expect(Object.keys(figure).filter((key) => !promised.includes(key))).toEqual([]);
        expect([undefined, 'below', 'above']).toContain(figure.beyond);
        expect(figure.words ?? 'words').not.toBe('');
        expect([name, bases.has(figure.unit)]).toEqual([name, true]);
        expect(figure.sources.length).toBeGreaterThan(0);
        expect(figure.low ?? -Infinity).toBeLessThanOrEqual(figure.value);
        expect(figure.high ?? Infinity).toBeGreaterThanOrEqual(figure.value);
      }
    for (const warning of file.warnings) {
      expect(Object.keys(warning)).toEqual(['code', 'text']);
      expect(warning.text).not.toBe('');
    }
  });

  it('are SI, with temperatures in °C', async () => {
    const { figures } = await figuresIn('north-house');
    const unit = (group: string, name: string): string => figures[group]?.[name]?.unit ?? '';
    expect(unit('winding', 'pitch')).toBe('m');
    expect(unit('loop', 'volume')).toBe('m³');
    expect(unit('mix', 'freezingPoint')).toBe('°C');
    expect(unit('circuit', 'current')).toBe('A');
    expect(unit('circuit', 'voltageDrop')).toBe('1');
    expect(unit('watts', 'required')).toBe('W');
    for (const [name, { base }] of Object.entries(quantities))
      expect([name, findUnit(name as QuantityName, base)?.scale]).toEqual([name, 1]);
  });

  it.each(['first-row', 'north-house'])(
    'of %s hold a network that another solver settles at the same temperatures',
    async (id) => {
      const { network } = await figuresIn(id);
      expect(Object.keys(network)).toEqual(['nodes', 'boundaries', 'links', 'heat', 'steady']);
      const index = new Map(network.nodes.map((node, at) => [node.id, at]));
      const fixed = new Map(network.boundaries.map((one) => [one.id, one.temperature]));
      // Sum of what flows into each node is nothing: Σ G (T_other - T) + P = 0.
      const matrix = Matrix.zeros(index.size, index.size);
      const flows = Matrix.zeros(index.size, 1);
      const add = (into: number, other: string, conductance: number): void => {
        matrix.set(into, into, matrix.get(into, into) + conductance);
        const at = index.get(other);
        if (at !== undefined) matrix.set(into, at, matrix.get(into, at) - conductance);
        else flows.set(into, 0, flows.get(into, 0) + conductance * (fixed.get(other) ?? NaN));
      };
      for (const link of network.links) {
        expect(Object.keys(link)).toEqual(['from', 'to', 'conductance']);
        const [from, to] = [index.get(link.from), index.get(link.to)];
        if (from !== undefined) add(from, link.to, link.conductance);
        if (to !== undefined) add(to, link.from, link.conductance);
      }
      for (const { node, power } of network.heat) {
        const at = index.get(node);
        if (at === undefined) throw new Error(`no node ${node}`);
        flows.set(at, 0, flows.get(at, 0) + power);
      }
      const settled = solve(matrix, flows);
      expect(network.nodes.length).toBeGreaterThan(3);
      for (const [node, at] of index) expectNear(settled.get(at, 0), network.steady[node] ?? NaN, 0.01, node);
    },
  );
});

describe('many benches at once', { timeout: 60_000 }, () => {
  const table = `identity.name,place.region,place.station,frame.length,mix.share
By the pond,estermark,lowfield,4 m,30 %
By the pond,estermark,lowfield,5 m,30 %
Too strong,estermark,lowfield,5 m,70 %
../../elsewhere,tallow,millpond,12 ft,30 %
Nowhere,atlantis,lowfield,5 m,30 %
`;

  it('of a table: those that can be made are, the others are listed with their reasons', async () => {
    writeFileSync(join(folder, 'growers.csv'), table);
    const ran = await worksheet('growers.csv', '--figures', 'figures');
    expect(readdirSync(join(folder, 'worksheets')).sort()).toEqual([
      'by-the-pond-2.pdf',
      'by-the-pond.pdf',
      'elsewhere.pdf',
    ]);
    expect(readdirSync(join(folder, 'figures')).sort()).toEqual([
      'by-the-pond-2.json',
      'by-the-pond.json',
      'elsewhere.json',
    ]);
    expect(ran.status).toBe(2);
    expect(ran.stdout).toMatch(/^3 worksheets in .*worksheets, in /mu);
    expect(ran.stdout).toMatch(/5 of 5 worksheets, 2 of them not made/u);
    expect(ran.stderr.trim().split('\n')).toEqual([
      '2 of 5 worksheets could not be made:',
      expect.stringMatching(/growers\.csv, line 4, mix\.share: .*between 0\s% and 60\s%.*Found: 70 %/u),
      expect.stringMatching(
        /growers\.csv, line 6, place\.region: .*estermark, tallow or valdehielo.*Found: atlantis/u,
      ),
    ]);
  });

  it('of a folder and of files, with the same bytes as one by one', async () => {
    mkdirSync(join(folder, 'benches'));
    // Eight times the cable: its turns lie on each other.
    writeFileSync(join(folder, 'benches', 'crowded.yml'), firstRow.replace('length: 38 m', 'length: 300 m'));
    const ran = await worksheet('benches', example('north-house'), '--out', 'out');
    expect([ran.stderr, ran.status]).toEqual(['', 0]);
    await worksheet(example('north-house'), '--out', 'alone.pdf');
    expect(readdirSync(join(folder, 'out')).sort()).toEqual(['crowded.pdf', 'north-house.pdf']);
    expect(
      readFileSync(join(folder, 'out/north-house.pdf')).equals(readFileSync(join(folder, 'alone.pdf'))),
    ).toBe(true);
    expect(ran.stdout).toMatch(/Marked as not to be built.*: 1\.\n {2}crowded\.yml\n$/u);
  });

  it('a table with a wrong column makes nothing and no folder', async () => {
    writeFileSync(join(folder, 'growers.csv'), table.replace('frame.length', 'frame.lenght'));
    const ran = await worksheet('growers.csv');
    expect(ran).toMatchObject({ status: 2, stdout: '' });
    expect(ran.stderr).toMatch(/growers\.csv, line 1, frame\.lenght: .*did you mean frame\.length\?/u);
    expect(readdirSync(folder)).toEqual(['growers.csv']);
  });

  it('says when the folder for them cannot be made', async () => {
    writeFileSync(join(folder, 'growers.csv'), table);
    const ran = await worksheet('growers.csv', '--out', 'no/such');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(/no\/such cannot be made: there is no such file or folder/u);
  });

  it('prints the names of the columns', async () => {
    const { stdout, status } = await worksheet('--columns');
    expect(status).toBe(0);
    expect(stdout.trim().split(',')).toEqual(expect.arrayContaining(['identity.name', 'frame.length']));
  });
});

describe('bad input ends with 2, a message and no file', { timeout: 60_000 }, () => {
  it.each([
    [
      'an unknown name',
      firstRow.replace('  length: 6 m', '  lenght: 6 m'),
      /bench\.yaml, line \d+, frame\.lenght: .*did you mean length\?/u,
    ],
    [
      'a wrong unit',
      firstRow.replace('length: 6 m', 'length: 6 kg'),
      /frame\.length: .*must be in m, cm, mm, ft or in, not in kg/u,
    ],
    [
      'a length below zero',
      firstRow.replace('length: 6 m', 'length: -6 m'),
      /frame\.length: .*between 0\.6\sm and 60\sm.*Found: -6 m/u,
    ],
    [
      'too much antifreeze',
      firstRow.replace('share: 30 %', 'share: 70 %'),
      /mix\.share: .*between 0\s% and 60\s%/u,
    ],
    [
      'no station',
      firstRow.replace(/ {2}station: .*\n/u, ''),
      /place\.station: Select the weather station: lowfield/u,
    ],
    [
      'a station that there is not',
      firstRow.replace('lowfield', 'lowfeild'),
      /must be lowfield.*did you mean lowfield\?/u,
    ],
    ['an empty file', '', /bench\.yaml, line 1: The file is empty/u],
    ['YAML that is broken', 'identity:\n  name: "First\n', /bench\.yaml, line 2: .*closing quote/u],
    ['a newer format', firstRow.replace('format: 1', 'format: 99'), /format: .*newer guide/u],
    ['five megabytes', `# ${'x'.repeat(5_000_000)}`, /256 kB or less.*Found: 4883 kB/u],
    ['a picture', Buffer.from([0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13]).toString('latin1'), /plain text/u],
  ])('%s', async (_, text, words) => {
    const ran = await worksheet(bench(text), '--figures', 'figures.json');
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(words);
    expect(ran.stdout).toBe('');
    expect(readdirSync(folder)).toEqual(['bench.yaml']);
  });

  it('and does so as a process of its own', () => {
    const ran = worksheetAlone(bench(firstRow.replace('share: 30 %', 'share: 70 %')));
    expect(ran).toMatchObject({ status: 2, stdout: '' });
    // One line of words and no trace of the program.
    expect(ran.stderr).toMatch(/^bench\.yaml, line \d+, mix\.share: .*between 0\s% and 60\s%.*\n$/u);
    expect(readdirSync(folder)).toEqual(['bench.yaml']);
  });

  it('tells every mistake of a file', async () => {
    const ran = await worksheet(
      bench(firstRow.replace('length: 6 m', 'length: 6').replace('share: 30 %', 'share: 70 %')),
    );
    expect(ran.stderr.trim().split('\n')).toHaveLength(2);
  });

  it.each([
    ['no file', [], /Which bench file\?/u],
    ['a file that there is not', ['nowhere.yaml'], /nowhere\.yaml cannot be read: there is no such file/u],
    ['a folder without bench files', ['.'], /has no bench files in it/u],
    ['an option that there is not', [example('first-row'), '--papre', 'a4'], /--papre/u],
    ['an option without its value', [example('first-row'), '--out'], /--out/u],
    ['another paper', [example('first-row'), '--paper', 'a5'], /--paper must be a4 or letter\. Found: a5/u],
    [
      'a region that there is not',
      [example('first-row'), '--region', 'nowhere'],
      /--region must be estermark, tallow or valdehielo\. Found: nowhere/u,
    ],
    [
      'a place that there is not',
      [example('first-row'), '--out', 'no/such/folder.pdf'],
      /folder\.pdf cannot be written: there is no such file or folder/u,
    ],
    ['a folder for the figures', [example('first-row'), '--figures', '.'], /cannot be written/u],
    [
      'one file for both',
      [example('first-row'), '--out', 'x', '--figures', './x'],
      /must be different files/u,
    ],
  ])('%s', async (_, args, words) => {
    const ran = await worksheet(...args);
    expect(ran.status).toBe(2);
    expect(ran.stderr).toMatch(words);
    expect(ran.stderr).not.toMatch(/\n\s+at /u);
    expect(ran.stdout).toBe('');
    expect(readdirSync(folder)).toEqual([]);
  });

  it('does not write over the bench file', async () => {
    const name = bench(firstRow);
    expect((await worksheet(name, '--out', name)).status).toBe(2);
    expect(readFileSync(join(folder, name), 'utf8')).toBe(firstRow);
  });

  it('leaves an older worksheet as it was', async () => {
    writeFileSync(join(folder, 'bench.pdf'), 'older');
    expect((await worksheet(bench(''))).status).toBe(2);
    expect(readFileSync(join(folder, 'bench.pdf'), 'utf8')).toBe('older');
    // The figures cannot be written, so the worksheet is not written either.
    expect((await worksheet(bench(firstRow), '--figures', 'no/such/figures.json')).status).toBe(2);
    expect(readFileSync(join(folder, 'bench.pdf'), 'utf8')).toBe('older');
    expect(readdirSync(folder).sort()).toEqual(['bench.pdf', 'bench.yaml']);
  });

  it('says when a folder may not be written to', async (context) => {
    chmodSync(folder, 0o555);
    // Root may write anywhere.
    const mayNot = spawnSync('touch', [join(folder, 'x')]).status !== 0;
    if (mayNot) {
      const ran = await worksheet(example('first-row'));
      expect([ran.status, existsSync(join(folder, 'first-row.pdf'))]).toEqual([2, false]);
      expect(ran.stderr).toMatch(/cannot be written: it may not be opened/u);
    } else await context.annotate('run by root, who may write anywhere');
    chmodSync(folder, 0o755);
  });
});
