import { airGapFilm, horizontalFilm, levelGapFilm, verticalFilm } from '../laws/natural-convection.ts';
import { exchangeEmissivity, radiantFilm } from '../laws/radiation.ts';
import type { Sheet } from '../tables/films.ts';

/**
 * Long-wave reflectance of a plastic film [1]; what it neither lets through nor reflects it takes up and gives off
 * itself (assumption: 0.05, as of a smooth dielectric).
 */
const filmReflectance = 0.05;

/** Emissivity of what stands on either side of a sheet: plastic, wood, soil, leaves [1] (emissivity tables: 0.9). */
const surroundingsEmissivity = 0.9;

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
 * Heat transmittance of sheets that hang or lie between two airs [W/(m²·K)]: both air films by the correlations of
 * natural convection with the sheet's own temperature, the sheets, the air between them, and in parallel the
 * long-wave radiation that passes straight through dry films.
 *
 * Still air on both sides; wind over a cover in an open house would add to it. Temperatures in °C.
 *
 * @param faces temperatures of the faces from inside to outside, two to a sheet, starting at `first`. They are read
 *   as the best guess (NaN: none yet) and overwritten by a better one: each call is one round towards them, so that
 *   a solver that calls again and again finds faces and airs together.
 */
export function stackTransmittance(
  stack: SheetStack,
  inside: number,
  outside: number,
  faces: Float64Array,
  first: number,
): number {
  const { sheets, wet, longwave, place, size } = stack;
  const last = sheets.length - 1;
  const face = (index: number): number => {
    const known = faces[first + index] ?? NaN;
    // To start with the drop is spread evenly over the air films and gaps.
    return Number.isNaN(known)
      ? inside + ((Math.floor(index / 2) + 0.5) / sheets.length) * (outside - inside)
      : known;
  };
  const film = (surface: number, air: number, facing: 'up' | 'down'): number =>
    place === 'side' ? verticalFilm(size, surface, air) : horizontalFilm(size, surface, air, facing);
  const emissivityOf = (index: number): number => {
    const sheet = sheets[index];
    if (!sheet) return surroundingsEmissivity;
    const rest = 1 - filmReflectance - transmittance(sheet, wet && index === 0, longwave);
    return Math.max(0.05, Math.min(sheet.emissivity, rest));
  };

  const resistances: number[] = [];
  let through = 1;
  sheets.forEach((sheet, index) => {
    through *= transmittance(sheet, wet && index === 0, longwave);
    const own = emissivityOf(index);
    const [innerFace, outerFace] = [face(2 * index), face(2 * index + 1)];
    if (index === 0) {
      const radiant = radiantFilm(exchangeEmissivity(own, surroundingsEmissivity), inside, innerFace);
      resistances.push(1 / (film(innerFace, inside, 'down') + radiant));
    }
    resistances.push(sheet.resistance);
    if (index < last) {
      const next = face(2 * index + 2);
      const still =
        place === 'side'
          ? airGapFilm(gapBetweenSheets, size, outerFace, next)
          : levelGapFilm(gapBetweenSheets, outerFace, next);
      const radiant = radiantFilm(exchangeEmissivity(own, emissivityOf(index + 1)), outerFace, next);
      resistances.push(1 / (still + radiant));
    } else {
      const radiant = radiantFilm(exchangeEmissivity(own, surroundingsEmissivity), outerFace, outside);
      resistances.push(1 / (film(outerFace, outside, 'up') + radiant));
    }
  });
  const total = resistances.reduce((sum, one) => sum + one, 0);
  let level = inside;
  resistances.slice(0, -1).forEach((one, index) => {
    level += ((outside - inside) * one) / total;
    faces[first + index] = level;
  });
  const straight = radiantFilm(
    exchangeEmissivity(surroundingsEmissivity, surroundingsEmissivity),
    inside,
    outside,
  );
  return 1 / total + through * straight;
}
