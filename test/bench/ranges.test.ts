import { describe, expect, it } from 'vitest';
import { changed } from '../../calculators/bench/changed.ts';
import { improvements } from '../../calculators/bench/improvements.ts';
import { expectedParameters, priorsOf } from '../../calculators/bench/priors.ts';
import { endsBy, ranged, rangedAll, togetherAt, weightyInputs } from '../../calculators/bench/range.ts';
import { improvementRanges } from '../../calculators/bench/improvement-ranges.ts';
import { sharedWith } from '../../calculators/bench/rest-ranges.ts';
import { ninetieth } from '../../calculators/bench/spread.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import type { Calculator, Situation } from '../../calculators/calculator.ts';
import first from '../../calculators/questions/first.ts';
import heat from '../../calculators/questions/heat.ts';
import outage from '../../calculators/questions/outage.ts';
import settings from '../../calculators/questions/settings.ts';
import ways from '../../calculators/questions/ways.ts';
import { expectNear } from '../support/near.ts';
import { situation } from '../support/situations.ts';

/**
 * Ranges of figures that rest on uncertain inputs. Laws of the book: a straight result of independent normal inputs has
 * the deviation of the root of the sum of squares (JCGM 100:2008, 5.1.2), and the spread of a difference is that of the
 * difference, with what both have in common moved together (5.2).
 */
describe('the range of a result', () => {
  const one = situation();

  it('of a straight line is the root of the sum of the squares', () => {
    const priors = priorsOf(one);
    const { value, low, high } = ranged(one, ({ ground, houseOffset }) => 3 * ground - 4 * houseOffset);
    const half = Math.hypot(
      3 * (priors.ground.high - priors.ground.expected),
      4 * (priors.houseOffset.high - priors.houseOffset.expected),
    );
    expectNear(high - value, half, 1e-9);
    expectNear(value - low, half, 1e-9);
  });

  it('never reaches where the result itself cannot come', () => {
    // A power is never less than none, however far the inputs are moved.
    const { low } = ranged(one, ({ ground, houseOffset, sensorError }) =>
      Math.max(0, 1 - ground / 7 + (houseOffset - 2) * sensorError),
    );
    expect(low).toBeGreaterThanOrEqual(0);
  });

  it('lies as many deviations out as four of five cases go, along what each input does alone', () => {
    const places = togetherAt([
      { by: 3, at: ninetieth },
      { by: -4, at: -ninetieth },
    ]);
    expect(places).not.toBeNull();
    expectNear(Math.hypot(...(places ?? [])), ninetieth, 1e-12);
    expect(togetherAt([{ by: 0, at: ninetieth }])).toBeNull();
    const ends = endsBy(one, ({ ground }) => -ground);
    expect(ends.low?.ground).toBe(priorsOf(one).ground.high);
    expect(endsBy(one, () => 1)).toEqual({ low: null, high: null });
  });
});

describe('what a change saves', () => {
  it.each([{}, { cover: { kind: 'film' } }] as const)(
    'has the range of the difference, narrower than the difference of two ranges: %j',
    (changes) => {
      const one = situation(changes);
      const { saves } = improvementRanges(one);
      const need = (where: Situation) =>
        ranged(where, (parameters) => restOn(where, 'hold-roots', parameters).power);
      const before = need(one);
      for (const id of ['secondLayer', 'floor'] as const) {
        const saved = saves[id];
        if (!saved) throw new Error(id);
        const other = changed(one, improvements[id].changes);
        const after = need(other);
        expectNear(saved.value, before.value - after.value, 0.5, id);
        const apart = before.high - after.low - (before.low - after.high);
        expect(saved.high - saved.low, id).toBeLessThan(0.6 * apart);
        // By every input there is, each moved in both benches at once.
        const shared = sharedWith(one, other);
        const { save } = rangedAll(one, (at) => ({
          save: restOn(one, 'hold-roots', at).power - restOn(other, 'hold-roots', shared(at)).power,
        }));
        const width = save.high - save.low;
        expectNear(saved.low, save.low, 0.1 * width, `${id}, low`);
        expectNear(saved.high, save.high, 0.1 * width, `${id}, high`);
      }
    },
  );

  it('moves what both benches have, and leaves alone what the change replaces', () => {
    const one = situation();
    const other = changed(one, improvements.gaps.changes);
    const moved = { ...expectedParameters(one), houseOffset: 5, bottomGap: 0.015 };
    const there = sharedWith(one, other)(moved);
    expect(there.houseOffset).toBe(5);
    expect(there.bottomGap).toBe(expectedParameters(other).bottomGap);
  });

  it('weighs few inputs, and each of them by more than a hundredth', () => {
    const one = situation();
    expect(weightyInputs(one, ({ ground }) => ({ ground }))).toEqual(['ground']);
  });
});

describe('every headline that rests on uncertain inputs', () => {
  const figures: readonly (readonly [Calculator, readonly string[]])[] = [
    [heat, ['skirt', 'leakage', 'plants', 'edge', 'ground', 'saveCover', 'saveSecondLayer', 'saveFloor']],
    [first, ['needCover', 'needSecondLayer', 'needAll', 'bare', 'cover', 'sensor', 'coverAndSensor', 'all']],
    [ways, ['cable', 'mat', 'lamps']],
    [settings, ['setInPot', 'setInAir', 'setOnLoop', 'loopAboveAir', 'airOnLoopSensor']],
    [outage, ['hoursToRootLimit', 'hoursToRootsFrozen', 'hoursWhenWatered', 'hoursLeft']],
  ];

  it.each(figures)('$id: has a range, with the expected value in it', ({ compute }, names) => {
    const { figures: found } = compute(situation());
    for (const name of names) {
      const { value, low = NaN, high = NaN } = found[name] ?? { value: NaN };
      expect(low, name).toBeLessThan(value);
      expect(high, name).toBeGreaterThan(value);
    }
  });
});
