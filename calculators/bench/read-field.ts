import { unitsOf, shownUnit, type QuantityName } from '../quantities/quantity.ts';
import { readQuantity } from '../quantities/read.ts';
import { showLimit, type Manner } from '../quantities/show.ts';
import { messages, say } from '../say.ts';
import type { Field, NumberField } from './field.ts';
import { nearestName } from './nearest.ts';

/** A value that a bench can hold, in the base unit of its quantity; null where an empty field has a meaning. */
export type FieldValue = number | string | null;

/** What a field allows, as data. */
export type Allowed =
  | {
      readonly kind: 'number';
      readonly quantity: QuantityName;
      readonly from: number;
      readonly to: number;
      /** A value that would do, to show how it is written. */
      readonly example: number;
    }
  | { readonly kind: 'names'; readonly names: readonly string[] }
  | { readonly kind: 'text'; readonly longest: number };

export type FieldProblemCode =
  /** Nothing was given where something is needed. */
  | 'empty'
  /** A list or a group of values where one value is needed. */
  | 'not-one-value'
  | 'not-a-number'
  /** "1,200" may mean 1.2 or 1200. */
  | 'ambiguous-comma'
  | 'unit-missing'
  | 'unit-unknown'
  | 'not-whole'
  | 'out-of-range'
  | 'not-listed'
  | 'too-long'
  /** Control characters and halves of characters, which no paper can show. */
  | 'unprintable';

export interface FieldProblem {
  readonly code: FieldProblemCode;
  /** What was given, or the part of it that is wrong. */
  readonly found: string;
  readonly allowed: Allowed;
}

export type ReadField =
  { readonly ok: true; readonly value: FieldValue } | { readonly ok: false; readonly problem: FieldProblem };

/** What a field allows; of a reference, one of these names. */
export function allowedIn(field: Field, references: readonly string[] = []): Allowed {
  switch (field.shape) {
    case 'number': {
      const { quantity, from, to, start } = field;
      return { kind: 'number', quantity, from, to, example: start ?? middleOf(field) };
    }
    case 'choice':
      return { kind: 'names', names: Object.keys(field.options) };
    case 'reference':
      return { kind: 'names', names: references };
    case 'text':
      return { kind: 'text', longest: field.longest };
  }
}

/** A round value inside the range, as an example where the field has no start value. */
function middleOf({ from, to }: NumberField): number {
  const middle = (from + to) / 2;
  return Math.abs(middle) < 1 ? middle : Math.round(middle);
}

/** What is wrong with a value of a field, in base units; null where nothing is. */
export function problemIn(
  field: Field,
  value: FieldValue,
  references: readonly string[] = [],
): FieldProblem | null {
  const fail = (code: FieldProblemCode): FieldProblem => ({
    code,
    found: value === null ? '' : String(value),
    allowed: allowedIn(field, references),
  });
  switch (field.shape) {
    case 'number':
      if (value === null) return field.empty === undefined ? fail('empty') : null;
      if (typeof value !== 'number' || !Number.isFinite(value)) return fail('not-a-number');
      if (field.quantity === 'count' && !Number.isInteger(value)) return fail('not-whole');
      return value < field.from || value > field.to ? fail('out-of-range') : null;
    case 'choice':
      if (value === null || value === '') return fail('empty');
      return typeof value === 'string' && Object.hasOwn(field.options, value) ? null : fail('not-listed');
    case 'reference':
      if (value === null || value === '') return fail('empty');
      return typeof value === 'string' && references.includes(value) ? null : fail('not-listed');
    case 'text':
      if (value === null || value === '') return field.required ? fail('empty') : null;
      if (typeof value !== 'string' || /[\p{Cc}\p{Cs}]/u.test(value)) return fail('unprintable');
      return [...value].length > field.longest ? fail('too-long') : null;
  }
}

/**
 * Pulls a value that lies outside its range by no more than the rounding of a conversion ("−49 °F" is −45 °C and a
 * hair) onto the limit.
 */
function ontoLimit(value: number, { from, to }: NumberField): number {
  const hair = 1e-12 * Math.max(Math.abs(from), Math.abs(to));
  if (Math.abs(value - from) <= hair) return from + 0;
  // Adding zero turns a negative zero into zero.
  return Math.abs(value - to) <= hair ? to : value + 0;
}

/** Whatever a form or a file may give for one value, as text. */
const textOf = (raw: unknown): string =>
  typeof raw === 'string' ? raw : typeof raw === 'number' || typeof raw === 'boolean' ? String(raw) : '';

/**
 * Reads one raw value of one field: what was typed into a form, or a scalar of a file. The one reader of both.
 *
 * @param field the field it is for
 * @param raw text as written, a number, or nothing
 * @param unit the unit of a bare number, in a form that shows one; without it a bare number is a problem
 * @param references the names that a reference may have
 */
