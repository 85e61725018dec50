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
    };

export type Said =
  | { readonly kind: 'answer'; readonly turn: number; readonly id: string; readonly answer: Answer }
  /** What stopped the work, for whoever mends it. */
  | { readonly kind: 'fault'; readonly words: string };

export type Say = (said: Said) => void;

/** Under this name the calculating script hands itself over where it runs on the page itself. */
export const handingOver = 'winter-bench-calculating';
