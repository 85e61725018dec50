import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beforeReadings } from '../../calculators/bench/belief.ts';
import { chanceFrom, normalQuantile, shuffled } from '../../calculators/bench/chance.ts';
import { ensemble, latinHypercube, nightHeadlines, toTheEnd } from '../../calculators/bench/ensemble.ts';
import { priorsOf, type Parameters } from '../../calculators/bench/priors.ts';
import { rangedAll } from '../../calculators/bench/range.ts';
import { expectNear, expectPrinted } from '../support/near.ts';
import { situation } from '../support/situations.ts';

describe('chance out of a seed', () => {
  it('is the same for the same seed, and another for another', () => {
    const first = (seed: number): number[] => {
      const chance = chanceFrom(seed);
      return Array.from({ length: 5 }, chance);
    };
    expect(first(7)).toEqual(first(7));
    expect(first(7)).not.toEqual(first(8));
  });

  it('is even: a tenth of ten thousand in each tenth, with a mean of a half', () => {
    const chance = chanceFrom(1125);
    const drawn = Array.from({ length: 10_000 }, chance);
    expectNear(drawn.reduce((sum, one) => sum + one, 0) / drawn.length, 0.5, 0.01);
    for (let tenth = 0; tenth < 10; tenth++) {
      const inside = drawn.filter((one) => Math.floor(one * 10) === tenth).length;
      // Four standard deviations of √(n p q) = 30.
      expectNear(inside, 1000, 120);
    }
  });

  it('shuffles without losing anyone', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 60 }), fc.nat(), (count, seed) => {
        const order = shuffled(count, chanceFrom(seed));
        expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, index) => index));
      }),
    );
  });
});

describe('the quantile of the normal distribution', () => {
  // Tables of the standard normal distribution (NIST/SEMATECH e-Handbook, section 1.3.6.7.1, from memory).
  it.each([
    [0.5, '0.0000'],
    [0.9, '1.2816'],
    [0.95, '1.6449'],
    [0.975, '1.9600'],
    [0.99, '2.3263'],
    [0.999, '3.0902'],
    [0.025, '-1.9600'],
    [0.001, '-3.0902'],
  ])('at %d is %s', (probability, value) => {
    expectPrinted(normalQuantile(probability), value);
  });
});

describe('a Latin hypercube', () => {
  it('uses each strip of each input once, and no two inputs go together', () => {
    const rows = latinHypercube(200, 6, 3);
    const strip = (z: number): number => rows.filter((row) => (row[0] ?? NaN) <= z).length;
    for (let input = 0; input < 6; input++) {
      const sorted = rows.map((row) => row[input] ?? NaN).toSorted((a, b) => a - b);
      sorted.forEach((z, rank) => {
        expect(z).toBeGreaterThan(rank === 0 ? -Infinity : normalQuantile(rank / 200) - 1e-9);
        expect(z).toBeLessThan(rank === 199 ? Infinity : normalQuantile((rank + 1) / 200) + 1e-9);
      });
      for (let other = 0; other < input; other++) {
        const product = rows.reduce((sum, row) => sum + (row[input] ?? 0) * (row[other] ?? 0), 0) / 200;
        // The correlation of 200 shuffled pairs has a standard deviation of 0.07.
        expectNear(product, 0, 0.28);
      }
    }
    expect(strip(0)).toBe(100);
  });
});

describe('an ensemble', () => {
  it('of an input itself gives back the range that the input has', () => {
    const one = situation();
    const priors = priorsOf(one);
    const { figures } = toTheEnd(
      ensemble(one, ({ houseOffset, mediumConductivity }: Parameters) => ({
        houseOffset,
        mediumConductivity,
      })),
    );
    for (const id of ['houseOffset', 'mediumConductivity'] as const) {
      const width = priors[id].high - priors[id].low;
      expectNear(figures[id].low, priors[id].low, 0.02 * width);
      expectNear(figures[id].middle, priors[id].expected, 0.02 * width);
      expectNear(figures[id].high, priors[id].high, 0.02 * width);
      expect(figures[id].blame[0]).toMatchObject({ id });
      expectNear(figures[id].blame[0]?.share ?? NaN, 1, 1e-9);
    }
  });

  it('is the same twice, tells its progress, and may be stopped', () => {
    const one = situation();
    const run = () => toTheEnd(ensemble(one, nightHeadlines(one), { members: 30 }));
    expect(run()).toEqual(run());
    const slow = ensemble(one, nightHeadlines(one), { members: 30 });
    expect(slow.next()).toEqual({ done: false, value: { done: 1, of: 30 } });
    expect(slow.next()).toEqual({ done: false, value: { done: 2, of: 30 } });
    slow.return(undefined as never);
  });

  it('of the cold night lies where moving one input at a time says, within a third of the range', () => {
    // The quick rule takes every input alone; the ensemble takes them together, with the noise of 200 members.
    for (const changes of [
      {},
      { cover: { kind: 'film' } },
      { control: { sensor: 'air', setPoint: 2 } },
    ] as const) {
      const one = situation(changes);
      const quick = rangedAll(one, nightHeadlines(one));
      const { figures } = toTheEnd(ensemble(one, nightHeadlines(one)));
      for (const name of ['lowestRoots', 'energy'] as const) {
        const width = quick[name].high - quick[name].low;
        expectNear(figures[name].expected, quick[name].value, 1e-9);
        expectNear(figures[name].low, quick[name].low, width / 3, `${name}, low`);
        expectNear(figures[name].high, quick[name].high, width / 3, `${name}, high`);
        expect(figures[name].blame[0]?.id).toBe(quick[name].blame[0]?.id);
      }
    }
  });

  it('narrows with what is believed of the inputs', () => {
    const one = situation();
    const before = beforeReadings(one);
    const sure = { ...before, covariance: before.covariance.map((share) => share / 16) };
    const wide = toTheEnd(ensemble(one, nightHeadlines(one), { members: 80 })).figures.energy;
    const narrow = toTheEnd(ensemble(one, nightHeadlines(one), { members: 80, belief: sure })).figures.energy;
    expect(narrow.high - narrow.low).toBeLessThan(0.5 * (wide.high - wide.low));
  });
});
