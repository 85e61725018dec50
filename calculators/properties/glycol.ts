import type { Celsius } from '../quantities/temperature.ts';
import { OutOfRange, within } from '../range.ts';
import { freezingTable, mixCoefficients, type FreezingRow } from '../tables/glycol.ts';
import { icePoint } from './temperature.ts';
import {
  waterConductivity,
  waterDensity,
  waterExpansion,
  waterHeatCapacity,
  waterRange,
  waterViscosity,
} from './water.ts';

/**
 * Water with glycol in it. Shares by volume are what a grower measures, shares by mass are what the property
 * equations take; the two differ and are never mixed up here: every argument says which it is.
 *
 * Properties: Melinder 2010, pure mixtures by mass, 0 to 0.6, from the freezing point to 100 °C. The ASHRAE 2001 tables
 * print inhibited fluids of the trade instead; from 10 to 50 % by volume and −10 to 40 °C the two differ by at most, in
 * propylene (ethylene) glycol: density 0.5 (0.7) %, heat capacity 0.3 (2.5) %, conductivity 2 (3) %, viscosity
 * 10 (17) %.
 * Shares and freezing points: ASHRAE 2001 and Melinder 2010, as of pure glycol. A concentrate of the trade holds 4 to 7 %
 * of inhibitor and water beside the glycol (from memory), which makes it by as much the weaker.
 */
export type Glycol = 'propylene' | 'ethylene';

/**
 * Glycol in a concentrate of the trade, as a share of it [1]: 0.93 to 0.96, the rest being inhibitor and water (from memory).
 * A mix poured by the weaker of the two is as strong as it has to be whichever can was bought.
 */
export const weakestConcentrate = 0.93;

/** What is in the water of the loop: a glycol, or nothing. */
export type Antifreeze = Glycol | 'none';

/** The highest share by mass for which Melinder's equations hold [1]. */
export const highestMassShare = 0.6;
/** The highest temperature of Melinder's equations [°C]. */
const hottest = 100;

const column = (rows: readonly FreezingRow[], index: 0 | 1 | 2, scale: number): number[] =>
  rows.map((row) => row[index] * scale);

const columnsOf = (glycol: Glycol) => ({
  mass: column(freezingTable[glycol], 0, 0.01),
  volume: column(freezingTable[glycol], 1, 0.01),
  freezing: column(freezingTable[glycol], 2, 1),
});
const columns = { propylene: columnsOf('propylene'), ethylene: columnsOf('ethylene') };

/** Straight lines between the rows of a table; `xs` rise. The caller has checked the range. */
function interpolate(xs: readonly number[], ys: readonly number[], x: number): number {
  let i = 1;
  while (i < xs.length - 1 && xs[i]! < x) i++;
  const share = (x - xs[i - 1]!) / (xs[i]! - xs[i - 1]!);
  return ys[i - 1]! + share * (ys[i]! - ys[i - 1]!);
}

/** The highest share by volume that the published table reaches [1]: 0.60 propylene, 0.578 ethylene glycol. */
export const highestVolumeShare = (glycol: Glycol): number => columns[glycol].volume.at(-1)!;

/**
 * Share by mass [1] of a mix with this share by volume [1]: ASHRAE 2001, straight lines between its rows.
 * Throws `OutOfRange` beyond the table.
 */
export function massShareOf(glycol: Glycol, volumeShare: number): number {
  within(`share of ${glycol} glycol by volume [1]`, volumeShare, 0, highestVolumeShare(glycol));
  return interpolate(columns[glycol].volume, columns[glycol].mass, volumeShare);
}

/** Share by volume [1] of a mix with this share by mass [1], the inverse of `massShareOf`. */
export function volumeShareOf(glycol: Glycol, massShare: number): number {
  within(`share of ${glycol} glycol by mass [1]`, massShare, 0, highestMassShare);
  return interpolate(columns[glycol].mass, columns[glycol].volume, massShare);
}

/** Σⱼ cⱼ dⱼ by Horner's rule. */
function polynomial(coefficients: readonly number[], d: number): number {
  let value = 0;
  for (let j = coefficients.length - 1; j >= 0; j--) value = value * d + coefficients[j]!;
  return value;
}

/** Freezing point [°C] by share of mass [1], Melinder's equation; 0 to 0.6. Throws `OutOfRange`. */
export function freezingPointMelinder(glycol: Glycol, massShare: number): Celsius {
  within(`share of ${glycol} glycol by mass [1]`, massShare, 0, highestMassShare);
  const { freezing, massShare: centre } = mixCoefficients[glycol];
  return polynomial(freezing, massShare - centre) - icePoint;
}

/** Freezing point [°C] by share of volume [1], ASHRAE 2001, straight lines between its rows. Throws `OutOfRange`. */
export function freezingPointAshrae(glycol: Glycol, volumeShare: number): Celsius {
  within(`share of ${glycol} glycol by volume [1]`, volumeShare, 0, highestVolumeShare(glycol));
  return interpolate(columns[glycol].volume, columns[glycol].freezing, volumeShare);
}

