import type { Figure, Situation } from '../calculator.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';
import { ninetieth, spreadValue } from './spread.ts';

/** A figure with its range, and what of the range each uncertain input is to blame for. */
export interface Ranged extends Required<Omit<Figure, 'beyond' | 'words'>> {
  /** Share of the variance by input, largest first [1]. */
  readonly blame: readonly { readonly id: PriorId; readonly share: number }[];
  /** The uncertain inputs at its two ends; null where nothing moves it. */
  readonly ends: Readonly<Record<'low' | 'high', Parameters | null>>;
}

/** The range of a figure alone. */
export type Span = Pick<Ranged, 'value' | 'low' | 'high'>;

/** What one uncertain input by itself does to a result. */
interface Shift {
  readonly id: PriorId;
  /** How far it moves the result to its lower and to its upper side. */
  readonly down: number;
  readonly up: number;
  /** Which end of the input does so [standard deviations]. */
  readonly downAt: number;
  readonly upAt: number;
}

/** What each uncertain input does to each result, moved alone to its 10th and its 90th percentile. */
function movedAlone<Name extends string>(
  situation: Situation,
  results: (parameters: Parameters) => Readonly<Record<Name, number>>,
  inputs?: readonly PriorId[],
): Readonly<Record<Name, { readonly value: number; readonly shifts: readonly Shift[] }>> {
  const expected = expectedParameters(situation);
  const values = results(expected);
  const moved = Object.entries(priorsOf(situation)).flatMap(([name, prior]) => {
    const id = name as PriorId;
    // An input that is known exactly, such as a gap measured as none, moves nothing.
    if ((inputs && !inputs.includes(id)) || prior.low === prior.high) return [];
    const at = (end: number) => results({ ...expected, [id]: end });
    return [{ id, low: at(prior.low), high: at(prior.high) }];
  });
  const one = (name: Name) => {
    const value = values[name];
    const shifts = moved.map(({ id, low, high }): Shift => {
      const [byLow, byHigh] = [low[name] - value, high[name] - value];
      return {
        id,
        down: Math.min(0, byLow, byHigh),
        up: Math.max(0, byLow, byHigh),
        downAt: byLow < byHigh ? -ninetieth : ninetieth,
        upAt: byLow > byHigh ? -ninetieth : ninetieth,
      };
    });
    return { value, shifts };
  };
  const names = Object.keys(values) as Name[];
  return Object.fromEntries(names.map((name) => [name, one(name)])) as Record<Name, ReturnType<typeof one>>;
}

/** What of the variance of a result each input is to blame for, largest first. */
function blameOf(shifts: readonly Shift[]): Ranged['blame'] {
  const total = shifts.reduce((sum, { down, up }) => sum + (up - down) ** 2, 0);
  return shifts
    .map(({ id, down, up }) => ({ id, share: total === 0 ? 0 : (up - down) ** 2 / total }))
    .sort((a, b) => b.share - a.share);
}

/**
 * How far each of several independent inputs is moved so that together they move a result as far as four of five cases
 * go [standard deviations]: in proportion to what each does alone. Of all places as far from the middle it is, near
 * enough, the one that moves the result most (first-order reliability method: Hasofer and Lind 1974). Null where
 * none of them moves it.
 *
 * @param shifts of the result by each input alone, and at how many standard deviations of it
 */
export function togetherAt(
  shifts: readonly { readonly by: number; readonly at: number }[],
): readonly number[] | null {
  const length = Math.hypot(...shifts.map(({ by }) => by));
  return length === 0 ? null : shifts.map(({ by, at }) => (at * Math.abs(by)) / length);
}

interface Ends extends Span {
  readonly ends: Ranged['ends'];
}

/**
 * The ends of a result: with the inputs moved together, or with that one alone which moves it further. Both lie as far from
 * the middle; where inputs work on one another the second may be the harder.
 */
function endsOf(
  situation: Situation,
  value: number,
  shifts: readonly Shift[],
  result: (parameters: Parameters) => number,
): Ends {
  const priors = priorsOf(situation);
  const expected = expectedParameters(situation);
  const end = (side: 'down' | 'up'): { readonly at: Parameters; readonly result: number } | null => {
    const places = togetherAt(shifts.map((shift) => ({ by: shift[side], at: shift[`${side}At`] })));
    if (!places) return null;
    const moved = (to: readonly number[]) =>
      Object.fromEntries(shifts.map(({ id }, index) => [id, spreadValue(priors[id], to[index]!)]));
    const together = { ...expected, ...moved(places) };
    const reached = result(together);
    const most = shifts.reduce((one, other) => (Math.abs(other[side]) > Math.abs(one[side]) ? other : one));
    if (Math.abs(most[side]) <= (reached - value) * (side === 'up' ? 1 : -1))
      return { at: together, result: reached };
    const alone = { ...expected, [most.id]: spreadValue(priors[most.id], most[`${side}At`]) };
    return { at: alone, result: value + most[side] };
  };
  const [low, high] = [end('down'), end('up')];
  return {
    value,
    low: low?.result ?? value,
    high: high?.result ?? value,
    ends: { low: low?.at ?? null, high: high?.at ?? null },
  };
}

