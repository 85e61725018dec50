import type { Mark, Point } from './drawing.ts';
import { textWidth, wrap } from './measure.ts';
import { circle, label, labels, leading, letters, line, pen } from './pen.ts';

/** Radius of the ring around a number [mm]; it holds two digits of the small letters. */
export const balloonRadius = 2.6;

/** A number in a ring, which the key under the drawing explains. */
export const balloon = (at: Point, number: number): Mark[] => [
  circle(at, balloonRadius, { fill: 'paper', stroke: 'ink', width: pen.edge }),
  label([at[0], at[1] + 0.36 * letters.small], String(number), {
    size: letters.small,
    align: 'middle',
    bold: true,
  }),
];

/** A balloon at one end of a thin line, a dot on the thing it names at the other. */
export function pointer(at: Point, thing: Point, number: number): Mark[] {
  const distance = Math.hypot(thing[0] - at[0], thing[1] - at[1]) || 1;
  const start: Point = [
    at[0] + ((thing[0] - at[0]) / distance) * balloonRadius,
    at[1] + ((thing[1] - at[1]) / distance) * balloonRadius,
  ];
  return [
    line([start, thing], { width: pen.thin }),
    circle(thing, 0.5, { fill: 'ink' }),
    ...balloon(at, number),
  ];
}

const numberColumn = 2 * balloonRadius + 1.6;
const columnGap = 6;

/**
 * The key: what each number names, in one or two columns, long entries broken into lines.
 *
 * @returns the marks and the height that they take
 */
export function key(
  entries: readonly string[],
  { left, top, width }: { readonly left: number; readonly top: number; readonly width: number },
): { readonly marks: readonly Mark[]; readonly height: number } {
  const size = letters.small;
  // Two columns where the longest word of every entry still has room.
  const columns = width >= 130 ? 2 : 1;
  const columnWidth = (width - (columns - 1) * columnGap) / columns;
  const perColumn = Math.ceil(entries.length / columns);
  const marks: Mark[] = [];
  let height = 0;
  for (let column = 0; column < columns; column++) {
    let y = top;
    const x = left + column * (columnWidth + columnGap);
    entries.slice(column * perColumn, (column + 1) * perColumn).forEach((entry, index) => {
      const lines = wrap(entry, size, columnWidth - numberColumn);
      marks.push(...balloon([x + balloonRadius, y + balloonRadius], column * perColumn + index + 1));
      marks.push(...labels([x + numberColumn, y + balloonRadius + 0.36 * size], lines, { size }));
      y += Math.max(2 * balloonRadius + 1.2, lines.length * leading * size + 1.8);
    });
    height = Math.max(height, y - top);
  }
  return { marks, height };
}

/** Lines of text under a drawing. */
export function notes(
  sentences: readonly string[],
  {
    left,
    top,
    width,
    bold = false,
  }: { readonly left: number; readonly top: number; readonly width: number; readonly bold?: boolean },
): { readonly marks: readonly Mark[]; readonly height: number } {
  const size = letters.small;
  const lines = sentences.flatMap((sentence) => wrap(sentence, size, width, bold));
  return {
    marks: labels([left, top + size], lines, { size, ...(bold ? { bold } : {}) }),
    height: lines.length === 0 ? 0 : lines.length * leading * size + 1,
  };
}

/** Width of the widest of some lines [mm]. */
export const widest = (lines: readonly string[], size: number): number =>
  Math.max(0, ...lines.map((text) => textWidth(text, size)));
