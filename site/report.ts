import type { Answer, Calculator } from '../calculators/calculator.ts';
import type { Field } from '../calculators/bench/field.ts';
import { fields, type Bench, type FieldPath } from '../calculators/bench/fields.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { fieldValue } from './bench-value.ts';
import { figureText, rangeText, sayingOf, valueText } from './widgets/text.ts';

/** One figure of a calculator as a reader sees it. */
export interface Row {
  /** Name of the figure in its calculator's declaration. */
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** "likely … to …" where the figure rests on something uncertain, else empty. */
  readonly range: string;
}

/** The figures of a calculator for one bench, in the order of its declaration. Those that do not arise are left out. */
export function rowsOf(calculator: Calculator, { figures }: Answer, manner: Manner): Row[] {
  return Object.entries(calculator.figures).flatMap(([name, { label, quantity }]) => {
    const figure = figures[name];
    if (!figure) return [];
    const value = figureText(figure, quantity, manner);
    return [{ name, label, value, range: rangeText(figure, quantity, manner) }];
  });
}

/** The declaration of a field: fieldAt('frame.length'). Throws RangeError on a field that is not there. */
export function fieldAt(path: FieldPath): Field {
  const [group = '', name = ''] = path.split('.');
  const groups: Readonly<Record<string, { readonly fields: Readonly<Record<string, Field>> }>> = fields;
  const field = groups[group]?.fields[name];
  if (!field) throw new RangeError(`no field ${path}`);
  return field;
}

/** What a bench holds in a field, as a reader sees it: "6.00 m", "Gravel on soil", or what an empty one means. */
export const showField = (bench: Bench, path: FieldPath, manner: Manner): string =>
  valueText(fieldValue(bench, path), sayingOf(fieldAt(path)), manner);

/** The fields that a calculator shows first, and the rest, which is one click or one look away. */
export function firstAndRest(reads: readonly FieldPath[]): {
  first: readonly FieldPath[];
  rest: readonly FieldPath[];
} {
  const most = 4;
  return { first: reads.slice(0, most), rest: reads.slice(most) };
}
