import { factor, solveFactored } from './linear.ts';

/**
 * The unknowns for which a sum of squares is least, by the method of Levenberg and Marquardt: Gauss–Newton steps,
 * shortened towards steepest descent where they do not lower the sum (J. J. Moré, The Levenberg–Marquardt algorithm,
 * Lecture Notes in Mathematics 630, 1978; damping after H. B. Nielsen, IMM-REP-1999-05; both from memory).
 */
export interface LeastSquares {
  readonly x: Float64Array;
  /** At x. */
  readonly residuals: Float64Array;
  /** Of the residuals by the unknowns at x: one row for each residual. */
  readonly jacobian: readonly Float64Array[];
  readonly sum: number;
  readonly rounds: number;
}

export interface Problem {
  readonly residuals: (x: Float64Array) => Float64Array;
  /** One row for each residual. Left out: by differences over `step`. */
  readonly jacobian?: (x: Float64Array) => readonly Float64Array[];
  /** Step of the differences by which the Jacobian is found. */
  readonly step?: (value: number) => number;
}

/** Named error of a sum of squares for which no least was found. */
export class NoMinimum extends Error {
  override readonly name = 'NoMinimum';
}

/** Cube root of the rounding of a number: the step of central differences that loses least. */
const roundingStep = (value: number): number => 6e-6 * Math.max(Math.abs(value), 1e-3);

/** By central differences: exact for what is curved like a parabola. */
function byDifferences({ residuals, step = roundingStep }: Problem, x: Float64Array): Float64Array[] {
  const columns = Array.from(x, (value, column) => {
    const by = step(value);
    const at = (shifted: number): Float64Array => residuals(x.with(column, shifted));
    const [above, below] = [at(value + by), at(value - by)];
    return above.map((one, row) => (one - below[row]!) / (2 * by));
  });
  return Array.from(columns[0] ?? [], (_, row) => Float64Array.from(columns, (column) => column[row]!));
}

const sumOfSquares = (values: Float64Array): number => values.reduce((sum, one) => sum + one * one, 0);

/** Jᵀ J, row by row. */
export function normalMatrix(jacobian: readonly Float64Array[], size: number): Float64Array {
  const normal = new Float64Array(size * size);
  for (const row of jacobian) {
    for (let i = 0; i < size; i++) {
      for (let j = 0; j <= i; j++) normal[i * size + j]! += row[i]! * row[j]!;
    }
  }
  for (let i = 0; i < size; i++) for (let j = 0; j < i; j++) normal[j * size + i] = normal[i * size + j]!;
  return normal;
}

/** The inverse of a symmetric positive definite matrix, row by row. */
export function inverse(size: number, matrix: Float64Array): Float64Array {
  const factors = matrix.slice();
  factor(size, factors);
  const all = new Float64Array(size * size);
  for (let column = 0; column < size; column++) {
    const unit = new Float64Array(size);
    unit[column] = 1;
    solveFactored(size, factors, unit);
    for (let row = 0; row < size; row++) all[row * size + column] = unit[row]!;
  }
  return all;
}

/**
 * @param problem what is squared and summed
 * @param start where to look first
 * @param precision how small a step, in parts of the unknowns, ends the search
 * @param enough how small a fall of the sum, still to come, ends the search
 * @throws NoMinimum when the sum does not settle
 */
export function leastSquares(
  problem: Problem,
  start: ArrayLike<number>,
  { precision = 1e-10, enough = 0, mostRounds = 500 } = {},
): LeastSquares {
  const size = start.length;
  let x = Float64Array.from(start);
  let residuals = problem.residuals(x);
  let sum = sumOfSquares(residuals);
  // Each unknown is measured by the longest column that it has had, so that units do not matter.
  const scale = new Float64Array(size);
  let damping = 1e-3;
  let growth = 2;
  let jacobian: readonly Float64Array[] | undefined;
  let normal = new Float64Array();
  const downhill = new Float64Array(size);
  const matrix = new Float64Array(size * size);
  for (let round = 1; round <= mostRounds; round++) {
    if (!jacobian) {
      jacobian = problem.jacobian?.(x) ?? byDifferences(problem, x);
      normal = normalMatrix(jacobian, size) as Float64Array<ArrayBuffer>;
      downhill.fill(0);
      jacobian.forEach((row, index) => {
        for (let i = 0; i < size; i++) downhill[i]! -= row[i]! * residuals[index]!;
      });
      for (let i = 0; i < size; i++) scale[i] = Math.max(scale[i]!, Math.sqrt(normal[i * size + i]!));
    }
    // In scaled unknowns, which keeps the matrix as far from singular as it can be.
    const unit = (i: number): number => scale[i]! || 1;
    for (let i = 0; i < size; i++) {
      for (let j = 0; j < size; j++) matrix[i * size + j] = normal[i * size + j]! / (unit(i) * unit(j));
      matrix[i * size + i]! += damping;
    }
    factor(size, matrix);
    const step = downhill.map((one, i) => one / unit(i));
    solveFactored(size, matrix, step);
    // What the sum would fall by if the residuals were straight lines; and how far the step goes.
    let promised = 0;
    let [far, reach] = [0, 0];
    for (let i = 0; i < size; i++) {
      promised += step[i]! * (damping * step[i]! + downhill[i]! / unit(i));
      far += step[i]! ** 2;
      reach += (x[i]! * unit(i)) ** 2;
      step[i]! /= unit(i);
    }
    const small = Math.sqrt(far) <= precision * Math.sqrt(reach);
    if (small || promised <= enough) return { x, residuals, jacobian, sum, rounds: round };
    const next = x.map((value, i) => value + step[i]!);
    const nextResiduals = problem.residuals(next);
    const nextSum = sumOfSquares(nextResiduals);
    const gain = (sum - nextSum) / promised;
    if (gain > 0) {
      x = next;
      residuals = nextResiduals;
      sum = nextSum;
      jacobian = undefined;
      damping *= Math.max(1 / 3, 1 - (2 * gain - 1) ** 3);
      growth = 2;
    } else {
      damping *= growth;
      growth *= 2;
    }
  }
  throw new NoMinimum(`the sum of squares did not settle in ${mostRounds} rounds`);
}
