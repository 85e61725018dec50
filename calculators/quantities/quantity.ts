/**
 * What a number measures, and every unit that people write it in. The only place where units are converted.
 *
 * Inside the calculators a value is always in the base unit of its quantity: SI, with temperature levels in
 * degrees Celsius. written × scale + offset = base. All factors are exact by definition (international yard and
 * pound, US liquid gallon, Btu of the International Table: NIST Special Publication 811, appendix B) unless noted.
 *
 * Two libraries for this were weighed and serve as a second opinion in the tests. js-quantities has levels and differences
 * of temperature, but reads a text for each value (13 µs against 0.03 here; 9.6 kB against 1.4, packed) and rounds the
 * gallon and the foot after seven digits; mathjs has neither apart and brings 67 kB. Neither knows which unit a reader is
 * shown and with how many decimals, which is most of this file.
 */
import type { ValueIn } from './temperature.ts';

export interface Unit {
  /** Multiplies what is written to give the base unit. */
  readonly scale: number;
  /** Added after scaling; only temperature levels have one. */
  readonly offset?: number;
  /** Decimal places that a reader is shown. */
  readonly decimals: number;
  /** Leaves out zeros behind the point: for sizes in which things are made. */
  readonly trimmed?: true;
  /** From this number on, in this unit, a reader is shown none: nobody paces out a tenth of a foot in a hundred. */
  readonly wholeFrom?: number;
  /** Other spellings that a file or a form may use. */
  readonly also?: readonly string[];
}

export interface Quantity {
  /** The unit of stored and computed values. */
  readonly base: string;
  /** The unit shown in each system of units. */
  readonly shown: { readonly metric: string; readonly us: string };
  readonly units: Readonly<Record<string, Unit>>;
}

const inch = 0.0254;
const foot = 0.3048;
const pound = 0.45359237;
const gallon = 3.785411784e-3;
/** British thermal unit of the International Table [J]. */
const btu = 1055.05585262;
const fahrenheit = 5 / 9;

const metre: Unit = { scale: 1, decimals: 2, wholeFrom: 200, also: ['metre', 'metres', 'meter', 'meters'] };
const centimetre: Unit = { scale: 0.01, decimals: 1 };
const millimetre: Unit = { scale: 0.001, decimals: 0 };
const inches: Unit = { scale: inch, decimals: 2, also: ['inch', 'inches', '"', '″', '”'] };
const feet: Unit = { scale: foot, decimals: 1, wholeFrom: 600, also: ['foot', 'feet', "'", '′', '’'] };
const one: Unit = { scale: 1, decimals: 2 };

