/**
 * Moves positions along a line as little as needed until neighbours are a least distance apart, within limits. The
 * order is kept. Where the room is too small for all, they are spaced evenly over it.
 */
export function spread(wanted: readonly number[], apart: number, from: number, to: number): number[] {
  const order = wanted.map((_, index) => index).sort((a, b) => (wanted[a] ?? 0) - (wanted[b] ?? 0) || a - b);
  const step = Math.min(apart, (to - from) / Math.max(1, wanted.length - 1));
  const placed = wanted.map((value) => Math.min(Math.max(value, from), to));
  const move = (index: number, value: number) => {
    placed[index] = value;
  };
  // Once forward, pushing each one clear of the one before it; once back from the far limit.
  order.forEach((index, rank) => {
    const before = order[rank - 1];
    if (before !== undefined) move(index, Math.max(placed[index] ?? from, (placed[before] ?? from) + step));
  });
  order.toReversed().forEach((index, rank, back) => {
    const after = back[rank - 1];
    const limit = after === undefined ? to : (placed[after] ?? to) - step;
    move(index, Math.min(placed[index] ?? to, limit));
  });
  return placed;
}
