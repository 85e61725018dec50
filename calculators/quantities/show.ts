import { decimalsOf, fromBase, shownUnit, type QuantityName, type UnitSystem } from './quantity.ts';
import type { ValueIn } from './temperature.ts';

/** How a reader wants numbers: the system of units and the language of the digits. */
export interface Manner {
  readonly system: UnitSystem;
  /** BCP 47 language tag. */
  readonly locale: string;
}

/** The narrow no-break space between a number and its unit (SI Brochure, 9th edition, section 5.4.3). */
const gap = '\u202f';

/** To make a format takes a hundred times as long as to use it, and few are ever needed. */
const formats = new Map<string, Intl.NumberFormat>();

function formatOf(locale: string, least: number, most: number, grouped: boolean): Intl.NumberFormat {
  const name = `${locale} ${least} ${most} ${grouped}`;
  const known = formats.get(name);
  if (known) return known;
  const format = new Intl.NumberFormat(locale, {
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    useGrouping: grouped,
  });
  formats.set(name, format);
  return format;
}

/**
 * The number of a quantity as a reader sees it, without its unit: rounded to the unit's decimals, with a true
 * minus sign and no thousands mark below ten thousand.
 */
export function showNumber<Q extends QuantityName>(value: ValueIn<Q>, name: Q, manner: Manner): string {
  const unit = shownUnit(name, manner.system);
  const decimals = decimalsOf(name, unit);
  const written = fromBase(name, value, unit);
  const rounded = Number(written.toFixed(decimals));
  const format = formatOf(manner.locale, decimals, decimals, Math.abs(rounded) >= 10_000);
  // Adding zero turns a negative zero, which would be printed with its sign, into zero.
  return format.format(rounded + 0).replace('-', '−');
}

/** A quantity as a reader sees it, with its unit: "12.9 m", "−4.0 °C", "42 %". */
export function showQuantity<Q extends QuantityName>(value: ValueIn<Q>, name: Q, manner: Manner): string {
  const unit = shownUnit(name, manner.system);
  const number = showNumber(value, name, manner);
  if (unit === '') return number;
  return unit.startsWith('/') ? `${number} ${unit}` : `${number}${gap}${unit}`;
}

/**
 * The limit of a range as a reader sees it: with no more decimals than it needs, and rounded into the range, so that
 * whoever types the limit that was read is inside it.
 */
export function showLimit<Q extends QuantityName>(
  value: ValueIn<Q>,
  name: Q,
  manner: Manner,
  end: 'lowest' | 'highest',
): string {
  const unit = shownUnit(name, manner.system);
  const step = 10 ** decimalsOf(name, unit);
  const written = fromBase(name, value, unit) * step;
  // A millionth of a step, so that the rounding of a conversion does not move a limit by a whole step.
  const rounded = (end === 'lowest' ? Math.ceil(written - 1e-6) : Math.floor(written + 1e-6)) / step;
  // Without a thousands mark, which a reader must not type.
  const format = formatOf(manner.locale, 0, decimalsOf(name, unit), false);
  const number = format.format(rounded + 0).replace('-', '−');
  if (unit === '') return number;
  return unit.startsWith('/') ? `${number} ${unit}` : `${number}${gap}${unit}`;
}

/**
 * A stored value as text for an input box: enough digits to read back the same value to a millionth, so that
 * showing a form and reading it again changes nothing that anyone could measure.
 */
export function showForInput<Q extends QuantityName>(value: ValueIn<Q>, name: Q, manner: Manner): string {
  const written = fromBase(name, value, shownUnit(name, manner.system));
  return String(Number(written.toPrecision(6))).replace('-', '−');
}
