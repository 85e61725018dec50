import { createRequire } from 'node:module';

type Derivative = (x: number, y: readonly number[]) => number[];

/**
 * Hears of each step that was taken: its number, from where to where, and what is there at its end; with dense output
 * also any entry within it. It says false to stop there.
 */
type Heard = (
  step: number,
  from: number,
  to: number,
  there: readonly number[],
  within: (entry: number, x: number) => number,
) => false | undefined;

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  maxStepSize: number;
  maxSteps: number;
  denseOutput: boolean;
  solve(
    derivative: Derivative,
    from: number,
    start: readonly number[],
    to: number,
    heard?: Heard,
  ): { readonly y: number[]; readonly outcome: number; readonly nEval: number };
}

/** The part of odex that is used. */
interface Odex {
  readonly Solver: new (size: number) => Solver;
  readonly Outcome: { readonly Converged: number };
}

/** Taken by `require`, since the compiler would take its source, which is not written to our rules, for ours. */
export const odex = createRequire(import.meta.url)('odex') as Odex;
