import type { Mark } from './drawing.ts';
import { wrap } from './measure.ts';
import { labels, leading, letters, line, pen } from './pen.ts';
import { spread } from './spread.ts';

/** A mark on an upright scale, and what it says. */
export interface Level {
  readonly at: number;
  readonly text: string;
  readonly bold?: boolean;
}

interface Scale {
  /** Where the scale stands, and the two ends of it on paper [mm]. */
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
  /** The values at its ends. */
  readonly highest: number;
  readonly lowest: number;
  /** Where the words begin and how far they may go [mm]. */
  readonly textAt: number;
  readonly right: number;
}

/** Where a value stands on an upright scale [mm]. */
export const onScale = (
  value: number,
  { top, bottom, highest, lowest }: Pick<Scale, 'top' | 'bottom' | 'highest' | 'lowest'>,
): number => bottom - ((bottom - top) * (value - lowest)) / (highest - lowest);

/** Marks on an upright scale with their words beside it, moved apart where they would lie on each other. */
export function levelMarks(levels: readonly Level[], scale: Scale): Mark[] {
  const { x, top, bottom, textAt, right } = scale;
  const size = letters.small;
  const sorted = levels.toSorted((a, b) => b.at - a.at);
  const said = sorted.map(({ text, bold = false }) => wrap(text, size, right - textAt, bold));
  const most = Math.max(...said.map((lines) => lines.length));
  const places = spread(
    sorted.map(({ at }) => onScale(at, scale)),
    most * leading * size + 1,
    top,
    bottom - (most - 1) * leading * size,
  );
  return sorted.flatMap(({ at, bold = false }, index) => {
    const place = places[index] ?? top;
    const y = onScale(at, scale);
    return [
      line(
        [
          [x, y],
          [x + 3, y],
          [textAt - 1, place],
        ],
        { width: bold ? pen.outline : pen.thin },
      ),
      ...labels([textAt, place + 0.36 * size], said[index] ?? [], { size, bold }),
    ];
  });
}

/** How high a scale must be for its words [mm]. */
export function roomForLevels(levels: readonly Level[], width: number): number {
  const most = Math.max(
    ...levels.map(({ text, bold = false }) => wrap(text, letters.small, width, bold).length),
  );
  return levels.length * (most * leading * letters.small + 1);
}
