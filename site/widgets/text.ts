import type { Cell, Figure, Sentence } from '../../calculators/calculator.ts';
import type { Field } from '../../calculators/bench/field.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showNumber, showQuantity, stepOf, type Manner } from '../../calculators/quantities/show.ts';
import { messageOf, messages, say } from '../../calculators/say.ts';

/** Shown where a question does not arise for this bench, such as the mix of a loop of plain water. */
const noFigure = messages('no figure');

const stepOfFigure = ({ low, high }: Figure, quantity: QuantityName, manner: Manner): number =>
  low === undefined || high === undefined ? 0 : stepOf(low, high, quantity, manner);

/**
 * A figure's expected value as a reader sees it: "12.9 m"; "below −51.1 °C" where published figures end there. One with
 * a range is rounded in step with its width.
 */
export function figureText(figure: Figure | null, quantity: QuantityName, manner: Manner): string {
  if (!figure) return say(manner, noFigure);
  if (figure.words) return sentenceText(figure.words, manner);
  const shown = showQuantity(figure.value, quantity, manner, stepOfFigure(figure, quantity, manner));
  if (figure.beyond === 'below') return say(manner, 'below {figure}', { figure: shown });
  return figure.beyond ? say(manner, 'above {figure}', { figure: shown }) : shown;
}

/** The range that a figure lies in, in words; empty where it is known without one. */
export function rangeText(figure: Figure | null, quantity: QuantityName, manner: Manner): string {
  if (figure?.low === undefined || figure.high === undefined || figure.low === figure.high) return '';
  const step = stepOfFigure(figure, quantity, manner);
  return say(manner, 'likely {low} to {high}', {
    low: showNumber(figure.low, quantity, manner, step),
    high: showQuantity(figure.high, quantity, manner, step),
  });
}

/** A sentence in the reader's language, with its quantities written out in the reader's units. */
export function sentenceText(sentence: Sentence, manner: Manner): string {
  const parts = sentence.filter((part) => typeof part !== 'string');
  const said = parts.map((part) =>
    'phrase' in part ? sentenceText(part.phrase, manner) : figureText(part, part.quantity, manner),
  );
  return say(
    manner,
    messageOf(sentence),
    Object.fromEntries(said.map((text, index) => [String(index + 1), text])),
  );
}

/** A column of a table of answers. */
export interface Column {
  readonly key: string;
  readonly quantity?: QuantityName;
  /** What stands where there is no value. */
  readonly empty?: string;
}

/** What a cell of a table says; `empty`, or nothing, where the question does not arise in its row. */
export function cellText(cell: Cell, quantity: QuantityName | undefined, manner: Manner, empty = ''): string {
  if (cell === null) return empty === '' ? '' : say(manner, empty);
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
  if (saying.shape === 'choice') return say(manner, saying.labels[String(value)] ?? String(value));
  if (saying.shape === 'text' || typeof value === 'string') return String(value ?? '');
  return value === null ? say(manner, saying.empty ?? '') : showQuantity(value, saying.quantity, manner);
}

/** The word that a warning opens with, so that its weight does not hang on colour. */
export const warningWord = (level: 'stop' | 'care', manner: Pick<Manner, 'words'> = {}): string =>
  say(manner, level === 'stop' ? 'Do not build this.' : 'Take care.');
