/** A number as a book prints it: where it lies, and half of its last digit. */
export interface Printed {
  /** The lowest and the highest value that the print means; the same unless it gives a range. */
  readonly from: number;
  readonly to: number;
  /** Half the last printed digit, the coarser one of a range. */
  readonly within: number;
}

function one(text: string): { readonly value: number; readonly within: number } {
  const plain = text.replace('−', '-');
  const parts = /^-?\d+(?:\.(\d+))?(?:e(-?\d+))?$/u.exec(plain);
  if (!parts) throw new RangeError(`not a printed number: ${text}`);
  const [, decimals = '', power = '0'] = parts;
  return { value: Number(plain), within: 0.5 * 10 ** (Number(power) - decimals.length) };
}

/** Reads "2833" as 2833 ± 0.5, "−15.60" as −15.6 ± 0.005, "1.2e-5" as 0.000012 ± 0.0000005, "5.7 to 6.8" as a range. */
export function printed(text: string): Printed {
  const ends = text.split(' to ').map(one);
  const [from, to = from] = ends;
  if (from === undefined || to === undefined || ends.length > 2) throw new RangeError(`not a range: ${text}`);
  return { from: from.value, to: to.value, within: Math.max(from.within, to.within) };
}
