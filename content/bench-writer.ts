import { stringify } from 'yaml';
import type { Field, NumberField } from '../calculators/bench/field.ts';
import { allFields, valueAt } from '../calculators/bench/all-fields.ts';
import { fields, type Bench } from '../calculators/bench/fields.ts';
import { allowedIn, sayAllowed, type FieldValue } from '../calculators/bench/read-field.ts';
import { fromBase, shownUnit, toBase, unitsOf, type UnitSystem } from '../calculators/quantities/quantity.ts';
import { currentFormat } from './bench-format.ts';

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
 * people write, else in another unit. Whatever was once written in one of the units comes back exactly; a share or a
 * price that came from a calculation may be off by the last bit, as it has no base unit to be written in.
 */
export function exactQuantity(value: number, { quantity }: NumberField, system: UnitSystem): string {
  const shown = shownUnit(quantity, system);
  const other = shownUnit(quantity, system === 'us' ? 'metric' : 'us');
  const withUnit = (text: string, unit: string): string => (unit === '' ? text : `${text} ${unit}`);
  // Six digits are what a person writes; a value that needs more came from the other system, or from a calculation.
  for (const [digits, units] of [
    [6, [shown, other]],
    [allDigits, [shown, ...unitsOf(quantity)]],
  ] as const)
    for (const unit of units)
      for (let few = 1; few <= digits; few++) {
        const text = decimals(fromBase(quantity, value, unit), few);
        if (toBase(quantity, Number(text), unit) === value) return withUnit(text, unit);
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

/**
 * Writes a bench as a file that reads back to exactly the same bench: every field, each with its explanation, its
 * limits and its choices, in the units of the reader.
 */
export function writeBenchFile(bench: Bench, system: UnitSystem): string {
  const lines = [
    '# A bench of the winter bench guide. Change the values, keep the names; a line that you leave out takes its usual',
    '# value. What follows # is for people.',
    `format: ${currentFormat}`,
  ];
  let last: string | undefined;
  for (const placed of allFields) {
    const { group, name, field } = placed;
    if (group !== last)
      lines.push('', ...comment(`${fields[group].label}. ${fields[group].explain}`, ''), `${group}:`);
    last = group;
    lines.push(...comment(`${field.label}. ${field.explain}${limits(field, system)}`, '  '));
    lines.push(`  ${name}: ${written(valueAt(bench, placed), field, system)}`.trimEnd());
  }
  return `${lines.join('\n')}\n`;
}
