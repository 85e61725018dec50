import type { Mark, Point } from './drawing.ts';
import { line, pen, polygon } from './pen.ts';

/** A zigzag across a part that goes on: from one point to another, with one kink in the middle. */
function zigzag(from: Point, to: Point, kink = 1.2): Point[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.hypot(dx, dy) || 1;
  const [x, y] = [dx / length, dy / length];
  const on = (along: number, aside: number): Point => [
    from[0] + x * along - y * aside,
    from[1] + y * along + x * aside,
  ];
  const middle = length / 2;
  return [
    from,
    on(middle - kink, 0),
    on(middle - kink / 2, kink),
    on(middle + kink / 2, -kink),
    on(middle + kink, 0),
    to,
  ];
}

/** One break line: the part ends on paper here, and goes on in truth. */
export const breakLine = (from: Point, to: Point): Mark => line(zigzag(from, to), { width: pen.thin });

/**
 * A strip of paper laid across a part between two standing break lines: a piece is left out here.
 *
 * @param middle where the strip lies
 * @param wide how wide the strip is
 */
export function breakStrip(middle: number, wide: number, top: number, bottom: number): Mark[] {
  const left = zigzag([middle - wide / 2, top], [middle - wide / 2, bottom]);
  const right = zigzag([middle + wide / 2, top], [middle + wide / 2, bottom]);
  return [
    polygon([...left, ...right.toReversed()], { fill: 'paper' }),
    line(left, { width: pen.thin }),
    line(right, { width: pen.thin }),
  ];
}
