import { loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Mark, Point } from './drawing.ts';
import { ground, hatch } from './hatch.ts';
import type { BenchDrawing, DrawingInput } from './input.ts';
import { balloon, balloonRadius, key, notes } from './key.ts';
import type { Box } from './measure.ts';
import { pen, polygon } from './pen.ts';
import { benchAcross, plantHeight, type Scale } from './section-parts.ts';

/** All on paper [mm]. */
const margin = 2;
/** Length of an arrow, width of the widest and of the narrowest. */
const long = 13;
const widest = 11;
const narrowest = 0.8;
/** From the bench to where an arrow begins, and from its tip to the middle of its number. */
const clear = 1.5;
const toNumber = balloonRadius + 1;
const column = clear + long + 2 * toNumber;
/** Highest that the bench may be. */
const tallest = 64;

/** Which way an arrow points. */
type Way = 'left' | 'right' | 'up' | 'down';
const steps = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] } as const satisfies Record<
  Way,
  Point
>;

/** A broad, hatched arrow: its shaft as wide as the heat is large. It points inward where the heat comes in. */
function broadArrow([x, y]: Point, way: Way, wide: number, inward: boolean): Mark[] {
  const [dx, dy] = steps[way];
  const on = (along: number, aside: number): Point => [
    x + dx * along - dy * aside,
    y + dy * along + dx * aside,
  ];
  const head = Math.min(long * 0.55, wide / 2 + 2.2);
  const half = wide / 2;
  const outline = inward
    ? [
        on(long, half),
        on(head, half),
        on(head, half + 1.8),
        on(0, 0),
        on(head, -half - 1.8),
        on(head, -half),
        on(long, -half),
      ]
    : [
        on(0, half),
        on(long - head, half),
        on(long - head, half + 1.8),
        on(long, 0),
        on(long - head, -half - 1.8),
        on(long - head, -half),
        on(0, -half),
      ];
  const [from, to] = inward ? [on(head, half), on(long, -half)] : [on(0, half), on(long - head, -half)];
  const shaft: Box = {
    left: Math.min(from[0], to[0]),
    right: Math.max(from[0], to[0]),
    top: Math.min(from[1], to[1]),
    bottom: Math.max(from[1], to[1]),
  };
  return [
    polygon(outline, { fill: 'paper', stroke: 'ink', width: pen.edge }),
    ...(wide > 1.5 ? hatch(shaft, 1.3) : []),
    polygon(outline, { stroke: 'ink', width: pen.edge }),
  ];
}

interface Path {
  readonly name: string;
  readonly power: number;
  readonly at: Point;
  readonly way: Way;
}

function scaleOf({ situation: { bench }, width }: DrawingInput): {
  readonly scale: Scale;
  readonly top: number;
  readonly floor: number;
} {
  const { frame, pots, cover } = bench;
  const over = cover.kind === 'none' ? 0 : cover.height;
  const high = frame.height + Math.max(pots.height + plantHeight(bench), over);
  const room = width - 2 * (margin + column);
  // Pots may stand out over the edge of a narrow bench.
  const across = Math.max(frame.width, pots.diameter);
  const perMetre = Math.min(room / across, tallest / high);
  const left = width / 2 - (frame.width / 2) * perMetre;
  const top = margin + column;
  const floor = top + high * perMetre;
  return { scale: { perMetre, x: (m) => left + m * perMetre, y: (m) => floor - m * perMetre }, top, floor };
}

function benchMarks({ situation }: DrawingInput, scale: Scale, floor: number): Mark[] {
  const { bench } = situation;
  const middles = [...new Set(loopPath(bench).map(([, across]) => across))];
  const beyond = Math.max(4, (pipeOf(bench).outsideDiameter / 2) * scale.perMetre);
  return [
    ...ground(scale.x(0) - beyond, scale.x(bench.frame.width) + beyond, floor),
    ...benchAcross({ situation, scale, middles }),
  ];
}

/** The bench cut across with the roots held at the limit: an arrow for each way out, as wide as its heat. */
export const heatPathsDrawing: BenchDrawing = (input) => {
  const { situation, answers, manner, width } = input;
  const { bench } = situation;
  const { skirt, leakage, plants, edge, ground: into, radiated, air, house } = answers.heat.figures;
  const { scale, top, floor } = scaleOf(input);
  const power = (value: number) => showQuantity(value, 'power', manner);
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const { x, y } = scale;
  const { frame } = bench;
  const [left, right, middle] = [x(0), x(frame.width), x(frame.width / 2)];
  const side = Math.max(left - 2.6 - clear, margin + column - clear);
  const under = floor + 3;
  const passing = radiated ? `, of it ${power(radiated.value)} as radiation straight through` : '';
  const paths: Path[] = [
    {
      name: `Up through and past the pots: ${power(plants?.value ?? 0)}`,
      power: plants?.value ?? 0,
      at: [middle, top - clear],
      way: 'up',
    },
    {
      name: `With air through gaps: ${power(leakage?.value ?? 0)}`,
      power: leakage?.value ?? 0,
      at: [right + 2.6 + clear, y(frame.height * 0.62)],
      way: 'right',
    },
    {
      name: `Through the skirt: ${power(skirt?.value ?? 0)}${passing}`,
      power: skirt?.value ?? 0,
      at: [side, y(frame.height * 0.5)],
      way: 'left',
    },
    {
      name: `Along the edge of the floor: ${power(edge?.value ?? 0)}`,
      power: edge?.value ?? 0,
      at: [Math.min(left, middle - widest - 6), under],
      way: 'down',
    },
    {
      name:
        (into?.value ?? 0) < 0
          ? `From the ground: ${power(-(into?.value ?? 0))}`
          : `Into the ground: ${power(into?.value ?? 0)}`,
      power: into?.value ?? 0,
      at: [middle, under],
      way: 'down',
    },
  ];
  const most = Math.max(1, ...paths.map((path) => Math.abs(path.power)));
  const arrows = paths.flatMap(({ power: heat, at, way }, index) => {
    const wide = Math.max(narrowest, (widest * Math.abs(heat)) / most);
    const [dx, dy] = steps[way];
    const number: Point = [at[0] + dx * (long + toNumber), at[1] + dy * (long + toNumber)];
    return [...broadArrow(at, way, wide, heat < 0), ...balloon(number, index + 1)];
  });
  const keyTop = under + long + 2 * toNumber + 2;
  const place = { left: margin, width: width - 2 * margin };
  const list = key(
    paths.map(({ name }) => name),
    { ...place, top: keyTop },
  );
  const said = `Arrows are as wide as their heat. Air under the bench ${level(air?.value ?? NaN)}, house air ${level(house?.value ?? NaN)}; the roots held at ${level(bench.plants.lowestRootTemperature)}.`;
  const small = notes([said], { ...place, top: keyTop + list.height + 1 });
  return {
    width,
    height: keyTop + list.height + 1 + small.height + 1,
    title: 'Where the heat leaves your bench',
    description: [
      'The bench cut across on the design night, if it lasted, with an arrow for each way that heat takes.',
      ...paths.map(({ name }) => `${name}.`),
      said,
    ].join(' '),
    marks: [...benchMarks(input, scale, floor), ...arrows, ...list.marks, ...small.marks],
  };
};
