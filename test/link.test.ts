import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { allFields, benchOf, valueAt, type PlacedField } from '../calculators/bench/all-fields.ts';
import type { Bench } from '../calculators/bench/fields.ts';
import { readField } from '../calculators/bench/read-field.ts';
import { startBench } from '../calculators/bench/start.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { benchAddress, checksum, codeOf, decodeBench, encodeBench, marksCode } from '../content/link.ts';
import { filesOf } from '../scripts/content-files.ts';
import { anyBench } from './support/benches.ts';
import { regions } from './support/regions.ts';

const start = startBench('estermark', 'lowfield');

function decoded(text: string): Bench {
  const result = decodeBench(text);
  expect(result.ok ? '' : result.problem).toBe('');
  return result.ok ? result.bench : start;
}

const refusalOf = (text: string): string => {
  const result = decodeBench(text);
  return result.ok ? 'taken' : result.problem;
};

/** The bytes of a link with another body, and with the checksum that fits it. */
function linkOf(body: readonly number[]): string {
  const sum = checksum(body);
  const bytes = [...body, sum >>> 24, (sum >>> 16) & 0xff, (sum >>> 8) & 0xff, sum & 0xff];
  return Buffer.from(bytes).toString('base64url');
}
const bodyOf = (link: string): number[] => [...Buffer.from(link, 'base64url')].slice(0, -4);

/** Any text that a field takes. */
const anyText = (placed: PlacedField): fc.Arbitrary<string> =>
  fc
    .oneof(fc.string({ unit: 'grapheme', maxLength: 80 }), fc.string({ maxLength: 80 }))
    .map((text) => readField(placed.field, text))
    .filter((read) => read.ok)
    .map(({ value }) => String(value));

/** Any bench that the fields allow, with any words in it. */
const anyWordyBench: fc.Arbitrary<Bench> = fc
  .tuple(anyBench, ...allFields.filter(({ field }) => field.shape === 'text').map(anyText))
  .map(([bench, ...texts]) => {
    const rest = [...texts];
    return benchOf((placed) => {
      const value = placed.field.shape === 'text' ? (rest.shift() ?? '') : valueAt(bench, placed);
      return value === 0 ? 0 : value;
    });
  });

const benches = filesOf('benches').map(({ file, text }) => {
  const read = readBenchFile(text, file, regions);
  if (!read.ok) throw new Error(read.problems.map((problem) => problem.text).join('\n'));
  return { file, bench: read.bench };
});

describe('a link', { timeout: 60_000 }, () => {
  it('gives back the bench that it was made of, whatever that is', () => {
    fc.assert(
      fc.property(anyWordyBench, (bench) => {
        expect(decoded(encodeBench(bench))).toEqual(bench);
      }),
      { numRuns: 300 },
    );
  });

  it('has only letters, digits, - and _, which no mail and no code reader changes', () => {
    fc.assert(fc.property(anyWordyBench, (bench) => /^[\w-]+$/u.test(encodeBench(bench))));
  });

  it('is short: what is usual takes no room', () => {
    expect(encodeBench(startBench()).length).toBeLessThanOrEqual(7);
    expect(encodeBench(start).length).toBeLessThanOrEqual(40);
    expect(
      benches.map(({ file, bench }) => [
        file,
        encodeBench(bench).length <= (file.includes('first') ? 250 : 500),
      ]),
    ).toEqual(benches.map(({ file }) => [file, true]));
  });

  it('stands behind the # of the guide’s page, which no browser sends', () => {
    const address = benchAddress('https://guide.example/winter/', start);
    expect(address).toBe(`https://guide.example/winter/bench/#b=${encodeBench(start)}`);
    expect(benchAddress('https://guide.example/winter', start)).toBe(address);
    expect(decoded(address)).toEqual(start);
    expect(decoded(`#b=${encodeBench(start)}`)).toEqual(start);
    expect(decoded(`  ${address.slice(0, 50)}\r\n${address.slice(50)} `)).toEqual(start);
  });
});

describe('a damaged link never gives a bench', { timeout: 60_000 }, () => {
  const link = encodeBench(benches[0]?.bench ?? start);
  const letters = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';

  it('with any one letter changed', () => {
    for (let at = 0; at < link.length; at++)
      for (const letter of letters)
        if (letter !== link[at])
          expect(['damaged', 'newer']).toContain(refusalOf(link.slice(0, at) + letter + link.slice(at + 1)));
  });

  it('cut off anywhere, at either end', () => {
    for (let at = 1; at < link.length; at++) {
      expect(refusalOf(link.slice(0, at))).toBe('damaged');
      expect(refusalOf(link.slice(at))).toMatch(/damaged|newer/u);
    }
  });

  it('with a letter lost, doubled or swapped with the next', () => {
    for (let at = 0; at < link.length - 1; at++) {
      const [before, one = '', two = '', after] = [
        link.slice(0, at),
        link[at],
        link[at + 1],
        link.slice(at + 2),
      ];
      expect(refusalOf(before + two + after)).toBe('damaged');
      expect(refusalOf(before + one + one + two + after)).toBe('damaged');
      if (one !== two) expect(refusalOf(before + two + one + after)).toBe('damaged');
    }
  });

  it('made of anything at all, and is never an exception', () => {
    fc.assert(fc.property(fc.oneof(fc.string(), fc.base64String()), (text) => refusalOf(text) !== 'taken'));
    // The checksum fits, so that what follows it is looked at.
    fc.assert(
      fc.property(fc.array(fc.nat(255), { maxLength: 60 }), (bytes) => {
        expect(refusalOf(linkOf([1, ...bytes]))).toMatch(/^(taken|damaged|newer|impossible-value)$/u);
      }),
      { numRuns: 1000 },
    );
  });
});

