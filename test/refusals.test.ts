import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { answerOf } from '../calculators/answering.ts';
import { NoRest } from '../calculators/bench/settle.ts';
import type { Answer, Calculator, Situation } from '../calculators/calculator.ts';
import { answer, calculators, type Answers } from '../calculators/index.ts';
import { OutOfRange } from '../calculators/range.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { ensureFonts } from '../scripts/fonts.ts';
import { drawings, drawingWidths } from '../site/drawings.ts';
import { figuresOf } from '../site/figures.ts';
import { sentenceText } from '../site/widgets/text.ts';
import { drawWorksheet } from '../site/worksheet/worksheet.ts';
import { root } from './support/imports.ts';
import { regions } from './support/regions.ts';
import { situation } from './support/situations.ts';

const every: readonly Calculator[] = calculators;
const manner = { system: 'metric', locale: 'en' } as const;

const words = ({ warnings }: Answer): string =>
  warnings.map(({ text }) => sentenceText(text, { system: 'metric', locale: 'en' })).join('');

const throwing = (problem: Error): Calculator['compute'] => {
  return () => {
    throw problem;
  };
};

afterEach(() => {
  vi.restoreAllMocks();
});

describe('a law that gives up', () => {
  it('empties the figures of its own calculator, says why, and takes no other answer away', () => {
    const one = situation();
    for (const refuses of every) {
      vi.spyOn(refuses, 'compute').mockImplementation(throwing(new NoRest('stubbed')));
      const answers = answer(one);
      const refused: Answer = answers[refuses.id as 'night'];
      expect(Object.keys(refused.figures)).toEqual(Object.keys(refuses.figures));
      expect(Object.values(refused.figures).every((figure) => figure === null)).toBe(true);
      expect(refused.warnings.map(({ code, level }) => `${level} ${code}`)).toEqual(['stop no-rest']);
      const other = refuses.id === 'winding' ? answers.loop : answers.winding;
      expect(other.warnings.map(({ code }) => code)).not.toContain('no-rest');
      expect(Object.values<unknown>(other.figures).some((figure) => figure !== null)).toBe(true);
      vi.restoreAllMocks();
    }
  });

  it('is told with the quantity, what it was and what it may be', () => {
    const stubbed = { figures: { one: {} }, compute: throwing(new OutOfRange('length [m]', -7.0042, 0, 6)) };
    expect(words(answerOf(stubbed, situation()))).toContain('length [m] is −7, and must be 0 to 6.');
    const plain = { ...stubbed, compute: throwing(new RangeError('elsewhere')) };
    expect(answerOf(plain, situation()).warnings.map(({ code }) => code)).toEqual(['outside-range']);
  });

  it('is not taken for a fault of the program, which goes on as one', () => {
    const stubbed = { figures: { one: {} }, compute: throwing(new TypeError('a fault')) };
    expect(() => answerOf(stubbed, situation())).toThrow('a fault');
  });

  const one = situation();
  const whole: Readonly<Record<string, Answer>> = answer(one);
  const refusedBy = ({ figures }: Calculator): Answer =>
    answerOf({ figures, compute: throwing(new NoRest('stubbed')) }, one);
  const without = (...ids: readonly string[]): Answers =>
    Object.fromEntries(
      every.map((calculator) => {
        const { id } = calculator;
        return [id, ids.includes(id) ? refusedBy(calculator) : whole[id]];
      }),
    ) as unknown as Answers;

  it.each([['winding'], ['roots'], ['night'], every.map(({ id }) => id)])(
    'leaves the worksheet as whole as it can be: %s',
    async (...ids) => {
      const { byteLength } = await drawWorksheet({
        situation: one,
        answers: without(...ids),
        manner,
        paper: 'a4',
        fonts: await ensureFonts(),
        link: benchAddress(one.region.guide, one.bench),
        version: { number: '9.8.7', date: '2026-11-25' },
        assumed: [],
      });
      expect(byteLength).toBeGreaterThan(10_000);
    },
  );

  it.each(Object.entries(drawings))('leaves the drawing “%s” to be drawn', async (name, { needs, load }) => {
    const draw = await load();
    for (const id of needs) {
      const drawn = draw({ situation: one, answers: without(id), manner, width: drawingWidths.wide });
      expect(drawn.marks.length, `${name} without ${id}`).toBeGreaterThan(0);
    }
  });

  it('leaves the file of figures with all others', () => {
    const { figures } = figuresOf(one, without('night'));
    expect(figures['night']).toEqual({});
    expect(figures['roots']).not.toEqual({});
  });
});

/** The bench file that the README shows, and the least that it says a file must hold. */
const readme = readFileSync(join(root, 'README.md'), 'utf8');
const shown = /```yaml\n(identity:\n[^`]*)```/u.exec(readme)?.[1] ?? '';
const least = 'identity:\n  name: My bench\n\nplace:\n  region: estermark\n  station: lowfield\n';

function situationOf(text: string, file: string): Situation {
  const read = readBenchFile(text, file, regions);
  if (!read.ok) throw new Error(read.problems.map((problem) => problem.text).join('\n'));
  const { bench } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  if (!region || !station) throw new Error(`${file} stands nowhere`);
  return { bench, region, station };
}

/** The same file at a station of another region, where the cable is on a breaker that is sold there. */
const standingAt = (text: string, region: string, station: string, us: boolean): string =>
  text
    .replace('region: estermark', `region: ${region}`)
    .replace('station: lowfield', `station: ${station}`)
    .replace('breaker: 16 A', us ? 'breaker: 15 A' : 'breaker: 16 A');

const places = regions.flatMap(({ id, stations, mains }) =>
  stations.map((station) => [id, station.id, mains.rules === 'us'] as const),
);

describe('what the README shows as a bench file', () => {
  it.each(places)('answers every question in %s at %s, in full and at its least', (region, station, us) => {
    expect(shown).toContain('station: lowfield');
    for (const [name, text] of [
      ['shown', shown],
      ['least', least],
    ] as const) {
      const answers = answer(situationOf(standingAt(text, region, station, us), `${name}.yaml`));
      for (const { id } of every) {
        const one: Answer = answers[id as 'night'];
        expect(
          one.warnings.map(({ code }) => code).filter((code) => ['no-rest', 'outside-range'].includes(code)),
          `${name}: ${id}`,
        ).toEqual([]);
        expect(Object.values(one.figures).some((figure) => figure !== null) || id === 'readings', id).toBe(
          true,
        );
      }
    }
  });
});