export const quantities = {
  /** Distances that a grower paces out or cuts from a reel. */
  length: {
    base: 'm',
    shown: { metric: 'm', us: 'ft' },
    units: { m: metre, cm: centimetre, mm: millimetre, ft: feet, in: inches },
  },
  /** Distances that are read off a ruler: diameters, gaps, heights of pots. */
  size: {
    base: 'm',
    shown: { metric: 'mm', us: 'in' },
    units: { mm: millimetre, cm: centimetre, m: metre, in: inches, ft: feet },
  },
  area: {
    base: 'm²',
    shown: { metric: 'm²', us: 'ft²' },
    units: {
      'm²': { scale: 1, decimals: 2, also: ['m2', 'sqm'] },
      'ft²': { scale: foot ** 2, decimals: 1, also: ['ft2', 'sqft'] },
    },
  },
  volume: {
    base: 'm³',
    shown: { metric: 'L', us: 'gal' },
    units: {
      L: { scale: 1e-3, decimals: 1, also: ['l', 'litre', 'litres', 'liter', 'liters'] },
      mL: { scale: 1e-6, decimals: 0, also: ['ml'] },
      'm³': { scale: 1, decimals: 4, also: ['m3'] },
      gal: { scale: gallon, decimals: 2, also: ['gallon', 'gallons'] },
      qt: { scale: gallon / 4, decimals: 1, also: ['quart', 'quarts'] },
    },
  },
  mass: {
    base: 'kg',
    shown: { metric: 'kg', us: 'lb' },
    units: {
      kg: { scale: 1, decimals: 1 },
      g: { scale: 1e-3, decimals: 0 },
      lb: { scale: pound, decimals: 1, also: ['lbs', 'pound', 'pounds'] },
    },
  },
  /** Weight that a support carries for each length of filled pipe. */
  massPerLength: {
    base: 'kg/m',
    shown: { metric: 'kg/m', us: 'lb/ft' },
    units: { 'kg/m': { scale: 1, decimals: 1 }, 'lb/ft': { scale: pound / foot, decimals: 1 } },
  },
  /** A temperature level: where on the scale. Not a difference of temperatures. */
  temperature: {
    base: '°C',
    shown: { metric: '°C', us: '°F' },
    units: {
      '°C': { scale: 1, decimals: 1, also: ['C', 'degC'] },
      '°F': { scale: fahrenheit, offset: -32 * fahrenheit, decimals: 1, also: ['F', 'degF'] },
    },
  },
  /** A difference of temperatures: a rise, a drop, a differential. */
  temperatureDifference: {
    base: 'K',
    shown: { metric: 'K', us: '°F' },
    units: {
      K: { scale: 1, decimals: 1, also: ['°C', 'C'] },
      '°F': { scale: fahrenheit, decimals: 1, also: ['F'] },
    },
  },
  /** How far and how long it was colder than a base: differences of temperature, hour by hour. */
  degreeHours: {
    base: 'K·s',
    shown: { metric: 'K·h', us: '°F·h' },
    units: {
      'K·s': { scale: 1, decimals: 0 },
      'K·h': { scale: 3600, decimals: 0, also: ['Kh', '°C·h'] },
      '°F·h': { scale: fahrenheit * 3600, decimals: 0 },
    },
  },
  power: {
    base: 'W',
    shown: { metric: 'W', us: 'W' },
    units: {
      W: { scale: 1, decimals: 0, also: ['watt', 'watts'] },
      kW: { scale: 1000, decimals: 2 },
      'Btu/h': { scale: btu / 3600, decimals: 0, also: ['BTU/h', 'BTUH'] },
    },
  },
  powerPerLength: {
    base: 'W/m',
    shown: { metric: 'W/m', us: 'W/ft' },
    units: { 'W/m': { scale: 1, decimals: 1 }, 'W/ft': { scale: 1 / foot, decimals: 1 } },
  },
  /** How much a self-regulating cable gives up for each degree that it warms. */
  powerPerLengthAndDifference: {
    base: 'W/(m·K)',
    shown: { metric: 'W/(m·K)', us: 'W/(ft·°F)' },
    units: {
      'W/(m·K)': { scale: 1, decimals: 3, also: ['W/mK', 'W/(m*K)', 'W/m/K'] },
      'W/(ft·°F)': { scale: 1 / (foot * fahrenheit), decimals: 3, also: ['W/ftF', 'W/ft/F', 'W/(ft*F)'] },
    },
  },
  conductance: {
    base: 'W/K',
    shown: { metric: 'W/K', us: 'W/°F' },
    units: {
      'W/K': { scale: 1, decimals: 2 },
      'W/°F': { scale: 1 / fahrenheit, decimals: 2, also: ['W/F'] },
    },
  },
  /** Heat that something takes up for each degree that it warms. */
  heatCapacity: {
    base: 'J/K',
    shown: { metric: 'kJ/K', us: 'Btu/°F' },
    units: {
      'kJ/K': { scale: 1000, decimals: 0 },
      'J/K': { scale: 1, decimals: 0 },
      'Wh/K': { scale: 3600, decimals: 1 },
      'Btu/°F': { scale: btu / fahrenheit, decimals: 0, also: ['Btu/F', 'BTU/F', 'BTU/°F'] },
    },
  },
  energy: {
    base: 'J',
    shown: { metric: 'kWh', us: 'kWh' },
    units: {
      kWh: { scale: 3.6e6, decimals: 1 },
      MJ: { scale: 1e6, decimals: 1 },
      J: { scale: 1, decimals: 0 },
    },
  },
  /** Money for energy, in the currency of the region. */
  energyPrice: {
    base: '1/J',
    shown: { metric: '/kWh', us: '/kWh' },
    units: { '/kWh': { scale: 1 / 3.6e6, decimals: 3 }, '1/J': { scale: 1, decimals: 10 } },
  },
  /** A sum of money, in the currency of the region. */
  money: {
    base: '1',
    shown: { metric: '', us: '' },
    units: { '': { scale: 1, decimals: 2, wholeFrom: 100 }, '1': one },
  },
  duration: {
    base: 's',
    shown: { metric: 'h', us: 'h' },
    units: {
      h: { scale: 3600, decimals: 1, wholeFrom: 100, also: ['hour', 'hours'] },
      min: { scale: 60, decimals: 0 },
      s: { scale: 1, decimals: 0 },
      d: { scale: 86400, decimals: 1, also: ['day', 'days'] },
    },
  },
  voltage: {
    base: 'V',
    shown: { metric: 'V', us: 'V' },
    units: { V: { scale: 1, decimals: 0, also: ['volt', 'volts'] } },
  },
  current: {
    base: 'A',
    shown: { metric: 'A', us: 'A' },
    units: { A: { scale: 1, decimals: 1, also: ['amp', 'amps'] }, mA: { scale: 1e-3, decimals: 0 } },
  },
  /** Current to earth at which a device for ground faults trips. */
  faultCurrent: {
    base: 'A',
    shown: { metric: 'mA', us: 'mA' },
    units: { mA: { scale: 1e-3, decimals: 0 }, A: { scale: 1, decimals: 3 } },
  },
  /** What is printed on the lever of a breaker, in most sizes a whole number. */
  breakerSize: {
    base: 'A',
    shown: { metric: 'A', us: 'A' },
    units: { A: { scale: 1, decimals: 1, trimmed: true, also: ['amp', 'amps'] } },
  },
  frequency: {
    base: 'Hz',
    shown: { metric: 'Hz', us: 'Hz' },
    units: { Hz: { scale: 1, decimals: 0, also: ['hertz'] } },
  },
  /** A part of a whole, 0 to 1, written in per cent. */
  share: {
    base: '1',
    shown: { metric: '%', us: '%' },
    units: {
      '%': { scale: 0.01, decimals: 1, also: ['percent', 'per cent'] },
      '1': { scale: 1, decimals: 3 },
    },
  },
  /** How many; a plain number. */
  count: {
    base: '1',
    shown: { metric: '', us: '' },
    units: { '': { scale: 1, decimals: 0 }, '1': { scale: 1, decimals: 0 } },
  },
  /** A plain number that is not a count: turns, a ratio of two lengths. */
  number: { base: '1', shown: { metric: '', us: '' }, units: { '': one, '1': one } },
} as const satisfies Record<string, Quantity>;

