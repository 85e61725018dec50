import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allFields, benchOf, valueAt, type PlacedField } from '../calculators/bench/all-fields.ts';
import type { NumberField } from '../calculators/bench/field.ts';
import type { Bench } from '../calculators/bench/fields.ts';
import { readField, type FieldValue } from '../calculators/bench/read-field.ts';
import { startBench } from '../calculators/bench/start.ts';
import {
  fromBase,
  quantities,
  shownUnit,
  type Quantity,
  type UnitSystem,
} from '../calculators/quantities/quantity.ts';
import { readBenchFile, writeBenchFile, type Problem } from '../content/bench-file.ts';
import { currentFormat, migrate } from '../content/bench-format.ts';
import { benchJsonSchema, type JsonSchema } from '../content/json-schema.ts';
import { largestFile, readTree, type Group } from '../content/yaml-tree.ts';
import { filesOf } from '../scripts/content-files.ts';
import { regions } from './support/regions.ts';

const file = 'bench.yaml';

/** The least that a file must say. */
const least = `identity:
  name: Test bench
place:
  region: estermark
  station: lowfield
`;

const read = (text: string) => readBenchFile(text, file, regions);

function problemsOf(text: string): readonly Problem[] {
  const result = read(text);
  expect(result.ok, 'the file is refused').toBe(false);
  return result.ok ? [] : result.problems;
}

/** The texts of all problems; blanks of any width are blanks. */
const textsOf = (text: string): string[] =>
  problemsOf(text).map((problem) => problem.text.replaceAll('\u202f', ' '));

function benchIn(text: string): Bench {
  const result = read(text);
  expect(result.ok ? [] : result.problems.map((problem) => problem.text)).toEqual([]);
  return result.ok ? result.bench : startBench();
}

