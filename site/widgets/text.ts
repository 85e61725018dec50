import type { Cell, Figure, Sentence } from '../../calculators/calculator.ts';
import type { Field } from '../../calculators/bench/field.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showNumber, showQuantity, stepOf, type Manner } from '../../calculators/quantities/show.ts';

/** Shown where a question does not arise for this bench, such as the mix of a loop of plain water. */
export const noFigure = 'no figure';

const stepOfFigure = ({ low, high }: Figure, quantity: QuantityName, manner: Manner): number =>
  low === undefined || high === undefined ? 0 : stepOf(low, high, quantity, manner);

/**
 * A figure's expected value as a reader sees it: "12.9 m"; "below −51.1 °C" where published figures end there. One with
 * a range is rounded in step with its width.
 */
export function figureText(figure: Figure | null, quantity: QuantityName, manner: Manner): string {
  if (!figure) return noFigure;
  if (figure.words) return sentenceText(figure.words, manner);
  const shown = showQuantity(figure.value, quantity, manner, stepOfFigure(figure, quantity, manner));
  return figure.beyond ? `${figure.beyond} ${shown}` : shown;
}

/** The range that a figure lies in, in words; empty where it is known without one. */
export function rangeText(figure: Figure | null, quantity: QuantityName, manner: Manner): string {
  if (figure?.low === undefined || figure.high === undefined) return '';
  const step = stepOfFigure(figure, quantity, manner);
  return `likely ${showNumber(figure.low, quantity, manner, step)} to ${showQuantity(figure.high, quantity, manner, step)}`;
}

/** A sentence with its quantities written out in the reader's units. */
export const sentenceText = (sentence: Sentence, manner: Manner): string =>
  sentence
    .map((part) => (typeof part === 'string' ? part : figureText(part, part.quantity, manner)))
    .join('');

/** A column of a table of answers. */
export interface Column {
  readonly key: string;
  readonly quantity?: QuantityName;
  /** What stands where there is no value. */
  readonly empty?: string;
}

/** What a cell of a table says; `empty`, or nothing, where the question does not arise in its row. */
export function cellText(cell: Cell, quantity: QuantityName | undefined, manner: Manner, empty = ''): string {
  if (cell === null) return empty;
  if (typeof cell !== 'number') return sentenceText(cell, manner);
  return quantity ? showQuantity(cell, quantity, manner) : String(cell);
}

/** What a field's value needs to be said in words. */
export type Saying =
  | { readonly shape: 'number'; readonly quantity: QuantityName; readonly empty?: string }
  | { readonly shape: 'choice'; readonly labels: Readonly<Record<string, string>> }
  | { readonly shape: 'text' };

/** What is needed to say a field's value, without the rest of its declaration. */
export function sayingOf(field: Field): Saying {
  switch (field.shape) {
    case 'number':
      return {
        shape: 'number',
        quantity: field.quantity,
        ...(field.empty === undefined ? {} : { empty: field.empty }),
      };
    case 'choice':
      return {
        shape: 'choice',
        labels: Object.fromEntries(Object.entries(field.options).map(([key, { label }]) => [key, label])),
      };
    case 'text':
    case 'reference':
      return { shape: 'text' };
  }
}

/** A field's value as a reader sees it in running text. */
export function valueText(value: number | string | null, saying: Saying, manner: Manner): string {
  if (saying.shape === 'choice') return saying.labels[String(value)] ?? String(value);
  if (saying.shape === 'text' || typeof value === 'string') return String(value ?? '');
  return value === null ? (saying.empty ?? '') : showQuantity(value, saying.quantity, manner);
}

/** The word that a warning opens with, so that its weight does not hang on colour. */
export const warningWord = (level: 'stop' | 'care'): string =>
  level === 'stop' ? 'Do not build this.' : 'Take care.';
