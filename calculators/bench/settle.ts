import type { Body, BodyLink, HeatEntry } from './assemble.ts';
import { eliminate, solveEliminated } from './linear.ts';
import type { Around } from './place.ts';

/**
 * Steady state: the temperatures at which a bench comes to rest.
 *
 * The links depend on the temperatures, so the linear network is solved again and again with the links of the last
 * temperatures until nothing moves. At rest the links are those of the answer: the linear network that is handed out
 * has the same temperatures as the true one.
 */

/** How the cable is driven. */
export type Drive =
  /** At this power, whatever comes of it [W]. */
  | { readonly power: number }
  /** At the mean power that holds these nodes at a temperature [°C], as far as the cable goes. */
  | { readonly hold: readonly number[]; readonly at: number; readonly by: 'cable' }
  /**
   * At whatever power holds the coldest of these nodes at a temperature. `any-means`: brought straight into the air
   * under the bench, where all heat of a loop ends, and no loop need be able to carry it. `as-it-enters`: where the
   * body's own heat enters. It stops where what is heated comes to `warmest`: beyond, such heat is no answer.
   */
  | {
      readonly hold: readonly number[];
      readonly at: number;
      readonly by: 'any-means' | 'as-it-enters';
      readonly warmest: number;
    };

export interface Settled {
  /** In the order of the body's ids, boundaries after the nodes. */
  readonly temperatures: Float64Array;
  readonly links: readonly BodyLink[];
  readonly draws: readonly BodyLink[];
  /** Mean power of the cable [W]. */
  readonly power: number;
  /** Where it enters. */
  readonly heat: readonly HeatEntry[];
  /** What the cable gives at these temperatures when it is on [W]. */
  readonly fullPower: number;
  /** Temperatures of the faces that hold no heat, in the order of the body's [°C]. */
  readonly faces: Float64Array;
}

/** A bench at rest that is nearly the one asked for, from which to start, and how close is close enough [K]. */
export interface Near {
  readonly from: Pick<Settled, 'temperatures' | 'faces'>;
  readonly within: number;
}

/** Named error of a network that does not come to rest; no valid bench is known that raises it. */
export class NoRest extends Error {
  override readonly name = 'NoRest';
}

/** Temperatures are at rest when none moves by more than this in a round [K]. */
const atRest = 1e-6;
/** Where the power hangs on the draught that it makes, each round takes a thirtieth of the way that is left. */
const mostRounds = 1000;

/** A temperature moves by no more than this in a round [K]. */
const longestMove = 40;

/** Share of a move that is taken where temperatures swing; shorter, and nothing gets anywhere in the rounds there are. */
const shortestStride = 0.05;

/** Power that the drive asks for [W], where node i comes to rest[i] without heat and gains perWatt[i] for each watt. */
function wanted(
  drive: Drive,
  rest: Float64Array,
  perWatt: Float64Array,
  fullPower: number,
  heat: readonly HeatEntry[],
): number {
  if ('power' in drive) return drive.power;
  const toReach = (node: number, level: number): number => (level - (rest[node] ?? 0)) / (perWatt[node] ?? 1);
  const asked = Math.max(0, ...drive.hold.map((node) => toReach(node, drive.at)));
  const most =
    drive.by === 'cable'
      ? fullPower
      : Math.max(0, Math.min(...heat.map(({ node }) => toReach(node, drive.warmest))));
  return Math.min(asked, most);
}

/**
 * Brings a bench to rest.
 *
 * @param around what surrounds the bench [°C]
 * @param near where to start when many benches that hardly differ are brought to rest
 * @throws NoRest when the temperatures do not come to rest
 */
export function settle(body: Body, around: Around, drive: Drive, near?: Near): Settled {
  const { nodeCount: size } = body;
  const within = near?.within ?? atRest;
  const temperatures = new Float64Array(body.ids.length);
  temperatures[body.house] = around.house;
  temperatures[body.ground] = around.ground;
  temperatures[body.roof] = around.roof;
  const t = (node: number): number => temperatures[node] ?? 0;
  // A fresh start half-way to the ground keeps the first links away from the singular case of no differences.
  for (let node = 0; node < size; node++) {
    temperatures[node] = near?.from.temperatures[node] ?? (around.house + around.ground) / 2 + node * 0.01;
  }

  const faces = near?.from.faces.slice() ?? new Float64Array(body.faceCount).fill(NaN);
  const before = new Float64Array(body.faceCount);
  const A = new Float64Array(size * size);
  const rest = new Float64Array(size);
  const perWatt = new Float64Array(size);
  const moves = new Float64Array(size);
  let stride = 1;
  for (let round = 0; round < mostRounds; round++) {
    before.set(faces);
    const { links, draws, heat: ofCable, fullPower } = body.at(temperatures, faces);
    A.fill(0);
    rest.fill(0);
    perWatt.fill(0);
    const join = (one: number, other: number, conductance: number): void => {
      if (one >= size) return;
      A[one * size + one]! += conductance;
      if (other < size) A[one * size + other]! -= conductance;
      else rest[one]! += conductance * t(other);
    };
    for (const { from, to, conductance } of links) {
      join(from, to, conductance);
      join(to, from, conductance);
    }
    for (const { from, to, conductance } of draws) join(to, from, conductance);
    const heat = 'hold' in drive && drive.by === 'any-means' ? [{ node: body.under, share: 1 }] : ofCable;
    for (const { node, share } of heat) perWatt[node]! += share;
    eliminate(size, A);
    solveEliminated(size, A, rest);
    solveEliminated(size, A, perWatt);

    const power = wanted(drive, rest, perWatt, fullPower, heat);
    let step = 0;
    for (let node = 0; node < size; node++) {
      step = Math.max(step, Math.abs((rest[node] ?? 0) + power * (perWatt[node] ?? 0) - t(node)));
    }
    // A face that this bench does not use stays NaN, and NaN has not moved.
    const facesAtRest =
      round > 0 && !faces.some((face, index) => Math.abs(face - (before[index] ?? NaN)) >= within);
    if (step < within && facesAtRest) {
      return { temperatures, links, draws, power, heat, fullPower, faces };
    }
    // Moves that turn back on the last ones are the sign of a swing between two regimes: shorter ones land between them.
    // Moves that go on the same way are slow, and may be longer again.
    let along = 0;
    for (let node = 0; node < size; node++) {
      const move = (rest[node] ?? 0) + power * (perWatt[node] ?? 0) - t(node);
      along += move * (moves[node] ?? 0);
      moves[node] = move;
    }
    stride = along < 0 ? Math.max(shortestStride, stride * 0.6) : Math.min(1, stride * 1.25);
    for (let node = 0; node < size; node++) {
      const move = moves[node] ?? 0;
      // The first links are those of still air, which carry little: no round may leap to where no law holds.
      temperatures[node] = t(node) + stride * Math.max(-longestMove, Math.min(longestMove, move));
    }
  }
  throw new NoRest(`the bench did not come to rest in ${mostRounds} rounds`);
}
