import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changed as changedBench } from '../../calculators/bench/changed.ts';
import { nightOf } from '../../calculators/bench/night.ts';
import { expectedParameters } from '../../calculators/bench/priors.ts';
import { restOn } from '../../calculators/bench/steady.ts';
import type { Situation } from '../../calculators/calculator.ts';
import loop from '../../calculators/questions/loop.ts';
import settings from '../../calculators/questions/settings.ts';
import sheath from '../../calculators/questions/sheath.ts';
import { codesOf, valueOf } from '../support/answers.ts';
import { anyBench, type BenchChanges, withOthersFrom } from '../support/benches.ts';
import { expectNear } from '../support/near.ts';
import { inventedStation, metricRegion, situation } from '../support/situations.ts';

const answer = (changes: BenchChanges = {}) => settings.compute(situation(changes));

/** A bench on a night that its cable holds, with all that the guide asks of sensor and alarms, and no more cable than its pipe bears. */
const mild: BenchChanges = {
  place: { designNight: 'own', ownLowest: -4 },
  control: { differential: 1 },
  cable: { length: 20 },
};
const asked = answer({ ...mild, place: { ...mild.place, dayOffset: 2 } }).figures;
const set: BenchChanges = {
  ...mild,
  // A house that the sun hardly warms, so that no sunny day trips the limit.
  place: { ...mild.place, dayOffset: 2 },
  control: {
    sensor: 'pot',
    setPoint: valueOf(asked.setInPot),
    differential: 1,
    alarmLow: valueOf(asked.alarmLow),
    alarmHigh: valueOf(asked.alarmHigh),
  },
};

/** The coldest roots with a thermostat in this place and at this set point, on that night [°C]. */
const coldestWith = (
  where: Situation,
  sensor: 'loop' | 'air' | 'pot',
  setPoint: number,
  outside: number,
): number => {
  const one = changedBench(where, { control: { sensor, setPoint } });
  return restOn(one, 'thermostat', expectedParameters(one), outside).coldestRoots;
};

