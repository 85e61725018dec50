import type { Group } from './yaml-tree.ts';

/** The format of the bench files that this guide writes. A file without the line is of format 1, the first. */
export const currentFormat = 1;

/** The name of the list of fields that a file holds but nobody has set. */
export const assumedKey = 'assumed';

/** Turns a file of one format into one of the next: moves and renames values, keeps their lines. */
export type Migration = (tree: Group) => Group;

/** The step from each older format to the one after it. */
const migrations: Readonly<Record<number, Migration>> = {};

/** Takes a file step by step from its own format to the current one. */
export function migrate(
  tree: Group,
  from: number,
  steps: Readonly<Record<number, Migration>> = migrations,
  to: number = currentFormat,
): Group {
  let now = tree;
  for (let format = from; format < to; format++) {
    const step = steps[format];
    if (!step) throw new RangeError(`no migration from format ${format} to ${format + 1}`);
    now = step(now);
  }
  return now;
}
