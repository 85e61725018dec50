import { arrowhead, arrowLength } from './arrow.ts';
import type { Mark, Point } from './drawing.ts';
import { textWidth } from './measure.ts';
import { label, letters, line, pen } from './pen.ts';

/** How far extension lines stand off the thing that they measure, and run past the dimension line [mm]. */
const standOff = 0.8;
const runPast = 1;
/** From the dimension line to the letters over it [mm]. */
const textLift = 1.9;
/** What an outside arrow sticks out of what it measures [mm]. */
const tail = 4;

/** A dimension line between two points: arrows inside where they fit, else pointing in from outside. */
export function measured(from: Point, to: Point): Mark[] {
  const distance = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (distance >= 2.5 * arrowLength)
    return [line([from, to], { width: pen.thin }), arrowhead(to, from), arrowhead(from, to)];
  const [x, y] =
    distance > 0 ? [(to[0] - from[0]) / distance, (to[1] - from[1]) / distance] : ([1, 0] as const);
  const before: Point = [from[0] - x * tail, from[1] - y * tail];
  const after: Point = [to[0] + x * tail, to[1] + y * tail];
  return [line([before, after], { width: pen.thin }), arrowhead(before, from), arrowhead(after, to)];
}

/** Room that a level dimension's text may need under its line [mm]. */
export const roomUnder = runPast + 1.2 * letters.body;

interface Across {
  readonly from: number;
  readonly to: number;
  /** Height of the dimension line. */
  readonly at: number;
  /** Heights at which the two extension lines start; none where left out. */
  readonly edges?: readonly [number, number];
  readonly text: string;
  readonly size?: number;
  /** The room that the letters must stay within. */
  readonly within: readonly [left: number, right: number];
}

/**
 * A level dimension, its text over its middle; under it where the text is wider than the dimension and the extension
 * lines come down from above, through where the text would stand. Leave `roomUnder` free there.
 */
export function across({ from, to, at, edges, text, size = letters.body, within }: Across): Mark[] {
  const extension = (x: number, edge: number | undefined): Mark[] => {
    if (edge === undefined) return [];
    const way = Math.sign(at - edge);
    return [
      line(
        [
          [x, edge + way * standOff],
          [x, at + way * runPast],
        ],
        { width: pen.thin },
      ),
    ];
  };
  const half = textWidth(text, size) / 2;
  const fromAbove = edges !== undefined && at > edges[0];
  const under = fromAbove && 2 * half > Math.abs(to - from) - 1;
  const textAt = under ? at + runPast + 0.9 * size : at - textLift;
  const middle = Math.min(Math.max((from + to) / 2, within[0] + half), within[1] - half);
  return [
    ...extension(from, edges?.[0]),
    ...extension(to, edges?.[1]),
    ...measured([from, at], [to, at]),
    label([middle, textAt], text, { size, align: 'middle' }),
  ];
}

interface Upright {
  readonly from: number;
  readonly to: number;
  /** How far right the dimension line stands. */
  readonly at: number;
  readonly edges?: readonly [number, number];
}

/** A standing dimension without its text, which the caller places beside it. */
export function upright({ from, to, at, edges }: Upright): Mark[] {
  const extension = (y: number, edge: number | undefined): Mark[] => {
    if (edge === undefined) return [];
    const way = Math.sign(at - edge);
    return [
      line(
        [
          [edge + way * standOff, y],
          [at + way * runPast, y],
        ],
        { width: pen.thin },
      ),
    ];
  };
  return [...extension(from, edges?.[0]), ...extension(to, edges?.[1]), ...measured([at, from], [at, to])];
}