describe('a bench file', () => {
  it('that says the least takes every other value from the start, and says which', () => {
    const result = read(least);
    expect(result).toMatchObject({
      ok: true,
      bench: { ...startBench('estermark', 'lowfield'), identity: { name: 'Test bench' } },
    });
    const given = ['identity.name', 'place.region', 'place.station'];
    if (result.ok)
      expect(result.assumed).toEqual(
        allFields.map(({ path }) => path).filter((path) => !given.includes(path)),
      );
  });

  it('holds quantities in any of their units', () => {
    const bench = benchIn(`${least}frame:
  length: 20 ft
  width: 120 cm
  height: 0,8 m
plants: { lowestRootTemperature: −2 °C }
skirt:
  bottomGap: 1/2 in
`);
    expect(bench.frame).toMatchObject({ length: 6.096, width: 1.2, height: 0.8 });
    expect(bench.plants.lowestRootTemperature).toBe(-2);
    expect(bench.skirt.bottomGap).toBe(0.0127);
  });

  it('may leave empty what has a meaning when it is empty', () => {
    const bench = benchIn(`${least}supply:\n  voltage:\nloop:\n  length: ~\ncover:\n`);
    expect(bench.supply.voltage).toBeNull();
    expect(bench.loop.length).toBeNull();
  });

  it('may come from another system: a mark at its start, other line ends', () => {
    expect(benchIn(`\uFEFF${least.replaceAll('\n', '\r\n')}`).identity.name).toBe('Test bench');
  });

  it('may have a name that looks like something else', () => {
    for (const name of ['42', '"null"', '"#1"', "'a: b'", 'true', 'Größte Bank – Süd'])
      expect(benchIn(least.replace('Test bench', name)).identity.name).toBe(
        name.replace(/^["']|["']$/gu, ''),
      );
  });
});

describe('a bench file with mistakes names file, line, field, what was found and what is allowed', () => {
  it.each([
    ['an unknown name', 'frame:\n  lenght: 6 m\n', 7, 'frame.lenght', 'lenght', /did you mean length\?/u],
    ['an unknown group', 'skirts:\n  layers: 2\n', 6, 'skirts', 'skirts', /did you mean skirt\?/u],
    [
      'a name without its group',
      'setPoint: 4 °C\n',
      6,
      'setPoint',
      'setPoint',
      /below the name of its group.*control/u,
    ],
    [
      'a wrong unit',
      'frame:\n  length: 6 kg\n',
      7,
      'frame.length',
      '6 kg',
      /must be in m, cm, mm, ft or in, not in kg/u,
    ],
    ['no unit', 'frame:\n  length: 6\n', 7, 'frame.length', '6', /must have a unit, such as 6 m/u],
    [
      'a length below zero',
      'frame:\n  length: -6 m\n',
      7,
      'frame.length',
      '-6 m',
      /between 0\.6 m and 60 m/u,
    ],
    [
      'a share that no figures reach',
      'mix:\n  share: 65 %\n',
      7,
      'mix.share',
      '65 %',
      /between 0 % and 60 %/u,
    ],
    ['a choice that there is not', 'loop:\n  run: o\n', 7, 'loop.run', 'o', /must be u, ring or straight/u],
    [
      'a number that is a word',
      'pots:\n  count: many\n',
      7,
      'pots.count',
      'many',
      /must be a number, such as 450/u,
    ],
    [
      'a list for a value',
      'pots:\n  count:\n    - 1\n',
      7,
      'pots.count',
      'a list',
      /must be one value, not a list/u,
    ],
    ['a value for a group', 'pots: 450\n', 6, 'pots', '450', /names with values/u],
    [
      'an empty field that may not be empty',
      'frame:\n  length:\n',
      7,
      'frame.length',
      '',
      /Enter the length of the bench/u,
    ],
    [
      'a comma that may mean two things',
      'frame:\n  length: 1,200 mm\n',
      7,
      'frame.length',
      '1,200 mm',
      /1\.200 or 1200/u,
    ],
  ])('%s', (_, text, line, field, found, words) => {
    const [problem, ...others] = problemsOf(least + text);
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ file, line, field });
    expect(problem?.found).toBe(found);
    expect(problem?.allowed).not.toBe('');
    expect(problem?.text.replaceAll('\u202f', ' ')).toMatch(words);
    expect(problem?.text).toContain(`${file}, line ${line}, ${field}: `);
  });

  it('tells all of them at once, in the order of the lines', () => {
    expect(
      textsOf(`${least}frame:\n  length: -6 m\n  widht: 1 m\nbogus: 1\nmix:\n  share: 70 %\n`).map(
        (text) => text.split(': ')[0],
      ),
    ).toEqual([
      'bench.yaml, line 7, frame.length',
      'bench.yaml, line 8, frame.widht',
      'bench.yaml, line 9, bogus',
      'bench.yaml, line 11, mix.share',
    ]);
  });

  it('names the regions and stations that exist', () => {
    expect(textsOf('identity:\n  name: x\n')).toEqual([
      'bench.yaml, line 1, place.region: Select the region: estermark, tallow or valdehielo.',
      'bench.yaml, line 1, place.station: Select the weather station: lowfield, millpond or la-vega.',
    ]);
    expect(textsOf(least.replace('lowfield', 'millpond'))).toEqual([
      'bench.yaml, line 5, place.station: Weather station must be lowfield. Found: millpond',
    ]);
  });

  it('speaks to a US reader in US units', () => {
    const us = least.replace('estermark', 'tallow').replace('lowfield', 'millpond');
    expect(textsOf(`${us}frame:\n  length: -6 ft\n`)).toEqual([
      'bench.yaml, line 7, frame.length: Length of the bench must be between 2 ft and 196.8 ft. Found: -6 ft',
    ]);
  });
});

