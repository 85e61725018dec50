import type { Mark, Point } from './drawing.ts';

/**
 * Rough widths of letters in shares of their size, so that labels can be placed without a browser or a font file:
 * those of the worksheet's typeface (Inter), rounded up.
 */
const advances: readonly (readonly [share: number, letters: string])[] = [
  [0.27, 'ijl\u202f’|'],
  [0.31, 'I.,: \u00a0;'],
  [0.38, 'tfr/()1²'],
  [0.47, '³-°“”'],
  [0.57, 's–kxzavyc'],
  [0.63, 'JLheounbdgpqF2356789Z0E'],
  [0.68, '4PRSBT−×K⌀'],
  [0.75, 'XYADCHUVGN'],
  [0.92, 'OQwm…M½→'],
  [1.05, 'W%↔'],
];

const advanceOf = new Map(
  advances.flatMap(([share, letters]) => [...letters].map((letter) => [letter, share])),
);

/** Letters that the table does not know, accented ones above all, count as wide. */
const unknownAdvance = 0.75;
/** How much wider bold letters run. */
const boldFactor = 1.05;
/** The widest of the typefaces that a reader's system may bring (DejaVu Sans) runs about this much wider. */
const wideTypeface = 1.1;

/** Width of a line of text [mm] whose letters have this size [mm]: rather too much than too little. */
export const textWidth = (text: string, size: number, bold = false): number =>
  [...text].reduce((sum, letter) => sum + (advanceOf.get(letter) ?? unknownAdvance), 0) *
  size *
  wideTypeface *
  (bold ? boldFactor : 1);

/** A rectangle on paper [mm]. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export type TextMark = Extract<Mark, { kind: 'text' }>;

/** How far letters rise above their line and hang below it, in shares of their size. */
const rise = 0.74;
const hang = 0.22;

/** The space that a text takes up. */
export function textBox(mark: TextMark): Box {
  const width = textWidth(mark.text, mark.size, mark.bold);
  const before = { start: 0, middle: width / 2, end: width }[mark.align ?? 'start'];
  const [x, y] = mark.at;
  if (mark.upward)
    return {
      left: x - rise * mark.size,
      right: x + hang * mark.size,
      bottom: y + before,
      top: y + before - width,
    };
  return {
    left: x - before,
    right: x - before + width,
    top: y - rise * mark.size,
    bottom: y + hang * mark.size,
  };
}

export const overlap = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Breaks a text into lines no wider than this; a word that is wider alone gets a line to itself. */
export function wrap(text: string, size: number, width: number, bold = false): string[] {
  const lines: string[] = [];
  for (const word of text.split(' ')) {
    const last = lines.at(-1);
    const longer = last === undefined ? word : `${last} ${word}`;
    if (last !== undefined && textWidth(longer, size, bold) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** The box around points. */
export function boxOf(points: readonly Point[]): Box {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}
