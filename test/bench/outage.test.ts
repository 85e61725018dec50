import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  holdOver,
  inputsOfOutage,
  outageCourse,
  outageHorizon,
  timeLeft,
  timeLeftRange,
  type CutSoFar,
  type HoldOver,
} from '../../calculators/bench/outage.ts';
import { expectedParameters } from '../../calculators/bench/priors.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import { firstAt } from '../../calculators/bench/through.ts';
import { warmUp } from '../../calculators/bench/warm-up.ts';
import type { Situation } from '../../calculators/calculator.ts';
import outage from '../../calculators/questions/outage.ts';
import { anyBench, changed, type BenchChanges } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const hour = 3600;

const at = (bench: Situation['bench']): Situation => ({
  bench,
  region: metricRegion,
  station: inventedStation,
});

const held = (one: Situation, outside: number, more: { latent?: boolean } = {}): HoldOver =>
  holdOver({ situation: one, parameters: expectedParameters(one), outside, ...more });

/** A limit that is not reached counts as reached at the horizon. */
const hours = (value: number | null): number => (value ?? outageHorizon) / hour;

describe('a power cut', () => {
  it('gives less time the colder it is outside, to every limit, whatever the bench', () => {
    fc.assert(
      fc.property(
        anyBench,
        fc.double({ min: -30, max: 0, noNaN: true }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        (bench, outside, colder) => {
          const [mild, hard] = [held(at(bench), outside), held(at(bench), outside - colder)];
          for (const limit of ['roots', 'rootsFrozen', 'loopFreezing', 'loopSolid'] as const)
            expect(hours(hard[limit])).toBeLessThanOrEqual(hours(mild[limit]) + 0.02);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('comes to its limits in their order: a layer is frozen through before it is colder than that; slush before stiff', () => {
    const { roots, rootsFrozen, loopFreezing, loopSolid } = held(situation({ mix: { share: 0.2 } }), -25);
    expect(hours(rootsFrozen)).toBeLessThan(hours(roots));
    expect(hours(loopFreezing)).toBeLessThan(hours(loopSolid));
    expect(hours(loopSolid)).toBeLessThan(outageHorizon / hour);
  });

  it('lasts longer for wetter pots, whatever else the bench is', () => {
    // With the conductivity of the medium held: water also carries heat to the coldest layer, which is another matter.
    fc.assert(
      fc.property(anyBench, fc.double({ min: 0, max: 0.9, noNaN: true }), (bench, moisture) => {
        const frozen = (share: number): number => {
          const one = at(
            changed(bench, { pots: { moisture: share }, control: { sensor: 'loop', setPoint: 4 } }),
          );
          const parameters = { ...expectedParameters(one), mediumConductivity: 0.4 };
          return hours(
            holdOver({ situation: one, parameters, outside: -12, limits: ['rootsFrozen'] }).rootsFrozen,
          );
        };
        expect(frozen(moisture + 0.1)).toBeGreaterThanOrEqual(frozen(moisture) - 0.02);
      }),
      { numRuns: 30 },
    );
  });

  it('lasts longer under a cover, and owes most of its time to the water that freezes', () => {
    const bare = held(situation(), -12);
    expect(hours(held(situation({ cover: { kind: 'film' } }), -12).roots)).toBeGreaterThan(hours(bare.roots));
    expect(hours(held(situation(), -12, { latent: false }).roots)).toBeLessThan(0.3 * hours(bare.roots));
  });

  it('says that a limit is not reached where the bench comes to rest above it', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const one = at(bench);
        const rest = restOn(one, 'no-heat', expectedParameters(one), -3);
        const { roots } = held(one, -3);
        if (rest.coldestRoots > bench.plants.lowestRootTemperature) expect(roots).toBeNull();
      }),
      { numRuns: 40 },
    );
  });

  it('freezes pots in about the time of one lump that gives up its water (physics of the textbook)', () => {
    // One layer of air between, all else alike: t = m L / (G ΔT), with G from the run itself while the pots freeze.
    const one = situation({ skirt: { material: 'none' }, frame: { top: 'mesh' } });
    const { course, body } = outageCourse({
      situation: one,
      parameters: expectedParameters(one),
      outside: -12,
      until: 60 * hour,
    });
    const frozenAt = (level: number): number =>
      course.times[
        course.times.findIndex((_, index) =>
          body.roots.every((node) => (course.temperatures[node]?.[index] ?? 0) < level),
        )
      ] ?? NaN;
    const [begins, ends] = [frozenAt(0), frozenAt(-0.49)];
    expect(ends).toBeGreaterThan(begins);
    // Latent heat of all water on the bench: 0.675 × 0.7 of the volume of the medium, 333.4 kJ/kg (IAPWS, CRC).
    const volume = 450 * (Math.PI / 4) * 0.12 ** 2 * 0.11 * 0.78;
    const latent = volume * 0.675 * 0.7 * 1000 * 333_400;
    const mean = latent / (ends - begins);
    // Over 7.2 m² with some 10 K between pots and house: 3 to 12 W/(m²·K) from open pots, films of either side.
    expect(mean / (7.2 * 9.75)).toBeGreaterThan(3);
    // Wet bases give vapour besides: at −5 °C six tenths of what they give by convection (Lewis relation), some 3 W/(m²·K).
    expect(mean / (7.2 * 9.75)).toBeLessThan(15);
  });
});

describe('a warm-up', () => {
  const warm = (changes: BenchChanges, cut: number, during: number, after: number) => {
    const one = situation(changes);
    return warmUp(one, expectedParameters(one), { cut: cut * hour, during, after });
  };

  it('takes longer after a longer cut, and in colder weather', () => {
    const pot: BenchChanges = { control: { sensor: 'pot', setPoint: 3 }, cover: { kind: 'film' } };
    const short = warm(pot, 10, -12, 4);
    const long = warm(pot, 30, -12, 4);
    const cold = warm(pot, 10, -12, 1);
    expect(hours(long.thawed)).toBeGreaterThan(hours(short.thawed));
    expect(hours(cold.thawed)).toBeGreaterThan(hours(short.thawed));
    expect(long.coldestBefore).toBeLessThan(short.coldestBefore);
  });

  it('is over at once where nothing had cooled', () => {
    const mild = warm({ control: { sensor: 'loop', setPoint: 4.5 } }, 1, 8, 8);
    expectNear(mild.thawed ?? NaN, 0, 1e-9);
    expectNear(mild.setPoint ?? NaN, 0, 1e-9);
  });

  it('warms a loop in the first hour by what its heat capacity takes, less what it loses', () => {
    // 608 W, of which the cable's own share reaches the fluid, into some 270 kJ/K: 8 K in an hour without any loss.
    const { firstHour } = warm({ control: { sensor: 'pot', setPoint: 10 } }, 12, -6, -6);
    expect(firstHour).toBeGreaterThan(2.5);
    expect(firstHour).toBeLessThan(8);
  });
});

describe('in the middle of a power cut', () => {
  const one = situation({ cover: { kind: 'film' } });
  const parameters = expectedParameters(one);
  const cut: CutSoFar = { outside: -16, since: null, pot: null };
  const left = (more: Partial<CutSoFar>): number => timeLeft(one, parameters, { ...cut, ...more }).roots;
  const whole = left({});
  const { body, course } = outageCourse({ situation: one, parameters, outside: -16 });
  const pot = course.temperatures[body.roots[1] ?? NaN] ?? new Float64Array();

  it('what is left and what is gone are the whole, as long as nothing is read', () => {
    expectNear(whole, held(one, -16).roots ?? NaN, 1e-6);
    for (const gone of [1, 4, 7]) expectNear(left({ since: gone * hour }) + gone * hour, whole, 1e-6);
    expect(left({ since: 119 * hour })).toBe(0);
  });

  it('a pot that reads as the model’s pot does then leaves as much as the hours say', () => {
    // Where a pot cools fast its reading tells the hour; two kelvins of it are read within three quarters of an hour or so.
    for (const level of [-3.5, -4.5].filter((one) => one < (pot[0] ?? NaN))) {
      const gone = firstAt(course.times, pot, level, 'falling') ?? NaN;
      expectNear(left({ pot: level }), Math.max(0, whole - gone), 1.5 * hour, `${level} °C`);
    }
  });

  it('a pot that freezes tells little, and the hours pick the moment in it', () => {
    const early = left({ pot: -0.1, since: hour });
    const late = left({ pot: -0.1, since: 0.8 * whole });
    expect(early).toBeGreaterThan(late);
    expectNear(early - late, 0.8 * whole - hour, 0.5 * whole);
    const inputs = inputsOfOutage(one, -16);
    const range = timeLeftRange(one, { ...cut, pot: -0.1 }, inputs).roots;
    expect(range.high - range.low).toBeGreaterThan(0.3 * whole);
  });

  it('a warmer pot means more time, and one at the limit none, whatever the bench', () => {
    fc.assert(
      fc.property(
        anyBench,
        fc.double({ min: -6, max: 8, noNaN: true }),
        fc.double({ min: 0.5, max: 6, noNaN: true }),
        (bench, level, by) => {
          const where = at(bench);
          const at_ = (pot: number) =>
            timeLeft(where, expectedParameters(where), { outside: -14, since: null, pot }).roots;
          expect(at_(level + by)).toBeGreaterThanOrEqual(at_(level) - 60);
          expect(at_(bench.plants.lowestRootTemperature)).toBe(0);
        },
      ),
      { numRuns: 15 },
    );
  });

  it('is the night that the bench is built for, with the power just gone, where nothing is filled in', () => {
    const { hoursLeft, hoursToRootLimit } = outage.compute(one).figures;
    expect(hoursLeft).toEqual(hoursToRootLimit);
    const mild = outage.compute(situation({ cover: { kind: 'film' }, outlook: { outsideNow: -4 } })).figures;
    expect(mild.hoursLeft?.value).toBeGreaterThan(hoursLeft?.value ?? NaN);
    expect(mild.hoursToRootLimit).toEqual(hoursToRootLimit);
  });
});
