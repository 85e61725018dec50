import type { Bench } from '../../calculators/bench/fields.ts';
import { pipeInside, pipeOf, skirtClosed } from '../../calculators/bench/geometry.ts';
import { priorsOf } from '../../calculators/bench/priors.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { arc } from './curve.ts';
import type { Mark, Point } from './drawing.ts';
import { hatch } from './hatch.ts';
import { circle, line, pen, polygon, rectangle } from './pen.ts';
import { pipeEnd } from './water.ts';

/** The parts of a bench as its section shows them, each placed by one scale. */
export interface Scale {
  readonly perMetre: number;
  /** From metres across the bench to paper. */
  readonly x: (metres: number) => number;
  /** From metres over the floor to paper. */
  readonly y: (metres: number) => number;
}

/** Nothing that can be seen through is drawn narrower than this [mm]. */
const leastGap = 0.9;
/** Narrower pots than this are drawn as one hatched block [mm]. */
const leastPot = 2.2;
/** Share of its square that a round pot covers: π/4. */
const roundInSquare = Math.PI / 4;

/** The cable around a pipe's end is drawn no thinner than this [mm]. */
const leastCable = 0.8;
/** Legs stand this far in from the edge [mm]. */
const legInset = 1.2;

/** A gap on paper: as wide as it is, or wide enough to be seen. */
export const drawnGap = (metres: number, perMetre: number): number =>
  metres <= 0 ? 0 : Math.max(leastGap, metres * perMetre);

/** The middles of the pots in one row across the bench [m]. */
export function potRow({ frame, pots }: Bench): readonly number[] {
  const { width, potShare } = frame;
  const most = Math.max(1, Math.floor(width / pots.diameter + 1e-9));
  const filled = Math.min(1, potShare / roundInSquare);
  if (pots.spacing === 'tight') {
    const number = Math.max(1, Math.min(most, Math.round(most * filled)));
    const left = (width - number * pots.diameter) / 2;
    return Array.from({ length: number }, (_, index) => left + (index + 0.5) * pots.diameter);
  }
  const pitch = pots.diameter * Math.sqrt(1 / filled);
  const number = Math.max(1, Math.min(most, Math.floor(width / pitch + 1e-9)));
  return Array.from({ length: number }, (_, index) => ((index + 0.5) * width) / number);
}

/** A pot with a plant in it, cut through. */
function pot({ perMetre, x, y }: Scale, middle: number, bench: Bench, plant: number): Mark[] {
  const { diameter, height } = bench.pots;
  const top = bench.frame.height;
  // Nursery pots are about three quarters as wide at the base as at the top.
  const [half, foot] = [diameter / 2, diameter * 0.375];
  const marks: Mark[] = [
    polygon(
      [
        [x(middle - half), y(top + height)],
        [x(middle + half), y(top + height)],
        [x(middle + foot), y(top)],
        [x(middle - foot), y(top)],
      ],
      { fill: 'paper', stroke: 'ink', width: pen.edge },
    ),
  ];
  const size = plant * perMetre;
  if (size < 3) return marks;
  const [stem, base] = [x(middle), y(top + height)];
  const leaf = Math.min(size * 0.28, diameter * perMetre * 0.42);
  const leaves: Point[][] = [0.35, 0.6, 0.85].flatMap((share): Point[][] => {
    const from = base - size * share;
    return [
      [
        [stem, from],
        [stem - leaf, from - leaf * 0.7],
      ],
      [
        [stem, from],
        [stem + leaf, from - leaf * 0.7],
      ],
    ];
  });
  marks.push(
    line(
      [
        [stem, base],
        [stem, base - size],
      ],
      { width: pen.thin },
    ),
    ...leaves.map((points) => line(points, { width: pen.thin })),
  );
  return marks;
}