describe('text that is no bench file', { timeout: 60_000 }, () => {
  it.each([
    ['an empty file', '', 1, /The file is empty/u],
    ['only comments', '# nothing\n\n', 1, /The file is empty/u],
    ['a word', 'bench', 1, /must hold names with values/u],
    ['a list', '- bench', 1, /must hold names with values/u],
    ['a quote that is not closed', 'identity:\n  name: "Test\n', 2, /closing quote/u],
    ['a bracket that is not closed', 'identity:\nframe: {length: 6 m\n', 2, /bracket/u],
    ['a tab', 'identity:\n\tname: x\n', 2, /not with tabs/u],
    ['names out of line', 'identity:\n  name: x\n house: y\n', 3, /below each other/u],
    ['a name twice', 'identity:\n  name: x\n  name: y\n', 3, /stands on line 2 already/u],
    ['a colon in a value', 'identity:\n  name: a: b\n', 2, /in quotes/u],
    ['two benches', 'identity:\n  name: x\n---\nidentity:\n', 3, /one file holds one thing/u],
    ['an alias', 'identity:\n  name: &a x\n  house: *a\n', 2, /starts with & must stand in quotes/u],
    ['a tag', 'identity:\n  name: !x y\n', 2, /starts with ! must stand in quotes/u],
    ['a number lost behind a #', 'identity:\n  name: Bench #2\n', 2, /holds # must stand in quotes/u],
    ['a picture', 'PNG\r\n\u0000\u0000', 1, /not plain text/u],
    ['brackets by the thousand', '['.repeat(100_000), 1, /too many brackets/u],
  ])('%s', (_, text, line, words) => {
    const [problem] = problemsOf(text);
    expect(problem).toMatchObject({ file, line });
    expect(problem?.text).toMatch(words);
  });

  it('five megabytes are refused by their size', () => {
    const started = performance.now();
    expect(textsOf('a: b\n'.repeat(1_000_000))).toEqual([
      'bench.yaml, line 1: The file must have 256 kB or less. Found: 4883 kB',
    ]);
    // Reading them would take minutes.
    expect(performance.now() - started).toBeLessThan(1000);
    expect(problemsOf(`# ${'ä'.repeat(largestFile / 2)}`)[0]?.text).toMatch(/256 kB or less/u);
  });

  it('names that reach into objects are unknown names', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      expect(problemsOf(`${least}${name}:\n  polluted: yes\n`)).toMatchObject([
        { line: 6, field: name, found: name },
      ]);
      expect(problemsOf(`${least}frame:\n  ${name}: yes\n`)).toMatchObject([
        { line: 7, field: `frame.${name}` },
      ]);
    }
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });

  it('never throws, whatever it is', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string({ unit: 'binary' })), (text) => {
        const result = read(text);
        expect(
          result.ok ? [] : result.problems.every(({ line, text: words }) => line >= 1 && words !== ''),
        ).toBeTruthy();
      }),
    );
    const lines = writeBenchFile(startBench('estermark', 'lowfield'), 'metric').split('\n');
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(lines.length - 1), fc.string({ maxLength: 12 })), {
          minLength: 1,
          maxLength: 4,
        }),
        (slips) => {
          const changed = [...lines];
          for (const [at, slip] of slips) changed[at] = `${changed[at] ?? ''}${slip}`;
          read(changed.join('\n'));
        },
      ),
      { numRuns: 40 },
    );
  });
});

describe('the format', () => {
  it('may be left out or be the present one', () => {
    expect(read(`format: ${currentFormat}\n${least}`).ok).toBe(true);
  });

  it('of a newer guide is refused kindly', () => {
    expect(textsOf(`format: ${currentFormat + 1}\n${least}`)).toEqual([
      `bench.yaml, line 1, format: This file was written by a newer guide than this one, which reads format ${currentFormat} and older. Open it in the guide that wrote it. Found: ${currentFormat + 1}`,
    ]);
  });

  it.each(['0', '-1', '1.5', 'one', ''])('of "%s" is refused', (format) => {
    expect(problemsOf(`format: ${format}\n${least}`)).toMatchObject([{ line: 1, field: 'format' }]);
  });

  it('of an older guide is taken from step to step', () => {
    const tree = readTree('benchLength: 6 m\n', file);
    if (!tree.ok) throw new Error('unreadable');
    const rename =
      (from: string, to: string) =>
      (group: Group): Group => ({
        ...group,
        entries: new Map([...group.entries].map(([name, entry]) => [name === from ? to : name, entry])),
      });
    const steps = { 1: rename('benchLength', 'long'), 2: rename('long', 'length') };
    const migrated = migrate(tree.tree, 1, steps, 3);
    expect([...migrated.entries]).toMatchObject([['length', { line: 1, tree: { text: '6 m' } }]]);
    expect(migrate(tree.tree, 3, steps, 3)).toBe(tree.tree);
    expect(() => migrate(tree.tree, 1, {}, 2)).toThrow(RangeError);
  });

  it('has a step from every older one', () => {
    const tree = readTree(least, file);
    if (!tree.ok) throw new Error('unreadable');
    for (let from = 1; from < currentFormat; from++) expect(() => migrate(tree.tree, from)).not.toThrow();
  });
});

