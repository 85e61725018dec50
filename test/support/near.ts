import { expect } from 'vitest';
import { printed } from '../../calculators/checks/printed.ts';

/**
 * Passes where `actual` lies no further than `within` from `expected`: a distance in the unit of the two, said by the
 * caller, never a number of digits.
 */
export function expectNear(actual: number, expected: number, within: number, what = 'the value'): void {
  if (!(within >= 0)) throw new RangeError(`a tolerance of ${within}`);
  const off = Math.abs(actual - expected);
  expect(off <= within, `${what} is ${actual}, not ${expected} ± ${within} (off by ${off})`).toBe(true);
}

/** Passes where `actual`, rounded as the book rounds, is what the book prints; anywhere in a range that it prints. */
export function expectPrinted(actual: number, text: string, what?: string): void {
  const { from, to, within } = printed(text);
  const nearest = Math.min(Math.max(actual, from), to);
  // A hair more than half a digit, so that a value exactly between two printed ones passes whichever way it was rounded.
  expectNear(actual, nearest, within * (1 + 1e-9), what);
}
