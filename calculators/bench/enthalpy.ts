/**
 * Heat held by a node against its temperature, as a line of straight pieces. A node that freezes has a flat piece:
 * much heat leaves it while its temperature hardly moves. Keeping account in enthalpy, not in temperature, loses no
 * heat when a piece ends within a step. Temperatures in °C, enthalpies in J, zero at 0 °C.
 */
export interface EnthalpyCurve {
  /** Corners, rising; the first and the last piece go on beyond. */
  readonly temperatures: readonly number[];
  readonly enthalpies: readonly number[];
}

/** A node that does not freeze: one straight line. Capacity in J/K. */
export const sensible = (capacity: number): EnthalpyCurve => ({
  temperatures: [0, 1],
  enthalpies: [0, capacity],
});

/** A curve through corners, given in any order. */
export function curveThrough(corners: readonly { readonly t: number; readonly h: number }[]): EnthalpyCurve {
  const rising = [...corners].sort((one, other) => one.t - other.t);
  return { temperatures: rising.map(({ t }) => t), enthalpies: rising.map(({ h }) => h) };
}

/** The piece that holds a value of one of the two axes: the index of its lower corner. */
function pieceOf(axis: readonly number[], value: number): number {
  let piece = 0;
  while (piece < axis.length - 2 && value >= (axis[piece + 1] ?? Infinity)) piece++;
  return piece;
}

function along(from: readonly number[], to: readonly number[], value: number): number {
  const piece = pieceOf(from, value);
  const [a, b] = [from[piece] ?? 0, from[piece + 1] ?? 1];
  const [c, d] = [to[piece] ?? 0, to[piece + 1] ?? 1];
  return c + ((value - a) * (d - c)) / (b - a);
}

export const enthalpyAt = (curve: EnthalpyCurve, temperature: number): number =>
  along(curve.temperatures, curve.enthalpies, temperature);

export const temperatureAt = (curve: EnthalpyCurve, enthalpy: number): number =>
  along(curve.enthalpies, curve.temperatures, enthalpy);

/** A straight piece of a curve: H = enthalpy + capacity (T − temperature). */
export interface EnthalpyPiece {
  readonly temperature: number;
  readonly enthalpy: number;
  /** [J/K] */
  readonly capacity: number;
}

/** The pieces of a curve, from the coldest up. */
export const piecesOf = ({ temperatures: t, enthalpies: h }: EnthalpyCurve): readonly EnthalpyPiece[] =>
  t.slice(1).map((above, piece) => ({
    temperature: t[piece]!,
    enthalpy: h[piece]!,
    capacity: (h[piece + 1]! - h[piece]!) / (above - t[piece]!),
  }));

/** Index of the piece that holds a temperature. */
export const pieceAtTemperature = ({ temperatures }: EnthalpyCurve, temperature: number): number =>
  pieceOf(temperatures, temperature);

/** Heat capacity at a temperature [J/K]. */
export const capacityAt = (curve: EnthalpyCurve, temperature: number): number =>
  piecesOf(curve)[pieceAtTemperature(curve, temperature)]!.capacity;
