import type { Body } from '../calculators/bench/assemble.ts';
import { enthalpyAt, temperatureAt, type EnthalpyCurve } from '../calculators/bench/enthalpy.ts';
import type { Surroundings } from '../calculators/bench/place.ts';
import { odex } from './odex.ts';

/**
 * The same bench through time by a general integrator: the extrapolation method of Hairer and Wanner (odex), on the
 * heat that the nodes hold. Tests hold our own steps against it, and the bench times them beside it.
 */
export interface Exactness {
  /** Absolute and relative, of the heat held in units of 1e5 J [1]. */
  readonly tolerance: number;
  /**
   * [s]. Without a limit it says "converged" and is 20 K off on a network like this, as it is made for problems that are
   * not stiff.
   */
  readonly longestStep: number;
  /** Rounds in which the faces of sheets, pipe and pots follow the temperatures at each evaluation. */
  readonly rounds: number;
}

export const exact: Exactness = { tolerance: 1e-8, longestStep: 120, rounds: 6 };

/** Joules to a unit of the integrator, so that its tolerance is one of temperatures: 1e5 J is 0.1 K of a megajoule. */
const unit = 1e5;

/**
 * Node temperatures at the end of each hour.
 *
 * @param powerAt of the cable [W]
 */
export function byOdex(
  body: Body,
  surroundings: Surroundings,
  start: ArrayLike<number>,
  hours: number,
  powerAt: (time: number) => number,
  { tolerance, longestStep, rounds }: Exactness = exact,
): { readonly temperatures: readonly (readonly number[])[]; readonly evaluations: number } {
  const { nodeCount: size, curves, house, ground, roof } = body;
  const curveOf = (node: number): EnthalpyCurve => {
    const curve = curves[node];
    if (!curve) throw new RangeError(`the bench has no node ${node}`);
    return curve;
  };
  const faces = new Float64Array(body.faceCount).fill(NaN);
  const t = new Float64Array(body.ids.length);
  const derivative = (time: number, heat: readonly number[]): number[] => {
    for (let node = 0; node < size; node++)
      t[node] = temperatureAt(curveOf(node), (heat[node] ?? NaN) * unit);
    t[house] = surroundings.house(time);
    t[ground] = surroundings.ground(time);
    t[roof] = surroundings.roof(time);
    for (let round = 1; round < rounds && body.faceCount > 0; round++) body.at(t, faces);
    const { links, draws, heat: entries } = body.at(t, faces);
    const flow = new Array<number>(body.ids.length).fill(0);
    const gain = (node: number, watts: number): void => {
      flow[node] = (flow[node] ?? 0) + watts;
    };
    for (const { from, to, conductance } of links) {
      const watts = conductance * ((t[from] ?? NaN) - (t[to] ?? NaN));
      gain(from, -watts);
      gain(to, watts);
    }
    for (const { from, to, conductance } of draws)
      gain(to, conductance * ((t[from] ?? NaN) - (t[to] ?? NaN)));
    const power = powerAt(time);
    for (const { node, share } of entries) gain(node, share * power);
    return flow.slice(0, size).map((watts) => watts / unit);
  };
  let state = Array.from({ length: size }, (_, node) => enthalpyAt(curveOf(node), start[node] ?? NaN) / unit);
  const temperatures: number[][] = [];
  let evaluations = 0;
  for (let hour = 0; hour < hours; hour++) {
    const solver = new odex.Solver(size);
    solver.absoluteTolerance = tolerance;
    solver.relativeTolerance = tolerance;
    solver.maxStepSize = longestStep;
    solver.maxSteps = 100_000;
    solver.initialStepSize = 10;
    const { y, outcome, nEval } = solver.solve(derivative, hour * 3600, state, (hour + 1) * 3600);
    if (outcome !== odex.Outcome.Converged) throw new Error(`odex ended with outcome ${outcome}`);
    state = y;
    evaluations += nEval;
    temperatures.push(state.map((heat, node) => temperatureAt(curveOf(node), heat * unit)));
  }
  return { temperatures, evaluations };
}
