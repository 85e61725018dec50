import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { sentenceText } from '../../site/widgets/text.ts';
import { amountsOf, type Calculator, type Cell, type Situation } from '../../calculators/calculator.ts';
import night from '../../calculators/questions/night.ts';
import outage from '../../calculators/questions/outage.ts';
import season from '../../calculators/questions/season.ts';
import tonight from '../../calculators/questions/tonight.ts';
import warmUp from '../../calculators/questions/warm-up.ts';
import ways from '../../calculators/questions/ways.ts';
import { codesOf } from '../support/answers.ts';
import { anyBench, changed, withOthersFrom } from '../support/benches.ts';
import { inventedStation, metricRegion, situation, usRegion } from '../support/situations.ts';

/** Each with as many random benches as it can answer in a second or so. */
const asked: readonly (readonly [id: string, calculator: Calculator, benches: number])[] = [
  ['night', night, 12],
  ['outage', outage, 12],
  ['warm-up', warmUp, 40],
  ['season', season, 3],
  ['ways', ways, 60],
  ['tonight', tonight, 15],
];

const forecasts = fc.constantFrom(
  '',
  'Mon 5/-3, Tue 2/-8',
  '-12/-3, -15/0',
  '18:00 2, 00:00 -9, 06:00 -14',
  '19',
  'cold',
);

const anySituation: fc.Arbitrary<Situation> = fc
  .tuple(anyBench, forecasts, fc.constantFrom(metricRegion, usRegion))
  .map(([bench, forecast, region]) => ({
    bench: changed(bench, { outlook: { forecast } }),
    region,
    station: inventedStation,
  }));

const numbersOf = (cell: Cell): readonly number[] =>
  cell === null ? [] : typeof cell === 'number' ? [cell] : amountsOf(cell).map(({ value }) => value);

