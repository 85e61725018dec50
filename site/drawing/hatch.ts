import type { Mark, Point } from './drawing.ts';
import type { Box } from './measure.ts';
import { line, pen } from './pen.ts';

/** Slanted hatching within a box: cut ground, foam board, a block that is too fine to draw piece by piece. */
export function hatch({ left, top, right, bottom }: Box, spacing: number): Mark[] {
  const height = bottom - top;
  const marks: Mark[] = [];
  // Lines rise to the right at 45°; each is cut where it would leave the box.
  for (let foot = left - height + spacing; foot < right; foot += spacing) {
    const start: Point = foot < left ? [left, bottom - (left - foot)] : [foot, bottom];
    const reach = foot + height;
    const end: Point = reach > right ? [right, bottom - (right - foot)] : [reach, top];
    marks.push(line([start, end], { stroke: 'soft', width: pen.thin }));
  }
  return marks;
}

/** The ground: its surface, and short strokes beneath it in threes. */
export function ground(left: number, right: number, at: number): Mark[] {
  const marks: Mark[] = [
    line(
      [
        [left, at],
        [right, at],
      ],
      { width: pen.outline },
    ),
  ];
  const [stroke, apart] = [2, 7];
  for (let x = left + stroke + 1; x < right - 3; x += apart)
    for (const step of [0, 1.4, 2.8])
      if (x + step < right)
        marks.push(
          line(
            [
              [x + step, at + 0.4],
              [x + step - stroke, at + 0.4 + stroke],
            ],
            { stroke: 'soft', width: pen.thin },
          ),
        );
  return marks;
}
