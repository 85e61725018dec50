import type { Body } from './assemble.ts';
import { enthalpyAt, piecesOf, temperatureAt } from './enthalpy.ts';
import { eliminate, pack, roomForPacked, solveEliminated, solvePacked } from './linear.ts';
import type { Surroundings } from './place.ts';

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
  /** Takes the step tried last. Adds to `account`. */
  readonly accept: () => void;
  /** Heat gained by all nodes, and heat lost to the boundaries, since the start [J]. */
  readonly account: { gained: number; lost: number };
}

/**
 * Two stages, of second order and L-stable: no step is so long that it rings (R. Alexander, SIAM J. Numer. Anal. 14,
 * 1977, from memory). A step within which a node comes to another piece of its curve is taken in one stage instead.
 */
const gamma = 1 - Math.SQRT1_2;

/**
 * Rounds in which a step finds the piece of its curve on which each node ends. Nearly always one is enough; a node
 * that starts or ends freezing within the step takes a few.
 */
const mostRounds = 30;

/**
 * Links hang on temperatures alone. They are renewed when one of the bench or around it has moved by this since the last
 * time [K]: half of that changes the energy of a season by less than 0.3 % and the lowest roots by 0.03 K (measured). The
 * loop, which stands far above the air around it and swings with every switching, may move further.
 */
const renewAfterMove = 0.2;
const renewAfterLoop = 0.5;

/** And after this time, so that a bench comes to rest where it would without time [s]. */
const renewAfterTime = 6 * 3600;

/** Rounds in which faces find their first temperatures. */
const firstRounds = 4;