describe('every answer through time', () => {
  it.each(asked)('%s: any bench gets numbers, tables and curves as declared', (_, one, numRuns) => {
    fc.assert(
      fc.property(anySituation, (situation) => {
        const { figures, tables = {}, curves = {}, warnings } = one.compute(situation);
        expect(Object.keys(figures)).toEqual(Object.keys(one.figures));
        for (const [name, figure] of Object.entries(figures)) {
          if (figure === null) continue;
          const { value, low = value, high = value } = figure;
          expect([value, low, high].every(Number.isFinite), `${name}: ${low} ≤ ${value} ≤ ${high}`).toBe(
            true,
          );
          expect(low <= value + 1e-9 && value <= high + 1e-9, `${name}: ${low} ≤ ${value} ≤ ${high}`).toBe(
            true,
          );
        }
        const unread = codesOf({ figures, warnings }).includes('care forecast-unreadable');
        expect(Object.keys(tables).sort()).toEqual(unread ? [] : Object.keys(one.tables ?? {}).sort());
        for (const [name, { rows }] of Object.entries(tables)) {
          const columns = Object.keys(one.tables?.[name]?.columns ?? {}).sort();
          expect(rows.length, name).toBeGreaterThan(0);
          for (const row of rows) {
            expect(Object.keys(row).sort(), name).toEqual(columns);
            for (const [column, cell] of Object.entries(row)) {
              expect(numbersOf(cell).every(Number.isFinite), `${name}.${column}`).toBe(true);
              if (cell === null) continue;
              const words = one.tables?.[name]?.columns[column]?.quantity === undefined;
              expect(typeof cell === 'number', `${name}.${column} holds ${words ? 'words' : 'numbers'}`).toBe(
                !words,
              );
            }
          }
        }
        for (const [name, { times, series, clock }] of Object.entries(curves)) {
          expect(clock).toBeGreaterThanOrEqual(0);
          for (const [line, values] of Object.entries(series)) {
            expect(Object.keys(one.curves?.[name]?.series ?? {}), name).toContain(line);
            expect(values, line).toHaveLength(times.length);
            expect(values.every(Number.isFinite), line).toBe(true);
          }
        }
        expect(new Set(warnings.map(({ code }) => code)).size).toBe(warnings.length);
        for (const { text, code } of warnings) {
          expect(
            amountsOf(text).every(({ value }) => Number.isFinite(value)),
            code,
          ).toBe(true);
          expect(sentenceText(text, { system: 'metric', locale: 'en' }), code).toMatch(/\.$/u);
        }
      }),
      { numRuns, endOnFailure: true },
    );
  });

  it.each(asked.filter(([id]) => id !== 'season'))(
    '%s: reads the fields that its answer hangs on, and says so',
    (_, one, numRuns) => {
      fc.assert(
        fc.property(anySituation, anyBench, ({ bench, region, station }, other) => {
          const mixed = withOthersFrom(other, bench, one.reads);
          expect(one.compute({ bench: mixed, region, station })).toEqual(
            one.compute({ bench, region, station }),
          );
        }),
        { numRuns: Math.ceil(numRuns / 2), endOnFailure: true },
      );
    },
  );

  it('season: reads the fields that its answer hangs on, and says so', () => {
    const one = situation();
    const elsewhere = situation({
      identity: { name: 'Another' },
      place: { coldHours: 90_000, houseCovering: 'glass' },
      plants: { kind: 'taxus', rootAge: 'mature' },
      supply: { breaker: 40 },
      outlook: { forecast: 'Mon 5/-3', outageHours: 7200 },
    });
    expect(season.compute(elsewhere)).toEqual(season.compute(one));
  });

  // A warning that no bench raises would guard nobody.
  it.each(asked)('%s: raises each of its warnings on some bench', (id, one, benches) => {
    const source = readFileSync(new URL(`../../calculators/questions/${id}.ts`, import.meta.url), 'utf8');
    const missing = new Set(
      [...source.matchAll(/\b(?:stop|care)\(\s*'([a-z-]+)'/gu)].map(([, code]) => code),
    );
    expect(missing.size).toBeGreaterThan(0);
    const chosen: readonly Situation[] = [
      situation({ outlook: { outageHours: 48 * 3600, forecast: 'cold' }, place: { coldHours: 48 * 3600 } }),
      situation({
        cover: { kind: 'film' },
        control: { sensor: 'pot', setPoint: 2 },
        place: { houseOffset: 1 },
      }),
      situation({ control: { sensor: 'loop', setPoint: 0 }, outlook: { outageHours: 40 * 3600 } }),
      situation({
        mix: { antifreeze: 'none' },
        control: { setPoint: -8 },
        outlook: { outageHours: 60 * 3600 },
      }),
      // Where ordinary days of the coldest month are below freezing, pots stay frozen.
      {
        ...situation({ outlook: { outageHours: 48 * 3600 } }),
        station: {
          ...inventedStation,
          months: inventedStation.months.map(() => ({ meanLow: -9, meanHigh: -3 })),
        },
      },
      situation({
        place: { coldHours: 20 * 3600 },
        control: { sensor: 'loop', setPoint: 4.5 },
        frame: { top: 'film' },
      }),
    ];
    const sample = fc.sample(anySituation, { numRuns: 4 * benches, seed: 1125 });
    for (const bench of [...chosen, ...sample]) {
      for (const { code } of one.compute(bench).warnings) missing.delete(code);
      if (missing.size === 0) break;
    }
    expect([...missing]).toEqual([]);
  });
});

describe('what the answers say of one another', () => {
  it('a forecast that cannot be read gives no figures and says where, what stands there and what may', () => {
    const { figures, warnings } = tonight.compute(situation({ outlook: { forecast: 'Mon 5/-3, Tue warm' } }));
    expect(Object.values(figures).every((figure) => figure === null)).toBe(true);
    expect(warnings.map(({ text }) => sentenceText(text, { system: 'metric', locale: 'en' }))).toEqual([
      'Line 1 of the forecast, “Tue warm”, must be the low of tonight alone, such as “-3”, a high and the low of the night after it, such as “Mon 5/-3”, or an hour and a temperature, such as “18:00 -2”.',
    ]);
  });

  it('bare figures of a forecast are in the units of the region', () => {
    const forecast = { outlook: { forecast: '46/10' } };
    const { figures } = tonight.compute({ ...situation(forecast), region: usRegion });
    const metric = tonight.compute(situation({ outlook: { forecast: '46/10 F' } }));
    expect(figures.lowestOutside?.value).toBe(metric.figures.lowestOutside?.value);
  });

  it('the largest saving comes first, and the first that spares the roots is the headline', () => {
    const { figures, tables } = season.compute(situation({ control: { sensor: 'air', setPoint: 2 } }));
    const money = (tables?.['savings']?.rows ?? []).map((row) => Number(row['money']));
    expect(money).toEqual(money.toSorted((a, b) => b - a));
    expect(money).toContain(figures.largestSaving?.value);
  });
});
