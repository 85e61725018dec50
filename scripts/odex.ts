import { createRequire } from 'node:module';

type Derivative = (x: number, y: readonly number[]) => number[];

interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  maxStepSize: number;
  maxSteps: number;
  solve(
    derivative: Derivative,
    from: number,
    start: readonly number[],
    to: number,
  ): { readonly y: number[]; readonly outcome: number; readonly nEval: number };
}

/** The part of odex that is used. */
interface Odex {
  readonly Solver: new (size: number) => Solver;
  readonly Outcome: { readonly Converged: number };
}

/** Taken by `require`, since the compiler would take its source, which is not written to our rules, for ours. */
export const odex = createRequire(import.meta.url)('odex') as Odex;
