import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airConductance,
  cableSplit,
  contactConductance,
  outputLine,
  ratedPower,
  sheathAtCrossing,
  sheathInFreeAir,
  sheathTemperature,
  type CableLabel,
  type CableOnPipe,
} from '../calculators/electric/cable.ts';
import { pipes } from '../calculators/tables/pipes.ts';
import { expectNear } from './support/near.ts';

const constant: CableLabel = { kind: 'constant', powerPerLength: 16, slope: 0 };
const regulating: CableLabel = { kind: 'self-regulating', powerPerLength: 16, slope: 0.25 };

const onPipe: CableOnPipe = {
  pipe: pipes['drain-110'],
  cableDiameter: 0.006,
  contact: 150,
  spreading: 3,
  insideFilm: 100,
  fluid: 10,
  air: 0,
};

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyLabel: fc.Arbitrary<CableLabel> = fc.record({
  kind: fc.constantFrom('constant', 'self-regulating'),
  powerPerLength: between(1, 60),
  slope: between(0, 2),
});
const anyPlace: fc.Arbitrary<CableOnPipe> = fc.record({
  pipe: fc.constantFrom(...Object.values(pipes)),
  cableDiameter: between(0.002, 0.025),
  contact: between(25, 300),
  spreading: between(1, 6),
  insideFilm: between(5, 300),
  fluid: between(-30, 60),
  air: between(-45, 40),
  emissivity: between(0.05, 1),
});

describe('the output of a cable', () => {
  it('is power per length times length', () => {
    expect(ratedPower({ powerPerLength: 16, length: 38 })).toBe(608);
  });

  it('is the same at every temperature for a constant cable', () => {
    for (const t of [-30, 0, 10, 60]) expect(outputLine(constant, t)).toBe(16);
  });

  it('is the label’s at 10 °C, falls by the slope and stops at nothing for a self-regulating one', () => {
    expect(outputLine(regulating, 10)).toBe(16);
    expect(outputLine(regulating, 20)).toBe(13.5);
    expect(outputLine(regulating, 0)).toBe(18.5);
    expect(outputLine(regulating, 90)).toBe(0);
  });
});

