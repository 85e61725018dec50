import type { Mark, Point } from './drawing.ts';
import { line, pen, polygon } from './pen.ts';

/** Length and half width of an arrowhead [mm]: slender, so that its tip shows where it points. */
const head = { length: 2.2, half: 0.5 } as const;

export const arrowLength = head.length;

/** A filled arrowhead with its tip at a point, coming from another. */
export function arrowhead(from: Point, tip: Point, size = 1): Mark {
  const distance = Math.hypot(tip[0] - from[0], tip[1] - from[1]) || 1;
  const [x, y] = [(tip[0] - from[0]) / distance, (tip[1] - from[1]) / distance];
  const [length, half] = [head.length * size, head.half * size];
  const back: Point = [tip[0] - x * length, tip[1] - y * length];
  return polygon([tip, [back[0] - y * half, back[1] + x * half], [back[0] + y * half, back[1] - x * half]], {
    fill: 'ink',
  });
}

/** A thin line that ends in an arrowhead. */
export const arrow = (points: readonly Point[], size = 1): Mark[] => {
  const tip = points.at(-1);
  const before = points.at(-2);
  if (!tip || !before) return [];
  return [line(points, { width: pen.thin }), arrowhead(before, tip, size)];
};

/** A leader: a thin line from a label to the thing that it names, ending in a dot. */
export const leader = (points: readonly Point[]): Mark[] => {
  const end = points.at(-1);
  if (!end) return [];
  return [line(points, { width: pen.thin }), { kind: 'circle', at: end, radius: 0.5, fill: 'ink' }];
};