/**
 * Where the first ice appears [°C] in a mix with this share by volume [1]: the warmer of the two published sources,
 * which differ by up to 1.4 K (propylene) and 2.9 K (ethylene glycol). Never above 0 °C, where plain water freezes: the
 * fit for ethylene glycol ends 0.0003 K above it. Throws `OutOfRange` beyond the published table.
 */
export function freezingPoint(glycol: Glycol, volumeShare: number): Celsius {
  const ashrae = freezingPointAshrae(glycol, volumeShare);
  return Math.min(0, Math.max(ashrae, freezingPointMelinder(glycol, massShareOf(glycol, volumeShare))));
}

/**
 * The coldest that a published source lets the first ice wait [°C] in a mix with this share by volume [1]: the colder of the
 * two that `freezingPoint` takes the warmer of. Throws `OutOfRange` beyond the published table.
 */
export const coldestFreezingPoint = (glycol: Glycol, volumeShare: number): Celsius =>
  Math.min(
    0,
    freezingPointAshrae(glycol, volumeShare),
    freezingPointMelinder(glycol, massShareOf(glycol, volumeShare)),
  );

/**
 * The least share by volume [1] that stays liquid down to this temperature [°C]: the inverse of `freezingPoint`.
 * Zero at and above 0 °C. Throws `OutOfRange` below what the published tables reach.
 */
export function volumeShareFor(glycol: Glycol, freezingTemperature: Celsius): number {
  if (freezingTemperature >= 0) return 0;
  let low = 0;
  let high = highestVolumeShare(glycol);
  within(`freezing point of ${glycol} glycol [°C]`, freezingTemperature, freezingPoint(glycol, high), 0);
  // The freezing point falls steadily with the share, so halving the interval always closes in.
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (freezingPoint(glycol, middle) > freezingTemperature) low = middle;
    else high = middle;
  }
  return high;
}

/** Temperatures [°C] between which a mix of this share by mass [1] has published properties. */
export function liquidRange(antifreeze: Antifreeze, massShare: number): { from: Celsius; to: Celsius } {
  if (antifreeze === 'none') return waterRange;
  const ashrae = interpolate(columns[antifreeze].mass, columns[antifreeze].freezing, massShare);
  return { from: Math.max(ashrae, freezingPointMelinder(antifreeze, massShare)), to: hottest };
}

type Property = 'density' | 'heatCapacity' | 'conductivity' | 'logViscosity';

function mixProperty(glycol: Glycol, property: Property, massShare: number, t: Celsius): number {
  within(`share of ${glycol} glycol by mass [1]`, massShare, 0, highestMassShare);
  const { from, to } = liquidRange(glycol, massShare);
  if (!(t >= from && t <= to)) throw new OutOfRange(`temperature of the mix [°C]`, t, from, to);
  const fluid = mixCoefficients[glycol];
  const rows: readonly (readonly number[])[] = fluid[property];
  const dT = t + icePoint - fluid.temperature;
  const dx = massShare - fluid.massShare;
  let value = 0;
  for (let i = rows.length - 1; i >= 0; i--) value = value * dT + polynomial(rows[i]!, dx);
  return value;
}

/*
 * Each of the following takes the share of glycol by mass [1] and the temperature t [°C] and throws `OutOfRange`
 * above a share of 0.6, below the freezing point of the mix and above 100 °C. With 'none' it is plain water
 * (`water.ts`) and the share is not looked at.
 */

/** Density [kg/m³]. */
export const mixDensity = (antifreeze: Antifreeze, massShare: number, t: Celsius): number =>
  antifreeze === 'none' ? waterDensity(t) : mixProperty(antifreeze, 'density', massShare, t);

/** Specific heat capacity [J/(kg·K)]. */
export const mixHeatCapacity = (antifreeze: Antifreeze, massShare: number, t: Celsius): number =>
  antifreeze === 'none' ? waterHeatCapacity(t) : mixProperty(antifreeze, 'heatCapacity', massShare, t);

/** Thermal conductivity [W/(m·K)]. */
export const mixConductivity = (antifreeze: Antifreeze, massShare: number, t: Celsius): number =>
  antifreeze === 'none' ? waterConductivity(t) : mixProperty(antifreeze, 'conductivity', massShare, t);

/** Dynamic viscosity [Pa·s]. */
export const mixViscosity = (antifreeze: Antifreeze, massShare: number, t: Celsius): number =>
  antifreeze === 'none' ? waterViscosity(t) : Math.exp(mixProperty(antifreeze, 'logViscosity', massShare, t));

/**
 * Volume expansion −(1/ρ)(∂ρ/∂T) [1/K], from the slope of the density over a tenth of a kelvin to either side,
 * one-sided at the ends of the range.
 */
export function mixExpansion(antifreeze: Antifreeze, massShare: number, t: Celsius): number {
  if (antifreeze === 'none') return waterExpansion(t);
  const { from, to } = liquidRange(antifreeze, massShare);
  const below = Math.max(t - 0.1, from);
  const above = Math.min(t + 0.1, to);
  const slope =
    (mixDensity(antifreeze, massShare, above) - mixDensity(antifreeze, massShare, below)) / (above - below);
  return -slope / mixDensity(antifreeze, massShare, t);
}
