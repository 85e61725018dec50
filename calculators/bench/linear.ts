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
