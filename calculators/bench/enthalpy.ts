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

/** Slope of the piece that holds an enthalpy [J/K]. */
export function capacityAt(curve: EnthalpyCurve, enthalpy: number): number {
  const piece = pieceOf(curve.enthalpies, enthalpy);
  const { temperatures: t, enthalpies: h } = curve;
  return ((h[piece + 1] ?? 1) - (h[piece] ?? 0)) / ((t[piece + 1] ?? 1) - (t[piece] ?? 0));
}
