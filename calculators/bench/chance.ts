/**
 * Chance out of a seed: the same seed gives the same sequence everywhere. Mulberry32, a 32-bit generator in the public
 * domain (T. Ettinger, from memory): good enough to shuffle a few hundred members, not for secrets.
 *
 * @returns numbers from 0 up to, but not including, 1
 */
export function chanceFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** The numbers from 0 to count − 1 in an order of chance (Fisher and Yates). */
export function shuffled(count: number, chance: () => number): number[] {
  const order = Array.from({ length: count }, (_, index) => index);
  for (let index = count - 1; index > 0; index--) {
    const other = Math.floor(chance() * (index + 1));
    [order[index], order[other]] = [order[other]!, order[index]!];
  }
  return order;
}

/**
 * The value that a standard normal quantity is below with this probability: rational approximation of P. J. Acklam
 * (from memory), off by no more than 1.2e-9 of the value.
 *
 * @param probability between 0 and 1, neither included
 */
export function normalQuantile(probability: number): number {
  const tail = 0.02425;
  if (probability > 1 - tail) return -normalQuantile(1 - probability);
  const over = (numbers: readonly number[], x: number): number =>
    numbers.reduce((sum, one) => sum * x + one, 0);
  if (probability < tail) {
    const q = Math.sqrt(-2 * Math.log(probability));
    return (
      over(
        [
          -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734,
          4.374664141464968, 2.938163982698783,
        ],
        q,
      ) / over([7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1], q)
    );
  }
  const q = probability - 0.5;
  const r = q * q;
  return (
    (q *
      over(
        [
          -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2,
          -3.066479806614716e1, 2.506628277459239,
        ],
        r,
      )) /
    over(
      [
        -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1,
        -1.328068155288572e1, 1,
      ],
      r,
    )
  );
}
