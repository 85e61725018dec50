import {
  decimalsOf,
  decimalsShown,
  fromBase,
  shownUnit,
  type QuantityName,
  type UnitSystem,
} from './quantity.ts';
import type { ValueIn } from './temperature.ts';

/** How a reader wants numbers: the system of units and the language of the digits. */
export interface Manner {
  readonly system: UnitSystem;
  /** BCP 47 language tag. */
  readonly locale: string;
  /** ISO 4217 code of the region's money; sums have no sign of a currency without it. */
  readonly currency?: string;
  /** The words of the reader's language, by the message in English (`say.ts`); English without them. */
  readonly words?: Readonly<Record<string, string>>;
}

/** The narrow no-break space between a number and its unit (SI Brochure, 9th edition, section 5.4.3). */
const gap = '\u202f';

/** To make a format takes a hundred times as long as to use it, and few are ever needed. */
const formats = new Map<string, Intl.NumberFormat>();

function formatOf(
  locale: string,
  least: number,
  most: number,
  grouped: boolean,
  currency?: string,
): Intl.NumberFormat {
  const name = `${locale} ${least} ${most} ${grouped} ${currency ?? ''}`;
  const known = formats.get(name);
  if (known) return known;
  const format = new Intl.NumberFormat(locale, {
    ...(currency === undefined ? {} : { style: 'currency', currency }),
    minimumFractionDigits: least,
    maximumFractionDigits: most,
    useGrouping: grouped,
  });
  formats.set(name, format);
  return format;
}

/** A number with the sign and the digits of the reader's language. */
function written(value: number, manner: Manner, least: number, most: number, currency?: string): string {
  const format = formatOf(manner.locale, least, most, Math.abs(value) >= 10_000, currency);
  // Adding zero turns a negative zero, which would be printed with its sign, into zero.
  return format.format(value + 0).replace('-', '−');
}

/** The sign of the currency stands with the number, on the side where the reader's language has it. */
const currencyOf = (name: QuantityName, { currency }: Manner): string | undefined =>
  name === 'money' || name === 'energyPrice' ? currency : undefined;

/**
 * The number of a quantity as a reader sees it, without its unit: rounded to the unit's decimals, with a true
 * minus sign and no thousands mark below ten thousand. Sums of money have the sign of their currency.
 *
 * @param step a coarser step to round to, in the unit shown, as from `stepOf`
 */
export function showNumber<Q extends QuantityName>(
  value: ValueIn<Q>,
  name: Q,
  manner: Manner,
  step = 0,
): string {
  const unit = shownUnit(name, manner.system);
  const number = fromBase(name, value, unit);
  const { least, most } = decimalsShown(name, number, unit);
  const currency = currencyOf(name, manner);
  if (step >= 1) return written(Math.round(number / step) * step, manner, 0, 0, currency);
  return written(Number(number.toFixed(most)), manner, least, most, currency);
}

/** A quantity as a reader sees it, with its unit: "12.9 m", "−4.0 °C", "42 %", "€12.30". */
export function showQuantity<Q extends QuantityName>(
  value: ValueIn<Q>,
  name: Q,
  manner: Manner,
  step = 0,
): string {
  const unit = shownUnit(name, manner.system);
  const number = showNumber(value, name, manner, step);
  if (unit === '') return number;
  return unit.startsWith('/') ? `${number} ${unit}` : `${number}${gap}${unit}`;
}

/** Temperatures are held against limits that are set in tenths of a degree, so they keep their tenths. */
const keepsTenths = (name: QuantityName): boolean => name.startsWith('temperature');

/** At least so many steps lie between the ends of a range: a finer step would claim to know more than the range does. */
const stepsOfRange = 10;

/**
 * The step in which a figure with a range is shown, in the unit shown: a power of ten, 1 or more, so that four figures
 * do not stand beside a range of twenty to one. 0 where the unit's own decimals are right.
 */
export function stepOf<Q extends QuantityName>(
  low: ValueIn<Q>,
  high: ValueIn<Q>,
  name: Q,
  manner: Manner,
): number {
  if (keepsTenths(name)) return 0;
  const unit = shownUnit(name, manner.system);
  const width = Math.abs(fromBase(name, high, unit) - fromBase(name, low, unit));
  return width < stepsOfRange ? 0 : 10 ** Math.floor(Math.log10(width / stepsOfRange));
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
 * A day, written 2026-11-25, in the way of the reader's language: English keeps it as it is, as its readers write days in
 * two orders; others get the name of the month.
 */
export const showDate = (day: string, { locale }: Manner): string =>
  locale.startsWith('en')
    ? day
    : new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeZone: 'UTC' }).format(
        new Date(`${day}T00:00:00Z`),
      );

/**
 * A stored value as text for an input box: enough digits to read back the same value to a millionth, so that
 * showing a form and reading it again changes nothing that anyone could measure.
 */
export function showForInput<Q extends QuantityName>(value: ValueIn<Q>, name: Q, manner: Manner): string {
  const written = fromBase(name, value, shownUnit(name, manner.system));
  return String(Number(written.toPrecision(6))).replace('-', '−');
}