export function stepper(body: Body, surroundings: Surroundings, start: ArrayLike<number>): Stepper {
  const { nodeCount: size, curves } = body;
  const faces = new Float64Array(body.faceCount).fill(NaN);
  const now = new Float64Array(body.ids.length);
  for (let node = 0; node < size; node++) now[node] = start[node]!;
  const enthalpies = Float64Array.from(curves, (curve, node) => enthalpyAt(curve, now[node]!));
  const lastRenewed = new Float64Array(body.ids.length).fill(NaN);
  let renewedAt = 0;

  // The links at their last renewal: conductances between nodes, to what surrounds them, and where the power enters.
  const between = new Float64Array(size * size);
  const toHouse = new Float64Array(size);
  const toGround = new Float64Array(size);
  const toRoof = new Float64Array(size);
  const ofPower = new Float64Array(size);
  // What a node warmer by a kelvin sends away from the bench.
  const outward = new Float64Array(size);
  let fullPower = 0;

  // The curves laid out flat, as each step looks at every node: upper ends of the pieces, and the pieces as lines.
  const pieces = curves.map(piecesOf);
  const most = Math.max(...pieces.map(({ length }) => length));
  const upperEnd = new Float64Array(size * most).fill(Infinity);
  const slope = new Float64Array(size * most);
  const intercept = new Float64Array(size * most);
  pieces.forEach((of, node) => {
    of.forEach(({ temperature, enthalpy, capacity }, index) => {
      const at = node * most + index;
      if (index < of.length - 1) upperEnd[at] = of[index + 1]!.temperature;
      slope[at] = capacity;
      intercept[at] = enthalpy - capacity * temperature;
    });
  });
  // Each node is followed on one straight piece of its curve at a time.
  const piece = Int32Array.from(curves, (_, node) => node * most);
  /** Where the piece of a node that holds a temperature stands in the arrays: as a rule where it stood the last time. */
  const pieceAt = (node: number, t: number): number => {
    let at = piece[node]!;
    while (t >= upperEnd[at]!) at++;
    while (at > node * most && t < upperEnd[at - 1]!) at--;
    return at;
  };
  const begun = new Int32Array(size);
  const matrix = new Float64Array(size * size);
  const packed = roomForPacked(size);
  const factoredOn = new Int32Array(size).fill(-1);
  let factoredFor = NaN;
  let solvedWith = 0;

  const first = new Float64Array(size);
  const last = new Float64Array(size);
  const base = new Float64Array(size);
  const ended = new Float64Array(size);
  // What surrounds the two stages of the step tried last.
  let [houseFirst, houseLast, groundFirst, groundLast, roofFirst, roofLast] = [0, 0, 0, 0, 0, 0];
  let triedAt = NaN;
  let tried = NaN;
  let settled = false;
  let bends = false;

  /** Heat that a node gains from what surrounds the bench, by the kelvin. */
  const joinOutside = (node: number, boundary: number, conductance: number): void => {
    between[node * size + node]! += conductance;
    outward[node]! += conductance;
    if (boundary === body.house) toHouse[node]! += conductance;
    else if (boundary === body.ground) toGround[node]! += conductance;
    else toRoof[node]! += conductance;
  };

  const renew = (time: number): void => {
    now[body.house] = surroundings.house(time);
    now[body.ground] = surroundings.ground(time);
    now[body.roof] = surroundings.roof(time);
    let moved = time - renewedAt > renewAfterTime;
    for (let place = 0; place < now.length && !moved; place++) {
      moved = !(
        Math.abs(now[place]! - lastRenewed[place]!) < (place === body.loop ? renewAfterLoop : renewAfterMove)
      );
    }
    if (!moved) return;
    if (Number.isNaN(lastRenewed[0]!)) {
      for (let round = 1; round < firstRounds; round++) body.at(now, faces);
    }
    const state = body.at(now, faces);
    between.fill(0);
    for (let node = 0; node < size; node++) {
      toHouse[node] = toGround[node] = toRoof[node] = ofPower[node] = outward[node] = 0;
    }
    for (const { from, to, conductance } of state.links) {
      if (from >= size) {
        if (to < size) joinOutside(to, from, conductance);
      } else if (to >= size) joinOutside(from, to, conductance);
      else {
        between[from * size + from]! += conductance;
        between[from * size + to]! -= conductance;
        between[to * size + to]! += conductance;
        between[to * size + from]! -= conductance;
      }
    }
    for (const { from, to, conductance } of state.draws) {
      if (to >= size) continue;
      if (from >= size) joinOutside(to, from, conductance);
      else {
        between[to * size + to]! += conductance;
        between[to * size + from]! -= conductance;
        // What one node gains by air, the other does not lose: the account sees both.
        outward[to]! += conductance;
        outward[from]! -= conductance;
      }
    }
    for (const { node, share } of state.heat) ofPower[node]! += share;
    fullPower = state.fullPower;
    lastRenewed.set(now);
    renewedAt = time;
    factoredFor = NaN;
  };

  /** Factors capacities / step + conductances, unless that was done already. */
  const prepare = (step: number): void => {
    let same = step === factoredFor;
    for (let node = 0; node < size; node++) {
      if (factoredOn[node] !== piece[node]) same = false;
    }
    if (same) return;
    matrix.set(between);
    for (let node = 0; node < size; node++) matrix[node * size + node]! += slope[piece[node]!]! / step;
    eliminate(size, matrix);
    solvedWith = 0;
    factoredFor = step;
    factoredOn.set(piece);
  };

  /**
   * Solves one implicit stage of length `step` that starts from the enthalpies in `base`: the temperatures at its end
   * go into `into`, the enthalpies into `ended`. Says whether every node ended on the piece that it was solved on.
   */
  const stage = (
    into: Float64Array,
    step: number,
    house: number,
    ground: number,
    roof: number,
    power: number,
  ): boolean => {
    for (let round = 0; round < mostRounds; round++) {
      prepare(step);
      for (let node = 0; node < size; node++) {
        into[node] =
          (base[node]! - intercept[piece[node]!]!) / step +
          toHouse[node]! * house +
          toGround[node]! * ground +
          toRoof[node]! * roof +
          power * ofPower[node]!;
      }
      // Taking the zeros out pays from the third solution on: in minutes of a night, not in hours of a season.
      if (++solvedWith < 3) solveEliminated(size, matrix, into);
      else {
        if (solvedWith === 3) pack(size, matrix, packed);
        solvePacked(size, packed, into);
      }
      let stays = true;
      for (let node = 0; node < size; node++) {
        const t = into[node]!;
        const on = piece[node]!;
        // On the piece on which it was solved, so that the account closes even if the node belongs on another.
        ended[node] = intercept[on]! + slope[on]! * t;
        // To the neighbouring piece only: whoever jumps from thawed to frozen over the flat piece between, where the
        // answer lies, jumps back in the next round.
        if (t >= upperEnd[on]!) piece[node] = on + 1;
        else if (on > node * most && t < upperEnd[on - 1]!) piece[node] = on - 1;
        else continue;
        stays = false;
      }
      if (stays) return true;
    }
    return false;
  };

  const attempt = (time: number, step: number, power: number): Float64Array => {
    const part = gamma * step;
    const carry = (1 - gamma) / gamma;
    for (let node = 0; node < size; node++) {
      base[node] = enthalpies[node]!;
      begun[node] = piece[node] = pieceAt(node, now[node]!);
    }
    // Not asked for again when the same step is tried at another power.
    if (tried !== step || triedAt !== time) {
      houseFirst = surroundings.house(time + part);
      houseLast = surroundings.house(time + step);
      groundFirst = surroundings.ground(time + part);
      groundLast = surroundings.ground(time + step);
      roofFirst = surroundings.roof(time + part);
      roofLast = surroundings.roof(time + step);
      tried = step;
      triedAt = time;
    }
    stage(first, part, houseFirst, groundFirst, roofFirst, power);
    for (let node = 0; node < size; node++) base[node]! += carry * (ended[node]! - base[node]!);
    settled = stage(last, part, houseLast, groundLast, roofLast, power);
    bends = false;
    for (let node = 0; node < size; node++) if (piece[node] !== begun[node]) bends = true;
    if (bends) {
      // A node began or ended to freeze. The second stage starts from where the first one leads on in a straight line,
      // which is then too far: one stage over the whole step never swings past.
      for (let node = 0; node < size; node++) base[node] = enthalpies[node]!;
      piece.set(begun);
      settled = stage(last, step, houseLast, groundLast, roofLast, power);
    }
    return last;
  };

  const account = { gained: 0, lost: 0 };
  const accept = (): void => {
    const early = bends ? 0 : (1 - gamma) * tried;
    const late = tried - early;
    const house = early * houseFirst + late * houseLast;
    const ground = early * groundFirst + late * groundLast;
    const roof = early * roofFirst + late * roofLast;
    let lost = 0;
    for (let node = 0; node < size; node++) {
      lost +=
        outward[node]! * (early * first[node]! + late * last[node]!) -
        toHouse[node]! * house -
        toGround[node]! * ground -
        toRoof[node]! * roof;
    }
    let gained = 0;
    for (let node = 0; node < size; node++) {
      gained += ended[node]! - enthalpies[node]!;
      enthalpies[node] = ended[node]!;
      now[node] = settled ? last[node]! : temperatureAt(curves[node]!, enthalpies[node]!);
    }
    account.gained += gained;
    account.lost += lost;
  };

  return { now, fullPower: () => fullPower, renew, attempt, accept, account };
}
