import { describe, expect, it } from 'vitest';
import { houseAir } from '../calculators/bench/place.ts';
import { amount, calculator, type Figure, type Situation } from '../calculators/calculator.ts';
import { dewPoint } from '../calculators/properties/moist-air.ts';
import { waterDensity } from '../calculators/properties/water.ts';
import { fromBase, toBase } from '../calculators/quantities/quantity.ts';
import { showQuantity } from '../calculators/quantities/show.ts';
import type { Celsius, Kelvins } from '../calculators/quantities/temperature.ts';
import { expectNear } from './support/near.ts';
import { situation } from './support/situations.ts';

/*
 * A temperature difference is not a temperature. The lines marked as errors do not compile, and the check of types fails
 * when one of them does.
 */
const manner = { system: 'us', locale: 'en-US' } as const;
const level: Celsius = 20;
const difference: Kelvins = 20;

/** The common parts of a calculator that gives one figure of a quantity. */
const words = {
  id: 'trial',
  question: '',
  summary: '',
  reads: [],
  formulas: [],
  cites: [],
  cautions: [],
} as const;
const rise = { label: '', explain: '', quantity: 'temperatureDifference' } as const;
const low = { label: '', explain: '', quantity: 'temperature' } as const;

describe('levels and differences of temperature', () => {
  it('are plain numbers where one calculates', () => {
    const sum: number = level + difference;
    const cooler: Celsius = level - difference;
    expect(sum).toBe(40);
    expect(cooler).toBe(0);
    expectNear(waterDensity(20), waterDensity(level), 0);
  });

  it('do not stand in for each other in laws', () => {
    // @ts-expect-error a difference has no density of water
    waterDensity(difference);
    // @ts-expect-error a dew point is a level
    const drop: Kelvins = dewPoint(level, 0.5);
    expect(drop).toBeLessThan(level);
    const one: Situation = situation();
    const { houseOffset, ownLowest } = one.bench.place;
    expect(houseAir(one, ownLowest ?? -10, houseOffset)).toBe(-8);
    // @ts-expect-error the offset of the house and the outside temperature are the wrong way round
    expect(houseAir(one, houseOffset, ownLowest ?? -10)).toBe(-8);
  });

  it('are not shown or read as each other', () => {
    expect(showQuantity(level, 'temperature', manner)).toBe('68.0\u202f°F');
    expect(showQuantity(difference, 'temperatureDifference', manner)).toBe('36.0\u202f°F');
    // @ts-expect-error a difference shown as a level would be off by 32 °F
    expect(showQuantity(difference, 'temperature', manner)).toBe('68.0\u202f°F');
    // @ts-expect-error and a level shown as a difference too
    expect(showQuantity(level, 'temperatureDifference', manner)).toBe('36.0\u202f°F');
    // @ts-expect-error a difference said as a level
    expect(amount(difference, 'temperature').value).toBe(20);
    // @ts-expect-error a level written as a difference
    expect(fromBase('temperatureDifference', level, '°F')).toBe(36);
    // @ts-expect-error a difference read as a level
    const read: Celsius = toBase('temperatureDifference', 36, '°F');
    expectNear(read, 20, 1e-12);
  });

  it('are not computed where the other is declared', () => {
    const right = calculator({
      ...words,
      figures: { rise, low },
      compute: () => ({ figures: { rise: { value: difference }, low: { value: level } }, warnings: [] }),
    });
    const wrong = calculator({
      ...words,
      figures: { rise },
      // @ts-expect-error a level where a difference is declared
      compute: () => ({ figures: { rise: { value: level } }, warnings: [] }),
    });
    const missing = calculator({
      ...words,
      figures: { rise, low },
      // @ts-expect-error a figure is declared and not given back
      compute: () => ({ figures: { rise: { value: difference } }, warnings: [] }),
    });
    const figure: Figure<'temperature'> = { value: level };
    expect([right, wrong, missing].map(({ id }) => id)).toEqual(['trial', 'trial', 'trial']);
    expect(figure.value).toBe(level);
  });
});