export function readField(
  field: Field,
  raw: unknown,
  unit?: string,
  references: readonly string[] = [],
): ReadField {
  const fail = (code: FieldProblemCode, found: string): ReadField => ({
    ok: false,
    problem: { code, found, allowed: allowedIn(field, references) },
  });
  if (typeof raw === 'object' && raw !== null)
    return fail('not-one-value', Array.isArray(raw) ? 'a list' : 'a group');
  // Blanks and line ends are one blank: what a reader sees as the same is the same.
  const text = textOf(raw).replace(/\s+/gu, ' ').trim();

  let value: FieldValue = text;
  if (field.shape === 'number') {
    if (text === '') value = null;
    else {
      const read = readQuantity(text, field.quantity, unit);
      if (!read.ok) return fail(read.problem, read.found);
      value = ontoLimit(read.value, field);
    }
  }
  const problem = problemIn(field, value, references);
  // The reader is shown what was written, not what it was turned into.
  return problem ? { ok: false, problem: { ...problem, found: text } } : { ok: true, value };
}

const inSentence = (label: string): string => label.charAt(0).toLowerCase() + label.slice(1);

const listed = (names: readonly string[], manner: Manner): string =>
  names.length < 2
    ? names.join('')
    : say(manner, '{list} or {last}', { list: names.slice(0, -1).join(', '), last: names.at(-1) ?? '' });

/** The units of a quantity, the reader's own first. */
function unitsFor(quantity: QuantityName, manner: Manner): string[] {
  const own = shownUnit(quantity, manner.system);
  return [own, ...unitsOf(quantity).filter((unit) => unit !== own)];
}

/** What is allowed, in the reader's units: "between 0.6 m and 60 m", "u, ring or straight". */
export function sayAllowed(allowed: Allowed, manner: Manner): string {
  switch (allowed.kind) {
    case 'number':
      return say(manner, 'between {lowest} and {highest}', {
        lowest: showLimit(allowed.from, allowed.quantity, manner, 'lowest'),
        highest: showLimit(allowed.to, allowed.quantity, manner, 'highest'),
      });
    case 'names':
      return allowed.names.length === 0
        ? say(manner, 'nothing: there is none')
        : listed(allowed.names, manner);
    case 'text':
      return say(manner, '{count} characters or fewer', { count: String(allowed.longest) });
  }
}

/** What would have been right where this problem was found: the units, if it was the unit, else what is allowed. */
export const sayRight = ({ code, allowed }: FieldProblem, manner: Manner): string =>
  code === 'unit-unknown' && allowed.kind === 'number'
    ? listed(unitsFor(allowed.quantity, manner), manner)
    : sayAllowed(allowed, manner);

/**
 * The problem in words, without a full stop: what must be true, said of the field by its label, in the reader's units.
 * The same words stand beside a field of a form and in the message about a file.
 */
export function sayProblem(field: Field, problem: FieldProblem, manner: Manner): string {
  const { code, found, allowed } = problem;
  const label = say(manner, field.label);
  const right = sayRight(problem, manner);
  const example =
    allowed.kind === 'number' ? showLimit(allowed.example, allowed.quantity, manner, 'lowest') : undefined;
  /** With an example of what may be written, where the field is of numbers. */
  const such = (plain: string, withExample: string, parts: Readonly<Record<string, string>>): string =>
    example === undefined ? say(manner, plain, parts) : say(manner, withExample, { ...parts, example });
  switch (code) {
    case 'empty':
      return allowed.kind === 'names'
        ? say(manner, 'Select the {field}: {right}', { field: inSentence(label), right })
        : such(messages('Enter the {field}'), messages('Enter the {field}, such as {example}'), {
            field: inSentence(label),
          });
    case 'not-one-value':
      return say(manner, '{field} must be one value, not {found}', { field: label, found });
    case 'not-a-number':
      return such(
        messages('{field} must be a number'),
        messages('{field} must be a number, such as {example}'),
        { field: label },
      );
    case 'ambiguous-comma':
      return say(manner, '{field} must be written without a comma: {point} or {plain}', {
        field: label,
        point: found.replace(',', '.'),
        plain: found.replace(',', ''),
      });
    case 'unit-missing':
      return such(
        messages('{field} must have a unit'),
        messages('{field} must have a unit, such as {example}'),
        { field: label },
      );
    case 'unit-unknown':
      return say(manner, '{field} must be in {right}, not in {found}', { field: label, right, found });
    case 'not-whole':
      return such(
        messages('{field} must be a whole number'),
        messages('{field} must be a whole number, such as {example}'),
        { field: label },
      );
    case 'out-of-range':
    case 'too-long':
      return say(manner, '{field} must be {right}', { field: label, right });
    case 'not-listed': {
      const nearest = allowed.kind === 'names' ? nearestName(found, allowed.names) : undefined;
      return nearest
        ? say(manner, '{field} must be {right}; did you mean {nearest}?', { field: label, right, nearest })
        : say(manner, '{field} must be {right}', { field: label, right });
    }
    case 'unprintable':
      return say(manner, '{field} must have no control characters in it', { field: label });
  }
}
