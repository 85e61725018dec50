import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cylinderFlowFilm,
  cylinderFlowNusselt,
  mixedFilm,
  plateFlowFilm,
  plateFlowNusselt,
  reynolds,
  windFilm,
} from '../calculators/laws/forced-convection.ts';
import { leafTemperature } from '../calculators/laws/leaf.ts';
import { cylinderFilm, verticalFilm } from '../calculators/laws/natural-convection.ts';
import { OutOfRange } from '../calculators/range.ts';
import { expectNear } from './support/near.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const temperature = between(-60, 120);
const length = between(0.002, 60);
const speed = between(0, 40);

describe.each([
  ['along a plate', plateFlowFilm],
  ['across a cylinder', cylinderFlowFilm],
] as const)('a draught %s', (_, film) => {
  it('makes a film that is finite and never negative, at every speed, size and temperature', () => {
    fc.assert(
      fc.property(length, speed, temperature, temperature, (size, wind, surface, air) => {
        const value = film(size, wind, surface, air);
        expect(Number.isFinite(value) && value >= 0).toBe(true);
      }),
    );
  });

  it('takes as much whichever way it blows, and whichever of the two is warm', () => {
    fc.assert(
      fc.property(length, speed, temperature, temperature, (size, wind, surface, air) => {
        const value = film(size, wind, surface, air);
        expectNear(film(size, -wind, surface, air), value, value * 1e-12);
        expectNear(film(size, wind, air, surface), value, value * 1e-12);
      }),
    );
  });

  it('takes more the faster it blows, and at equal temperatures comes there without a step', () => {
    fc.assert(
      fc.property(length, between(0, 39), temperature, (size, wind, t) => {
        const value = film(size, wind, t, t);
        expect(film(size, wind + 0.5, t, t)).toBeGreaterThan(value);
        expectNear(film(size, wind, t + 1e-6, t), value, (value + 1e-9) * 1e-6);
      }),
    );
  });
});

describe('laws of moving air', () => {
  it('jump by less than a per cent where a plate turns turbulent', () => {
    for (const prandtl of [0.6, 0.71, 7, 60]) {
      const laminar = plateFlowNusselt(5e5 * (1 - 1e-9), prandtl);
      expectNear(plateFlowNusselt(5e5 * (1 + 1e-9), prandtl), laminar, 0.01 * laminar);
    }
  });

  it('are those of still boundary layers at low speed: Pohlhausen’s 0.664 Re^½ Pr^⅓, from memory', () => {
    expectNear(plateFlowNusselt(10_000, 1), 66.4, 1e-9);
    expectNear(plateFlowNusselt(40_000, 1), 132.8, 1e-9);
  });

  it('have the Reynolds number of air at 20 °C, 15.16e-6 m²/s (Çengel, table A-15)', () => {
    const printed = 3 / 15.16e-6;
    expectNear(reynolds(3, 1, 20), printed, 0.014 * printed);
  });

  it('refuse what the correlations do not reach', () => {
    expect(() => plateFlowNusselt(1.01e8, 0.7)).toThrow(OutOfRange);
    expect(() => plateFlowNusselt(-1, 0.7)).toThrow(OutOfRange);
    expect(() => plateFlowNusselt(1e4, 0.5)).toThrow(OutOfRange);
    expect(() => plateFlowNusselt(1e4, 61)).toThrow(OutOfRange);
    expect(() => cylinderFlowNusselt(0.2, 0.7)).toThrow(OutOfRange);
    expect(() => cylinderFlowNusselt(1.01e7, 0.7)).toThrow(OutOfRange);
    expect(() => cylinderFlowNusselt(Number.NaN, 0.7)).toThrow(OutOfRange);
  });

  it('out of doors, a film of 20 W/(m²·K) at 4 m/s (ISO 6946, from memory), the same from either side', () => {
    expect(windFilm(4)).toBe(20);
    expect(windFilm(-4)).toBe(20);
    expect(windFilm(0)).toBe(4);
  });
});

describe('natural and forced convection at once', () => {
  const film = fc.oneof(fc.constant(0), between(1e-3, 100));
  const exponent = fc.constantFrom<3 | 4>(3, 4);

  it('is at least the stronger and at most both together, in either order', () => {
    fc.assert(
      fc.property(film, film, exponent, (one, other, n) => {
        const mixed = mixedFilm(one, other, n);
        const slack = 1e-12 * (one + other);
        expect(mixed).toBeGreaterThanOrEqual(Math.max(one, other) - slack);
        expect(mixed).toBeLessThanOrEqual(one + other + slack);
        expectNear(mixedFilm(other, one, n), mixed, slack);
      }),
    );
  });

  it('is the natural one in still air and goes over into the forced one without a step', () => {
    const natural = verticalFilm(0.8, 5, 0);
    expect(mixedFilm(natural, plateFlowFilm(2, 0, 5, 0))).toBe(natural);
    expectNear(mixedFilm(natural, plateFlowFilm(2, 1e-3, 5, 0)), natural, 0.001 * natural);
    const strong = cylinderFlowFilm(0.11, 20, 20, 5);
    expectNear(mixedFilm(cylinderFilm(0.11, 20, 5), strong, 4), strong, 0.01 * strong);
  });
});

describe('a leaf at night', () => {
  it('lies between the air and what is overhead, nearer the air', () => {
    fc.assert(
      fc.property(between(-20, 25), between(0.5, 40), between(0.01, 0.2), (air, colder, width) => {
        const leaf = leafTemperature(air, air - colder, width);
        expect(leaf).toBeLessThan(air);
        expect(leaf).toBeGreaterThan(air - colder / 2);
      }),
    );
  });

  it('is as warm as both where they are the same, and colder the wider it is', () => {
    expectNear(leafTemperature(5, 5, 0.05), 5, 1e-9);
    expect(leafTemperature(5, -15, 0.2)).toBeLessThan(leafTemperature(5, -15, 0.02));
  });

  it('gives up as much as it takes up', () => {
    // A leaf of no width to speak of has so strong a film that it takes the temperature of the air.
    expectNear(leafTemperature(5, -15, 0.0005), 5, 0.5);
  });
});
