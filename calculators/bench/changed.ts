import type { Situation } from '../calculator.ts';
import type { Bench } from './fields.ts';

/** Some fields of a bench, by group. */
export type Changes = { readonly [G in keyof Bench]?: Partial<Bench[G]> };

/** The same situation with some fields of the bench changed. */
export function changed(situation: Situation, changes: Changes): Situation {
  const bench = Object.fromEntries(
    Object.entries(situation.bench).map(([group, members]) => [
      group,
      { ...members, ...changes[group as keyof Bench] },
    ]),
  ) as unknown as Bench;
  return { ...situation, bench };
}
