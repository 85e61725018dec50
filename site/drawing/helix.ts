import { breakLine } from './break-line.ts';
import { clip, quarterSine, reversed, type Cubic } from './curve.ts';
import { measured } from './dimension.ts';
import type { Mark, Point } from './drawing.ts';
import { line, pen, rectangle } from './pen.ts';

/** A cable wound around a level pipe, as it is seen from the side; all on paper [mm]. */
export interface Frame {
  /** Height of the pipe's middle line. */
  readonly axis: number;
  /** Radius of the middle of the cable. */
  readonly radius: number;
  /** From turn to turn. */
  readonly pitch: number;
  /** How thick the cable is drawn. */
  readonly thick: number;
}

/** Front and rear halves of the turn whose crest is at x, on paper. */
function turn({ axis, radius, pitch }: Frame, crest: number): { front: Cubic[]; rear: Cubic[] } {
  const [top, bottom] = [axis - radius, axis + radius];
  const quarters = [1, 2, 3, 4].map((number) => crest + (number * pitch) / 4) as [
    number,
    number,
    number,
    number,
  ];
  return {
    front: [
      reversed(quarterSine([quarters[0], axis], [crest, top])),
      quarterSine([quarters[0], axis], [quarters[1], bottom]),
    ],
    rear: [
      reversed(quarterSine([quarters[2], axis], [quarters[1], bottom])),
      quarterSine([quarters[2], axis], [quarters[3], top]),
    ],
  };
}

/** Every turn of the helix with a crest at `crest` that shows between two places. */
export function turns(
  frame: Frame,
  crest: number,
  left: number,
  right: number,
): { front: Mark[]; rear: Mark[] } {
  const marks: { front: Mark[]; rear: Mark[] } = { front: [], rear: [] };
  const first = Math.floor((left - crest) / frame.pitch) - 1;
  const last = Math.ceil((right - crest) / frame.pitch);
  const joined = (pieces: Cubic[]): Point[] => {
    const points: Point[] = [];
    for (const piece of pieces) {
      const part = clip(piece, left, right);
      if (part) points.push(...(points.length === 0 ? part : part.slice(1)));
    }
    return points;
  };
  for (let number = first; number <= last; number++) {
    const { front, rear } = turn(frame, crest + number * frame.pitch);
    const [before, behind] = [joined(front), joined(rear)];
    if (before.length > 0)
      marks.front.push({ kind: 'curve', points: before, stroke: 'heat', width: frame.thick });
    if (behind.length > 0)
      marks.rear.push({ kind: 'curve', points: behind, stroke: 'soft', width: pen.edge, dash: [1.2, 0.9] });
  }
  return marks;
}

/**
 * A stretch of pipe from the side with the cable on it: its two edges, the cable, and at each end either the pipe's
 * end or a break, beyond which a strip of paper takes away what the cable's thickness lets stick out.
 */
export function stretch(
  [left, right]: readonly [number, number],
  [top, bottom]: readonly [number, number],
  cable: readonly Mark[],
  broken: boolean,
): Mark[] {
  const edge = (y: number): Mark =>
    line(
      [
        [left, y],
        [right, y],
      ],
      { width: pen.outline },
    );
  const beyond = 4;
  const strips = [
    { left: left - beyond, right: left },
    { left: right, right: right + beyond },
  ].map((sides) => rectangle({ ...sides, top: top - beyond, bottom: bottom + beyond }, { fill: 'paper' }));
  const end = (x: number): Mark =>
    broken
      ? breakLine([x, top - 1.5], [x, bottom + 1.5])
      : line(
          [
            [x, top],
            [x, bottom],
          ],
          { width: pen.outline },
        );
  return [edge(top), edge(bottom), ...cable, ...(broken ? strips : []), end(left), end(right)];
}

/** The gap's dimension: across the cable where two turns pass the middle of the pipe, if it can be seen there. */
export function gapMarks(middle: Point, gap: number, { radius, pitch, thick }: Frame): Mark[] {
  // Slope of the cable where it passes the front: a sine of this radius and pitch.
  const slope = (2 * Math.PI * radius) / pitch;
  // A flatter helix bends away before the neighbouring turn is reached, so that the line would miss it.
  if (slope < 1.6 || gap < 6 || gap < thick) return [];
  const length = Math.hypot(slope, 1);
  const [x, y] = [((slope / length) * gap) / 2, ((-1 / length) * gap) / 2];
  return measured([middle[0] - x, middle[1] - y], [middle[0] + x, middle[1] + y]);
}

/** The places from one on, a step apart, both ways, that lie between two others. */
export function repeated(one: number, step: number, from: number, to: number): number[] {
  const first = Math.ceil((from - step - one) / step);
  const last = Math.floor((to - one) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => one + (first + index) * step);
}
