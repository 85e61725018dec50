import type { Celsius } from '../quantities/temperature.ts';
import { cylinderFilm } from '../laws/natural-convection.ts';
import { radiantFilm } from '../laws/radiation.ts';
import type { Pipe } from '../tables/pipes.ts';

/**
 * A heating cable: how much heat it gives, how that divides between the fluid and the air, and how warm its sheath
 * gets. Per length of cable, in SI; temperatures in °C.
 */
export interface CableLabel {
  readonly kind: 'constant' | 'self-regulating';
  /** On the label [W/m]; of a self-regulating cable at 10 °C. */
  readonly powerPerLength: number;
  /** By how much a self-regulating cable gives less for each degree [W/(m·K)]. */
  readonly slope: number;
  /**
   * What the sheet gives at several pipe temperatures, from cold to warm, two at least: pipe temperature [°C] and output
   * [W/m], which never rises. It takes the place of the line of a self-regulating cable.
   */
  readonly table?: readonly (readonly [pipe: Celsius, output: number])[];
}

/** The temperature at which sheets state the power of a self-regulating cable [°C]: 50 °F. */
export const labelTemperature: Celsius = 10;

/** Power of the whole cable as labelled [W]. */
export const ratedPower = (cable: { readonly powerPerLength: number; readonly length: number }): number =>
  cable.powerPerLength * cable.length;

/** A stretch of an output line: from `from` [°C] up it gives `power` [W/m] less `slope` [W/(m·K)] for each degree. */
interface Stretch {
  readonly from: Celsius;
  readonly power: number;
  readonly slope: number;
}

/** The output line as straight stretches from cold to warm; the first and the last go on beyond their ends. */
function stretchesOf({ powerPerLength, slope, table }: CableLabel): readonly Stretch[] {
  if (table === undefined) return [{ from: labelTemperature, power: powerPerLength, slope }];
  return table.slice(1).map(([warmer, less], index) => {
    const [from, power] = table[index]!;
    return { from, power, slope: (power - less) / (warmer - from) };
  });
}

/**
 * The output line of a cable [W/m] at a pipe temperature t [°C]: P₁₀ − s (t − 10), or straight lines through the table of its
 * sheet and on beyond its ends; never below zero. Good over some −20 to 65 °C, where sheets print it, and measured on metal
 * pipe. A constant cable gives the same at every temperature.
 */
export function outputLine(cable: CableLabel, t: Celsius): number {
  if (cable.kind === 'constant') return cable.powerPerLength;
  const stretches = stretchesOf(cable);
  const { from, power, slope } = stretches.findLast((one) => one.from <= t) ?? stretches[0]!;
  return Math.max(0, power - slope * (t - from));
}

/**
 * How well a self-regulating cable was cooled when its output line was measured, on a metal pipe [W/(m·K)]
 * (assumption: 200 W/(m²·K) over a flat side 10 mm wide). On plastic the same cable runs warmer and so gives less.
 */
const conductanceOnMetal = 2;

/**
 * Output [W/m] of a cable that is joined by `conductance` [W/(m·K)] to surroundings of temperature t [°C]. With the
 * sheath at Ts and the output line drawn against the metal pipe, P = P₁₀ − s (Ts − P/G_metal − 10) and
 * P = G (Ts − t); together P = line(t) · G / (G + s (1 − G/G_metal)), on the stretch of the line that the metal pipe of the
 * same output would be on. A cable cooled better than on metal is taken as on metal.
 */
function outputIn(cable: CableLabel, conductance: number, t: Celsius): number {
  if (cable.kind === 'constant') return cable.powerPerLength;
  const hindered = Math.max(0, 1 - conductance / conductanceOnMetal);
  const stretches = stretchesOf(cable);
  let output = 0;
  for (let index = 0; index < stretches.length; index++) {
    const { from, power, slope } = stretches[index]!;
    output = ((power - slope * (t - from)) * conductance) / (conductance + slope * hindered);
    const asOnMetal = t + (output * hindered) / conductance;
    if (asOnMetal <= (stretches[index + 1]?.from ?? Infinity)) break;
  }
  return Math.max(0, output);
}

