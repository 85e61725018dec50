import type { Body } from './assemble.ts';
import { enthalpyAt, pieceAtTemperature, piecesOf, temperatureAt, type EnthalpyPiece } from './enthalpy.ts';
import { factor, solveFactored } from './linear.ts';

/** What surrounds the bench at a time; s from the start, °C. */
export interface Surroundings {
  readonly house: (time: number) => number;
  readonly ground: (time: number) => number;
}

/**
 * Takes a bench through time in implicit steps. The account is kept in enthalpy: what a step brings in and takes out
 * is what the nodes gain, to rounding, across freezing too. SI; temperatures in °C.
 */
export interface Stepper {
  /** Temperatures now, in the order of the body's ids. */
  readonly now: Float64Array;
  /** What the cable would give now when it is on [W]. */
  readonly fullPower: () => number;
  /** Asks the body for its links anew where it has moved far enough since the last time. */
  readonly renew: (time: number) => void;
  /** Tries a step at a power and gives the temperatures at its end; nothing is changed yet. */
  readonly attempt: (time: number, step: number, power: number) => Float64Array;
  /** Takes the step tried last. Heat gained by all nodes, and heat lost to the boundaries [J]. */
  readonly accept: () => { readonly gained: number; readonly lost: number };
}

/**
 * Two stages, of second order and L-stable: no step is so long that it rings (R. Alexander, SIAM J. Numer. Anal. 14,
 * 1977, from memory).
 */
const gamma = 1 - Math.SQRT1_2;

/**
 * Rounds in which a step finds the piece of its curve on which each node ends. Nearly always one is enough; a node
 * that starts or ends freezing within the step takes a few.
 */
const mostRounds = 12;

/** Links are renewed when a temperature has moved by this [K] or after this time [s]. */
const renewAfterMove = 0.4;
const renewAfterTime = 1200;

/** One stage of the step tried last: its share of the step, when it ends, and what it ended at. */
interface Stage {
  readonly weight: number;
  readonly moment: number;
  readonly temperatures: Float64Array;
}