/** A number as a person may have entered it, in one of the systems of units. */
function enteredNumber({ field }: PlacedField, system: UnitSystem): fc.Arbitrary<FieldValue> {
  if (field.shape !== 'number') throw new RangeError('not a number');
  const { quantity, from, to, empty } = field;
  const unit = shownUnit(quantity, system);
  const number = fc
    .double({ min: from, max: to, noNaN: true })
    .map((value) => {
      const written = Number(fromBase(quantity, value, unit).toPrecision(5));
      // Nobody enters less than a millionth.
      const plain = Math.abs(written) < 1e-6 ? 0 : written;
      return readField(field, `${quantity === 'count' ? Math.round(plain) : plain} ${unit}`);
    })
    .filter((one) => one.ok)
    .map(({ value }) => value);
  return empty === undefined ? number : fc.option(number, { nil: null });
}

/** A bench as people may have entered it. */
const enteredBench: fc.Arbitrary<Bench> = fc
  .tuple(
    ...allFields.map((placed): fc.Arbitrary<FieldValue> => {
      const { field, path } = placed;
      if (path === 'place.region') return fc.constant('estermark');
      if (path === 'place.station') return fc.constant('lowfield');
      switch (field.shape) {
        case 'number':
          return fc.oneof(enteredNumber(placed, 'metric'), enteredNumber(placed, 'us'));
        case 'choice':
          return fc.constantFrom(...Object.keys(field.options));
        case 'text':
        case 'reference':
          // What the reader makes of any text: one that it would take.
          return fc
            .oneof(
              fc.string({ unit: 'grapheme', maxLength: 60 }),
              fc.constantFrom('null', '~', '12', 'a: b', '# x', '"', "'", '- a'),
            )
            .map((text) => readField(field, text))
            .filter((one) => one.ok)
            .map(({ value }) => value);
      }
    }),
  )
  .map((values) => benchOf((placed) => values[allFields.indexOf(placed)] ?? null));

