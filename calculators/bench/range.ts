import type { Figure, Situation } from '../calculator.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';

/** A figure with its range, and what of the range each uncertain input is to blame for. */
export interface Ranged extends Required<Omit<Figure, 'beyond' | 'words'>> {
  /** Share of the variance by input, largest first [1]. */
  readonly blame: readonly { readonly id: PriorId; readonly share: number }[];
}

/**
 * Ranges of results that rest on the uncertain inputs: each is moved alone to its 10th and its 90th percentile, and
 * the shifts are added as independent errors, downward and upward apart (first-order propagation, root of the sum of
 * squares: JCGM 100:2008, section 5.1). So the range holds four of five benches as long as the result is near enough
 * a straight line in each input; far from that it is a guide, not a bound.
 *
 * @param results one or several results of the same working, by name
 * @param inputs the uncertain inputs that the results rest on, where that is not all of them: the rest are left alone
 */
export function rangedAll<Name extends string>(
  situation: Situation,
  results: (parameters: Parameters) => Readonly<Record<Name, number>>,
  inputs?: readonly PriorId[],
): Readonly<Record<Name, Ranged>> {
  const expected = expectedParameters(situation);
  const values = results(expected);
  const names = Object.keys(values) as Name[];
  const moved = Object.entries(priorsOf(situation)).flatMap(([name, prior]) => {
    const id = name as PriorId;
    if (inputs && !inputs.includes(id)) return [];
    // An input that is known exactly, such as a gap measured as none, moves nothing.
    const ends = [prior.low, prior.high].filter((end) => end !== prior.expected);
    return [{ id, ends: ends.map((end) => results({ ...expected, [id]: end })) }];
  });
  const one = (name: Name): Ranged => {
    const value = values[name];
    const shifts = moved.map(({ id, ends }) => {
      const by = ends.map((end) => end[name] - value);
      return { id, down: Math.min(0, ...by), up: Math.max(0, ...by) };
    });
    const total = shifts.reduce((sum, { down, up }) => sum + (up - down) ** 2, 0);
    return {
      value,
      low: value - Math.hypot(...shifts.map(({ down }) => down)),
      high: value + Math.hypot(...shifts.map(({ up }) => up)),
      blame: shifts
        .map(({ id, down, up }) => ({ id, share: total === 0 ? 0 : (up - down) ** 2 / total }))
        .sort((a, b) => b.share - a.share),
    };
  };
  return Object.fromEntries(names.map((name) => [name, one(name)])) as Record<Name, Ranged>;
}

/** The range of a single result; see `rangedAll`. */
export const ranged = (
  situation: Situation,
  result: (parameters: Parameters) => number,
  inputs?: readonly PriorId[],
): Ranged => rangedAll(situation, (parameters) => ({ result: result(parameters) }), inputs).result;

/** Share of a variance below which an input is not worth a run of its own [1]: all such together widen a range little. */
const worthARun = 0.01;

/**
 * The inputs that results rest on, told by quick results that hang on them in much the same way, such as a bench at rest
 * for a bench through a night. What is left out is each to blame for less than a hundredth of any of their variances.
 */
export function weightyInputs<Name extends string>(
  situation: Situation,
  quick: (parameters: Parameters) => Readonly<Record<Name, number>>,
): readonly PriorId[] {
  const all = Object.values<Ranged>(rangedAll(situation, quick)).flatMap(({ blame }) => blame);
  return [...new Set(all.filter(({ share }) => share >= worthARun).map(({ id }) => id))];
}
