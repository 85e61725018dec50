import type { Mark, Point } from './drawing.ts';
import { circle, pen } from './pen.ts';
import { quarterSine, reversed } from './curve.ts';

/** One light wave, the sign for water, level with its middle at a point. */
export function wave([x, y]: Point, wide: number): Mark {
  const [step, high] = [wide / 4, Math.min(0.5, wide / 10)];
  const zeros: Point[] = [0, 1, 2].map((index) => [x - wide / 2 + index * 2 * step, y]);
  const points: Point[] = [];
  zeros.slice(0, 2).forEach((zero, index) => {
    const way = index === 0 ? -1 : 1;
    const up = quarterSine(zero, [zero[0] + step, y + way * high]);
    const down = reversed(quarterSine([zero[0] + 2 * step, y], [zero[0] + step, y + way * high]));
    points.push(...(points.length === 0 ? up : up.slice(1)), ...down.slice(1));
  });
  return { kind: 'curve', points, stroke: 'soft', width: pen.thin };
}

/** A filled pipe cut across: wall, water, and waves where there is room for them. */
export function pipeEnd(at: Point, outside: number, inside: number): Mark[] {
  const marks: Mark[] = [
    circle(at, outside, { fill: 'paper', stroke: 'ink', width: pen.outline }),
    circle(at, inside, { fill: 'water' }),
  ];
  // The wall's inner face is drawn where it stands clear of the outer one.
  if (outside - inside > 0.35) marks.push(circle(at, inside, { stroke: 'ink', width: pen.thin }));
  if (inside > 3)
    for (const [shareX, shareY] of [
      [-0.2, -0.35],
      [0.2, 0.05],
      [-0.15, 0.45],
    ] as const)
      marks.push(wave([at[0] + shareX * inside, at[1] + shareY * inside], Math.min(9, inside * 0.8)));
  return marks;
}