describe('a refusal has a name and words', () => {
  const code = codeOf('frame.length');
  it.each([
    ['', 'empty', /no bench in this link/u],
    ['https://guide.example/bench/#b=', 'empty', /no bench/u],
    ['https://guide.example/bench/', 'not-a-link', /Copy the whole link/u],
    ['ABC%20', 'not-a-link', /Copy the whole link/u],
    ['A'.repeat(10_000), 'not-a-link', /Copy the whole link/u],
    ['ABCDEFGH', 'damaged', /was lost or changed/u],
    [linkOf([2]), 'newer', /newer guide/u],
    [linkOf([1, 0, 0]), 'newer', /newer guide/u],
    [linkOf([1, code >> 8, code & 0xff, 2, 0]), 'impossible-value', /no bench can have/u],
    [linkOf([1, code >> 8, code & 0xff]), 'damaged', /was lost/u],
    [linkOf([0]), 'damaged', /was lost/u],
  ])('%.40s: %s', (text, problem, words) => {
    const result = decodeBench(text);
    expect(result).toMatchObject({ ok: false, problem });
    expect(result.ok ? '' : result.text).toMatch(words);
  });

  it('a choice that this guide does not know is refused, not replaced', () => {
    const place = codeOf('loop.pipe');
    const unknown = codeOf('a pipe of tomorrow');
    expect(refusalOf(linkOf([1, place >> 8, place & 0xff, unknown >> 8, unknown & 0xff]))).toBe('newer');
  });

  it('numbers that are none are refused', () => {
    const at = [1, code >> 8, code & 0xff, 1];
    for (const bytes of [
      [0x7f, 0xf0, 0, 0, 0, 0, 0, 0],
      [0x7f, 0xf8, 0, 0, 0, 0, 0, 0],
    ])
      expect(refusalOf(linkOf([...at, ...bytes]))).toBe('impossible-value');
  });
});

describe('the parts of a link', () => {
  it('have the checksum that is published', () => {
    // CRC-32 of "123456789", the check value of the catalogue of parametrised CRC algorithms (from memory); 0 of nothing.
    expect(checksum(Buffer.from('123456789')).toString(16)).toBe('cbf43926');
    expect(checksum([])).toBe(0);
    // The end of every PNG: the CRC of its empty IEND chunk (PNG specification, ISO/IEC 15948).
    expect(checksum(Buffer.from('IEND')).toString(16)).toBe('ae426082');
  });

  it('tell every field from every other, and every choice of a field', () => {
    const codes = allFields.map(({ path }) => codeOf(path));
    expect(new Set(codes).size).toBe(codes.length);
    for (const { path, field } of allFields) {
      if (field.shape !== 'choice') continue;
      const options = Object.keys(field.options).map(codeOf);
      expect([path, new Set(options).size]).toEqual([path, options.length]);
    }
  });

  it('are in the same order however often: one bench has one link', () => {
    for (const { bench } of benches)
      expect(encodeBench(decoded(encodeBench(bench)))).toBe(encodeBench(bench));
  });

  it('are whole: bodies taken apart and put together are the same', () => {
    const link = encodeBench(start);
    expect(linkOf(bodyOf(link))).toBe(link);
  });
});

/**
 * Links that were printed stay good. This one was made by the first format; it says what its bench was, field by field.
 * Where this fails, a name, a choice or a start value has changed: do not change the file, but see `formerStarts`.
 */
describe('a link of the first format', () => {
  const kept = JSON.parse(
    readFileSync(fileURLToPath(new URL('support/link-format-1.json', import.meta.url)), 'utf8'),
  ) as readonly {
    readonly link: string;
    readonly bench: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  }[];

  it.each(kept.map((one, index) => [index, one] as const))(
    'still opens the same bench (%i)',
    (_, { link, bench }) => {
      const opened = decoded(link) as unknown as Readonly<Record<string, Readonly<Record<string, unknown>>>>;
      for (const [group, members] of Object.entries(bench))
        for (const [name, value] of Object.entries(members))
          expect([group, name, opened[group]?.[name]]).toEqual([group, name, value]);
    },
  );

  it('is there', () => expect(kept.length).toBeGreaterThanOrEqual(2));
});

describe('what was set', () => {
  const [{ bench } = { bench: start }] = benches;
  const setIn = (text: string) => {
    const result = decodeBench(text);
    return result.ok ? [...result.set].sort() : [result.problem];
  };

  it('goes along, whichever fields it is', () => {
    fc.assert(
      fc.property(fc.subarray(allFields.map(({ path }) => path)), (set) => {
        const link = encodeBench(bench, set);
        expect(setIn(link)).toEqual([...set].sort());
        expect(decoded(link)).toEqual(bench);
      }),
    );
  });

  it('is, in a link that does not say, what is not usual', () => {
    const other = { ...start, cable: { ...start.cable, length: 31 } };
    expect(setIn(encodeBench(other))).toEqual(['cable.length', 'place.region', 'place.station']);
  });

  it('takes no room where it is that, and little where all or none was set', () => {
    const plain = encodeBench(bench).length;
    expect(encodeBench(bench, setIn(encodeBench(bench)) as never).length).toBe(plain);
    for (const set of [[], allFields.map(({ path }) => path)])
      expect(encodeBench(bench, set).length).toBeLessThanOrEqual(plain + 6);
  });

  it('has a mark that no field has for its code', () => {
    expect(allFields.map(({ path }) => codeOf(path))).not.toContain(marksCode);
  });
});
