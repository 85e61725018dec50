import type { Manner } from '../../calculators/quantities/show.ts';
import { filled, translated } from '../../calculators/say.ts';

/** Words on paper: measured, broken into lines, placed. All lengths in points, y downward. */

/** The width of a text [pt] at a size [pt], as the typeface of the sheet sets it. */
export type Measure = (text: string, size: number, bold: boolean) => number;

/**
 * How much closer than drawn the typeface is set [shares of the size]: at large sizes letters stand closer. The rule is
 * that of the typeface's designer for pixels of a screen, 4/3 of a point (from memory).
 */
export const tracking = (size: number): number => -0.0223 + 0.185 * Math.exp((-0.1745 * size * 4) / 3);

/** A stretch of words in one weight. */
export interface Run {
  readonly text: string;
  readonly bold?: boolean;
}

/** A stretch of letters on a line. */
export interface Piece {
  readonly x: number;
  readonly text: string;
  readonly size: number;
  readonly bold: boolean;
}

export interface Line {
  readonly pieces: readonly Piece[];
  readonly width: number;
}

export const run = (text: string): Run => ({ text });
export const bold = (text: string): Run => ({ text, bold: true });

/**
 * A message in the language of the reader, as runs: what stands between asterisks is bold. The parts are filled in after
 * the asterisks were read, so that they may hold any letter.
 */
export const runsOf = (
  manner: Pick<Manner, 'words'>,
  message: string,
  parts: Readonly<Record<string, string>> = {},
): Run[] =>
  translated(manner, message)
    .split('*')
    .flatMap((text, index) => {
      if (text === '') return [];
      const said = filled(text, parts);
      return [index % 2 === 1 ? bold(said) : run(said)];
    });

type Word = readonly { readonly text: string; readonly bold: boolean }[];

/** Runs cut at their spaces; a word may change its weight half-way. A no-break space does not cut. */
function wordsOf(runs: readonly Run[]): Word[] {
  const words: { text: string; bold: boolean }[][] = [];
  let open = false;
  for (const { text, bold: heavy = false } of runs)
    text.split(' ').forEach((part, index) => {
      if (index > 0) open = false;
      if (part === '') return;
      const last = words.at(-1);
      if (open && last) last.push({ text: part, bold: heavy });
      else words.push([{ text: part, bold: heavy }]);
      open = true;
    });
  return words;
}

/** A word that is wider than the line, cut into parts that are not. */
function cut(word: Word, width: number, measureWord: (word: Word) => number): Word[] {
  if (measureWord(word) <= width) return [word];
  const parts: Word[] = [];
  let part: Word = [];
  for (const { text, bold: heavy } of word)
    for (const { segment } of new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(text)) {
      const last = part.at(-1);
      const longer: Word =
        last?.bold === heavy
          ? [...part.slice(0, -1), { text: last.text + segment, bold: heavy }]
          : [...part, { text: segment, bold: heavy }];
      if (part.length > 0 && measureWord(longer) > width) {
        parts.push(part);
        part = [{ text: segment, bold: heavy }];
      } else part = longer;
    }
  return part.length > 0 ? [...parts, part] : parts;
}

/** The words of one line as pieces, those of one weight together; each line but the last ends in a space. */
function lineOf(words: readonly Word[], last: boolean, size: number, measure: Measure): Line {
  const joined: { text: string; bold: boolean }[] = [];
  words.forEach((word, index) => {
    const end = index < words.length - 1 || !last ? ' ' : '';
    word.forEach((part, at) => {
      const text = part.text + (at === word.length - 1 ? end : '');
      const before = joined.at(-1);
      if (before?.bold === part.bold) before.text += text;
      else joined.push({ text, bold: part.bold });
    });
  });
  let x = 0;
  const pieces = joined.map(({ text, bold: heavy }) => {
    const piece = { x, text, size, bold: heavy };
    x += measure(text, size, heavy);
    return piece;
  });
  const end = joined.at(-1);
  const ink = end ? x - measure(end.text, size, end.bold) + measure(end.text.trimEnd(), size, end.bold) : 0;
  return { pieces, width: ink };
}

/**
 * Breaks runs into lines no wider than this. Breaks at spaces; a word that is wider alone is broken between letters, so
 * that nothing ever runs over an edge.
 */
export function wrap(runs: readonly Run[], size: number, width: number, measure: Measure): Line[] {
  const measureWord = (word: Word) =>
    word.reduce((sum, part) => sum + measure(part.text, size, part.bold), 0);
  const rows: Word[][] = [];
  let filled = 0;
  for (const whole of wordsOf(runs))
    for (const word of cut(whole, width, measureWord)) {
      const wide = measureWord(word);
      const row = rows.at(-1);
      // A blank is set in the weight of the word before it.
      const space = measure(' ', size, row?.at(-1)?.at(-1)?.bold ?? false);
      if (row && filled + space + wide <= width) {
        row.push(word);
        filled += space + wide;
      } else {
        rows.push([word]);
        filled = wide;
      }
    }
  return rows.map((words, index) => lineOf(words, index === rows.length - 1, size, measure));
}
