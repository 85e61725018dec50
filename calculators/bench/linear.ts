/**
 * Solving small systems of linear equations. Plain loops over plain arrays: a night solves ten thousand of these.
 *
 * `factor` is for symmetric positive definite matrices, which it takes apart as L D Lᵀ. `eliminate` is for the network of
 * a bench, through which air moves one way: nothing of it is symmetric, but no node gives more to its neighbours than
 * stands on its own place of the diagonal, so that it needs no pivoting either (row diagonally dominant: J. H. Wilkinson,
 * J. ACM 8, 1961, from memory).
 */

/** Replaces the lower half of a symmetric matrix (row by row, size × size) by its factors L and, inverted, D. */
export function factor(size: number, A: Float64Array): void {
  for (let row = 0; row < size; row++) {
    const first = row * size;
    let pivot = A[first + row]!;
    for (let column = 0; column < row; column++) {
      const above = column * size;
      // L times D so far; the division by D comes when all of the row is known to be needed no more.
      let entry = A[first + column]!;
      for (let k = 0; k < column; k++) entry -= A[first + k]! * A[above + k]!;
      A[first + column] = entry;
    }
    for (let column = 0; column < row; column++) {
      const scaled = A[first + column]!;
      const entry = scaled * A[column * size + column]!;
      pivot -= entry * scaled;
      A[first + column] = entry;
    }
    A[first + row] = 1 / pivot;
  }
}

/** Replaces b by the solution of A x = b, with A as `factor` left it. */
export function solveFactored(size: number, factors: Float64Array, b: Float64Array): void {
  for (let row = 1; row < size; row++) {
    const first = row * size;
    let value = b[row]!;
    for (let k = 0; k < row; k++) value -= factors[first + k]! * b[k]!;
    b[row] = value;
  }
  for (let row = 0; row < size; row++) b[row]! *= factors[row * size + row]!;
  for (let row = size - 1; row > 0; row--) {
    const first = row * size;
    const value = b[row]!;
    // Each solved value is taken out of the rows above at once, which runs along a row of the factors.
    for (let k = 0; k < row; k++) b[k]! -= factors[first + k]! * value;
  }
}

/** Replaces a row diagonally dominant matrix (row by row, size × size) by its factors L and U, U's diagonal inverted. */
export function eliminate(size: number, A: Float64Array): void {
  for (let row = 0; row < size; row++) {
    const first = row * size;
    for (let k = 0; k < row; k++) {
      const share = A[first + k]! * A[k * size + k]!;
      A[first + k] = share;
      if (share === 0) continue;
      for (let column = k + 1; column < size; column++) A[first + column]! -= share * A[k * size + column]!;
    }
    A[first + row] = 1 / A[first + row]!;
  }
}

/** Replaces b by the solution of A x = b, with A as `eliminate` left it. */
export function solveEliminated(size: number, factors: Float64Array, b: Float64Array): void {
  for (let row = 1; row < size; row++) {
    const first = row * size;
    let value = b[row]!;
    for (let k = 0; k < row; k++) value -= factors[first + k]! * b[k]!;
    b[row] = value;
  }
  for (let row = size - 1; row >= 0; row--) {
    const first = row * size;
    let value = b[row]!;
    for (let k = row + 1; k < size; k++) value -= factors[first + k]! * b[k]!;
    b[row] = value * factors[first + row]!;
  }
}

/**
 * The factors of `eliminate` without their zeros: few parts of a bench touch, so that two thirds of them are. A step asks
 * for many solutions from one set of factors; each is the same to the last digit as that of `solveEliminated`.
 */
export interface Packed {
  /** Where the entries of a row begin: those under the diagonal of row 0, 1, …, then those over it of row 0, 1, … */
  readonly starts: Int32Array;
  readonly columns: Int32Array;
  readonly values: Float64Array;
  /** Of U, inverted. */
  readonly diagonal: Float64Array;
}

export const roomForPacked = (size: number): Packed => ({
  starts: new Int32Array(2 * size + 1),
  columns: new Int32Array(size * size),
  values: new Float64Array(size * size),
  diagonal: new Float64Array(size),
});

/** Takes the zeros out of factors as `eliminate` left them. */
export function pack(size: number, factors: Float64Array, into: Packed): void {
  const { starts, columns, values, diagonal } = into;
  let count = 0;
  const take = (first: number, from: number, to: number): void => {
    for (let column = from; column < to; column++) {
      const value = factors[first + column]!;
      if (value === 0) continue;
      columns[count] = column;
      values[count++] = value;
    }
  };
  for (let row = 0; row < size; row++) {
    starts[row] = count;
    take(row * size, 0, row);
    diagonal[row] = factors[row * size + row]!;
  }
  for (let row = 0; row < size; row++) {
    starts[size + row] = count;
    take(row * size, row + 1, size);
  }
  starts[2 * size] = count;
}

/** Replaces b by the solution of A x = b, with the factors of A as `pack` left them. */
export function solvePacked(size: number, packed: Packed, b: Float64Array): void {
  const { starts, columns, values, diagonal } = packed;
  for (let row = 1; row < size; row++) {
    let value = b[row]!;
    for (let at = starts[row]!; at < starts[row + 1]!; at++) value -= values[at]! * b[columns[at]!]!;
    b[row] = value;
  }
  for (let row = size - 1; row >= 0; row--) {
    let value = b[row]!;
    const end = starts[size + row + 1]!;
    for (let at = starts[size + row]!; at < end; at++) value -= values[at]! * b[columns[at]!]!;
    b[row] = value * diagonal[row]!;
  }
}
