import type { Field, NumberField, TextField } from '../../calculators/bench/field.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';

/** The id of a field on a page. Links and labels point at it: it never changes. */
export const fieldId = (form: string, path: FieldPath): string => `${form}-${path.replace('.', '-')}`;

/** What a form must know of a field to read an answer: its declaration without the explanation. */
export type FormField = Omit<NumberField, 'explain'> | Omit<TextField, 'explain'>;

/** The part of a typed field's declaration that goes with the page; chosen fields need none. */
export function formField(field: Field): FormField | undefined {
  if (field.shape !== 'number' && field.shape !== 'text') return undefined;
  const { explain: _, ...rest } = field;
  return rest;
}
