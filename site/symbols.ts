import type { Calculator } from '../calculators/calculator.ts';
import { calculators } from '../calculators/index.ts';
import { quantities, type Quantity } from '../calculators/quantities/quantity.ts';
import { letters, type Letter } from '../content/glossary/symbols.ts';
import { outline } from '../content/outline.ts';

/** A letter of the formulas with all that a reader may ask of it. */
export interface Symbol {
  readonly tex: string;
  readonly meaning: string;
  /** In metric and in US units; empty for plain numbers. */
  readonly units: { readonly metric: string; readonly us: string };
  /** Ids of the chapters. */
  readonly chapters: readonly string[];
}

const unitsOf = ({ quantity, unit }: Pick<Letter, 'quantity' | 'unit'>): Symbol['units'] => {
  if (unit !== undefined) return { metric: unit, us: unit };
  const shown: Quantity['shown'] = quantity ? quantities[quantity].shown : { metric: '', us: '' };
  return { metric: shown.metric, us: shown.us };
};

/** The id of the chapter that a calculator belongs to. */
export const chapterOfCalculator = (id: string): string | undefined =>
  outline.find((step) => step.calculators.includes(id))?.id;

/** The letters that stand for figures of a calculator. */
const ofFigures = calculators.flatMap(({ id, figures }: Calculator): Symbol[] => {
  const chapter = chapterOfCalculator(id);
  return Object.values(figures).flatMap(({ symbol, label, quantity }) =>
    symbol === undefined
      ? []
      : [{ tex: symbol, meaning: label, units: unitsOf({ quantity }), chapters: chapter ? [chapter] : [] }],
  );
});

/** By the letter itself, Latin before Greek, small after capital, plain before those with an index. */
const key = ({ tex }: Symbol): string => {
  const plain = tex.replace(/^\\(?:Delta|bar) /u, '');
  const greek = plain.startsWith('\\') && !plain.startsWith('\\ell');
  const bare = plain.replace(/^\\(?:ell$)?/u, (start) => (start === '\\ell' ? 'l' : ''));
  return `${greek ? 1 : 0}${bare.slice(0, greek ? 3 : 1).toLowerCase()}${/^[A-Z]/u.test(bare) ? 0 : 1}${tex}`;
};

/** Every letter of every formula, in order. One letter with two meanings stands twice. */
export const symbols: readonly Symbol[] = [
  ...letters.map(({ tex, meaning, chapters, ...measures }) => ({
    tex,
    meaning,
    units: unitsOf(measures),
    chapters,
  })),
  ...ofFigures,
].sort((one, other) => (key(one) < key(other) ? -1 : key(one) > key(other) ? 1 : 0));