describe('writeBenchFile', { timeout: 60_000 }, () => {
  it.each(['metric', 'us'] as const)('writes what reads back to the same bench, in %s units', (system) => {
    fc.assert(
      fc.property(enteredBench, (bench) => {
        const result = read(writeBenchFile(bench, system));
        expect(result.ok ? [] : result.problems.map(({ text }) => text)).toEqual([]);
        if (!result.ok) return;
        expect(result.bench).toEqual(bench);
        expect(result.assumed).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });

  it('keeps any number that a calculation may have given to its last bit, or nearly', () => {
    const placed = allFields.filter(({ field }) => field.shape === 'number');
    fc.assert(
      fc.property(
        fc
          .constantFrom(...placed)
          .chain((one) =>
            fc.tuple(
              fc.constant(one),
              one.field.shape === 'number' && one.field.quantity !== 'count'
                ? fc.double({ min: one.field.from, max: one.field.to, noNaN: true })
                : fc.constant(3),
            ),
          ),
        ([{ path, field }, raw]) => {
          // Nobody means less than a billionth, and what is a hair from a limit is put onto it.
          const value = Math.abs(raw) < 1e-9 ? 0 : raw;
          const start = startBench('estermark', 'lowfield');
          const bench = benchOf((one) =>
            one.path === path ? value : one.path === 'identity.name' ? 'x' : valueAt(start, one),
          );
          const result = read(writeBenchFile(bench, 'us'));
          const found = result.ok
            ? valueAt(result.bench, allFields.find((one) => one.path === path) as PlacedField)
            : NaN;
          const { from, to } = field as NumberField;
          const hair = [from, to].some((limit) => Math.abs(value - limit) < 1e-9) ? 1e-9 : 0;
          expect(Math.abs(Number(found) - value)).toBeLessThanOrEqual(2 ** -52 * Math.abs(value) + hair);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('writes a reader’s own units', () => {
    const bench = benchIn(`${least}frame:\n  length: 20 ft\n  width: 1.2 m\n`);
    expect(writeBenchFile(bench, 'us')).toMatch(/^ {2}length: 20 ft$/mu);
    expect(writeBenchFile(bench, 'metric')).toMatch(/^ {2}width: 1.2 m$/mu);
    // What can be said exactly only in the other system stays there.
    expect(writeBenchFile(bench, 'us')).toMatch(/^ {2}width: 1.2 m$/mu);
  });
});

/** The little of JSON Schema 2020-12 that the published schema uses, read off its specification. */
function fits(schema: JsonSchema, value: unknown): boolean {
  const kinds = {
    null: value === null,
    string: typeof value === 'string',
    number: typeof value === 'number',
    integer: Number.isInteger(value),
    object: typeof value === 'object' && value !== null,
  };
  const types = schema.type === undefined ? null : [schema.type].flat();
  const object = kinds.object ? (value as Record<string, unknown>) : null;
  return [
    types === null || types.some((type) => kinds[type as keyof typeof kinds]),
    schema.const === undefined || schema.const === value,
    schema.enum === undefined || schema.enum.includes(value),
    schema.pattern === undefined || typeof value !== 'string' || new RegExp(schema.pattern, 'u').test(value),
    schema.minLength === undefined || typeof value !== 'string' || [...value].length >= schema.minLength,
    schema.maxLength === undefined || typeof value !== 'string' || [...value].length <= schema.maxLength,
    schema.minimum === undefined || typeof value !== 'number' || value >= schema.minimum,
    schema.maximum === undefined || typeof value !== 'number' || value <= schema.maximum,
    schema.oneOf === undefined || schema.oneOf.filter((one) => fits(one, value)).length === 1,
    schema.allOf === undefined || schema.allOf.every((one) => fits(one, value)),
    schema.if === undefined ||
      !fits(schema.if, value) ||
      schema.then === undefined ||
      fits(schema.then, value),
    !object || (schema.required ?? []).every((name) => Object.hasOwn(object, name)),
    !object ||
      Object.entries(schema.properties ?? {}).every(
        ([name, one]) => !Object.hasOwn(object, name) || fits(one, object[name]),
      ),
    !object ||
      schema.additionalProperties !== false ||
      Object.keys(object).every((name) => Object.hasOwn(schema.properties ?? {}, name)),
  ].every(Boolean);
}

describe('the JSON Schema', { timeout: 60_000 }, async () => {
  const { parse } = await import('yaml');
  const schema = benchJsonSchema(regions, 'https://guide.example/bench.schema.json');

  it.each(filesOf('benches'))('takes $file', ({ text }) => expect(fits(schema, parse(text))).toBe(true));

  it('takes what the guide writes', () => {
    for (const system of ['metric', 'us'] as const)
      expect(
        fits(
          schema,
          parse(
            writeBenchFile(
              { ...startBench('tallow', 'millpond'), identity: { name: 'x', house: '', notes: '' } },
              system,
            ),
          ),
        ),
      ).toBe(true);
  });

  it.each([
    ['no name', least.replace('  name: Test bench\n', '  house: x\n')],
    ['no region', least.replace('  region: estermark\n', '')],
    ['an unknown name', `${least}frame:\n  lenght: 6 m\n`],
    ['an unknown group', `${least}frames:\n  length: 6 m\n`],
    ['a wrong unit', `${least}frame:\n  length: 6 kg\n`],
    ['no unit', `${least}frame:\n  length: 6\n`],
    ['a length below zero', `${least}frame:\n  length: -6 m\n`],
    ['a choice that there is not', `${least}frame:\n  top: slat\n`],
    ['too many pots', `${least}pots:\n  count: 20001\n`],
    ['a station of another region', least.replace('lowfield', 'millpond')],
    ['a newer format', `format: ${currentFormat + 1}\n${least}`],
  ])('marks %s, as the reader does', (_, text) => {
    expect(read(text).ok).toBe(false);
    expect(fits(schema, parse(text))).toBe(false);
  });

  it('explains every field and shows how it is written', () => {
    for (const { group, name, field } of allFields) {
      const member = schema.properties?.[group]?.properties?.[name];
      expect([group, name, member?.title]).toEqual([group, name, field.label]);
      expect(member?.description).toContain(field.explain);
      if (field.shape !== 'number') continue;
      expect(member?.examples?.length).toBeGreaterThan(0);
      for (const example of member?.examples ?? []) {
        expect([example, fits(member ?? {}, example)]).toEqual([example, true]);
        expect([example, readField(field, example).ok]).toEqual([example, true]);
      }
    }
  });

  it('takes a quantity exactly when the reader can tell what it is', () => {
    const placed = allFields.filter(({ field }) => field.shape === 'number' && field.quantity !== 'count');
    const units = Object.values(quantities as Record<string, Quantity>).flatMap((quantity) =>
      Object.entries(quantity.units).flatMap(([unit, { also = [] }]) => [unit, ...also]),
    );
    const number = fc.oneof(
      fc.nat(300).map(String),
      fc.constantFrom('1.5', '0,5', '.5', '1 1/2', '3/8', '1.', 'x', ''),
    );
    const written = fc
      .tuple(
        fc.constantFrom('', '-', '−', '+'),
        number,
        fc.constantFrom('', ' ', '  '),
        fc.constantFrom('', ...units),
      )
      .map((parts) => parts.join(''));
    fc.assert(
      fc.property(fc.constantFrom(...placed), written, ({ field, group, name }, text) => {
        // Nothing at all, and minus nothing, which the reader takes for zero.
        if (/^(?:\s*|[-−]\s*0\D*)$/u.test(text)) return;
        const member = schema.properties?.[group]?.properties?.[name] ?? {};
        const result = readField(field, text);
        const told = result.ok || result.problem.code === 'out-of-range';
        if (fits(member, text)) expect([text, name, told]).toEqual([text, name, true]);
        // The schema may also refuse what the reader refuses for its range: a minus before a length.
        if (result.ok) expect([text, name, fits(member, text)]).toEqual([text, name, true]);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('a length in a unit of its own', () => {
  it.each([
    ['32 in', 'us', 'height: 32 in'],
    ['3 ft', 'us', 'height: 3 ft'],
    ['81.5 cm', 'metric', 'height: 0.815 m'],
    ['81.5 cm', 'us', 'height: 0.815 m'],
    ['32 in', 'metric', 'height: 0.8128 m'],
  ] as const)('%s comes back as a person in %s units would write it: %s', (typed, system, line) => {
    const bench = benchIn(`${least}frame:\n  length: 6 m\n  height: ${typed}\npots:\n  count: 480\n`);
    expect(writeBenchFile(bench, system, ['frame.height'])).toContain(`\n  ${line}\n`);
  });
});

describe('what was assumed', () => {
  const bench = benchIn(`${least}frame:\n  length: 3 ft 6 in\npots:\n  count: 480\n`);
  const set = ['identity.name', 'place.region', 'place.station', 'frame.length'] as const;
  const assumed = allFields.map(({ path }) => path).filter((path) => !set.some((one) => one === path));

  it.each(['metric', 'us'] as const)('stays assumed through a file, in %s units', (system) => {
    const text = writeBenchFile(bench, system, set);
    const result = read(text);
    if (!result.ok) throw new Error(result.problems.map((problem) => problem.text).join('\n'));
    expect({ ...result.bench, frame: null }).toEqual({ ...bench, frame: null });
    // Three feet six: 3.5 ft of 0.3048 m each, in the nearest number that the machine has.
    expect(Math.abs(result.bench.frame.length - 3.5 * 0.3048)).toBeLessThan(3e-16);
    expect(text).toMatch(system === 'us' ? /^ {2}length: 3\.5 ft$/mu : /^ {2}length: 1\.0668 m$/mu);
    expect(result.assumed).toEqual(assumed);
    // A usual value is a comment; one that was taken over is named.
    expect(text).toMatch(/^ {2}# width: \d/mu);
    expect(text).toMatch(/^ {2}- pots\.count$/mu);
    expect(text).not.toMatch(/\d{8}/u);
  });

  it('is written in the units of the reader', () => {
    const values = writeBenchFile(bench, 'us', set)
      .split('\n')
      .filter((line) => /^ {2}(?:# )?[a-z]\w*:/u.test(line));
    expect(values.length).toBeGreaterThan(60);
    expect(values.filter((line) => /\d (?:mm|cm|m|°C|K|L|W\/m)$/u.test(line))).toEqual([]);
  });

  it('must name fields', () => {
    expect(textsOf(`${least}assumed: [frame.lenght]\n`)[0]).toMatch(
      /line 6, assumed: .*Found: frame\.lenght/u,
    );
    expect(textsOf(`${least}assumed: all\n`)[0]).toMatch(/line 6, assumed: /u);
    expect(benchIn(`${least}assumed:\n`).identity.name).toBe('Test bench');
  });
});
