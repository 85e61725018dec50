import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { enthalpyAt } from '../calculators/bench/enthalpy.ts';
import { mediumVolume } from '../calculators/bench/geometry.ts';
import { rootsHold } from '../calculators/bench/heat-held.ts';
import {
  dampingDepth,
  edgeInsulationSaves,
  floorTransmittance,
  groundByMonth,
  groundTemperature,
  rimConductance,
  year,
  yearlyWave,
  type GroundFloor,
} from '../calculators/laws/ground.ts';
import {
  frozenHeatCapacity,
  frozenConductivity,
  frozenConductivityRatio,
  mediumConductivity,
  mediumDensity,
  mediumEnthalpy,
  mediumFreezes,
  mediumFusionHeat,
  mediumHeatCapacity,
  waterShareOf,
} from '../calculators/properties/medium.ts';
import { porosity, soilConductivity, soilHeatCapacity } from '../calculators/properties/soil.ts';
import { OutOfRange } from '../calculators/range.ts';
import { media, type Medium } from '../calculators/tables/media.ts';
import { soils, type Soil } from '../calculators/tables/soils.ts';
import { changed, startBench } from './support/benches.ts';
import { expectNear } from './support/near.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the yearly wave of the ground', () => {
  const wave = fc.record({
    mean: between(-5, 20),
    amplitude: between(1, 20),
    coldest: between(0, year),
  });
  const diffusivity = between(2e-7, 1.5e-6);

  it('is found again from its own monthly means', () => {
    fc.assert(
      fc.property(wave, (given) => {
        const found = yearlyWave(groundByMonth(given, 0, 5e-7));
        expectNear(found.mean, given.mean, 1e-9);
        expectNear(found.amplitude, given.amplitude, 1e-9);
        const off = Math.abs(found.coldest - given.coldest);
        expectNear(Math.min(off, year - off), 0, 1e-3);
      }),
    );
  });

  it('is coldest when it is said to be, returns after a year, and stays within its swing', () => {
    fc.assert(
      fc.property(wave, between(0, 30), between(0, year), diffusivity, (given, depth, time, alpha) => {
        expectNear(groundTemperature(given, 0, given.coldest, alpha), given.mean - given.amplitude, 1e-9);
        const now = groundTemperature(given, depth, time, alpha);
        expectNear(groundTemperature(given, depth, time + year, alpha), now, 1e-9);
        expect(Math.abs(now - given.mean)).toBeLessThanOrEqual(given.amplitude * (1 + 1e-12));
      }),
    );
  });

  it('at the damping depth swings by 1/e and a radian later', () => {
    const given = { mean: 8, amplitude: 10, coldest: 0 };
    const depth = dampingDepth(6e-7);
    const radian = year / (2 * Math.PI);
    expectNear(groundTemperature(given, depth, radian, 6e-7), 8 - 10 / Math.E, 1e-9);
  });

  it('solves the equation of heat conduction', () => {
    const given = { mean: 8, amplitude: 10, coldest: 1e6 };
    const alpha = 6e-7;
    const [step, moment] = [0.01, 1000];
    for (const [depth, time] of [
      [0.5, 3e6],
      [2, 1.2e7],
    ] as const) {
      const at = (z: number, t: number): number => groundTemperature(given, z, t, alpha);
      const curvature = (at(depth + step, time) - 2 * at(depth, time) + at(depth - step, time)) / step ** 2;
      const rate = (at(depth, time + moment) - at(depth, time - moment)) / (2 * moment);
      expectNear(alpha * curvature, rate, 1e-3 * Math.abs(rate));
    }
  });
});

