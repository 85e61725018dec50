import { stringify } from 'yaml';
import type { Field, NumberField } from '../calculators/bench/field.ts';
import { allFields, valueAt } from '../calculators/bench/all-fields.ts';
import { fields, type Bench, type FieldPath } from '../calculators/bench/fields.ts';
import { allowedIn, sayAllowed, type FieldValue } from '../calculators/bench/read-field.ts';
import { fromBase, shownUnit, toBase, unitsOf, type UnitSystem } from '../calculators/quantities/quantity.ts';
import { startBench } from '../calculators/bench/start.ts';
import { assumedKey, currentFormat } from './bench-format.ts';

/** Digits of a number that tell every double from its neighbours (IEEE 754, binary64). */
const allDigits = 17;

/** A number in plain decimals, without an exponent, which no grower writes. */
function decimals(value: number, digits: number): string {
  const short = String(Number(value.toPrecision(digits)));
  if (!short.includes('e')) return short;
  const size = Math.floor(Math.log10(Math.abs(value)));
  const places = Math.min(100, Math.max(0, digits - 1 - size));
  return Number(value.toPrecision(digits))
    .toFixed(places)
    .replace(/(\.\d*?)0+$/u, '$1')
    .replace(/\.$/u, '');
}

/**
 * A quantity as text that reads back to the same value, in the reader's unit if that can be done with as few digits as
 * people write, else in another unit. Whatever was once written in one of the units comes back exactly; what came from a
 * calculation, such as feet and inches added up, may be off by the last bit.
 */
export function exactQuantity(value: number, { quantity }: NumberField, system: UnitSystem): string {
  const shown = shownUnit(quantity, system);
  const other = shownUnit(quantity, system === 'us' ? 'metric' : 'us');
  const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text} ${unit}`);
  // Six digits are what a person writes; a value that needs more came from the other system, or from a calculation. Feet
  // and inches added up may be off by the last bit, which nobody wants to see written out.
  const rest = [other, ...unitsOf(quantity)];
  for (const [digits, units, off] of [
    [6, [shown], 0],
    [6, rest, 0],
    [6, [shown], 2 ** -52 * Math.abs(value)],
    [6, [other], 2 ** -52 * Math.abs(value)],
    [allDigits, [shown, ...rest], 0],
  ] as const)
    // The fewest digits first, whatever the unit: 32 in, not 0.8128 m.
    for (let few = 1; few <= digits; few++)
      for (const unit of units) {
        const text = decimals(fromBase(quantity, value, unit), few);
        if (Math.abs(toBase(quantity, Number(text), unit) - value) <= off) return withUnit(text, unit);
      }
  return withUnit(decimals(fromBase(quantity, value, shown), allDigits), shown);
}

const wrap = (text: string, width: number): string[] => {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    if (last === undefined || last.length + 1 + word.length > width) lines.push(word);
    else lines[lines.length - 1] = `${last} ${word}`;
  }
  return lines;
};

const comment = (text: string, indent: string): string[] =>
  wrap(text, 100).map((line) => `${indent}# ${line}`);

/** What a field may hold, for the comment above it. */
function limits(field: Field, system: UnitSystem): string {
  const words = sayAllowed(allowedIn(field), { system, locale: 'en' });
  switch (field.shape) {
    case 'choice':
      return ` One of: ${words}.`;
    case 'number':
      return ` ${sentence(words)}.${field.empty === undefined ? '' : ` Empty: ${field.empty}.`}`;
    case 'text':
    case 'reference':
      return '';
  }
}

const sentence = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function written(value: FieldValue, field: Field, system: UnitSystem): string {
  if (value === null) return '';
  if (field.shape === 'number') return exactQuantity(value as number, field, system);
  return stringify(value, { lineWidth: 0 }).trimEnd();
}

/** A value that was assumed, as the reader would write it: for a comment, so it may be rounded. */
function usual(value: FieldValue, field: Field, system: UnitSystem): string {
  if (typeof value !== 'number' || field.shape !== 'number') return written(value, field, system);
  const unit = shownUnit(field.quantity, system);
  return `${decimals(fromBase(field.quantity, value, unit), 4)} ${unit}`.trim();
}

/**
 * Writes a bench as a file that reads back to exactly the same bench: every field, each with its explanation, its
 * limits and its choices, in the units of the reader. What was assumed stays assumed: a usual value stands in a
 * comment, and a value that was taken over from an example is named in a list at the end.
 *
 * @param set the fields that someone has set; all of them where left out
 */
export function writeBenchFile(bench: Bench, system: UnitSystem, set?: readonly FieldPath[]): string {
  const start = startBench();
  const lines = [
    '# A bench of the winter bench guide. Change the values, keep the names; a line that you leave out takes its usual',
    '# value. What follows # is for people: take the # away from a value to make it your own.',
    `format: ${currentFormat}`,
  ];
  let last: string | undefined;
  const takenOver: FieldPath[] = [];
  for (const placed of allFields) {
    const { group, name, path, field } = placed;
    if (group !== last)
      lines.push('', ...comment(`${fields[group].label}. ${fields[group].explain}`, ''), `${group}:`);
    last = group;
    lines.push(...comment(`${field.label}. ${field.explain}${limits(field, system)}`, '  '));
    const value = valueAt(bench, placed);
    const assumed = set !== undefined && !set.includes(path);
    if (assumed && value === valueAt(start, placed))
      lines.push(`  # ${name}: ${usual(value, field, system)}`.trimEnd());
    else {
      if (assumed) takenOver.push(path);
      lines.push(`  ${name}: ${written(value, field, system)}`.trimEnd());
    }
  }
  if (takenOver.length > 0)
    lines.push(
      '',
      ...comment(
        'What nobody has measured or chosen: taken over from the example. Take a name out when you have put your own value above.',
        '',
      ),
      `${assumedKey}:`,
      ...takenOver.map((path) => `  - ${path}`),
    );
  return `${lines.join('\n')}\n`;
}