export function stepper(body: Body, surroundings: Surroundings, start: ArrayLike<number>): Stepper {
  const { nodeCount: size, curves } = body;
  const faces = new Float64Array(body.faceCount).fill(NaN);
  const now = new Float64Array(size + 2);
  for (let node = 0; node < size; node++) now[node] = start[node]!;
  const enthalpies = Float64Array.from(curves, (curve, node) => enthalpyAt(curve, now[node]!));
  const lastRenewed = new Float64Array(size).fill(NaN);
  let renewedAt = -Infinity;

  // The links at their last renewal: conductances between nodes, to house and ground, and the cable's split.
  const between = new Float64Array(size * size);
  const toHouse = new Float64Array(size);
  const toGround = new Float64Array(size);
  const ofPower = new Float64Array(size);
  let fullPower = 0;

  // Each node is followed on one straight piece of its curve at a time.
  const pieces = curves.map(piecesOf);
  const piece = new Int32Array(size);
  const pieceNow = (node: number): EnthalpyPiece => pieces[node]![piece[node]!]!;

  const matrix = new Float64Array(size * size);
  const capacities = new Float64Array(size);
  let factoredFor = NaN;

  let stages: readonly Stage[] = [];
  let tried = 0;
  const first = new Float64Array(size);
  const last = new Float64Array(size);
  const base = new Float64Array(size);
  const ended = new Float64Array(size);

  const renew = (time: number): void => {
    let moved = time - renewedAt > renewAfterTime;
    for (let node = 0; node < size && !moved; node++) {
      moved = !(Math.abs(now[node]! - lastRenewed[node]!) < renewAfterMove);
    }
    if (!moved) return;
    now[body.house] = surroundings.house(time);
    now[body.ground] = surroundings.ground(time);
    const state = body.at(now, faces);
    for (const one of [between, toHouse, toGround, ofPower]) one.fill(0);
    const join = (one: number, other: number, conductance: number): void => {
      if (one >= size) return;
      between[one * size + one]! += conductance;
      if (other < size) between[one * size + other]! -= conductance;
      else if (other === body.house) toHouse[one]! += conductance;
      else toGround[one]! += conductance;
    };
    for (const { from, to, conductance } of state.links) {
      join(from, to, conductance);
      join(to, from, conductance);
    }
    ofPower[body.loop]! += state.toLoop;
    ofPower[body.under]! += 1 - state.toLoop;
    fullPower = state.fullPower;
    lastRenewed.set(now.subarray(0, size));
    renewedAt = time;
    factoredFor = NaN;
  };

  /** Factors capacities / step + conductances, unless that was done already. */
  const prepare = (step: number): void => {
    let same = step === factoredFor;
    for (let node = 0; node < size; node++) {
      const { capacity } = pieceNow(node);
      same &&= capacity === capacities[node];
      capacities[node] = capacity;
    }
    if (same) return;
    matrix.set(between);
    for (let node = 0; node < size; node++) matrix[node * size + node]! += capacities[node]! / step;
    factor(size, matrix);
    factoredFor = step;
  };

  /**
   * Solves one implicit stage of length `step` that ends at `moment` and starts from the enthalpies in `base`: the
   * temperatures at its end go into `into`, the enthalpies into `ended`.
   */
  const stage = (into: Float64Array, step: number, moment: number, power: number): void => {
    const house = surroundings.house(moment);
    const ground = surroundings.ground(moment);
    for (let round = 0; round < mostRounds; round++) {
      prepare(step);
      for (let node = 0; node < size; node++) {
        const { temperature, enthalpy, capacity } = pieceNow(node);
        into[node] =
          (base[node]! - enthalpy + capacity * temperature) / step +
          toHouse[node]! * house +
          toGround[node]! * ground +
          power * ofPower[node]!;
      }
      solveFactored(size, matrix, into);
      let stays = true;
      for (let node = 0; node < size; node++) {
        const t = into[node]!;
        const { temperature, enthalpy, capacity } = pieceNow(node);
        // On the piece on which it was solved, so that the account closes even if the node belongs on another.
        ended[node] = enthalpy + capacity * (t - temperature);
        const belongs = pieceAtTemperature(curves[node]!, t);
        if (belongs !== piece[node]) stays = false;
        piece[node] = belongs;
      }
      if (stays) return;
    }
  };

  const attempt = (time: number, step: number, power: number): Float64Array => {
    const part = gamma * step;
    const carry = (1 - gamma) / gamma;
    base.set(enthalpies);
    for (let node = 0; node < size; node++) piece[node] = pieceAtTemperature(curves[node]!, now[node]!);
    stage(first, part, time + part, power);
    for (let node = 0; node < size; node++) base[node]! += carry * (ended[node]! - base[node]!);
    stage(last, part, time + step, power);
    stages = [
      { weight: 1 - gamma, moment: time + part, temperatures: first },
      { weight: gamma, moment: time + step, temperatures: last },
    ];
    tried = step;
    return last;
  };

  const accept = (): { gained: number; lost: number } => {
    let gained = 0;
    let lost = 0;
    for (const { weight, moment, temperatures } of stages) {
      const house = surroundings.house(moment);
      const ground = surroundings.ground(moment);
      for (let node = 0; node < size; node++) {
        const t = temperatures[node]!;
        lost += weight * tried * (toHouse[node]! * (t - house) + toGround[node]! * (t - ground));
      }
    }
    for (let node = 0; node < size; node++) {
      gained += ended[node]! - enthalpies[node]!;
      enthalpies[node] = ended[node]!;
      now[node] = temperatureAt(curves[node]!, enthalpies[node]!);
    }
    return { gained, lost };
  };

  return { now, fullPower: () => fullPower, renew, attempt, accept };
}
