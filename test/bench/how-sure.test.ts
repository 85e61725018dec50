import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { modelOfReadings } from '../../calculators/bench/calibrate.ts';
import { changed } from '../../calculators/bench/changed.ts';
import { toTheEnd } from '../../calculators/bench/ensemble.ts';
import {
  headlinesOf,
  headlinesTried,
  howSure,
  sureNames,
  type HowSure,
  type SureName,
} from '../../calculators/bench/how-sure.ts';
import { expectedParameters, priorsOf, type Parameters } from '../../calculators/bench/priors.ts';
import type { Situation } from '../../calculators/calculator.ts';
import night from '../../calculators/questions/night.ts';
import watts from '../../calculators/questions/watts.ts';
import { readBenchFile } from '../../content/bench-file.ts';
import { loadRegions } from '../../scripts/content-files.ts';
import { howSureDrawing } from '../../site/drawing/how-sure.ts';
import { root } from '../support/imports.ts';

/**
 * The two ways of telling a range, on both example benches. That the quick way is checked by many trials, and how far
 * they may differ by chance, is the method of JCGM 101:2008, section 8 (from memory).
 */

const regions = loadRegions();

function exampleOf(name: string): Situation {
  const read = readBenchFile(
    readFileSync(join(root, `content/benches/${name}.yaml`), 'utf8'),
    `${name}.yaml`,
    regions,
  );
  if (!read.ok) throw new Error(read.problems.map(({ text }) => text).join('\n'));
  const { region: regionId, station: stationId } = read.bench.place;
  const region = regions.find(({ id }) => id === regionId);
  const station = region?.stations.find(({ id }) => id === stationId);
  if (!region || !station) throw new Error(`${name} stands nowhere`);
  return { bench: read.bench, region, station };
}

const examples = ['first-row', 'north-house'] as const;

function sureOf(situation: Situation): HowSure {
  const headlines = headlinesOf(night.compute(situation).figures, watts.compute(situation).figures);
  if (!headlines) throw new Error('no headlines');
  return toTheEnd(howSure(situation, headlines));
}

const tell = (name: string) => {
  const situation = exampleOf(name);
  return { situation, sure: sureOf(situation) };
};
const told = { 'first-row': tell('first-row'), 'north-house': tell('north-house') } as const;

/** How far the ends of the trial lie beyond those of the quick way, outward counted, in widths of the quick way's range. */
function beyond(example: (typeof examples)[number], name: SureName): { low: number; high: number } {
  const figure = told[example].sure.figures.find((one) => one.name === name);
  if (!figure) throw new Error(name);
  const { allAtOnce, inputByInput } = figure;
  const width = inputByInput.high - inputByInput.low;
  return {
    low: (inputByInput.low - allAtOnce.low) / width,
    high: (allAtOnce.high - inputByInput.high) / width,
  };
}

/**
 * Two standard deviations of a tenth percentile of 200 values, in widths of a normal range: √(0.1 · 0.9 / 200) over a
 * density of 0.1755 is 0.12 standard deviations, of which the range has 2.56.
 */
const byChance = (2 * Math.sqrt((0.1 * 0.9) / 200)) / 0.1755 / 2.563;

describe('how sure the headlines of a cold night are', () => {
  it.each(examples)('%s: low, expected and high are in order, and the shares are shares', (example) => {
    const { figures, tables, members } = told[example].sure;
    expect(members).toBe(200);
    expect(figures.map(({ name }) => name)).toEqual(sureNames);
    for (const { value, allAtOnce, inputByInput } of figures)
      for (const { low, high } of [allAtOnce, inputByInput]) {
        expect(low).toBeLessThan(value);
        expect(high).toBeGreaterThan(value);
      }
    expect(tables.measure.rows.length).toBeGreaterThan(1);
    for (const row of tables.measure.rows)
      for (const name of sureNames) {
        expect(row[name]).toBeGreaterThanOrEqual(0);
        expect(row[name]).toBeLessThanOrEqual(1);
      }
  });

  it.each(
    examples.flatMap((example) =>
      (['lowestRoots', 'energy'] as const).map((name) => [example, name] as const),
    ),
  )('%s, %s: both ways agree, as the figure is nearly a straight line in each input', (example, name) => {
    const { low, high } = beyond(example, name);
    expect(Math.abs(low)).toBeLessThan(byChance);
    expect(Math.abs(high)).toBeLessThan(byChance);
  });

  it('north-house, required: both ways agree, as one input is to blame for nearly all', () => {
    const { low, high } = beyond('north-house', 'required');
    expect(Math.abs(low)).toBeLessThan(byChance);
    expect(Math.abs(high)).toBeLessThan(byChance);
  });

  it('first-row, required: the trial reaches further up, as the cold of the house and the bare sides of the pots work on one another', () => {
    // By as much as chance may make it on 200 members; what tells the reason from chance is below.
    expect(beyond('first-row', 'required').high).toBeGreaterThan(0);
    // The reason itself: both at their bad ends cost more than the two apart.
    const { situation } = told['first-row'];
    const priors = priorsOf(situation);
    const expected = expectedParameters(situation);
    const required = headlinesTried(situation);
    const at = (change: Partial<Parameters>): number => required({ ...expected, ...change }).required;
    const house = { houseOffset: priors.houseOffset.low };
    const sides = { sideShare: priors.sideShare.high };
    const apart = at(house) - at({}) + (at(sides) - at({}));
    expect(at({ ...house, ...sides }) - at({})).toBeGreaterThan(1.1 * apart);
  });

  it('is the same each time', () => {
    const { situation, sure } = told['first-row'];
    expect(sureOf(situation)).toEqual(sure);
  });

  it.each([170, 92])('is drawn within its sheet of %i mm, in both systems of units', (width) => {
    for (const system of ['metric', 'us'] as const) {
      const { marks, height, description } = howSureDrawing({
        sure: told['first-row'].sure,
        manner: { system, locale: 'en' },
        width,
      });
      for (const mark of marks)
        for (const [x, y] of mark.kind === 'line' || mark.kind === 'curve' ? mark.points : [mark.at]) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(width);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(height);
        }
      expect(description).toContain('one by one');
    }
  });

  it('is surer of the power and of the coldest roots after the readings of one mild night', () => {
    const { situation, sure } = told['north-house'];
    const one = changed(situation, { readings: { house: 4, power: 400 } });
    // What a bench as expected reads then, by the model of the readings with nothing unusual in it.
    const { shown } = modelOfReadings(one).at(new Float64Array(30));
    const { under, loop, roots, offset, drift } = shown;
    const read = changed(one, {
      readings: { under, loop, roots, outside: 4 - offset, rootsEarlier: roots - drift },
    });
    const after = sureOf(read);
    for (const name of ['required', 'energy'] as const) {
      const width = ({ figures }: HowSure): number => {
        const { low, high } = figures.find((figure) => figure.name === name)!.allAtOnce;
        return high - low;
      };
      expect(width(after), name).toBeLessThan(0.9 * width(sure));
    }
    const coldest = ({ figures }: HowSure) => figures.find(({ name }) => name === 'lowestRoots')!;
    const [{ allAtOnce: narrow }, { allAtOnce: wide }] = [coldest(after), coldest(sure)];
    expect(narrow.high - narrow.low).toBeLessThan(0.9 * (wide.high - wide.low));
  });
});
