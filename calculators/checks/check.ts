import type { Citation } from '../cite.ts';
import { printed } from './printed.ts';

/**
 * How far a computed value may lie from the printed one, where half the printed last digit is not the right measure. It
 * is chosen before the comparison is made, and says why.
 */
export type Tolerance = { readonly because: string } & (
  { readonly plusMinus: number } | { readonly share: number }
);

/**
 * `table`: a row of a printed table, a rule, a design value. `worked example`: the answer to a problem that a book solves
 * with numbers. `program check`: what another program gives, or a calculation done apart from this code.
 */
export type CheckKind = 'table' | 'worked example' | 'program check';

/** One value that somebody else has published, and the same value from this guide's own code. */
export interface Check {
  /** A noun phrase: "density of water". */
  readonly what: string;
  /** What it was worked out for, as the source gives it: "25 °C, 0.1 MPa". */
  readonly given: string;
  /** The value as it stands in print, with its digits; "5.7 to 6.8" where a range is printed. */
  readonly printed: string;
  /** The unit it is printed in; empty for a plain number. */
  readonly unit: string;
  /** The same from the guide's code, in that unit. */
  readonly computed: () => number;
  /** Half the last printed digit, unless it says otherwise. */
  readonly tolerance?: Tolerance;
  readonly kind: CheckKind;
  /** Publication and place. */
  readonly from: Citation;
  /** Where it was read, if not in the publication itself. */
  readonly via?: Citation;
  /** `seen`: read in a copy of the source, or where `via` says. `memory`: known from memory. */
  readonly standing: 'seen' | 'memory';
}

/** What all rows of one printed table have in common. */
export type Common = Pick<Check, 'from' | 'standing' | 'kind'> & Partial<Pick<Check, 'tolerance' | 'via'>>;

/** The largest distance from the printed value at which this row still agrees, in its printed unit. */
export function allowed({ printed: text, tolerance }: Check): number {
  const { from, to, within } = printed(text);
  // A hair more than half a digit, so that a value exactly between two printed ones passes whichever way it was rounded.
  if (tolerance === undefined) return within * (1 + 1e-9);
  return 'share' in tolerance
    ? Math.max(Math.abs(from), Math.abs(to)) * tolerance.share
    : tolerance.plusMinus;
}

/** A check, made. */
export interface Checked {
  /** What the guide's code gives. */
  readonly actual: number;
  /** How far that lies above the printed value, or outside the printed range; in the printed unit. */
  readonly deviation: number;
  /** The same as a share of the printed value [1]; null where that is zero, a share itself, or a temperature level. */
  readonly share: number | null;
  readonly allowed: number;
  readonly passes: boolean;
}

export function runCheck(check: Check): Checked {
  const { from, to } = printed(check.printed);
  const actual = check.computed();
  const nearest = Math.min(Math.max(actual, from), to);
  const deviation = actual - nearest;
  const most = allowed(check);
  return {
    actual,
    deviation,
    share: nearest === 0 || check.unit === '°C' || check.unit === '%' ? null : deviation / Math.abs(nearest),
    allowed: most,
    passes: Math.abs(deviation) <= most,
  };
}

/** The row as a sentence. */
export const sentence = ({ what, given, printed: text, unit, from }: Check): string =>
  `${what} at ${given} is ${text}${unit === '' ? '' : ` ${unit}`} (${from.source}, ${from.at})`;