/** The pots: each one where it can be told from the next, else one block. */
function potMarks(scale: Scale, bench: Bench, plant: number): Mark[] {
  const row = potRow(bench);
  if (bench.pots.diameter * scale.perMetre >= leastPot)
    return row.flatMap((middle) => pot(scale, middle, bench, plant));
  const half = bench.pots.diameter / 2;
  const block = {
    left: scale.x((row[0] ?? 0) - half),
    right: scale.x((row.at(-1) ?? 0) + half),
    top: scale.y(bench.frame.height + bench.pots.height),
    bottom: scale.y(bench.frame.height),
  };
  return [
    rectangle(block, { fill: 'paper' }),
    ...hatch(block, 2),
    rectangle(block, { stroke: 'ink', width: pen.edge }),
  ];
}

/** The outline of a cover, from edge to edge of the bench over two rounded shoulders. */
function coverOutline({ x, y, perMetre }: Scale, bench: Bench, gap: number, inward: number): Mark {
  const { width, height } = bench.frame;
  const [left, right] = [x(0) + inward, x(width) - inward];
  const foot = y(height) - gap;
  const top = y(height + bench.cover.height) + inward;
  const shoulder = Math.max(
    0.1,
    Math.min((right - left) / 2, foot - top, 0.35 * bench.cover.height * perMetre),
  );
  const straight = (from: Point, to: Point): Point[] => [from, from, to, to];
  const points: Point[] = [
    ...straight([left, foot], [left, top + shoulder]),
    ...arc([left + shoulder, top + shoulder], shoulder, Math.PI, 1.5 * Math.PI).slice(1),
    ...straight([left + shoulder, top], [right - shoulder, top]).slice(1),
    ...arc([right - shoulder, top + shoulder], shoulder, 1.5 * Math.PI, 2 * Math.PI).slice(1),
    ...straight([right, top + shoulder], [right, foot]).slice(1),
  ];
  return { kind: 'curve', points, stroke: 'ink', width: pen.edge };
}

/** The cover: film as a line, fleece dashed. */
function coverMarks(scale: Scale, bench: Bench, gap: number): Mark[] {
  const dash = [1.6, 1];
  const fleece = (inward: number): Mark => ({ ...coverOutline(scale, bench, gap, inward), dash }) as Mark;
  const film = coverOutline(scale, bench, gap, 0);
  switch (bench.cover.kind) {
    case 'none':
      return [];
    case 'fleece':
      return [fleece(0)];
    case 'film':
    case 'film-infrared':
      return [film];
    case 'both':
      return [film, fleece(1.2)];
  }
}

/** The skirt: as many lines as it has layers, side by side, hung outside the edge. */
function skirtMarks({ x, y }: Scale, bench: Bench, topGap: number, bottomGap: number): Mark[] {
  if (skirtClosed(bench) === 0) return [];
  const [top, bottom] = [y(bench.frame.height) + topGap, y(0) - bottomGap];
  const marks: Mark[] = [];
  for (let layer = 0; layer < Math.round(bench.skirt.layers); layer++) {
    const out = 0.5 + layer * 1.1;
    for (const at of [x(0) - out, x(bench.frame.width) + out])
      marks.push(
        line(
          [
            [at, top],
            [at, bottom],
          ],
          { width: pen.edge },
        ),
      );
  }
  return marks;
}

/** How far over the floor, or over the board on it, a pipe is drawn where there is room [m]: the height is free. */
const clearOfFloor = 0.15;

/** Height of the pipe's middle over the floor [m], clear of floor and bench top. */
export const pipeLevel = (bench: Bench): number => {
  const radius = pipeOf(bench).outsideDiameter / 2 + bench.cable.diameter;
  const { height, floorInsulation } = bench.frame;
  const lowest = Math.min(floorInsulation, height / 2) + radius;
  return Math.max(Math.min(lowest + clearOfFloor, height - radius), Math.min(lowest, height / 2));
};

