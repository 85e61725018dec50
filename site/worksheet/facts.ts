import type { Answer, Calculator, Figure, Situation, Warning } from '../../calculators/calculator.ts';
import { calculators, type Answers } from '../../calculators/index.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { say } from '../../calculators/say.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { showField } from '../report.ts';
import { figureText, rangeText, sentenceText } from '../widgets/text.ts';
import type { LabelledValue } from './blocks.ts';
import { byWeight, forbids } from './weight.ts';

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
    const said = say(facts.manner, label);
    return [
      { label: said, value: figureText(figure, quantity, facts.manner), ...(note === '' ? {} : { note }) },
    ];
  });

/** A field of the bench as a reader sees it. */
export const field = ({ situation, manner }: Facts, path: FieldPath): string =>
  showField(situation.bench, path, manner);

/** A value in the reader's units. */
export const value = ({ manner }: Facts, amount: number, quantity: QuantityName): string =>
  showQuantity(amount, quantity, manner);

/** What was typed or counted, without zeros behind its point: "25 m" of "25.00 m". */
export const given = (text: string): string => text.replace(/[.,]0+(?!\d)/u, '');

/** The calculators whose warnings the sheet carries. Those of the others ask for no care at the bench. */
export const sheetCalculators: readonly string[] = [
  'winding',
  'sheath',
  'loop',
  'mix',
  'circuit',
  'roots',
  'heat',
  'watts',
  'settings',
  'night',
  'outage',
];

/** Each sentence once. */
const sentences = (warnings: readonly Warning[], manner: Manner): string[] => [
  ...new Set(byWeight(warnings).map(({ text }) => sentenceText(text, manner))),
];

const warningsOf = ({ answers }: Facts): readonly Warning[] =>
  sheetCalculators.flatMap((id) => byName(answers)[id]?.warnings ?? []);

/** Why the bench must not be built as it stands, gravest first; empty where it may be. */
export const reasonsAgainst = (facts: Facts): string[] =>
  sentences(warningsOf(facts).filter(forbids), facts.manner);

/**
 * Warnings that the first two sides say by their figures: beside the winding, in the settings with what is advised, beside
 * the night.
 */
const saidByFigures: readonly string[] = [
  'limit-thermostat',
  'crossing-over-limit',
  'loose-over-limit',
  'empty-over-limit',
  'short-of-heat',
  'loop-sensor-rests',
  'limit-cuts-in-thaw',
  'set-point-low',
  'low-alarm-late',
  'high-alarm-at-work',
  'high-alarm-behind-limit',
  'winter-colder-than-night',
];

const cares = (facts: Facts, but: readonly string[] = []): string[] =>
  sentences(
    warningsOf(facts).filter((one) => !forbids(one) && !but.includes(one.code)),
    facts.manner,
  );

/** All that asks for care, gravest first. */
export const hints = (facts: Facts): string[] => cares(facts);

/** What asks for care and is not said by figures on the sheet, gravest first. */
export const hintsToRead = (facts: Facts): string[] => cares(facts, saidByFigures);
