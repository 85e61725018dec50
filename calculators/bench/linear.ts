/**
 * Solving the linear equations of a network. Its matrix is symmetric and, as every node hangs on a boundary or holds
 * heat, positive definite, so that it is factored as L D Lᵀ without pivoting. Plain loops over plain arrays: a night
 * solves ten thousand of these.
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
