import type { Situation } from '../calculator.ts';
import { factor } from './linear.ts';
import { priorsOf, type Parameters, type PriorId } from './priors.ts';
import { togetherAt } from './range.ts';
import { ninetieth, spreadValue } from './spread.ts';

/**
 * What is believed of the uncertain inputs of a bench: a normal distribution in standard deviations of their priors.
 * Before any reading its middle is zero and its covariance one.
 */
export interface Belief {
  readonly ids: readonly PriorId[];
  readonly middle: Float64Array;
  /** Row by row, in the order of the ids. */
  readonly covariance: Float64Array;
}

/** A bench that nothing was read on. */
export function beforeReadings(situation: Situation): Belief {
  const ids = Object.keys(priorsOf(situation)) as PriorId[];
  const covariance = new Float64Array(ids.length ** 2);
  for (let one = 0; one < ids.length; one++) covariance[one * (ids.length + 1)] = 1;
  return { ids, middle: new Float64Array(ids.length), covariance };
}

/** The uncertain inputs at a place in units of their priors' spread. */
export function parametersAt(
  priors: ReturnType<typeof priorsOf>,
  ids: readonly PriorId[],
  at: ArrayLike<number>,
): Parameters {
  const entries = ids.map((id, index) => [id, spreadValue(priors[id], at[index]!)]);
  return Object.fromEntries(entries) as Parameters;
}

/** Lower triangle L with L Lᵀ = the covariance, row by row: its columns are directions that are independent. */
export function rootOf({ ids, covariance }: Belief): Float64Array {
  const size = ids.length;
  const root = covariance.slice();
  factor(size, root);
  for (let column = 0; column < size; column++) {
    const length = 1 / Math.sqrt(root[column * (size + 1)]!);
    for (let row = 0; row < column; row++) root[row * size + column] = 0;
    root[column * (size + 1)] = length;
    for (let row = column + 1; row < size; row++) root[row * size + column]! *= length;
  }
  return root;
}

/** A result with its 80 % range, and how it changes along each of the directions of `rootOf`. */
export interface Believed {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly slopes: Float64Array;
}

/**
 * Ranges of results under a belief, by the same rule as the ranges before any reading (`rangedAll`): the belief is moved
 * along each of its independent directions alone to the 10th and the 90th percentile, and the ends are worked out with all
 * of them moved together, each as far as its part goes.
 */
export function believed<Name extends string>(
  situation: Situation,
  belief: Belief,
  results: (parameters: Parameters) => Readonly<Record<Name, number>>,
): Readonly<Record<Name, Believed>> {
  const priors = priorsOf(situation);
  const { ids, middle } = belief;
  const size = ids.length;
  const root = rootOf(belief);
  const at = (place: Float64Array) => results(parametersAt(priors, ids, place));
  const values = at(middle);
  const ends = ids.map((_, column) => {
    const shifted = (by: number) => at(middle.map((one, row) => one + by * root[row * size + column]!));
    return { below: shifted(-ninetieth), above: shifted(ninetieth) };
  });
  const one = (name: Name): Believed => {
    const value = values[name];
    const shifts = ends.map(({ below, above }) => [below[name] - value, above[name] - value] as const);
    const end = (side: -1 | 1): number => {
      const places = togetherAt(
        shifts.map(([below, above]) => {
          const by = side * Math.max(0, side * below, side * above);
          return { by, at: side * below > side * above ? -ninetieth : ninetieth };
        }),
      );
      if (!places) return value;
      const together = middle.map((one, row) =>
        places.reduce((sum, by, column) => sum + by * root[row * size + column]!, one),
      );
      // Moved alone an input may go further than all together; see `rangedAll`.
      const alone = shifts.flat().map((by) => value + by);
      return side < 0 ? Math.min(at(together)[name], ...alone) : Math.max(at(together)[name], ...alone);
    };
    return {
      value,
      low: Math.min(value, end(-1)),
      high: Math.max(value, end(1)),
      slopes: Float64Array.from(shifts, ([below, above]) => (above - below) / (2 * ninetieth)),
    };
  };
  const names = Object.keys(values) as Name[];
  return Object.fromEntries(names.map((name) => [name, one(name)])) as Record<Name, Believed>;
}
