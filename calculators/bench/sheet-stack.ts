import { mixedFilm } from '../laws/forced-convection.ts';
import { exchangeThrough } from '../laws/layered-radiation.ts';
import { airGapFilm, horizontalFilm, levelGapFilm, verticalFilm } from '../laws/natural-convection.ts';
import { radiantFilm } from '../laws/radiation.ts';
import type { Sheet } from '../tables/films.ts';
import { factor, solveFactored } from './linear.ts';

/**
 * Long-wave reflectance of a plastic film [1]; what it neither lets through nor reflects it takes up and gives off
 * itself (assumption: 0.05, as of a smooth dielectric).
 */
const filmReflectance = 0.05;

/** Emissivity of what stands on either side of a sheet: plastic, wood, soil, leaves [1] (emissivity tables: 0.9). */
const surroundingsEmissivity = 0.9;

/** A sheet takes up and gives off at least this share of radiation, so that it is never without any [1] (assumption). */
const leastEmissivity = 0.05;

/** A sheet that is said to hold nothing back is taken for this thin a one, so that its two faces stay two [m²·K/W]. */
const leastResistance = 1e-6;

export interface SheetStack {
  readonly sheets: readonly Sheet[];
  /** Whether condensation lies on the innermost sheet. */
  readonly wet: boolean;
  /** Added to the transmittance of films that let heat radiation through [1]. */
  readonly longwave: number;
  /** `side`: hangs; `top`: lies over air that is warmer than what is above it. */
  readonly place: 'side' | 'top';
  /** Height of a side, or area over perimeter of a top [m]. */
  readonly size: number;
  /**
   * Film that a draught or the wind makes on the outermost face [W/(m²·K)], from `plateFlowFilm` or `windFilm`; still
   * air where it is not said.
   */
  readonly moving?: number;
}

/** Share of long-wave radiation that a sheet lets through [1]. */
export function transmittance(sheet: Sheet, wet: boolean, longwave: number): number {
  if (wet) return sheet.longwaveWet;
  return sheet.longwaveDry === 0
    ? 0
    : Math.min(0.95 - filmReflectance, Math.max(0, sheet.longwaveDry + longwave));
}

/** Air between two hung sheets [m]: "a finger apart" (assumption). */
export const gapBetweenSheets = 0.02;

/** How many face temperatures `stackTransmittance` keeps for a stack. */
export const faceCount = (stack: SheetStack): number => 2 * stack.sheets.length;

/**
 * What a stack needs to be worked out and no temperature changes: how its faces exchange radiation; and room to work
 * in, which a season would otherwise throw away a hundred thousand times.
 */
interface Workings {
  readonly exchange: Float64Array;
  /** Temperatures of the inside, the faces and the outside. */
  readonly levels: Float64Array;
  readonly matrix: Float64Array;
  readonly shares: Float64Array;
  readonly sharesBeyond: Float64Array;
  readonly fromInside: Float64Array;
}

const workings = new WeakMap<SheetStack, Workings>();

function workingsOf(stack: SheetStack): Workings {
  const known = workings.get(stack);
  if (known) return known;
  const layers = stack.sheets.map((sheet, index) => {
    const through = transmittance(sheet, stack.wet && index === 0, stack.longwave);
    const rest = 1 - filmReflectance - through;
    return {
      transmittance: through,
      emissivity: Math.max(leastEmissivity, Math.min(sheet.emissivity, rest)),
    };
  });
  const count = faceCount(stack);
  const made: Workings = {
    exchange: exchangeThrough(layers, surroundingsEmissivity),
    levels: new Float64Array(count + 2),
    matrix: new Float64Array(count * count),
    shares: new Float64Array(count),
    sharesBeyond: new Float64Array(count),
    fromInside: new Float64Array(count),
  };
  workings.set(stack, made);
  return made;
}

/**
 * Heat transmittance of sheets that hang or lie between two airs [W/(m²·K)]: both air films by the correlations of
 * natural convection with the sheets' own temperatures, the sheets, the air between them, and the long-wave radiation
 * that each face exchanges with every other, through films that let it pass.
 *
 * Still air inside, and outside too unless `moving` says otherwise. What stands inside is taken to be as warm as the air
 * there; what the sheets see outside is `beyond`: a roof under a clear sky is colder than the air below it. Temperatures
 * in °C.
 *
 * @param faces temperatures of the faces from inside to outside, two to a sheet, starting at `first`. They are read
 *   as the best guess (NaN: none yet) and overwritten by a better one: each call is one round towards them, so that
 *   a solver that calls again and again finds faces and airs together.
 * @returns what goes to the air outside and what goes to the surroundings beyond it
 */
