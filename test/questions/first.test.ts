import { describe, expect, it } from 'vitest';
import first from '../../calculators/questions/first.ts';
import heat from '../../calculators/questions/heat.ts';
import watts from '../../calculators/questions/watts.ts';
import type { BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { situation } from '../support/situations.ts';

const covered: BenchChanges = { cover: { kind: 'film' } };

describe('what to change first', () => {
  const closings = ['needCover', 'needGaps', 'needSecondLayer', 'needFloor'] as const;
  const figures = (changes: BenchChanges = {}) => first.compute(situation(changes)).figures;

  it('a change that saves watts leaves as much less to bring', () => {
    const where = situation(covered);
    const needed = watts.compute(where).figures.required?.value ?? NaN;
    const saved = heat.compute(where).figures;
    const after = first.compute(where).figures;
    expectNear(needed - (saved.saveGaps?.value ?? NaN), after.needGaps?.value ?? NaN, 0.5);
    expectNear(needed - (saved.saveSecondLayer?.value ?? NaN), after.needSecondLayer?.value ?? NaN, 0.5);
  });

  it('a bench that has a cover keeps it: the power needed is the same', () => {
    const where = situation(covered);
    const { required } = watts.compute(where).figures;
    const { needCover } = first.compute(where).figures;
    expectNear(needCover?.value ?? NaN, required?.value ?? NaN, 1e-6);
  });

  it('all changes together never need more than the cover and the gaps alone', () => {
    const { needAll, ...others } = figures();
    for (const one of closings.slice(0, 2)) {
      const alone = others[one];
      if (alone) expect(needAll?.value).toBeLessThan(alone.value);
    }
  });

  it('the coldest roots never get colder with a cover, a sensor in a pot or more watts', () => {
    for (const changes of [{}, covered, { control: { sensor: 'pot', setPoint: 4 } }] as BenchChanges[]) {
      const { bare, cover, sensor, moreWatts, coverAndSensor, all } = figures(changes);
      const base = bare?.value ?? NaN;
      for (const one of [cover, sensor, moreWatts]) expect(one?.value).toBeGreaterThanOrEqual(base - 0.01);
      expect(coverAndSensor?.value).toBeGreaterThanOrEqual(
        Math.max(cover?.value ?? NaN, sensor?.value ?? NaN),
      );
      expect(all?.value).toBeGreaterThanOrEqual(coverAndSensor?.value ?? NaN);
    }
  });

  it('does not hang on what the bench has already of what is compared', () => {
    const set = { control: { sensor: 'loop', setPoint: 4.5 } } as const;
    const one = figures(set);
    const other = figures({ ...set, ...covered });
    expectNear(one.bare?.value ?? NaN, other.bare?.value ?? NaN, 1e-6);
    expectNear(one.cover?.value ?? NaN, other.cover?.value ?? NaN, 1e-6);
  });
});
