import { expect } from 'vitest';

/**
 * Passes where `actual` lies no further than `within` from `expected`: a distance in the unit of the two, said by the
 * caller, never a number of digits.
 */
export function expectNear(actual: number, expected: number, within: number, what = 'the value'): void {
  if (!(within >= 0)) throw new RangeError(`a tolerance of ${within}`);
  const off = Math.abs(actual - expected);
  expect(off <= within, `${what} is ${actual}, not ${expected} ± ${within} (off by ${off})`).toBe(true);
}

/**
 * A number as a book prints it, with the half of its last digit: "2833" is 2833 ± 0.5, "−15.60" is −15.6 ± 0.005,
 * "1.2e-5" is 0.000012 ± 0.0000005.
 */
export function printed(text: string): { readonly value: number; readonly within: number } {
  const plain = text.replace('−', '-');
  const parts = /^-?\d+(?:\.(\d+))?(?:e(-?\d+))?$/u.exec(plain);
  if (!parts) throw new RangeError(`not a printed number: ${text}`);
  const [, decimals = '', power = '0'] = parts;
  return { value: Number(plain), within: 0.5 * 10 ** (Number(power) - decimals.length) };
}

/** Passes where `actual`, rounded as the book rounds, is what the book prints. */
export function expectPrinted(actual: number, text: string, what?: string): void {
  const { value, within } = printed(text);
  // A hair more than half a digit, so that a value exactly between two printed ones passes whichever way it was rounded.
  expectNear(actual, value, within * (1 + 1e-9), what);
}
