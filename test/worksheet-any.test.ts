import process from 'node:process';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import type { Situation } from '../calculators/calculator.ts';
import { answer, type Answers, type CalculatorId } from '../calculators/index.ts';
import { ensureFonts } from '../scripts/fonts.ts';
import { sheetCalculators } from '../site/worksheet/facts.ts';
import { leftOutNames } from '../site/worksheet/left-out.ts';
import { openTypeface } from '../site/worksheet/pdf.ts';
import { languageManner } from '../scripts/content-files.ts';
import { layOut } from '../site/worksheet/worksheet.ts';
import { anyBench, changed } from './support/benches.ts';
import { inventedStation, metricRegion, usRegion } from './support/situations.ts';
import { untidy, words } from './support/untidy.ts';

/** How many benches are tried: WORKSHEET_BENCHES=2000 before a release, fewer each day. */
const count = Number(process.env['WORKSHEET_BENCHES'] ?? 60);
/** Any bench is followed through its night and a power cut for every so many, whose answers the next ones borrow. */
const followEvery = Math.max(10, Math.floor(count / 40));
const followed = ['roots', 'heat', 'watts', 'settings', 'night', 'outage'] as const;

const { measure } = openTypeface(await ensureFonts());

/**
 * Hardly any bench made by chance may be built. Every other one is laid out as if it might, so that the whole of a clean
 * sheet is looked at too: what forbids it is taken for something to take care of.
 */
const asIfBuildable = (answers: Answers): Answers =>
  Object.fromEntries(
    Object.entries(answers).map(([id, one]) => [
      id,
      {
        ...one,
        warnings: one.warnings.map((warning) => ({
          ...warning,
          code: `mild-${warning.code}`,
          level: 'care',
        })),
      },
    ]),
  ) as unknown as Answers;

/** Names and notes as people write them: plain, long, in one word, in other scripts, with pictures. */
const anyText = (most: number): fc.Arbitrary<string> =>
  fc.oneof(
    fc.constant(''),
    fc.string({ maxLength: most }),
    fc.string({ unit: 'grapheme', maxLength: most }).map((text) => text.slice(0, most)),
    fc.constantFrom(
      'بيت زجاجي رقم ٢',
      'שלום bench 3',
      '苗床 1 🌱',
      '👩‍🌾🌨️ frost',
      'Žluťoučký kůň',
      'W'.repeat(most),
    ),
    fc.constant('Wet mine '.repeat(40).slice(0, most).trim()),
  );

/**
 * Nothing over something else, nothing cut, nothing off the page, and no letter smaller than the sheet promises, whatever
 * the bench: every number between its limits, every choice, any words.
 */
it('any bench at all is laid out tidily, on either paper, with any part left out', () => {
  let [stopped, clean] = [0, 0];
  let borrowed: Partial<Answers> = {};
  const asked = fc.sample(
    fc.record({
      bench: anyBench,
      name: anyText(80),
      house: anyText(80),
      notes: anyText(300),
      leaveOut: fc.subarray([...leftOutNames], { maxLength: 2 }),
      american: fc.boolean(),
      letter: fc.boolean(),
      spanish: fc.boolean(),
    }),
    { seed: Number(process.env['SEED'] ?? 20261125), numRuns: count },
  );
  asked.forEach(({ bench, name, house, notes, leaveOut, american, letter, spanish }, index) => {
    const situation: Situation = {
      bench: changed(bench, { identity: { name: name || 'Bench', house, notes } }),
      region: american ? usRegion : metricRegion,
      station: inventedStation,
    };
    const answers = answer(situation);
    if (index % followEvery === 0)
      borrowed = Object.fromEntries(followed.map((id) => [id, answers[id]])) as Partial<Answers>;
    // What the sheet does not look at is not worked out.
    const looked = Object.fromEntries(
      sheetCalculators.map((id) => [
        id,
        (borrowed as Record<string, unknown>)[id] ?? answers[id as CalculatorId],
      ]),
    ) as unknown as Answers;
    const sheet = layOut(
      {
        situation,
        answers: index % 2 === 0 ? looked : asIfBuildable(looked),
        manner: { system: american ? 'us' : 'metric', ...languageManner(spanish ? 'es' : 'en') },
        paper: letter ? 'letter' : 'a4',
        link: 'https://guide.example/bench/#b=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA',
        version: { number: '1.0.0', date: '2026-11-25' },
        assumed: [],
        leaveOut,
      },
      measure,
    );
    const what = `bench ${index} in ${spanish ? 'es' : 'en'} on ${letter ? 'letter' : 'a4'} without ${leaveOut.join()}`;
    expect(untidy(sheet), what).toEqual([]);
    const [head = '', ...rest] = sheet.pages.map(({ items }) => items.map(words).join(' '));
    if (head.includes('Not to be built') || head.includes('No construir')) stopped++;
    else clean++;
    if (head.includes('Not to be built')) expect(rest[0], what).toContain('Not to be run');
  });
  // The benches were of both kinds, or this has looked at half of the sheet.
  expect(stopped).toBeGreaterThan(0);
  expect(clean).toBeGreaterThan(0);
}, 3_600_000);