export function stackTransmittances(
  stack: SheetStack,
  inside: number,
  outside: number,
  beyond: number,
  faces: Float64Array,
  first: number,
): { readonly toAir: number; readonly toBeyond: number } {
  const { exchange, levels, matrix, shares, sharesBeyond, fromInside } = workingsOf(stack);
  const count = faceCount(stack);
  levels[0] = inside;
  levels[count + 1] = beyond;
  for (let face = 0; face < count; face++) {
    const known = faces[first + face]!;
    // To start with the drop is spread evenly over the air films and gaps.
    levels[face + 1] = Number.isNaN(known)
      ? inside + ((Math.floor(face / 2) + 0.5) / stack.sheets.length) * (outside - inside)
      : known;
  }

  // Each face lies between the inside, the air outside and what is beyond: here are its shares of the first and the last.
  for (const one of [matrix, shares, sharesBeyond, fromInside]) one.fill(0);
  let [toAir, toBeyond] = [0, 0];
  for (let one = 0; one <= count; one++) {
    for (let other = one + 1; other <= count + 1; other++) {
      const shared = exchange[one * (count + 2) + other]!;
      const radiant = shared === 0 ? 0 : radiantFilm(shared, levels[one]!, levels[other]!);
      const conductance = other === one + 1 ? radiant + toNext(stack, one, count, levels, outside) : radiant;
      if (conductance === 0) continue;
      if (one === 0 && other > count) toBeyond += conductance;
      if (one > 0 && other > count) sharesBeyond[one - 1]! += radiant;
      if (one === 0 && other <= count) {
        fromInside[other - 1] = conductance;
        shares[other - 1] = conductance;
      }
      if (one > 0) matrix[(one - 1) * count + one - 1]! += conductance;
      if (other <= count) matrix[(other - 1) * count + other - 1]! += conductance;
      if (one > 0 && other <= count) matrix[(other - 1) * count + one - 1]! -= conductance;
    }
  }
  factor(count, matrix);
  solveFactored(count, matrix, shares);
  solveFactored(count, matrix, sharesBeyond);
  for (let face = 0; face < count; face++) {
    toBeyond += fromInside[face]! * sharesBeyond[face]!;
    toAir += fromInside[face]! * (1 - shares[face]! - sharesBeyond[face]!);
    faces[first + face] =
      outside + shares[face]! * (inside - outside) + sharesBeyond[face]! * (beyond - outside);
  }
  return { toAir, toBeyond };
}

/** The same as one [W/(m²·K)], where what is outside is as warm as the air there. */
export function stackTransmittance(
  stack: SheetStack,
  inside: number,
  outside: number,
  faces: Float64Array,
  first: number,
): number {
  const { toAir, toBeyond } = stackTransmittances(stack, inside, outside, outside, faces, first);
  return toAir + toBeyond;
}

/** Through the air from one level to the next, and through a sheet from one of its faces to the other [W/(m²·K)]. */
function toNext(
  stack: SheetStack,
  one: number,
  count: number,
  levels: Float64Array,
  outside: number,
): number {
  if (one % 2 === 1) return 1 / Math.max(stack.sheets[(one - 1) / 2]!.resistance, leastResistance);
  const [here, next] = [levels[one]!, levels[one + 1]!];
  if (one === 0) return airFilm(stack, next, here, 'down');
  if (one === count) return mixedFilm(airFilm(stack, here, outside, 'up'), stack.moving ?? 0);
  return gapFilm(stack, here, next);
}

const airFilm = ({ place, size }: SheetStack, face: number, air: number, facing: 'up' | 'down'): number =>
  place === 'side' ? verticalFilm(size, face, air) : horizontalFilm(size, face, air, facing);

const gapFilm = ({ place, size }: SheetStack, inner: number, outer: number): number =>
  place === 'side'
    ? airGapFilm(gapBetweenSheets, size, inner, outer)
    : levelGapFilm(gapBetweenSheets, inner, outer);

/**
 * The part of it that is long-wave radiation straight through all the sheets, from what stands inside to what stands
 * outside [W/(m²·K)]. Temperatures in °C.
 */
export function straightThrough(stack: SheetStack, inside: number, outside: number): number {
  const { exchange } = workingsOf(stack);
  return radiantFilm(exchange[faceCount(stack) + 1]!, inside, outside);
}

/** Faces at rest move less than this from one round to the next [K]. */
const atRest = 1e-9;
const mostRounds = 200;

/** Heat transmittance of such sheets between two airs [W/(m²·K)], with their faces at rest. Temperatures in °C. */
export function restingTransmittance(stack: SheetStack, inside: number, outside: number): number {
  const faces = new Float64Array(faceCount(stack)).fill(NaN);
  const before = new Float64Array(faces.length);
  for (let round = 0; round < mostRounds; round++) {
    before.set(faces);
    const transmitted = stackTransmittance(stack, inside, outside, faces, 0);
    if (faces.every((face, index) => Math.abs(face - before[index]!) < atRest)) return transmitted;
  }
  return stackTransmittance(stack, inside, outside, faces, 0);
}
