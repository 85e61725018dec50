import type { Point } from './drawing.ts';

/** One cubic Bézier piece: start, two control points, end. */
export type Cubic = readonly [Point, Point, Point, Point];

/**
 * Control points of a quarter of a sine from its zero to its crest, for y = sin(x), x from 0 to π/2. They match
 * both end slopes and the crest's curvature; the curve is nowhere more than 0.0003 from the sine (checked in a test).
 */
const quarter = { nearZero: 0.512286623, nearCrest: 1.002313686 } as const;

/**
 * A quarter of a sine wave between a zero and a crest, in that order.
 *
 * @param zero the point where the wave crosses its middle line
 * @param crest the point where it turns
 */
export function quarterSine(zero: Point, crest: Point): Cubic {
  const length = crest[0] - zero[0];
  const height = crest[1] - zero[1];
  const [first, second] = [quarter.nearZero / (Math.PI / 2), quarter.nearCrest / (Math.PI / 2)];
  return [
    zero,
    [zero[0] + first * length, zero[1] + quarter.nearZero * height],
    [zero[0] + second * length, crest[1]],
    crest,
  ];
}

export const reversed = ([a, b, c, d]: Cubic): Cubic => [d, c, b, a];

const between = (a: Point, b: Point, share: number): Point => [
  a[0] + (b[0] - a[0]) * share,
  a[1] + (b[1] - a[1]) * share,
];

/** The two parts of a curve, cut at a share of its parameter (de Casteljau's construction). */
export function split([a, b, c, d]: Cubic, share: number): readonly [Cubic, Cubic] {
  const [ab, bc, cd] = [between(a, b, share), between(b, c, share), between(c, d, share)];
  const [abc, bcd] = [between(ab, bc, share), between(bc, cd, share)];
  const middle = between(abc, bcd, share);
  return [
    [a, ab, abc, middle],
    [middle, bcd, cd, d],
  ];
}

export function at(curve: Cubic, share: number): Point {
  return split(curve, share)[0][3];
}

/** The parameter at which a curve that runs from left to right passes this x, by halving. */
function shareAt(curve: Cubic, x: number): number {
  let [low, high] = [0, 1];
  // Forty halvings leave less than a billionth of the curve.
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    if (at(curve, middle)[0] < x) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The part of a curve, which runs from left to right, between two heights of x; undefined where there is none. */
export function clip(curve: Cubic, left: number, right: number): Cubic | undefined {
  let part = curve;
  if (part[0][0] >= right || part[3][0] <= left) return undefined;
  if (part[0][0] < left) part = split(part, shareAt(part, left))[1];
  if (part[3][0] > right) part = split(part, shareAt(part, right))[0];
  return part;
}

/**
 * An arc of a circle as cubic pieces of at most a quarter each: start, then triples, as a curve mark takes them.
 * Angles in radians, counted from the right towards the bottom of the page.
 */
export function arc([x, y]: Point, radius: number, from: number, to: number): Point[] {
  const pieces = Math.max(1, Math.ceil(Math.abs(to - from) / (Math.PI / 2)));
  const step = (to - from) / pieces;
  // The length of the control arms that makes a cubic meet the circle in its middle.
  const arm = (4 / 3) * Math.tan(step / 4) * radius;
  const on = (angle: number, aside = 0): Point => [
    x + radius * Math.cos(angle) - aside * Math.sin(angle),
    y + radius * Math.sin(angle) + aside * Math.cos(angle),
  ];
  const points: Point[] = [on(from)];
  for (let piece = 0; piece < pieces; piece++) {
    const [start, end] = [from + piece * step, from + (piece + 1) * step];
    points.push(on(start, arm), on(end, -arm), on(end));
  }
  return points;
}
