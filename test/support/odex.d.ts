/** The part of odex that the tests use; it comes without types. */
declare module 'odex' {
  type Derivative = (x: number, y: readonly number[]) => number[];
  class Solver {
    constructor(size: number);
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
  const odex: { readonly Solver: typeof Solver; readonly Outcome: { readonly Converged: number } };
  export default odex;
}