describe('settings', () => {
  it('puts the sensor where its reading and the roots’ limit belong together', () => {
    const where = situation();
    const { figures } = settings.compute(where);
    const { lowestRootTemperature: limit } = where.bench.plants;
    const outside = valueOf(figures.outside);
    // The night was found by driving the roots; driving each sensor to its reading must bring the roots to the limit.
    for (const [sensor, reads] of [
      ['loop', figures.loopAtLimit],
      ['air', figures.airAtLimit],
      ['pot', figures.potAtLimit],
    ] as const)
      expectNear(coldestWith(where, sensor, valueOf(reads), outside), limit, 0.02, sensor);
  });

  it('holds the roots on that night, and on any milder one, with each of its set points', () => {
    const where = situation();
    const { figures } = settings.compute(where);
    const { lowestRootTemperature: limit } = where.bench.plants;
    for (const warmer of [0, 2, 5, 10])
      for (const [sensor, point] of [
        ['loop', figures.setOnLoop],
        ['air', figures.setInAir],
        ['pot', figures.setInPot],
      ] as const) {
        // The cable comes on only half a differential below, and the thermostat may read a degree too warm.
        const least = valueOf(point) - where.bench.control.differential / 2 - 1;
        const roots = coldestWith(where, sensor, least, valueOf(figures.outside) + warmer);
        expect(roots, `${sensor}, ${warmer} K milder`).toBeGreaterThan(limit - 0.02);
      }
  });

  it('lets the air freeze with the sensor on the loop at 4 to 5 °C, the common setting', () => {
    const { figures } = answer({ control: { sensor: 'loop', setPoint: 4.5 } });
    expect(valueOf(figures.airWhenLoopRests)).toBeLessThan(0);
    expectNear(valueOf(figures.airWhenLoopRests), 4.5 - valueOf(figures.loopAboveAir), 1e-9);
    expect(codesOf(answer({ control: { sensor: 'loop', setPoint: 4.5 } }))).toContain(
      'care loop-sensor-rests',
    );
  });

  it('tells what a sensor on the loop comes to on a hard night, wherever the sensor is now', () => {
    const where = situation({ control: { sensor: 'pot', setPoint: 2 } });
    const { figures } = settings.compute(where);
    const roots = coldestWith(where, 'loop', 4.5, valueOf(figures.outside));
    expectNear(valueOf(figures.rootsOnLoopSensor), roots, 1e-6);
    expect(roots).toBeLessThan(where.bench.plants.lowestRootTemperature);
    // The air is between the house and the loop at its set point.
    const house = valueOf(figures.outside) + where.bench.place.houseOffset;
    expect(valueOf(figures.airOnLoopSensor)).toBeGreaterThan(house);
    expect(valueOf(figures.airOnLoopSensor)).toBeLessThan(4.5);
  });

  // Common practice, from memory: root zone 2 to 5 °C, alarm at 1 °C or below, never above 7 °C in midwinter. Growers set
  // this under a cover; the tops of pots that see a cold roof are further below the middle of the pot.
  it('comes to what growers set, for tender young roots', () => {
    const { figures } = answer({
      plants: { lowestRootTemperature: -1 },
      control: { differential: 1 },
      cover: { kind: 'film' },
    });
    const point = valueOf(figures.setInPot);
    expect(point).toBeGreaterThan(1);
    expect(point).toBeLessThan(5);
    expect(valueOf(figures.alarmLow)).toBeLessThanOrEqual(1);
    expectNear(valueOf(figures.differential), 1, 1e-9);
  });

  // By hand: limit −1.5 °C, 1 K for sensor and dial, 1 K for the alarm, half of a differential of 2 K.
  it('adds up its set point as its formula says', () => {
    const { figures } = answer({ control: { differential: 2 } });
    const over = valueOf(figures.potAtLimit) + 1.5;
    expectNear(valueOf(figures.alarmLow), -1.5 + over + 1, 1e-6);
    expectNear(valueOf(figures.setInPot), -1.5 + over + 1 + 1 + 1, 1e-6);
    expectNear(valueOf(figures.setInAir), valueOf(figures.airAtLimit) + 1 + 1, 1e-9);
    expectNear(valueOf(figures.setOnLoop), valueOf(figures.loopAtLimit) + 1 + 1, 1e-9);
  });

  // By hand: 84.296 L of water (EN 1401: 8.4296 L/m) at 999.966 kg/m³ and 4204.92 J/(kg·K) (IAPWS SR6-08) in 14.91 kg of
  // PVC at 900 J/(kg·K) (EN 12524) hold 367.9 kJ/K. 608 W: 4 × 367 900 × 1 ÷ 608 = 2420 s.
  it('switches no faster than the loop can warm and cool', () => {
    const { figures } = answer({
      loop: { length: 10 },
      mix: { antifreeze: 'none' },
      control: { differential: 1 },
      supply: { feederLength: 0 },
    });
    expectNear(valueOf(figures.shortestCycle), 2420, 5);
  });

  it('asks for a wider differential where a strong cable heats a small loop', () => {
    const { figures } = answer({
      loop: { length: 2, pipe: 'schedule40-2in' },
      cable: { length: 60, powerPerLength: 30 },
      mix: { antifreeze: 'none' },
    });
    expect(valueOf(figures.differential)).toBeGreaterThan(1);
  });

  it('works with the night that the full cable holds, where it cannot hold the design night', () => {
    const { figures } = answer({ place: { designNight: 'own', ownLowest: -30 } });
    const outside = valueOf(figures.outside);
    expect(outside).toBeGreaterThan(-30);
    const harder = coldestWith(situation(), 'pot', 25, outside - 0.5);
    expect(harder).toBeLessThan(situation().bench.plants.lowestRootTemperature);
    // A milder design night is taken as it is.
    const mild = answer({ place: { designNight: 'own', ownLowest: -2 } });
    expect(valueOf(mild.figures.outside)).toBe(-2);
  });

  // Whoever sets what the guide says must not be rung or cut by it while all is well. A strong cable on little pipe, with its
  // sensor in a pot, stands at its warmest when the frost is over and the pots still thaw; so does a weak one.
  it.each([
    ['the start bench', {}],
    ['a milder night', mild],
    ['more cable on the pipe', { cable: { length: 48 } }],
    ['open slats and no cover', { cover: { kind: 'none' }, frame: { top: 'slats' } }],
  ] as const)('neither rings nor cuts while the pots thaw, or says what to do: %s', (_, changes) => {
    const first = answer(changes).figures;
    const where = situation({
      ...changes,
      control: {
        ...('control' in changes ? changes.control : {}),
        sensor: 'pot',
        setPoint: valueOf(first.setInPot),
      },
    });
    const { figures, warnings } = settings.compute(where);
    const { body, course } = nightOf(where, expectedParameters(where), { control: 'switched' });
    const peak = course.temperatures[body.loop]!.reduce((most, one) => Math.max(most, one), -Infinity);
    // Followed in shorter steps than the answer is.
    expect(valueOf(figures.loopWarmest)).toBeGreaterThan(peak - 0.3);
    const told = warnings.some(({ code }) => code.startsWith('limit-cuts'));
    if (!told) expect(valueOf(figures.alarmHigh)).toBeGreaterThan(peak);
  });

  it('pauses the heat where the thaw would trip the limit, and says that less cable would do as well', () => {
    const before = answer({ control: { sensor: 'pot' } });
    expect(codesOf(before)).toContain('care limit-cuts-in-thaw');
    expect(valueOf(before.figures.loopWarmest)).toBeGreaterThan(valueOf(before.figures.limitThermostat) - 2);
    const most = valueOf(before.figures.mostPipePower);
    const { bench } = situation();
    const length = (most * valueOf(loop.compute(situation()).figures.length)) / bench.cable.powerPerLength;
    const after = answer({ cable: { length }, control: { sensor: 'pot' } });
    expect(codesOf(after).join()).not.toContain('limit-cuts');
    expect(after.figures.loopPause).toBeNull();
  });

  // A straight loop of 6 m has half of the pipe of the U that the start bench has, so that its cable heats each metre twice as
  // much. Whether that is too much, and how much would do, is tried by laying just that much cable.
  it('says when the cable is too much for its pipe, and how much would do', () => {
    const short: BenchChanges = { loop: { run: 'straight' } };
    const before = answer(short);
    expect(codesOf(before)[0]).toMatch(/limit-cuts-hard-nights$/u);
    expect(valueOf(before.figures.loopWarmest)).toBeGreaterThan(valueOf(before.figures.limitThermostat) - 2);
    const most = valueOf(before.figures.mostPipePower);
    const { bench } = situation(short);
    const length = (most * bench.frame.length) / bench.cable.powerPerLength;
    const after = answer({ ...short, cable: { length } });
    expect(codesOf(after).join()).not.toContain('limit-cuts-hard-nights');
    expect(after.figures.mostPipePower).toBeNull();
    // No less than is needed either: the loop then comes to 2 K below the limit on a night that it can hold, or to less where
    // the air is cooler.
    expect(valueOf(after.figures.loopWarmest)).toBeLessThan(valueOf(after.figures.limitThermostat) - 1.9);
    expect(codesOf(answer())).not.toContain('stop limit-cuts-hard-nights');
  });

  // ASHRAE 2001: 29.4 % propylene glycol by volume freezes at −12.7 °C, Melinder 2010 has −12.789 °C. As a concentrate with 7 parts
  // in a hundred of other things that is 31.6 %. By hand: 1 K for sensor and dial, half of 2 K, 1 K in hand.
  it('switches the heat on before the loop can freeze, however weak the concentrate', () => {
    const { figures } = answer({ mix: { share: 0.294 / 0.93 }, control: { differential: 2 } });
    expectNear(valueOf(figures.loopFrost), -12.7 + 1 + 1 + 1, 0.05);
    const water = answer({ mix: { antifreeze: 'none' }, control: { differential: 2 } }).figures;
    expectNear(valueOf(water.loopFrost), 0 + 1 + 1 + 1, 1e-9);
  });

  it('never lets the limit stand higher than cable, pipe or room for expansion bear', () => {
    const where = situation({ loop: { standpipeHeight: 0.45 } });
    const limit = valueOf(settings.compute(where).figures.limitThermostat);
    expect(limit).toBeLessThanOrEqual(sheath.compute(where).figures.limitThermostat!.low!);
    expect(limit).toBeLessThanOrEqual(valueOf(loop.compute(where).figures.fullAt));
    // Drain pipe is good to 60 °C in service (supplier data).
    expect(limit).toBeLessThanOrEqual(60);
  });

  // By hand: the limit, less a degree for its dial, less what the house is above outside at midday.
  it('warns of a sunny day that trips the limit, of the months in which it is needed', () => {
    const { figures } = answer({ place: { dayOffset: 6 } });
    expectNear(valueOf(figures.sunnyTrip), valueOf(figures.limitThermostat) - 1 - 6, 1e-9);
    // Months with nights of 5 °C or colder reach 13 °C by day at this station, and 19 °C on a warm day.
    const tripping = (dayOffset: number) => codesOf(answer({ place: { dayOffset } }));
    const free = valueOf(figures.limitThermostat) - 1 - 19;
    expect(tripping(free + 0.5)).toContain('care limit-trips-in-sun');
    expect(tripping(Math.max(0, free - 0.5))).not.toContain('care limit-trips-in-sun');
  });

  it('has no reading at the limit where the roots never get there', () => {
    const { figures } = answer({ place: { houseKind: 'held', houseMinimum: 6 } });
    expect(figures).toMatchObject({ loopAtLimit: null, airAtLimit: null, potAtLimit: null, setOnLoop: null });
    expect(valueOf(figures.setInPot)).toBeLessThan(6);
  });

  it('warns as far as there is a reason, and no further', () => {
    const of = (control: BenchChanges['control'], more: BenchChanges = {}): string[] =>
      codesOf(answer({ ...set, ...more, control: { ...set.control, ...control } }));
    expect(of({})).toEqual([]);
    expect(of({ setPoint: 0 }, {})).toEqual(['care set-point-low', 'care low-alarm-at-work']);
    // The loop goes higher with it, so that more may come.
    expect(of({ setPoint: 8 })).toContain('care set-point-wakes');
    expect(of({ alarmLow: -2 })).toEqual(['care low-alarm-late']);
    expect(of({ alarmHigh: 40 })).toEqual(['care high-alarm-silent']);
    expect(of({ alarmHigh: 8 })).toEqual(['care high-alarm-at-work']);
    // With the sensor in the air the loop of a stronger cable stays well below the limit, and goes past it when that sticks.
    const inAir: BenchChanges = { ...set, cable: { length: 32 }, control: { ...set.control, sensor: 'air' } };
    const { setInAir, limitThermostat, stuckLoop } = answer(inAir).figures;
    const [limit, stuck] = [valueOf(limitThermostat), valueOf(stuckLoop)];
    expect(limit, 'a bench whose limit is below its stuck loop').toBeLessThan(stuck);
    const behind = { sensor: 'air', setPoint: valueOf(setInAir), alarmHigh: (limit + stuck) / 2 } as const;
    expect(of(behind, { cable: { length: 32 } })).toContain('care high-alarm-behind-limit');
    expect(of({ sensor: 'loop', setPoint: 4.5 })).toEqual(['care loop-sensor-rests']);
    expect(of({ sensor: 'loop', setPoint: 0 }, { mix: { antifreeze: 'none' } })).toEqual([
      'care loop-sensor-rests',
      'care loop-may-freeze',
    ]);
  });

  const figuresOfAny = (bench: Situation['bench']) =>
    settings.compute({ bench, region: metricRegion, station: inventedStation });

  it('gives numbers for any bench that the fields allow, and sentences that end', () => {
    fc.assert(
      fc.property(anyBench, (bench) => {
        const { figures, warnings } = figuresOfAny(bench);
        expect(Object.keys(figures).sort()).toEqual(Object.keys(settings.figures).sort());
        for (const [name, one] of Object.entries(figures))
          if (one) expect(Number.isFinite(one.value), `${name} is ${one.value}`).toBe(true);
        expect(valueOf(figures.setInPot)).toBeGreaterThan(bench.plants.lowestRootTemperature);
        expect(valueOf(figures.loopAboveAir)).toBeGreaterThan(0);
        const { loopWarmest, loopOnHardNight, loopPause, alarmHigh, limitThermostat } = figures;
        // Each a degree above the one before it, or a warning that says why not.
        if (limitThermostat) {
          expect(valueOf(alarmHigh)).toBeLessThanOrEqual(limitThermostat.value - 1 + 1e-9);
          const told = (code: string) => warnings.some((one) => one.code === code);
          const cuts = told('limit-cuts-hard-nights') || told('limit-cuts-in-thaw');
          expect(valueOf(alarmHigh) >= valueOf(loopWarmest) + 1 - 1e-9).toBe(!cuts);
          // What pauses the heat is between the loop of the hard night and the alarm, and is there where it is needed.
          expect(loopPause !== null).toBe(told('limit-cuts-in-thaw'));
          if (loopPause) {
            expect(loopPause.value).toBeGreaterThanOrEqual(valueOf(loopOnHardNight) - 1e-9);
            expect(valueOf(alarmHigh)).toBeGreaterThanOrEqual(loopPause.value + 1 - 1e-9);
          }
        }
        expect(new Set(warnings.map(({ code }) => code)).size).toBe(warnings.length);
        for (const { text } of warnings) expect(text.at(-1)).toMatch(/\.$/u);
      }),
      { numRuns: 60 },
    );
  });

  it('reads the fields that its answer depends on, and says so', () => {
    fc.assert(
      fc.property(anyBench, anyBench, (bench, other) => {
        const mixed = withOthersFrom(other, bench, settings.reads);
        expect(figuresOfAny(mixed)).toEqual(figuresOfAny(bench));
      }),
      { numRuns: 30 },
    );
  });
});