/** Emissivity of a plastic or rubber sheath [1]: 0.95 opaque plastic (infrared thermometry tables), rounded down. */
export const sheathEmissivity = 0.9;

/** Emissivity of foil tape that has been handled [1]: polished aluminium 0.05 (same tables), doubled (assumption). */
export const foilEmissivity = 0.1;

/** Power at which the air film is taken when the caller does not say [W/m] (assumption: 5 W/ft, a common class). */
const commonPower = 16;

/** A cable on a water-filled pipe. */
export interface CableOnPipe {
  readonly pipe: Pick<Pipe, 'outsideDiameter' | 'wall' | 'conductivity'>;
  readonly cableDiameter: number;
  /** Contact conductance between cable and pipe, per area of a strip as wide as the cable [W/(m²·K)]. */
  readonly contact: number;
  /** How many contact widths wide the heat has spread where it leaves the wall [1]. */
  readonly spreading: number;
  /** Film between the wall and the fluid [W/(m²·K)]; about 5 in a loop that is empty by mistake. */
  readonly insideFilm: number;
  /** Temperature of the fluid and of the air around the cable [°C]. */
  readonly fluid: Celsius;
  readonly air: Celsius;
  /** What the cable gives [W/m], 16 where it is not said; it decides how lively the air at the sheath is. */
  readonly powerPerLength?: number;
  /** Of what faces the air [1]: the sheath's own, or that of foil tape. */
  readonly emissivity?: number;
}

export interface CableSplit {
  /** Sheath to fluid, per length of cable [W/(m·K)]. */
  readonly toLoop: number;
  /** Sheath to air, per length of cable [W/(m·K)]. */
  readonly toAir: number;
}

/**
 * Sheath to fluid [W/(m·K)]: contact over a strip as wide as the cable, in series with wall and inside film over a
 * strip that is wider by the spreading factor. No temperature changes it.
 */
export function contactConductance(cable: Omit<CableOnPipe, 'fluid' | 'air'>): number {
  const { pipe, cableDiameter, contact, spreading, insideFilm } = cable;
  // Heat from neighbouring turns shares the wall; a strip cannot be wider than the pipe is around.
  const spread = Math.min(spreading * cableDiameter, Math.PI * pipe.outsideDiameter);
  const wall = pipe.wall / (pipe.conductivity * spread);
  return 1 / (1 / (contact * cableDiameter) + wall + 1 / (insideFilm * spread));
}

/** Perimeter of a round cable less the strip on which it touches the pipe [m]. */
const exposedPerimeter = (cableDiameter: number): number => (Math.PI - 1) * cableDiameter;

/**
 * Sheath to air [W/(m·K)]: natural convection of a thin level cylinder (Churchill and Chu) and radiation to
 * surroundings at the air's temperature, over a perimeter [m].
 */
export const airConductance = (
  cableDiameter: number,
  perimeter: number,
  emissivity: number,
  sheath: Celsius,
  air: Celsius,
): number => perimeter * (cylinderFilm(cableDiameter, sheath, air) + radiantFilm(emissivity, sheath, air));

/** The sheath has settled when a round moves it by less than this [K]; each round leaves about a quarter of the error. */
const settled = 1e-4;
const mostRounds = 50;

interface Settled {
  readonly sheath: Celsius;
  readonly power: number;
  readonly toAir: number;
}

/** The sheath temperature at which the cable gives off what it makes: by contact to `fluid`, by `perimeter` to `air`. */
function settle(
  powerAt: (conductance: number, surroundings: Celsius) => number,
  toLoop: number,
  fluid: Celsius,
  perimeter: number,
  cableDiameter: number,
  emissivity: number,
  air: Celsius,
  guess: Celsius = NaN,
): Settled {
  let sheath = Number.isNaN(guess) ? Math.max(fluid, air) : guess;
  let power = 0;
  let toAir = 0;
  for (let round = 0; round < mostRounds; round++) {
    const before = sheath;
    toAir = airConductance(cableDiameter, perimeter, emissivity, sheath, air);
    const conductance = toLoop + toAir;
    const surroundings = (toLoop * fluid + toAir * air) / conductance;
    power = powerAt(conductance, surroundings);
    sheath = surroundings + power / conductance;
    if (!Number.isNaN(guess) || Math.abs(sheath - before) < settled) break;
  }
  return { sheath, power, toAir };
}

