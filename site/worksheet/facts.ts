import type { Answer, Calculator, Figure, Situation } from '../../calculators/calculator.ts';
import { calculators, type Answers } from '../../calculators/index.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { showField } from '../report.ts';
import { figureText, rangeText, sentenceText } from '../widgets/text.ts';
import type { LabelledValue } from './blocks.ts';

/** One bench with its answers, asked for what the sheet says of it, in the reader's units. */
export interface Facts {
  readonly situation: Situation;
  readonly answers: Answers;
  readonly manner: Manner;
}

const declared: readonly Calculator[] = calculators;

/** Answers by calculator, for those who ask by name. */
const byName = (answers: Answers): Readonly<Record<string, Answer>> => answers;

/** A figure by its full name, "winding.pitch", with its declaration; null where the question does not arise. */
export function figureOf(
  { answers }: Facts,
  name: string,
): { readonly label: string; readonly quantity: QuantityName; readonly figure: Figure } | null {
  const [id = '', key = ''] = name.split('.');
  const declaration = declared.find((one) => one.id === id)?.figures[key];
  const figure = byName(answers)[id]?.figures[key];
  return declaration && figure ? { ...declaration, figure } : null;
}

/** A figure as a reader sees it: "74 mm"; null where the question does not arise. */
export function shown(facts: Facts, name: string): string | null {
  const found = figureOf(facts, name);
  return found ? figureText(found.figure, found.quantity, facts.manner) : null;
}

/** Figures with their labels, those that do not arise left out. */
export const labelled = (facts: Facts, names: readonly string[]): LabelledValue[] =>
  names.flatMap((name) => {
    const found = figureOf(facts, name);
    if (!found) return [];
    const { label, quantity, figure } = found;
    const note = rangeText(figure, quantity, facts.manner);
    return [{ label, value: figureText(figure, quantity, facts.manner), ...(note === '' ? {} : { note }) }];
  });

/** A field of the bench as a reader sees it. */
export const field = ({ situation, manner }: Facts, path: FieldPath): string =>
  showField(situation.bench, path, manner);

/** A value in the reader's units. */
export const value = ({ manner }: Facts, amount: number, quantity: QuantityName): string =>
  showQuantity(amount, quantity, manner);

/** The calculators whose warnings stand on the first side, beside their figures, and on the second. */
export const buildCalculators: readonly string[] = ['winding', 'sheath', 'loop', 'mix', 'circuit'];
export const runCalculators: readonly string[] = ['roots', 'heat', 'watts', 'settings', 'night'];

/** The warnings of these calculators, or of all that the sheet shows, at one level: each sentence once. */
export function warningsOf(
  { answers, manner }: Facts,
  level: 'stop' | 'care',
  ids: readonly string[] = [...buildCalculators, ...runCalculators],
  /** Codes of warnings that the sheet says in another way. */
  but: readonly string[] = [],
): string[] {
  const all = ids
    .flatMap((id) => byName(answers)[id]?.warnings ?? [])
    .filter(({ code }) => !but.includes(code));
  return [...new Set(all.filter((one) => one.level === level).map(({ text }) => sentenceText(text, manner)))];
}
