import type { HowSure } from '../../calculators/bench/how-sure.ts';
import type { Answer, Situation } from '../../calculators/calculator.ts';

/** What a page asks of what calculates for it (calculating.ts), and what it hears. Plain data, as threads exchange it. */

export type Ask =
  /** Get these calculators ready: someone is about to type. */
  | { readonly kind: 'ready'; readonly ids: readonly string[] }
  /** The answers for one bench. Takes the place of any asked before: of those, no more is worked out. */
  | {
      readonly kind: 'answers';
      readonly turn: number;
      readonly ids: readonly string[];
      readonly situation: Situation;
    }
  /** How sure the figures of a bench are: many like it are tried, while answers go on being given. */
  | { readonly kind: 'try'; readonly turn: number; readonly situation: Situation }
  /** No more benches need be tried. */
  | { readonly kind: 'stop' };

/** How far the trial of many benches has come, with its result at the end: null where there is none. */
export interface Tried {
  readonly done: number;
  readonly of: number;
  readonly sure?: HowSure | null;
}

export type Said =
  | { readonly kind: 'answer'; readonly turn: number; readonly id: string; readonly answer: Answer }
  | ({ readonly kind: 'tried'; readonly turn: number } & Tried)
  /** What stopped the work, for whoever mends it. */
  | { readonly kind: 'fault'; readonly words: string };

export type Say = (said: Said) => void;

/** Under this name the calculating script hands itself over where it runs on the page itself. */
export const handingOver = 'winter-bench-calculating';
