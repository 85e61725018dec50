import type { Body } from '../calculators/bench/assemble.ts';
import { enthalpyAt, temperatureAt, type EnthalpyCurve } from '../calculators/bench/enthalpy.ts';
import type { Surroundings } from '../calculators/bench/place.ts';
import type { Thermostat } from '../calculators/bench/simulate.ts';
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
  /** The step that it tries first, at the start and after each switching [s]. */
  readonly firstStep: number;
  /** Rounds in which the faces of sheets, pipe and pots follow the temperatures at each evaluation. */
  readonly rounds: number;
}

export const exact: Exactness = { tolerance: 1e-8, longestStep: 120, firstStep: 10, rounds: 6 };

/** Joules to a unit of the integrator, so that its tolerance is one of temperatures: 1e5 J is 0.1 K of a megajoule. */
const unit = 1e5;

/** What the cable gives at a time [W], where it would give `full` if it were on. */
type Power = (time: number, full: number) => number;

/** What the nodes gain, and what the cable gives, which is the last entry; in units per second. */
type RightSide = (time: number, heat: readonly number[]) => number[];

const curveOf = ({ curves }: Body, node: number): EnthalpyCurve => {
  const curve = curves[node];
  if (!curve) throw new RangeError(`the bench has no node ${node}`);
  return curve;
};

/** The temperature of a node that holds so much [°C]. */
const levelOf = (body: Body, node: number, heat: number): number =>
  temperatureAt(curveOf(body, node), heat * unit);

function rightSide(body: Body, surroundings: Surroundings, powerAt: Power, rounds: number): RightSide {
  const { nodeCount: size, house, ground, roof } = body;
  const curves = Array.from({ length: size }, (_, node) => curveOf(body, node));
  const faces = new Float64Array(body.faceCount).fill(NaN);
  const t = new Float64Array(body.ids.length);
  return (time, heat) => {
    curves.forEach((curve, node) => (t[node] = temperatureAt(curve, (heat[node] ?? NaN) * unit)));
    t[house] = surroundings.house(time);
    t[ground] = surroundings.ground(time);
    t[roof] = surroundings.roof(time);
    for (let round = 1; round < rounds && body.faceCount > 0; round++) body.at(t, faces);
    const { links, draws, heat: entries, fullPower } = body.at(t, faces);
    const flow = new Array<number>(size + 1).fill(0);
    const gain = (node: number, watts: number): void => {
      if (node < size) flow[node] = (flow[node] ?? 0) + watts / unit;
    };
    for (const { from, to, conductance } of links) {
      const watts = conductance * ((t[from] ?? NaN) - (t[to] ?? NaN));
      gain(from, -watts);
      gain(to, watts);
    }
    for (const { from, to, conductance } of draws)
      gain(to, conductance * ((t[from] ?? NaN) - (t[to] ?? NaN)));
    const power = powerAt(time, fullPower);
    for (const { node, share } of entries) gain(node, share * power);
    flow[size] = power / unit;
    return flow;
  };
}

/** What the nodes hold at these temperatures, and nothing brought yet. */
const heldAt = (body: Body, start: ArrayLike<number>): number[] => [
  ...Array.from(
    { length: body.nodeCount },
    (_, node) => enthalpyAt(curveOf(body, node), start[node] ?? NaN) / unit,
  ),
  0,
];

function solverOf(size: number, { tolerance, longestStep, firstStep }: Exactness, left: number) {
  const solver = new odex.Solver(size);
  solver.absoluteTolerance = tolerance;
  solver.relativeTolerance = tolerance;
  solver.maxStepSize = longestStep;
  solver.maxSteps = 100_000;
  solver.initialStepSize = Math.min(firstStep, left);
  return solver;
}

/** Node temperatures at the end of each hour, at a power that is known beforehand [W]. */
export function byOdex(
  body: Body,
  surroundings: Surroundings,
  start: ArrayLike<number>,
  hours: number,
  powerAt: (time: number) => number,
  exactness: Exactness = exact,
): { readonly temperatures: readonly (readonly number[])[]; readonly evaluations: number } {
  const derivative = rightSide(body, surroundings, powerAt, exactness.rounds);
  let state = heldAt(body, start);
  const temperatures: number[][] = [];
  let evaluations = 0;
  for (let hour = 0; hour < hours; hour++) {
    const solver = solverOf(state.length, exactness, 3600);
    const { y, outcome, nEval } = solver.solve(derivative, hour * 3600, state, (hour + 1) * 3600);
    if (outcome !== odex.Outcome.Converged) throw new Error(`odex ended with outcome ${outcome}`);
    state = y;
    evaluations += nEval * exactness.rounds;
    temperatures.push(y.slice(0, body.nodeCount).map((heat, node) => levelOf(body, node, heat)));
  }
  return { temperatures, evaluations };
}

/** A switching moment is found to this [s]. */
const atSwitching = 0.01;

/** A night by another hand: the temperatures of the root layers at the end of each hour, and the heat brought [J]. */
export interface OtherNight {
  readonly roots: readonly (readonly number[])[];
  readonly brought: number;
  /** How often it asked the laws for the links of the bench. */
  readonly evaluations: number;
}

/**
 * The bench with its thermostat, by odex as its authors mean it to be used: dense output shows where within a step the
 * sensor crosses, and it starts anew from there.
 */
export function nightByOdex(
  body: Body,
  surroundings: Surroundings,
  start: ArrayLike<number>,
  hours: number,
  { sensor, setPoint, differential }: Thermostat,
  exactness: Exactness,
): OtherNight {
  const [switchOn, switchOff] = [setPoint - differential / 2, setPoint + differential / 2];
  let on = (start[sensor] ?? NaN) < switchOn;
  const past = (heat: number): boolean =>
    on ? levelOf(body, sensor, heat) > switchOff : levelOf(body, sensor, heat) < switchOn;
  const derivative = rightSide(body, surroundings, (_, full) => (on ? full : 0), exactness.rounds);
  const roots: number[][] = [];
  const end = hours * 3600;
  let state = heldAt(body, start);
  let evaluations = 0;
  let time = 0;
  while (time < end) {
    const solver = solverOf(state.length, exactness, end - time);
    solver.denseOutput = true;
    let crossed: number | undefined;
    const { y, nEval } = solver.solve(derivative, time, state, end, (_, from, to, there, within) => {
      if (to === from) return undefined;
      if (past(there[sensor] ?? NaN)) {
        let before = from;
        let after = to;
        while (after - before > atSwitching) {
          const middle = (before + after) / 2;
          if (past(within(sensor, middle))) after = middle;
          else before = middle;
        }
        crossed = after;
      }
      for (let hour = (roots.length + 1) * 3600; hour <= (crossed ?? to) + atSwitching; hour += 3600)
        roots.push(body.roots.map((node) => levelOf(body, node, within(node, hour))));
      if (crossed === undefined) return undefined;
      const at = crossed;
      state = state.map((_held, entry) => within(entry, at));
      return false;
    });
    evaluations += nEval * exactness.rounds;
    if (crossed === undefined) state = y;
    else on = !on;
    time = crossed ?? end;
  }
  return { roots, brought: (state.at(-1) ?? NaN) * unit, evaluations };
}
