import type { Situation } from '../calculator.ts';
import { beforeReadings, parametersAt, rootOf, type Belief } from './belief.ts';
import { chanceFrom, normalQuantile, shuffled } from './chance.ts';
import { nightOf, nightSteps, summaryOf } from './night.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';

/** A result over many benches that this one may be. */
export interface EnsembleFigure {
  /** With every uncertain input as expected. */
  readonly expected: number;
  /** 10th, 50th and 90th percentile. */
  readonly low: number;
  readonly middle: number;
  readonly high: number;
  /**
   * Share of the variance that goes with each input, largest first [1]: the first is the one to measure first. Of ranks,
   * as a result may bend: whatever rises with an input throughout goes with it wholly.
   */
  readonly blame: readonly { readonly id: PriorId; readonly share: number }[];
}

export interface Ensemble<Name extends string> {
  readonly members: number;
  readonly figures: Readonly<Record<Name, EnsembleFigure>>;
}

/** How far an ensemble has come. */
export interface Progress {
  readonly done: number;
  readonly of: number;
}

export interface EnsembleOptions {
  /** How many benches are tried; 200 leave a percentile uncertain by about a tenth of the range's width. */
  readonly members?: number;
  readonly seed?: number;
  /** What is believed of the uncertain inputs; without it what is believed before any reading. */
  readonly belief?: Belief;
}

/**
 * Places in a space of independent standard normal quantities by a Latin hypercube: in each of them every one of as many
 * equally likely strips is used once, in an order of chance (M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21,
 * 1979, from memory). One row a member.
 */
export function latinHypercube(members: number, inputs: number, seed: number): Float64Array[] {
  const chance = chanceFrom(seed);
  const rows = Array.from({ length: members }, () => new Float64Array(inputs));
  for (let input = 0; input < inputs; input++) {
    shuffled(members, chance).forEach((strip, member) => {
      rows[member]![input] = normalQuantile((strip + Math.max(chance(), 1e-9)) / members);
    });
  }
  return rows;
}

/** The value below which this share of sorted values lies, between neighbours in proportion. */
function percentile(sorted: Float64Array, share: number): number {
  const at = (sorted.length - 1) * share;
  const below = Math.floor(at);
  const from = sorted[below]!;
  return from + ((sorted[below + 1] ?? from) - from) * (at - below);
}

/** The place of each value among all, from the smallest. */
function ranks(values: ArrayLike<number>): Float64Array {
  const order = Array.from(values, (_, index) => index).sort((a, b) => values[a]! - values[b]!);
  const places = new Float64Array(values.length);
  order.forEach((index, rank) => (places[index] = rank));
  return places;
}

/** Square of the correlation of two lists: the share of the variance of one that goes with the other [1]. */
function sharedVariance(one: ArrayLike<number>, other: ArrayLike<number>): number {
  const count = one.length;
  let [meanOne, meanOther] = [0, 0];
  for (let index = 0; index < count; index++) {
    meanOne += one[index]! / count;
    meanOther += other[index]! / count;
  }
  let [both, squareOne, squareOther] = [0, 0, 0];
  for (let index = 0; index < count; index++) {
    const [a, b] = [one[index]! - meanOne, other[index]! - meanOther];
    both += a * b;
    squareOne += a * a;
    squareOther += b * b;
  }
  return squareOne === 0 || squareOther === 0 ? 0 : both ** 2 / (squareOne * squareOther);
}

/**
 * Ranges of results by trying many benches that this one may be. Unlike `rangedAll` it takes the inputs together, so it
 * holds where a result bends: at the edge of freezing, or where the cable can just not keep up. Deterministic.
 *
 * A generator that hands out its progress after each member, so that whoever asks may stop, or draw in between.
 *
 * @param results results of one bench, by name; every one a finite number
 */
export function* ensemble<Name extends string>(
  situation: Situation,
  results: (parameters: Parameters) => Readonly<Record<Name, number>>,
  { members = 200, seed = 1, belief = beforeReadings(situation) }: EnsembleOptions = {},
): Generator<Progress, Ensemble<Name>> {
  const priors = priorsOf(situation);
  const { ids, middle } = belief;
  const size = ids.length;
  const root = rootOf(belief);
  const places = latinHypercube(members, size, seed).map((z) =>
    Float64Array.from(middle, (one, row) => {
      let value = one;
      for (let column = 0; column <= row; column++) value += root[row * size + column]! * z[column]!;
      return value;
    }),
  );
  const expected = results(expectedParameters(situation));
  const names = Object.keys(expected) as Name[];
  const found = new Map(names.map((name) => [name, new Float64Array(members)]));
  for (const [index, place] of places.entries()) {
    const here = results(parametersAt(priors, ids, place));
    for (const name of names) found.get(name)![index] = here[name];
    yield { done: index + 1, of: members };
  }
  const placed = ids.map((_, input) => ranks(places.map((place) => place[input]!)));
  const figureOf = (name: Name): EnsembleFigure => {
    const values = found.get(name)!;
    const ranked = ranks(values);
    const sorted = values.slice().sort();
    const blame = ids
      .map((id, input) => ({
        id,
        share: sharedVariance(placed[input]!, ranked),
      }))
      .sort((a, b) => b.share - a.share);
    return {
      expected: expected[name],
      low: percentile(sorted, 0.1),
      middle: percentile(sorted, 0.5),
      high: percentile(sorted, 0.9),
      blame,
    };
  };
  return {
    members,
    figures: Object.fromEntries(names.map((name) => [name, figureOf(name)])) as Record<Name, EnsembleFigure>,
  };
}

/** Runs a generator to its end and gives what it gives back. */
export function toTheEnd<Result>(generator: Generator<unknown, Result>): Result {
  for (;;) {
    const step = generator.next();
    if (step.done === true) return step.value;
  }
}

/** The headline figures of the cold night, for an ensemble: one member takes about a millisecond. */
export const nightHeadlines =
  (situation: Situation) =>
  (parameters: Parameters): Readonly<Record<'lowestRoots' | 'energy', number>> => {
    const night = nightOf(situation, parameters, { every: nightSteps.coarse });
    const { lowestRoots, energy } = summaryOf(situation, night);
    return { lowestRoots, energy };
  };