/** Where the sensor sits, on paper. */
export function sensorPlace(bench: Bench, { x, y }: Scale, middles: readonly number[]): Point {
  const { frame, pots } = bench;
  switch (bench.control.sensor) {
    case 'loop':
      return [x(Math.max(...middles)), y(pipeLevel(bench) + pipeOf(bench).outsideDiameter / 2)];
    case 'air':
      return [x(frame.width / 2), y(frame.height * 0.55)];
    case 'pot':
      return [x(potRow(bench).at(-1) ?? frame.width / 2), y(frame.height + pots.height * 0.35)];
  }
}

/** How high the plants are drawn [m]: they fill most of the cover, or are a sapling's height without one. */
export const plantHeight = ({ cover, pots }: Bench): number =>
  cover.kind === 'none' ? 0.25 : Math.max(0, Math.min(0.3, (cover.height - pots.height) * 0.75));

/** The top of the board on the floor [m]; a board thicker than half the bench is cut off there. */
const boardTop = ({ frame }: Bench): number => Math.min(frame.floorInsulation, frame.height / 2);

/** The foam board on the floor, if there is one. */
function boardMarks({ x, y }: Scale, bench: Bench): Mark[] {
  if (bench.frame.floorInsulation === 0) return [];
  const board = { left: x(0), right: x(bench.frame.width), top: y(boardTop(bench)), bottom: y(0) };
  return [...hatch(board, 1.6), rectangle(board, { stroke: 'ink', width: pen.edge })];
}

/** The legs and the rail that the pipes lie on, behind everything else. */
function legMarks({ x, y }: Scale, bench: Bench): Mark[] {
  const { outsideDiameter } = pipeOf(bench);
  const [left, right] = [x(0) + legInset, x(bench.frame.width) - legInset];
  const rail = y(pipeLevel(bench) - outsideDiameter / 2 - bench.cable.diameter) + 0.3;
  const behind = (from: Point, to: Point): Mark => line([from, to], { stroke: 'soft', width: pen.edge });
  const [top, foot] = [y(bench.frame.height), y(boardTop(bench))];
  return [
    behind([left, top], [left, foot]),
    behind([right, top], [right, foot]),
    behind([left, rail], [right, rail]),
  ];
}

/** The pipes of the loop cut across, with the cable around them. */
function pipeMarks({ x, y, perMetre }: Scale, bench: Bench, middles: readonly number[]): Mark[] {
  const pipe = pipeOf(bench);
  const outside = (pipe.outsideDiameter / 2) * perMetre;
  const cable = Math.max(leastCable, bench.cable.diameter * perMetre);
  return middles.flatMap((middle) => {
    const at: Point = [x(middle), y(pipeLevel(bench))];
    return [
      ...pipeEnd(at, outside, (pipeInside(pipe) / 2) * perMetre),
      circle(at, outside + cable / 2, { stroke: 'heat', width: cable }),
    ];
  });
}

/** The bench top: dashed where air gets through it. */
function topMarks({ x, y }: Scale, { frame }: Bench): Mark {
  const level = y(frame.height) + 0.4;
  const open = frame.top === 'mesh' || frame.top === 'slats';
  return line(
    [
      [x(0), level],
      [x(frame.width), level],
    ],
    { width: 0.8, ...(open ? { dash: [2.4, 0.8] } : {}) },
  );
}

/** The whole bench cut across, from behind to before, without the ground that it stands on. */
export function benchAcross({
  situation,
  scale,
  middles,
}: {
  readonly situation: Situation;
  readonly scale: Scale;
  /** Middles of the pipes across the bench [m]. */
  readonly middles: readonly number[];
}): Mark[] {
  const { bench } = situation;
  const priors = priorsOf(situation);
  const gap = ({ expected }: { readonly expected: number }) => drawnGap(expected, scale.perMetre);
  return [
    ...boardMarks(scale, bench),
    ...legMarks(scale, bench),
    ...skirtMarks(scale, bench, gap(priors.topGap), gap(priors.bottomGap)),
    ...pipeMarks(scale, bench, middles),
    ...potMarks(scale, bench, plantHeight(bench)),
    topMarks(scale, bench),
    ...coverMarks(scale, bench, gap(priors.coverGap)),
  ];
}