/**
 * Ranges of results that rest on the uncertain inputs: each is moved alone to its 10th and its 90th percentile, and
 * what that does says how much of the range it is to blame for (JCGM 100:2008, section 5.1). The ends of the range are
 * then worked out with the inputs moved together, each as far as its part goes, or with the one alone that goes further. So
 * they are answers of the same working, and no end reaches to where no bench can come. The range holds four of five benches as long as the result is near
 * enough a plane about its ends; far from that it is a guide, not a bound.
 *
 * @param results one or several results of the same working, by name; first asked for with every input as expected. A
 *   result behind a getter is worked out only where it is needed.
 * @param inputs the uncertain inputs that the results rest on, where that is not all of them: the rest are left alone
 */
export function rangedAll<Name extends string>(
  situation: Situation,
  results: (parameters: Parameters) => Readonly<Record<Name, number>>,
  inputs?: readonly PriorId[],
): Readonly<Record<Name, Ranged>> {
  const moved = movedAlone(situation, results, inputs);
  const one = (name: Name): Ranged => {
    const { value, shifts } = moved[name];
    return { ...endsOf(situation, value, shifts, (at) => results(at)[name]), blame: blameOf(shifts) };
  };
  const names = Object.keys(moved) as Name[];
  return Object.fromEntries(names.map((name) => [name, one(name)])) as Record<Name, Ranged>;
}

/** The range of a single result; see `rangedAll`. */
export const ranged = (
  situation: Situation,
  result: (parameters: Parameters) => number,
  inputs?: readonly PriorId[],
): Ranged => rangedAll(situation, (parameters) => ({ result: result(parameters) }), inputs).result;

/**
 * The range of a result that takes long: where its ends lie is told by a quick one that hangs on the inputs in much the
 * same way, or just the other way, and the slow one is worked out at these two alone.
 *
 * @param value with every input as expected
 */
export const between = (
  value: number,
  { low, high }: Ranged['ends'],
  slow: (parameters: Parameters) => number,
): Span => spanOf([value, ...(low ? [slow(low)] : []), ...(high ? [slow(high)] : [])]);

/** From the least to the largest of several results, of which the first is the value. */
const spanOf = (all: readonly [number, ...number[]]): Span => ({
  value: all[0],
  low: Math.min(...all),
  high: Math.max(...all),
});

/** Where the ends of a quick result lie; see `between`. */
export function endsBy(
  situation: Situation,
  quick: (parameters: Parameters) => number,
  inputs?: readonly PriorId[],
): Ranged['ends'] {
  const { value, shifts } = movedAlone(situation, (at) => ({ result: quick(at) }), inputs).result;
  return endsOf(situation, value, shifts, quick).ends;
}

/** A range as a figure. */
export const likely = ({ value, low, high }: Span): Span => ({
  value,
  low,
  high,
});

/** A figure with the spread of a range: worked out more finely than the members of the range, of which this is the middle. */
export function spreadAbout(value: number, { value: middle, low, high }: Span, least = -Infinity): Span {
  return {
    value,
    low: Math.min(value, Math.max(least, value + low - middle)),
    high: Math.max(value, value + high - middle),
  };
}

/** Share of a variance below which an input is not worth a run of its own [1]: all such together widen a range little. */
const worthARun = 0.01;

/** The inputs that any of these ranges rests on. What is left out is each to blame for less than a hundredth of any. */
export const weightyOf = (ranges: Iterable<Pick<Ranged, 'blame'>>): readonly PriorId[] => [
  ...new Set(
    [...ranges].flatMap(({ blame }) => blame.filter(({ share }) => share >= worthARun)).map(({ id }) => id),
  ),
];

/**
 * The inputs that results rest on, told by quick results that hang on them in much the same way, such as a bench at rest
 * for a bench through a night.
 */
export const weightyInputs = <Name extends string>(
  situation: Situation,
  quick: (parameters: Parameters) => Readonly<Record<Name, number>>,
): readonly PriorId[] =>
  weightyOf(
    Object.values<{ shifts: readonly Shift[] }>(movedAlone(situation, quick)).map(({ shifts }) => ({
      blame: blameOf(shifts),
    })),
  );