describe('a floor on the ground', () => {
  const clay = { wall: 0.3, resistance: 0.21, conductivity: 1.5 } as const;

  it('loses less per area the larger it is, without a step where it counts as well insulated', () => {
    fc.assert(
      fc.property(between(0.1, 3), between(0.05, 5), (conductivity, resistance) => {
        const floor = (across: number): GroundFloor => ({
          wall: 0.3,
          resistance,
          conductivity,
          area: across,
          perimeter: 2,
        });
        const turn = 0.3 + conductivity * resistance;
        const [before, after] = [turn * (1 - 1e-9), turn * (1 + 1e-9)].map((across) =>
          floorTransmittance(floor(across)),
        ) as [number, number];
        expectNear(after, before, 0.01 * before);
        expect(floorTransmittance(floor(2 * turn))).toBeLessThan(before);
        expect(floorTransmittance(floor(turn / 2))).toBeGreaterThan(after);
      }),
    );
  });

  it('that is endless loses nothing to speak of, and never more than its own resistance lets through', () => {
    expect(floorTransmittance({ ...clay, area: 1e8, perimeter: 4e4 })).toBeLessThan(0.01);
    fc.assert(
      fc.property(between(0.5, 500), between(0.5, 500), (length, width) => {
        const floor = { ...clay, area: length * width, perimeter: 2 * (length + width) };
        expect(floorTransmittance(floor)).toBeLessThan(1 / (clay.resistance + clay.wall / clay.conductivity));
      }),
    );
  });

  it('is saved more by a deeper and by a better board at its edge, and nothing by none', () => {
    const floor = { ...clay, area: 100, perimeter: 40 };
    expect(edgeInsulationSaves(floor, 0, 2)).toBe(0);
    expect(edgeInsulationSaves(floor, 1, 0)).toBe(0);
    fc.assert(
      fc.property(between(0.1, 2), between(0.1, 5), (depth, board) => {
        const saved = edgeInsulationSaves(floor, depth, board);
        expect(edgeInsulationSaves(floor, depth * 1.1, board)).toBeGreaterThan(saved);
        expect(edgeInsulationSaves(floor, depth, board * 1.1)).toBeGreaterThan(saved);
      }),
    );
  });

  it('the strip under a bench loses along its rim what ISO 13370 has for a floor of that width, within a seventh', () => {
    for (const width of [0.6, 0.9, 1.2, 1.5, 2, 3]) {
      const strip = { wall: 0.1, resistance: 0.34, conductivity: 1.2, area: width * 1000, perimeter: 2000 };
      const standard = (floorTransmittance(strip) * width) / 2;
      expectNear(rimConductance(width, 0.1, 1.2), standard, standard / 7, `${width} m`);
    }
  });

  it('refuses a floor without wall and films, which would lose without end', () => {
    expect(() => floorTransmittance({ ...clay, wall: 0, resistance: 0, area: 10, perimeter: 14 })).toThrow(
      OutOfRange,
    );
  });
});

/** Kersten 1949 in W/(m·K), from memory: w in per cent by mass, γ in g/cm³; for 1 % (sand) and 7 % (silt, clay) and more. */
const kersten1949 = {
  sand: (w: number, density: number): number =>
    0.1442 * (0.7 * Math.log10(w) + 0.4) * 10 ** (0.6243 * density),
  clay: (w: number, density: number): number =>
    0.1442 * (0.9 * Math.log10(w) - 0.2) * 10 ** (0.6243 * density),
};

describe('soil by its moisture', () => {
  const soil = fc.constantFrom<Soil>(...Object.values(soils));

  it('conducts better the wetter it is, and without a step', () => {
    fc.assert(
      fc.property(soil, between(0, 0.99), (kind, moisture) => {
        const conductivity = soilConductivity(kind, moisture);
        const wetter = soilConductivity(kind, moisture + 0.01);
        // Fine soil is as good as dry up to a tenth.
        expect(wetter).toBeGreaterThanOrEqual(conductivity - 1e-12);
        if (moisture > 0.1) expect(wetter).toBeGreaterThan(conductivity);
        // Steepest where the curve begins, at a twentieth: 0.7 / ln 10 / 0.05 of what water adds per unit of moisture.
        expect(wetter - conductivity).toBeLessThan(0.01 * 15 * soilConductivity(kind, 1));
      }),
    );
  });

  it.each([
    ['sand', soils.sand, [0.2, 0.4, 0.6, 0.8]],
    ['clay', soils.clay, [0.4, 0.6, 0.8]],
  ] as const)(
    '%s conducts what Kersten measured, within a quarter (1949, from memory)',
    (name, kind, moistures) => {
      for (const moisture of moistures) {
        const percent = (100 * moisture * porosity(kind) * 1000) / kind.dryDensity;
        const theirs = kersten1949[name](percent, kind.dryDensity / 1000);
        expectNear(soilConductivity(kind, moisture), theirs, theirs / 4, `${name}, ${moisture}`);
      }
    },
  );

  it('conducts better frozen than thawed when it is soaked, since ice does', () => {
    for (const kind of Object.values(soils)) {
      expect(soilConductivity(kind, 1, true)).toBeGreaterThan(soilConductivity(kind, 1));
      expect(soilConductivity(kind, 0, true)).toBe(soilConductivity(kind, 0));
    }
  });

  it('holds what its grains and its water hold', () => {
    for (const kind of Object.values(soils)) {
      const water = soilHeatCapacity(kind, 1) - soilHeatCapacity(kind, 0);
      expectNear(water, porosity(kind) * 4.19e6, 1e-6);
    }
  });

  it('is refused beyond dry, beyond soaked, and as light as peat', () => {
    expect(() => soilConductivity(soils.sand, -0.01)).toThrow(OutOfRange);
    expect(() => soilConductivity(soils.sand, 1.01)).toThrow(OutOfRange);
    expect(() => soilConductivity({ ...soils.clay, dryDensity: 300 }, 0.5)).toThrow(OutOfRange);
    expect(() => soilHeatCapacity(soils.sand, Number.NaN)).toThrow(OutOfRange);
  });
});

