import type { Figure, Situation } from '../calculator.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';

/** A figure with its range, and what of the range each uncertain input is to blame for. */
export interface Ranged extends Required<Figure> {
  /** Share of the variance by input, largest first [1]. */
  readonly blame: readonly { readonly id: PriorId; readonly share: number }[];
}

/**
 * Range of a result that rests on the uncertain inputs: each is moved alone to its 10th and its 90th percentile, and
 * the shifts are added as independent errors, downward and upward apart (first-order propagation, root of the sum of
 * squares: JCGM 100:2008, section 5.1). So the range holds four of five benches as long as the result is near enough
 * a straight line in each input; far from that it is a guide, not a bound.
 *
 * @param inputs the uncertain inputs that the result rests on, where that is not all of them: the rest are left alone
 */
export function ranged(
  situation: Situation,
  result: (parameters: Parameters) => number,
  inputs?: readonly PriorId[],
): Ranged {
  const expected = expectedParameters(situation);
  const value = result(expected);
  let downward = 0;
  let upward = 0;
  const blame: { id: PriorId; share: number }[] = [];
  for (const [name, prior] of Object.entries(priorsOf(situation))) {
    const id = name as PriorId;
    if (inputs && !inputs.includes(id)) continue;
    const shifts = [prior.low, prior.high].map((one) => result({ ...expected, [id]: one }) - value);
    const down = Math.min(0, ...shifts);
    const up = Math.max(0, ...shifts);
    downward += down ** 2;
    upward += up ** 2;
    blame.push({ id, share: (up - down) ** 2 });
  }
  const total = blame.reduce((sum, one) => sum + one.share, 0);
  return {
    value,
    low: value - Math.sqrt(downward),
    high: value + Math.sqrt(upward),
    blame: blame
      .map(({ id, share }) => ({ id, share: total === 0 ? 0 : share / total }))
      .sort((one, other) => other.share - one.share),
  };
}
