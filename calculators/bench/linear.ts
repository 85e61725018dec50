/**
 * Solving the linear equations of a network. Its matrix is symmetric and, as every node hangs on a boundary or holds
 * heat, positive definite, so that it is factored as L D Lᵀ without pivoting.
 */

/** Replaces the lower half of a symmetric matrix (row by row, size × size) by its factors L and D. */
export function factor(size: number, A: Float64Array): void {
  const at = (index: number): number => A[index] ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = at(column * size + column);
    for (let k = 0; k < column; k++) pivot -= at(column * size + k) ** 2 * at(k * size + k);
    A[column * size + column] = pivot;
    for (let row = column + 1; row < size; row++) {
      let entry = at(row * size + column);
      for (let k = 0; k < column; k++) {
        entry -= at(row * size + k) * at(column * size + k) * at(k * size + k);
      }
      A[row * size + column] = entry / pivot;
    }
  }
}

/** Replaces b by the solution of A x = b, with A as `factor` left it. */
export function solveFactored(size: number, factors: Float64Array, b: Float64Array): void {
  const at = (row: number, column: number): number => factors[row * size + column] ?? 0;
  for (let row = 0; row < size; row++) {
    let value = b[row] ?? 0;
    for (let k = 0; k < row; k++) value -= at(row, k) * (b[k] ?? 0);
    b[row] = value;
  }
  for (let row = 0; row < size; row++) b[row] = (b[row] ?? 0) / at(row, row);
  for (let row = size - 1; row >= 0; row--) {
    let value = b[row] ?? 0;
    for (let k = row + 1; k < size; k++) value -= at(k, row) * (b[k] ?? 0);
    b[row] = value;
  }
}