describe('the heat of a cable on a pipe', () => {
  it('goes nowhere but to the fluid and to the air', () => {
    fc.assert(
      fc.property(anyLabel, anyPlace, (label, place) => {
        const { sheath, powerPerLength, toLoop, toAir } = sheathTemperature(label, place);
        const given = toLoop * (sheath - place.fluid) + toAir * (sheath - place.air);
        expectNear(given, powerPerLength, 1e-3 * (toLoop + toAir) + 1e-9);
        expect(powerPerLength).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 500 },
    );
  });

  it('settles: its air film is the one at the sheath temperature that it gives back', () => {
    fc.assert(
      fc.property(anyLabel, anyPlace, (label, place) => {
        const { sheath, toAir } = sheathTemperature(label, place);
        const perimeter = (Math.PI - 1) * place.cableDiameter;
        const film = airConductance(
          place.cableDiameter,
          perimeter,
          place.emissivity ?? 0.9,
          sheath,
          place.air,
        );
        // Where sheath and air are alike the film is steep, but then it carries nothing.
        fc.pre(Math.abs(sheath - place.air) > 0.5);
        expectNear(toAir, film, 1e-3 * film);
      }),
      { numRuns: 500 },
    );
  });

  it('is in series: contact, wall and film, each worked out apart', () => {
    const contact = 1 / (150 * 0.006);
    const wall = 0.0032 / (0.17 * 0.018);
    const film = 1 / (100 * 0.018);
    expectNear(1 / contactConductance(onPipe), contact + wall + film, 1e-12);
  });

  it('warms the pipe under the cable by what passes wall and film', () => {
    const { sheath, pipeUnderCable, toLoop } = sheathTemperature(constant, onPipe);
    const wallAndFilm = 0.0032 / (0.17 * 0.018) + 1 / (100 * 0.018);
    expectNear((pipeUnderCable - onPipe.fluid) / wallAndFilm, toLoop * (sheath - onPipe.fluid), 1e-9);
  });

  it('the pipe under the cable is cooler than the sheath and warmer than the fluid', () => {
    fc.assert(
      fc.property(anyLabel, anyPlace, (label, place) => {
        const { sheath, pipeUnderCable } = sheathTemperature(label, place);
        expect(pipeUnderCable).toBeGreaterThanOrEqual(Math.min(sheath, place.fluid) - 1e-9);
        expect(pipeUnderCable).toBeLessThanOrEqual(Math.max(sheath, place.fluid) + 1e-9);
      }),
    );
  });

  it('reaches the fluid better under foil tape, in a metal-thin wall, with a lively fluid', () => {
    const share = (change: Partial<CableOnPipe>): number =>
      sheathTemperature(constant, { ...onPipe, ...change }).fluidShare;
    expect(share({ contact: 60 })).toBeLessThan(share({}));
    expect(share({ contact: 300 })).toBeGreaterThan(share({}));
    expect(share({ insideFilm: 5 })).toBeLessThan(share({}));
    expect(share({ spreading: 5 })).toBeGreaterThan(share({}));
  });

  it('warms the sheath more the more power there is, and most in an empty loop', () => {
    const sheath = (power: number, insideFilm = 100): number =>
      sheathTemperature({ ...constant, powerPerLength: power }, { ...onPipe, insideFilm }).sheath;
    expect(sheath(20)).toBeGreaterThan(sheath(16));
    expect(sheath(16, 5)).toBeGreaterThan(sheath(16) + 10);
  });

  it('splits alike whether the network or the sheath is asked, and without power by a common 16 W/m', () => {
    const { toLoop, toAir } = sheathTemperature(constant, onPipe);
    const split = cableSplit({ ...onPipe, powerPerLength: 16 });
    expectNear(split.toLoop, toLoop, 1e-12);
    expectNear(split.toAir, toAir, 1e-9);
    expect(cableSplit(onPipe)).toEqual(split);
  });

  it('a self-regulating cable gives what its line says of a metal pipe on which its sheath would be as warm', () => {
    // The line was drawn on metal, which takes 2 W/(m·K) from the sheath (the guide's assumption): found by halving.
    for (const fluid of [-20, 0, 10, 40]) {
      const { sheath, powerPerLength } = sheathTemperature(regulating, { ...onPipe, fluid });
      let [low, high] = [-100, 100];
      for (let i = 0; i < 60; i++) {
        const metal = (low + high) / 2;
        if (metal + outputLine(regulating, metal) / 2 < sheath) low = metal;
        else high = metal;
      }
      expectNear(powerPerLength, outputLine(regulating, low), 0.01, `power at ${fluid} °C`);
    }
  });

  it('follows the table of a sheet: through its points, on straight lines between, and on the line of two points', () => {
    const points = [
      [-20, 25],
      [0, 20],
      [10, 16],
      [40, 6],
    ] as const;
    const label: CableLabel = { ...regulating, table: points };
    for (const [t, output] of points) expectNear(outputLine(label, t), output, 1e-12);
    expectNear(outputLine(label, 5), 18, 1e-12);
    expectNear(outputLine(label, -30), 27.5, 1e-12);
    expect(outputLine(label, 80)).toBe(0);
    const two: CableLabel = {
      ...regulating,
      table: [
        [-10, 21],
        [30, 11],
      ],
    };
    fc.assert(
      fc.property(anyPlace, between(-60, 90), (place, t) => {
        expectNear(outputLine(two, t), outputLine(regulating, t), 1e-9);
        const [one, other] = [sheathTemperature(two, place), sheathTemperature(regulating, place)];
        expectNear(one.powerPerLength, other.powerPerLength, 1e-9);
        // What it gives is what the table says of a metal pipe on which the sheath would be as warm, or hindered no more.
        const { powerPerLength, sheath } = sheathTemperature(label, place);
        const onMetal = sheath - powerPerLength / 2;
        const { toLoop, toAir } = sheathTemperature(label, place);
        const surroundings = (toLoop * place.fluid + toAir * place.air) / (toLoop + toAir);
        expectNear(powerPerLength, outputLine(label, Math.max(onMetal, surroundings)), 0.02);
      }),
    );
  });

  it('a self-regulating cable gives less on plastic than its output line says of metal, never more', () => {
    fc.assert(
      fc.property(between(1, 60), between(0.01, 2), anyPlace, (powerPerLength, slope, place) => {
        const label: CableLabel = { kind: 'self-regulating', powerPerLength, slope };
        const { powerPerLength: given, toLoop, toAir } = sheathTemperature(label, place);
        const surroundings = (toLoop * place.fluid + toAir * place.air) / (toLoop + toAir);
        expect(given).toBeLessThanOrEqual(outputLine(label, surroundings) + 1e-9);
      }),
    );
  });
});

describe('a cable off the pipe', () => {
  it('is hotter in free air than on the pipe, and hottest where it crosses another', () => {
    fc.assert(
      fc.property(between(3, 60), between(0.003, 0.015), between(-30, 20), (power, cableDiameter, air) => {
        const label: CableLabel = { ...constant, powerPerLength: power };
        const place = { ...onPipe, cableDiameter, air, fluid: air };
        const on = sheathTemperature(label, place).sheath;
        const free = sheathInFreeAir(label, { cableDiameter, air });
        const crossing = sheathAtCrossing(label, { cableDiameter, air });
        expect(free).toBeGreaterThan(on);
        expect(crossing).toBeGreaterThan(free);
      }),
    );
  });

  it('warms in free air as Morgan’s correlation of 1975 has it, within a sixth', () => {
    // Nu = 0.850 Ra^0.188 for Ra from 100 to 10 000 (as in the open library ht), air at about 25 °C by Çengel A-15.
    for (const [power, cableDiameter] of [
      [10, 0.006],
      [16, 0.006],
      [16, 0.01],
      [24, 0.01],
    ] as const) {
      let sheath = 60;
      for (let i = 0; i < 100; i++) {
        const difference = Math.max(1, sheath);
        const ra = ((9.81 * difference * cableDiameter ** 3) / (298 * 1.562e-5 ** 2)) * 0.7296;
        expect(ra).toBeGreaterThan(50);
        expect(ra).toBeLessThan(10_000);
        const convection = (0.85 * ra ** 0.188 * 0.02551) / cableDiameter;
        const radiation =
          (0.9 * 5.670374e-8 * ((sheath + 273.15) ** 4 - 273.15 ** 4)) / Math.max(1e-9, sheath);
        sheath = power / (Math.PI * cableDiameter * (convection + radiation));
      }
      const ours = sheathInFreeAir({ ...constant, powerPerLength: power }, { cableDiameter, air: 0 });
      expectNear(ours, sheath, sheath / 6, `${power} W/m, ${cableDiameter} m`);
    }
  });

  it('saves itself where it regulates itself', () => {
    const place = { cableDiameter: 0.006, air: 0 };
    expect(sheathAtCrossing(regulating, place)).toBeLessThan(sheathAtCrossing(constant, place));
  });

  it('stays finite for every cable that a bench may have', () => {
    fc.assert(
      fc.property(anyLabel, between(0.002, 0.025), between(-45, 60), (label, cableDiameter, air) => {
        for (const temperature of [sheathInFreeAir, sheathAtCrossing].map((law) =>
          law(label, { cableDiameter, air }),
        )) {
          expect(Number.isFinite(temperature)).toBe(true);
          expect(temperature).toBeGreaterThanOrEqual(air - 1e-9);
        }
      }),
    );
  });
});
