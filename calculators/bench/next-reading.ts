import type { Situation } from '../calculator.ts';
import { rootOf } from './belief.ts';
import type { Calibration, ReadingId } from './calibrate.ts';
import { priorsOf, type PriorId } from './priors.ts';

/** Something that a grower could measure next. */
export interface NextReading {
  /** A reading of a calm night, or what narrows an uncertain input by itself. */
  readonly what: { readonly reading: ReadingId } | { readonly measure: string };
  /** Part of the range of each result that would go [1]. */
  readonly narrows: readonly number[];
}

/** How exactly an input is known once it was measured by itself, in standard deviations of its prior (assumption). */
const measured = 0.25;

/**
 * What each measurement that was not made would do to the ranges of results, largest first: the variance that is left
 * once its row is added to the fit, as if all were straight lines (the expected posterior of a linear model).
 *
 * @param slopes how each result changes along the directions of the belief's root
 */
export function nextReadings(
  situation: Situation,
  { belief, compared, sensitivity, joint }: Calibration,
  slopes: readonly Float64Array[],
): NextReading[] {
  const { ids } = belief;
  const size = ids.length;
  const all = Math.round(Math.sqrt(joint.length));
  const root = rootOf(belief);
  // The results by the unknowns themselves: rootᵀ g = slopes, from the last up.
  const results = slopes.map((along) => {
    const gradient = new Float64Array(all);
    for (let row = size - 1; row >= 0; row--) {
      let value = along[row]!;
      for (let below = row + 1; below < size; below++) value -= root[below * size + row]! * gradient[below]!;
      gradient[row] = value / root[row * (size + 1)]!;
    }
    return { gradient, variance: along.reduce((sum, one) => sum + one * one, 0) };
  });
  // The joint covariance, with the cable's output as the belief has it.
  const covariance = joint.slice();
  const output = ids.indexOf('cableOutput');
  covariance[output * (all + 1)] = belief.covariance[output * (size + 1)]!;

  /** Part of the standard deviations that rows, each over its error, take away. */
  const narrowing = (rows: readonly Float64Array[]): number[] => {
    const left = covariance.slice();
    const gone = results.map(() => 0);
    for (const row of rows) {
      const told = new Float64Array(all);
      for (let i = 0; i < all; i++) for (let j = 0; j < all; j++) told[i]! += left[i * all + j]! * row[j]!;
      const total = 1 + row.reduce((sum, one, i) => sum + one * told[i]!, 0);
      results.forEach(({ gradient }, index) => {
        gone[index]! += gradient.reduce((sum, one, i) => sum + one * told[i]!, 0) ** 2 / total;
      });
      for (let i = 0; i < all; i++)
        for (let j = 0; j < all; j++) left[i * all + j]! -= (told[i]! * told[j]!) / total;
    }
    return results.map(({ variance }, index) =>
      variance === 0 ? 0 : 1 - Math.sqrt(Math.max(0, 1 - gone[index]! / variance)),
    );
  };
  const unit = (id: PriorId): Float64Array => {
    const row = new Float64Array(all);
    row[ids.indexOf(id)] = 1 / measured;
    return row;
  };

  const { readings } = situation.bench;
  const made = new Set(compared.map(({ id }) => id));
  const open: readonly ReadingId[] = [
    'under',
    'loop',
    'roots',
    ...(readings.house === null ? ['house' as const] : []),
    ...(readings.roots === null ? [] : ['drift' as const]),
  ];
  const byMeasure = new Map<string, PriorId[]>();
  for (const [name, { measure, low, high }] of Object.entries(priorsOf(situation))) {
    if (low < high) byMeasure.set(measure, [...(byMeasure.get(measure) ?? []), name as PriorId]);
  }
  return [
    ...open
      .filter((id) => !made.has(id))
      .map((reading) => ({ what: { reading }, narrows: narrowing([sensitivity[reading]]) })),
    ...[...byMeasure].map(([measure, of]) => ({ what: { measure }, narrows: narrowing(of.map(unit)) })),
  ].sort((one, other) => Math.max(...other.narrows) - Math.max(...one.narrows));
}
