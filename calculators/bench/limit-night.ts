import type { Situation } from '../calculator.ts';
import { assemble, type Body } from './assemble.ts';
import { around, designOutside } from './place.ts';
import { expectedParameters } from './priors.ts';
import { settle, type Drive, type Near, type Settled } from './settle.ts';
import { warmestUnder } from './steady.ts';

/** The mildest night that is looked at [°C]: no root needs heat on it. */
const mildest = 20;

/** How close the night on which the full cable just suffices is looked for [K]. */
const closeEnough = 0.005;
const mostRounds = 40;

/** The bench at rest on the hardest night that it must and can come through. */
export interface LimitNight {
  readonly body: Body;
  /** The design night, or where that is too hard the coldest night on which the full cable holds the roots [°C]. */
  readonly outside: number;
  /** The cable as far on as the roots need it. Their coldest layer is at the limit, or above it without heat. */
  readonly held: Settled;
  /** The cable on without pause. */
  readonly full: Settled;
}

/** Coldest layer of the root zone [°C]. */
export const coldestOf = (body: Body, { temperatures }: Settled): number =>
  Math.min(...body.roots.map((node) => temperatures[node]!));

/** A bench whose heat can be driven in other ways than by its thermostat. Loops and films warmer than 60 °C are not looked at. */
function restingBench(situation: Situation) {
  const parameters = expectedParameters(situation);
  const body = assemble(situation, parameters);
  const rest = (outside: number, drive: Drive, near?: Near): Settled =>
    settle(body, around(situation, outside, parameters), drive, near);
  const full = (outside: number, near?: Near): Settled =>
    rest(outside, { hold: [body.loop], at: warmestUnder, by: 'cable' }, near);
  return { body, rest, full };
}

/** The bench at rest with the cable on without pause at an outside temperature [°C]. */
export function stuckOn(situation: Situation, outside: number): { body: Body; settled: Settled } {
  const { body, full } = restingBench(situation);
  return { body, settled: full(outside) };
}

/**
 * The night that a thermostat must be set for: the design night if it never ended, or where the full cable cannot hold the
 * roots on it, the coldest on which it can. Null where no cable of this power holds them even at 20 °C outside.
 */
export function limitNight(situation: Situation): LimitNight | null {
  const { lowestRootTemperature: limit } = situation.bench.plants;
  const { body, rest, full } = restingBench(situation);
  const above = (settled: Settled): number => coldestOf(body, settled) - limit;
  const answer = (outside: number, settled: Settled): LimitNight => ({
    body,
    outside,
    full: settled,
    held: rest(outside, { hold: body.roots, at: limit, by: 'cable' }),
  });

  const design = designOutside(situation);
  let cold = { outside: design, settled: full(design) };
  if (above(cold.settled) >= 0 || design >= mildest)
    return above(cold.settled) >= 0 ? answer(design, cold.settled) : null;
  const near: Near = { from: cold.settled, within: closeEnough / 5 };
  let mild = { outside: mildest, settled: full(mildest, near) };
  if (above(mild.settled) < 0) return null;
  // Roots follow the outside almost one to one: where a straight line crosses, and a halving where the line creeps.
  for (let round = 0; round < mostRounds && above(mild.settled) > closeEnough; round++) {
    const [below, over] = [above(cold.settled), above(mild.settled)];
    const share = round % 3 === 2 ? 0.5 : -below / (over - below);
    // A little to the mild side of the crossing, so that the answer is a night on which the roots are held.
    const outside = Math.min(
      mild.outside,
      cold.outside + share * (mild.outside - cold.outside) + closeEnough / 2,
    );
    const settled = full(outside, { from: mild.settled, within: closeEnough / 5 });
    if (above(settled) >= 0) mild = { outside, settled };
    else cold = { outside, settled };
  }
  return answer(mild.outside, mild.settled);
}
