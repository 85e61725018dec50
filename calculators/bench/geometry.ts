import { pipes, type Pipe } from '../tables/pipes.ts';
import type { Bench } from './fields.ts';

/** Lengths in m, areas in m², volumes in m³; x along the bench, y across it, from one corner. */

/**
 * Volume of a tapered round pot as a share of the cylinder around it. Nursery pots are about 0.7 to 0.8 as wide at
 * the base as at the top; the frustum of that taper holds 0.73 to 0.81 of the cylinder (assumption: 0.78).
 */
const potTaper = 0.78;

export const pipeOf = (bench: Bench): Pipe => pipes[bench.loop.pipe];

/** Inside diameter of the loop's pipe. */
export const pipeInside = (pipe: Pick<Pipe, 'outsideDiameter' | 'wall'>): number =>
  pipe.outsideDiameter - 2 * pipe.wall;

/** The middle line of the loop as corner points, seen from above. A ring comes back to its first point. */
export function loopPath(bench: Bench): readonly (readonly [x: number, y: number])[] {
  const { length, width } = bench.frame;
  // A pipe that is set further in than half the width lies in the middle.
  const across = Math.min(bench.loop.inset, width / 2);
  // No inset takes more than a quarter from either end: a loop without any length would heat nothing.
  const along = Math.min(bench.loop.inset, length / 4);
  const [left, right, near, far] = [along, length - along, across, width - across];
  switch (bench.loop.run) {
    case 'straight':
      return [
        [left, width / 2],
        [right, width / 2],
      ];
    case 'u':
      return [
        [left, near],
        [right, near],
        [right, far],
        [left, far],
      ];
    case 'ring':
      return [
        [left, near],
        [right, near],
        [right, far],
        [left, far],
        [left, near],
      ];
  }
}

/** Length of the loop along its middle line: as measured, or worked out from the bench and the run. */
export function loopLength(bench: Bench): number {
  if (bench.loop.length !== null) return bench.loop.length;
  const path = loopPath(bench);
  return path.slice(1).reduce((sum, [x, y], index) => {
    const [fromX, fromY] = path[index] ?? [x, y];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);
}

/** Volume of fluid in the loop, filled. */
export const loopVolume = (bench: Bench): number =>
  (Math.PI / 4) * pipeInside(pipeOf(bench)) ** 2 * loopLength(bench);

/** Mass of the loop's pipe wall [kg]. */
export function loopWallMass(bench: Bench): number {
  const pipe = pipeOf(bench);
  const section = (Math.PI / 4) * (pipe.outsideDiameter ** 2 - pipeInside(pipe) ** 2);
  return section * loopLength(bench) * pipe.density;
}

export const topArea = (bench: Bench): number => bench.frame.length * bench.frame.width;

export const perimeter = (bench: Bench): number => 2 * (bench.frame.length + bench.frame.width);

/** The four sides from floor to bench top, whether or not a skirt hangs there. */
export const sideArea = (bench: Bench): number => perimeter(bench) * bench.frame.height;

/** Share of the sides that the skirt closes; zero without a skirt. */
export const skirtClosed = (bench: Bench): number =>
  bench.skirt.material === 'none' ? 0 : bench.skirt.closed;

/** Air space under the bench. */
export const underVolume = (bench: Bench): number => topArea(bench) * bench.frame.height;

/** Part of the top on which pots stand. */
export const pottedArea = (bench: Bench): number => topArea(bench) * bench.frame.potShare;

/**
 * Share of the area of a pot's top that its narrower base has [1]: a frustum of base over top r holds (1 + r + r²) / 3
 * of the cylinder, which at `potTaper` makes r = 0.76 and r² = 0.58.
 */
const baseShare = ((Math.sqrt(12 * potTaper - 3) - 1) / 2) ** 2;

/** Surface of the medium in all pots, seen from above. */
export const potTopArea = (bench: Bench): number =>
  bench.pots.count * (Math.PI / 4) * bench.pots.diameter ** 2;

/** Base of all pots, on the bench top. */
export const potBaseArea = (bench: Bench): number => potTopArea(bench) * baseShare;

/** Volume of medium in all pots. */
export const mediumVolume = (bench: Bench): number =>
  bench.pots.count * (Math.PI / 4) * bench.pots.diameter ** 2 * bench.pots.height * potTaper;

/** Side walls of all pots together. */
export const potSideArea = (bench: Bench): number =>
  bench.pots.count * Math.PI * bench.pots.diameter * bench.pots.height;

/** Top and sides of the cover: a box over the bench. */
export const coverArea = (bench: Bench): number => topArea(bench) + perimeter(bench) * bench.cover.height;
