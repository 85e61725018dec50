import type { Celsius, Kelvins } from '../quantities/temperature.ts';
import { within } from '../range.ts';

/**
 * Heat in the ground: the yearly wave of its temperature, and what a floor loses to the ground around it. Lengths in m,
 * conductivities in W/(m·K), times in s from the beginning of January.
 */

/** One year [s]: the Gregorian mean of 365.2425 days. */
export const year = 365.2425 * 86_400;

/**
 * Depth at which the yearly swing of the ground is 1/e of that at its surface [m]:  d = sqrt(α P / π).
 * ISO 13370 calls it the periodic penetration depth: 2.2 m for clay, 3.2 m for sand.
 *
 * @param diffusivity α [m²/s]
 */
export const dampingDepth = (diffusivity: number): number => Math.sqrt((diffusivity * year) / Math.PI);

/** A temperature that swings once a year about its mean. */
export interface YearlyWave {
  readonly mean: Celsius;
  /** From the mean to the coldest, or to the warmest. */
  readonly amplitude: Kelvins;
  /** When it is coldest. */
  readonly coldest: number;
}

/**
 * Temperature of the ground [°C] at a depth and a time, under a surface whose temperature is such a wave:
 * T = mean − amplitude · exp(−z/d) · cos(2π (time − coldest) / P − z/d), with the damping depth d and the year P (Kusuda
 * and Achenbach 1965). Uniform ground without frost, snow or moving water.
 */
export function groundTemperature(
  { mean, amplitude, coldest }: YearlyWave,
  depth: number,
  time: number,
  diffusivity: number,
): Celsius {
  const damped = depth / dampingDepth(diffusivity);
  return mean - amplitude * Math.exp(-damped) * Math.cos((2 * Math.PI * (time - coldest)) / year - damped);
}

/** The middle of a month [s], months of equal length, January 0. */
const middleOf = (month: number): number => ((month + 0.5) * year) / 12;

/** The yearly wave that comes nearest to twelve monthly means, January to December: their first harmonic. */
export function yearlyWave(monthMeans: readonly Celsius[]): YearlyWave {
  let [mean, cosine, sine] = [0, 0, 0];
  monthMeans.forEach((t, month) => {
    const angle = (2 * Math.PI * middleOf(month)) / year;
    mean += t / 12;
    cosine += (t * Math.cos(angle)) / 6;
    sine += (t * Math.sin(angle)) / 6;
  });
  // The coldest lies half a year from the warmest, at which the two add up.
  const warmest = Math.atan2(sine, cosine) / (2 * Math.PI);
  return { mean, amplitude: Math.hypot(cosine, sine), coldest: ((warmest + 1.5) % 1) * year };
}

/** Temperature of the ground [°C] at a depth in the middle of each month, January to December, under such a surface. */
export const groundByMonth = (wave: YearlyWave, depth: number, diffusivity: number): readonly Celsius[] =>
  Array.from({ length: 12 }, (_, month) => groundTemperature(wave, depth, middleOf(month), diffusivity));

export interface GroundFloor {
  readonly area: number;
  /** Of the floor, as far as it lies against colder ground. */
  readonly perimeter: number;
  /** Thickness of the wall that stands around it, or of whatever keeps its warm edge from the cold outside. */
  readonly wall: number;
  /** Films above and outside and the layers of the floor together [m²·K/W]. */
  readonly resistance: number;
  /** Of the ground. */
  readonly conductivity: number;
}

/** Length and thickness in which ISO 13370 measures a floor: B′ = A / (½ P), d_t = w + λ R. */
const measures = ({ area, perimeter, wall, resistance, conductivity }: GroundFloor) => ({
  across: area / (perimeter / 2),
  equivalent: wall + conductivity * resistance,
});

/**
 * What a floor on the ground loses to the outside, per area [W/(m²·K)], in the mean of the year: ISO 13370, slab on ground
 * (from memory). U = 2λ / (π B′ + d_t) · ln(π B′/d_t + 1), and λ / (0.457 B′ + d_t) where the floor is well insulated,
 * d_t ≥ B′. The two meet within 1 %.
 */
export function floorTransmittance(floor: GroundFloor): number {
  const { across, equivalent } = measures(floor);
  within('thickness of wall and films [m]', equivalent, Number.MIN_VALUE, Number.MAX_VALUE);
  const { conductivity } = floor;
  return equivalent < across
    ? ((2 * conductivity) / (Math.PI * across + equivalent)) * Math.log((Math.PI * across) / equivalent + 1)
    : conductivity / (0.457 * across + equivalent);
}

/**
 * What a board of insulation that stands at the edge of a floor saves, per length of edge [W/(m·K)]: ISO 13370, vertical
 * edge insulation (from memory). (λ/π) · [ln(2D/d_t + 1) − ln(2D/(d_t + d′) + 1)] with d′ = R λ.
 *
 * @param depth D to which the board reaches below the floor [m]
 * @param board its resistance, less that of the soil it takes the place of [m²·K/W]
 */
export function edgeInsulationSaves(floor: GroundFloor, depth: number, board: number): number {
  const { equivalent } = measures(floor);
  const { conductivity } = floor;
  const reach = (thickness: number): number => Math.log((2 * depth) / thickness + 1);
  return (conductivity / Math.PI) * (reach(equivalent) - reach(equivalent + board * conductivity));
}

/**
 * What passes along the rim of a strip of floor, per length of rim [W/(m·K)], to ground of another temperature beside it:
 * (λ/π) · ln(1 + W / (2 s)). The flow through half-space between two surfaces that meet in a line, λ ΔT / (π x) at a distance
 * x, added up from the middle of the strip to where the one temperature has gone over into the other. Films and what lies on
 * the ground are not in it; with s as the wall and 0.34 m²·K/W of films it is the floor of ISO 13370 within a seventh,
 * from 0.6 m up.
 *
 * @param width W of the strip [m]
 * @param transition s, width over which the surface changes from one temperature to the other [m]
 */
export const rimConductance = (width: number, transition: number, conductivity: number): number =>
  (conductivity * Math.log(1 + width / (2 * transition))) / Math.PI;
