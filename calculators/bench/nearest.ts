/** How many letters have to be put in, taken out, changed or swapped with their neighbour to get from a to b. */
function distance(a: string, b: string): number {
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const next = [row];
    for (let column = 1; column <= b.length; column++) {
      const same = a[row - 1] === b[column - 1] ? 0 : 1;
      const swapped =
        row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]
          ? (before[column - 2] ?? Infinity) + 1
          : Infinity;
      next[column] = Math.min(
        (last[column] ?? Infinity) + 1,
        (next[column - 1] ?? Infinity) + 1,
        (last[column - 1] ?? Infinity) + same,
        swapped,
      );
    }
    before = last;
    last = next;
  }
  return last[b.length] ?? Infinity;
}

const plain = (name: string): string => name.toLowerCase().replace(/[\s_-]/gu, '');

/**
 * The name that someone most likely meant: the one with the fewest slips of the pen, if there are no more slips than
 * one in three letters. Upper case, blanks, hyphens and underscores do not count.
 */
export function nearestName(written: string, names: readonly string[]): string | undefined {
  // A name of the bench has no more than some thirty letters; longer words are not worth comparing.
  const found = plain(written.slice(0, 60));
  let nearest: { readonly name: string; readonly slips: number } | undefined;
  for (const name of names) {
    const slips = distance(found, plain(name));
    const most = Math.floor(Math.max(found.length, plain(name).length) / 3);
    if (slips <= most && (!nearest || slips < nearest.slips)) nearest = { name, slips };
  }
  return nearest?.name;
}
