import { NoRest } from './bench/settle.ts';
import { sentence, stop, type Answer, type Calculator, type Situation, type Warning } from './calculator.ts';
import { OutOfRange } from './range.ts';

/**
 * What happens when a law gives up. A law refuses to work outside the range that it was published for, and a bench may
 * not come to rest. Then the calculator that asked has no figures and says why, and all others go on: whoever shows
 * answers gets them through here, on a page, on paper and in files alike.
 */

/** The part of a calculator that works figures out, without the words about them. */
export type Working<Names extends string = string> = Pick<Calculator<string, Names>, 'compute'> & {
  readonly figures: Readonly<Record<Names, unknown>>;
};

const written = (value: number): string => String(Number(value.toPrecision(3))).replace('-', '−');

/** Why there is no answer, in words for the reader; null for an error that no bench is to blame for. */
export function refusal(problem: unknown): Warning | null {
  if (problem instanceof NoRest)
    return stop(
      'no-rest',
      sentence`The temperatures of this bench do not come to rest in the calculation, so there are no figures here. Look for a value that was mistyped.`,
    );
  if (problem instanceof OutOfRange) {
    const { quantity, value, from, to } = problem;
    return stop(
      'outside-range',
      sentence`This bench lies outside the range that the published laws hold for, so there are no figures here: ${quantity} is ${written(value)}, and must be ${written(from)} to ${written(to)}.`,
    );
  }
  if (problem instanceof RangeError)
    return stop(
      'outside-range',
      sentence`This bench lies outside the range that the published laws hold for, so there are no figures here.`,
    );
  return null;
}

/** What some work gives, or what stands for it where a law gives up. Every other error goes on. */
export function unlessRefused<Result, Instead>(
  work: () => Result,
  instead: (why: Warning) => Instead,
): Result | Instead {
  try {
    return work();
  } catch (problem) {
    const why = refusal(problem);
    if (!why) throw problem;
    return instead(why);
  }
}

/** The answer of one calculator. Where a law gives up every figure is empty and the one warning says why. */
export const answerOf = <Names extends string>(
  { figures, compute }: Working<Names>,
  situation: Situation,
): Answer<Names> =>
  unlessRefused<Answer<Names>, Answer<Names>>(
    () => compute(situation),
    (why) => ({
      figures: Object.fromEntries(Object.keys(figures).map((name) => [name, null])) as Record<Names, null>,
      warnings: [why],
    }),
  );