/**
 * Where the heat of a cable on a pipe goes: P = toLoop (Ts − fluid) + toAir (Ts − air), Ts the sheath's temperature.
 * The share that reaches the fluid, when fluid and air are alike, is toLoop / (toLoop + toAir).
 */
export function cableSplit(cable: CableOnPipe): CableSplit {
  const toLoop = contactConductance(cable);
  const { toAir } = settle(
    () => cable.powerPerLength ?? commonPower,
    toLoop,
    cable.fluid,
    exposedPerimeter(cable.cableDiameter),
    cable.cableDiameter,
    cable.emissivity ?? sheathEmissivity,
    cable.air,
  );
  return { toLoop, toAir };
}

export interface Sheath extends CableSplit {
  /** Temperature of the sheath [°C]. */
  readonly sheath: Celsius;
  /** Temperature of the pipe's outer face under the cable [°C]. */
  readonly pipeUnderCable: Celsius;
  /** What the cable gives [W/m]; less than its label where it regulates itself. */
  readonly powerPerLength: number;
  /** toLoop / (toLoop + toAir) [1]. */
  readonly fluidShare: number;
}

/**
 * How warm a cable gets on a pipe, and what it gives there.
 *
 * @param guess a temperature of the sheath to take a single round from, for whoever asks again and again with fluid
 *   and air a little further on each time; without it, as many rounds as it takes [°C]
 */
export function sheathTemperature(
  label: CableLabel,
  cable: Omit<CableOnPipe, 'powerPerLength'>,
  guess: Celsius = NaN,
): Sheath {
  const toLoop = contactConductance(cable);
  const { sheath, power, toAir } = settle(
    (conductance, surroundings) => outputIn(label, conductance, surroundings),
    toLoop,
    cable.fluid,
    exposedPerimeter(cable.cableDiameter),
    cable.cableDiameter,
    cable.emissivity ?? sheathEmissivity,
    cable.air,
    guess,
  );
  const intoPipe = toLoop * (sheath - cable.fluid);
  return {
    sheath,
    pipeUnderCable: sheath - intoPipe / (cable.contact * cable.cableDiameter),
    powerPerLength: power,
    toLoop,
    toAir,
    fluidShare: toLoop / (toLoop + toAir),
  };
}

export interface CableInAir {
  readonly cableDiameter: number;
  /** [°C] */
  readonly air: Celsius;
  readonly emissivity?: number;
}

const inAir = (label: CableLabel, { cableDiameter, air, emissivity }: CableInAir, share: number): Settled =>
  settle(
    (conductance, surroundings) => outputIn(label, conductance, surroundings),
    0,
    air,
    share * Math.PI * cableDiameter,
    cableDiameter,
    emissivity ?? sheathEmissivity,
    air,
  );

/** Sheath temperature [°C] of a cable that hangs free of the pipe, cooled by still air alone. */
export const sheathInFreeAir = (label: CableLabel, cable: CableInAir): Celsius =>
  inAir(label, cable, 1).sheath;

/**
 * Sheath temperature [°C] where two cables touch or cross: each hides half of the other's surface, and the upper one has
 * left the pipe, so that it is cooled by still air over half its surface. An upper estimate: it leaves out what the
 * cable's own metal carries away along it, which helps at a single crossing and not at all where cables lie bunched.
 * No published source; the direction (a crossing is the hottest place) is that of all sheets that forbid it.
 */
export const sheathAtCrossing = (label: CableLabel, cable: CableInAir): Celsius =>
  inAir(label, cable, 0.5).sheath;