describe('a potting medium by its moisture', () => {
  const medium = fc.constantFrom<Medium>(...Object.values(media));
  const moisture = between(0, 1);

  it('holds more heat the warmer it is, through freezing too, and without a step', () => {
    fc.assert(
      fc.property(medium, moisture, between(-30, 30), (kind, wet, t) => {
        const held = mediumEnthalpy(kind, wet, t);
        const warmer = mediumEnthalpy(kind, wet, t + 1e-6);
        expect(warmer).toBeGreaterThan(held);
        const steepest =
          mediumHeatCapacity(kind, wet) +
          mediumFusionHeat(kind, wet) / (mediumFreezes.from - mediumFreezes.to);
        expect(warmer - held).toBeLessThan(steepest * 1.01e-6 + 1e-3);
      }),
    );
  });

  it('is sensible above freezing and below it, and gives up its latent heat between', () => {
    fc.assert(
      fc.property(medium, moisture, (kind, wet) => {
        const slope = (t: number): number => mediumEnthalpy(kind, wet, t + 1) - mediumEnthalpy(kind, wet, t);
        const [thawed, frozen] = [mediumHeatCapacity(kind, wet), frozenHeatCapacity(kind, wet)];
        expectNear(slope(3), thawed, 1e-6 * thawed);
        expectNear(slope(-10), frozen, 1e-6 * thawed);
        const whole =
          mediumEnthalpy(kind, wet, mediumFreezes.from) - mediumEnthalpy(kind, wet, mediumFreezes.to);
        expectNear(whole - mediumFusionHeat(kind, wet), (thawed + frozen) / 4, 1e-6 * thawed);
      }),
    );
  });

  it('is what the pots of a bench hold', () => {
    const bench = changed(startBench, { pots: { medium: 'bark', moisture: 0.7 } });
    const curve = rootsHold(bench, 1);
    for (const t of [-5, -0.5, -0.2, 0, 4, 12]) {
      const held = mediumVolume(bench) * mediumEnthalpy(media.bark, 0.7, t);
      const atZero = enthalpyAt(curve, 0);
      expectNear(enthalpyAt(curve, t) - atZero, held, 1e-6 * (1 + Math.abs(held)), `${t} °C`);
    }
  });

  it('weighs and conducts more the wetter it is, between dry and drained', () => {
    fc.assert(
      fc.property(medium, between(0, 0.99), (kind, wet) => {
        expect(mediumDensity(kind, wet + 0.01)).toBeGreaterThan(mediumDensity(kind, wet));
        expect(mediumConductivity(kind, wet + 0.01)).toBeGreaterThan(mediumConductivity(kind, wet));
      }),
    );
    expect(waterShareOf(media.peat, 1)).toBe(media.peat.containerCapacity);
    expect(mediumDensity(media.bark, 0)).toBe(media.bark.bulkDensity);
    expect(() => mediumConductivity(media.bark, 1.1)).toThrow(OutOfRange);
    expect(() => mediumDensity(media.bark, -0.1)).toThrow(OutOfRange);
  });

  it('conducts better frozen, the more so the wetter, and dry as before', () => {
    fc.assert(
      fc.property(medium, between(0, 0.99), between(0, 0.99), (kind, wet, share) => {
        expect(frozenConductivity(kind, wet + 0.01)).toBeGreaterThan(frozenConductivity(kind, wet));
        expect(frozenConductivity(kind, wet)).toBeGreaterThanOrEqual(mediumConductivity(kind, wet));
        expect(frozenConductivity(kind, wet)).toBeLessThan(2.2);
        expect(frozenConductivityRatio(kind, wet, share + 0.01)).toBeGreaterThanOrEqual(
          frozenConductivityRatio(kind, wet, share),
        );
        expect(frozenConductivityRatio(kind, wet, 0)).toBe(1);
      }),
    );
    expect(frozenConductivity(media.peat, 0)).toBe(media.peat.conductivityDry);
    expect(() => frozenConductivityRatio(media.peat, 0.5, 1.1)).toThrow(OutOfRange);
  });
});