export type QuantityName = keyof typeof quantities;
export type UnitSystem = 'metric' | 'us';

const quantityOf = (name: QuantityName): Quantity => quantities[name];

/** The unit in which a reader of this system of units is shown this quantity. */
export const shownUnit = (name: QuantityName, system: UnitSystem): string => quantityOf(name).shown[system];

/**
 * Every unit in which this quantity may be written, main spellings only. A unit that starts with a digit, such as the
 * base unit of shares, is for computing: behind a number it would be read as more digits.
 */
export const unitsOf = (name: QuantityName): string[] =>
  Object.keys(quantityOf(name).units).filter((unit) => !/^\d/u.test(unit));

/** The unit with this spelling, or undefined when the quantity has no such unit. */
export function findUnit(name: QuantityName, spelling: string): Unit | undefined {
  const { units } = quantityOf(name);
  if (Object.hasOwn(units, spelling)) return units[spelling];
  return Object.values(units).find((unit) => unit.also?.includes(spelling));
}

function unitOrThrow(name: QuantityName, spelling: string): Unit {
  const unit = findUnit(name, spelling);
  if (!unit) throw new RangeError(`${name} has no unit "${spelling}"; it has ${unitsOf(name).join(', ')}`);
  return unit;
}

/** From a written number to the base unit. Throws RangeError on a unit that the quantity does not have. */
export function toBase<Q extends QuantityName>(name: Q, written: number, spelling: string): ValueIn<Q> {
  const { scale, offset = 0 } = unitOrThrow(name, spelling);
  // Division by the whole number 100 makes 70 % exactly 0.7; multiplication by 0.01, which is rounded, does not.
  const parts = 1 / scale;
  return (Number.isInteger(parts) ? written / parts : written * scale) + offset;
}

/** From the base unit to the number a reader sees. Throws RangeError on a unit that the quantity does not have. */
export function fromBase<Q extends QuantityName>(name: Q, value: ValueIn<Q>, spelling: string): number {
  const { scale, offset = 0 } = unitOrThrow(name, spelling);
  return (value - offset) / scale;
}

/** The decimal places that a reader is shown in this unit, of a number however large. */
export const decimalsOf = (name: QuantityName, spelling: string): number =>
  unitOrThrow(name, spelling).decimals;

/** The decimal places, at least and at most, that a reader is shown of this number, written in this unit. */
export function decimalsShown(
  name: QuantityName,
  written: number,
  spelling: string,
): { readonly least: number; readonly most: number } {
  const { decimals, trimmed = false, wholeFrom = Infinity } = unitOrThrow(name, spelling);
  const most = Math.abs(Number(written.toFixed(decimals))) >= wholeFrom ? 0 : decimals;
  return { least: trimmed ? 0 : most, most };
}
