import { cite, type Citation } from '../cite.ts';
import type { Check, Tolerance } from './check.ts';

/** What all checks against one worked example have in common. */
export type Example = Pick<Check, 'kind' | 'from' | 'via' | 'standing'>;

/** An example of a textbook whose companion of programs solves it again from the book's own inputs and agrees. */
export const fromCompanion = (from: Citation): Example => ({
  kind: 'worked example',
  from,
  via: cite('textbook-companions', 'the program for that example'),
  standing: 'seen',
});

/** An example or a solved problem of Çengel's book, on a page for students. */
export const fromStudyPage = (at: string): Example => ({
  kind: 'worked example',
  from: cite('cengel', at),
  via: cite('study-pages', at),
  standing: 'seen',
});

/** Whatever depends on the air of a book's own table. */
export const airOfBook = (share: number): Tolerance => ({
  share,
  because: 'the book takes its air from its own table; conductivities of such tables differ by 2.5 %',
});

export const bookRounds: Tolerance = { share: 0.003, because: 'the book rounds on the way' };

export const shortKelvin: Tolerance = {
  share: 0.004,
  because: 'the book takes 273 K for 0 °C, 0.12 %, and prints three digits',
};

/** For a program that evaluates the same formula. */
export const sameFormula: Tolerance = {
  share: 1e-9,
  because: 'sixteen digits of a program that evaluates the same formula',
};
