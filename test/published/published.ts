import { printed } from '../support/near.ts';

/**
 * How far a computed value may lie from the printed one, where half the printed last digit is not the right measure. It
 * is chosen before the comparison is made, and says why.
 */
export type Tolerance = { readonly because: string } & (
  { readonly plusMinus: number } | { readonly share: number }
);

/** One value that somebody else has published, and the same value from this guide's own code. */
export interface Published {
  /** A noun phrase: "density of water". */
  readonly what: string;
  /** What it was worked out for, as the source gives it: "25 °C, 0.1 MPa". */
  readonly given: string;
  /** The value as it stands in print, with its digits. */
  readonly printed: string;
  /** The unit it is printed in; empty for a plain number. */
  readonly unit: string;
  /** The same from the guide's code, in that unit. */
  readonly computed: () => number;
  /** Half the last printed digit, unless it says otherwise. */
  readonly tolerance?: Tolerance;
  /** Publication and place. */
  readonly source: string;
  /** `seen`: read in a copy of the source. `memory`: known from memory. */
  readonly standing: 'seen' | 'memory';
}

/** What all rows of one printed table have in common. */
export type Common = Pick<Published, 'source' | 'standing'> & Partial<Pick<Published, 'tolerance'>>;

/** The largest distance from the printed value at which this row still agrees, in its printed unit. */
export function allowed({ printed: text, tolerance }: Published): number {
  const { value, within } = printed(text);
  if (tolerance === undefined) return within * (1 + 1e-9);
  return 'share' in tolerance ? Math.abs(value) * tolerance.share : tolerance.plusMinus;
}

/** The row as a sentence. */
export const sentence = ({ what, given, printed: text, unit, source }: Published): string =>
  `${what} at ${given} is ${text}${unit === '' ? '' : ` ${unit}`} (${source})`;

/** What is wrong with a row, or null: the computed value with its distance. */
export function miss(row: Published): string | null {
  const { value } = printed(row.printed);
  const computed = row.computed();
  const off = Math.abs(computed - value);
  return off <= allowed(row) ? null : `computed ${computed}, off by ${off}, allowed ${allowed(row)}`;
}
