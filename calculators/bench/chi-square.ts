/**
 * The complementary error function: 0.1 % and better for what is shown here (Abramowitz and Stegun, Handbook of
 * Mathematical Functions, 7.1.26, absolute error below 1.5e-7, from memory). For x ≥ 0.
 */
function complementaryError(x: number): number {
  const t = 1 / (1 + 0.3275911 * x);
  const sum =
    t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
  return sum * Math.exp(-x * x);
}

/**
 * Chance that the squares of `count` independent standard normal errors add up to more than `sum` [1] (Abramowitz and
 * Stegun, 26.4.4 and 26.4.5, from memory).
 */
export function chiSquareTail(sum: number, count: number): number {
  const half = Math.max(0, sum) / 2;
  let degrees = count % 2 === 0 ? 2 : 1;
  let tail = degrees === 2 ? Math.exp(-half) : complementaryError(Math.sqrt(half));
  // (sum / 2)^(degrees / 2) e^(−sum / 2) / Γ(degrees / 2 + 1)
  let term =
    degrees === 2 ? half * Math.exp(-half) : Math.sqrt(half) * Math.exp(-half) * (2 / Math.sqrt(Math.PI));
  for (; degrees < count; degrees += 2) {
    tail += term;
    term *= half / (degrees / 2 + 1);
  }
  return Math.min(1, tail);
}
