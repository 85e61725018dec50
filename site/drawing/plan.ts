import { loopLength, loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import { wind } from '../../calculators/electric/winding.ts';
import type { Bench } from '../../calculators/bench/fields.ts';
import { showNumber, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { across, roomUnder, upright } from './dimension.ts';
import { breakStrip } from './break-line.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { balloonRadius, key, notes, pointer } from './key.ts';
import { textWidth } from './measure.ts';
import { circle, label, letters, line, pen, polygon, rectangle } from './pen.ts';
import { roundScale } from './scale.ts';
import { sensorMark } from './sensor.ts';
import { spread } from './spread.ts';

/** All on paper [mm]. */
const margin = 2;
/** Left of the bench, for the supply. */
const supplyColumn = 13;
const leastWide = 13;
const mostWide = 70;
const leastPipe = 1.4;
/** Turns are drawn no closer than this; closer ones are drawn every so many. */
const leastTurn = 1.3;
/** Width of the strip where a piece of a long bench is left out. */
const strip = 4;
/** On the worksheet, what stands over and under the bench. */
const sheetRows = 22;

/** From metres along and across the bench to paper. A long bench is shown by its two ends. */
interface Sheet {
  readonly perMetre: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Where the piece that is left out begins and ends [m]; both the same where nothing is. */
  readonly cut: readonly [number, number];
}

/** How wide the bench may be drawn at most [mm], and the scale that is kept for one that would fit. */
interface Fitting {
  readonly most: number;
  readonly round: (perMetre: number) => number;
  /** Room on the right that is made use of where there is as much [mm]. */
  readonly aside: number;
}

/** What would lie on the piece that is left out is drawn at its nearer end. */
const xOn = ({ perMetre, left, right, cut }: Sheet, length: number, along: number): number =>
  along <= (cut[0] + cut[1]) / 2
    ? left + Math.min(along, cut[0]) * perMetre
    : right - (length - Math.max(along, cut[1])) * perMetre;

const yOn = ({ perMetre, bottom }: Sheet, over: number): number => bottom - over * perMetre;

function sheetOf({ frame }: Bench, left: number, right: number, top: number, fitting: Fitting): Sheet {
  const room = right - left;
  const fitted = Math.min(room / frame.length, fitting.most / frame.width);
  const perMetre = fitting.round(Math.max(fitted, leastWide / frame.width));
  const whole = perMetre * frame.length <= room + 1e-9;
  const wide = whole ? perMetre * frame.length : room;
  // In the middle, unless what is left over on the right has room for something else.
  const spare = room - wide >= fitting.aside ? 0 : (room - wide) / 2;
  const half = (room - strip) / 2 / perMetre;
  return {
    perMetre,
    left: left + spare,
    right: left + spare + wide,
    top,
    bottom: top + frame.width * perMetre,
    cut: whole ? [frame.length, frame.length] : [half, frame.length - half],
  };
}

/** A place on the loop: how far along its middle line [m], where on the bench, and which way the pipe runs there. */
interface Place {
  readonly at: Point;
  readonly way: Point;
}

/** The places at these distances along a path, none where the path has ended. */
function placesOn(path: readonly Point[], distances: readonly number[]): Place[] {
  const places: Place[] = [];
  let walked = 0;
  let next = 0;
  path.slice(1).forEach((to, index) => {
    const from = path[index] ?? to;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    if (length === 0) return;
    const way: Point = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    for (; next < distances.length && (distances[next] ?? Infinity) <= walked + length + 1e-9; next++) {
      const on = (distances[next] ?? 0) - walked;
      places.push({ at: [from[0] + way[0] * on, from[1] + way[1] * on], way });
    }
    walked += length;
  });
  return places;
}

const pathLength = (path: readonly Point[]): number =>
  path.slice(1).reduce((sum, [x, y], index) => {
    const [fromX, fromY] = path[index] ?? [x, y];
    return sum + Math.hypot(x - fromX, y - fromY);
  }, 0);

/** How the turns are shown: the distance between those drawn, and what the reader is told. */
interface TurnMarks {
  readonly distances: readonly number[];
  /** Slant of a drawn turn along the pipe: half a pitch [m]. */
  readonly lean: number;
  readonly words: string;
}

function turnsOf(bench: Bench, perMetre: number, drawn: number, manner: Manner): TurnMarks {
  const length = loopLength(bench);
  const winding = wind({
    pipeDiameter: pipeOf(bench).outsideDiameter,
    cableDiameter: bench.cable.diameter,
    pipeLength: length,
    cableLength: bench.cable.length,
  });
  const count = (value: number) => showNumber(value, 'count', manner);
  const size = (value: number) => showQuantity(value, 'size', manner);
  const none = (words: string): TurnMarks => ({ distances: [], lean: 0, words });
  switch (winding.outcome) {
    case 'too-short':
      return none(
        `Not to be built: the cable is ${showQuantity(winding.missing, 'length', manner)} shorter than the pipe`,
      );
    case 'straight':
      return none('Heating cable: straight along the pipe');
    case 'touching':
      return none('Not to be built: the turns of the cable would touch');
    case 'wound': {
      // A measured pipe may be longer or shorter than the drawn run; the turns are spread over what is drawn.
      const pitch = winding.pitch * (drawn / length);
      const every = Math.max(1, Math.ceil(leastTurn / (pitch * perMetre)));
      const number = Math.floor(winding.turns / every + 1e-9);
      const shown = every === 1 ? 'each one is drawn' : `one in ${count(every)} is drawn`;
      return {
        distances: Array.from({ length: number }, (_, index) => (index + 0.5) * every * pitch),
        lean: Math.min(pitch / 2, 0.6 * pipeOf(bench).outsideDiameter),
        words: `Heating cable: ${count(winding.turns)} turns, pitch ${size(winding.pitch)}; ${shown}`,
      };
    }
  }
}

const runWords = {
  u: 'a U along the outer edge',
  ring: 'a closed ring along the outer edge',
  straight: 'one straight run',
} as const satisfies Record<Bench['loop']['run'], string>;

const expansionWords = {
  standpipe: 'Open stand-pipe, at the highest point of the loop',
  headspace: 'Vent, at the highest point of the loop',
} as const satisfies Record<Bench['loop']['expansion'], string>;

const sensorWords = {
  loop: 'Sensor on the pipe, between two turns',
  air: 'Sensor in the air under the bench',
  pot: 'Sensor in a pot at the edge, where it gets coldest',
} as const satisfies Record<Bench['control']['sensor'], string>;

/** Where the sensor is marked, in metres along and across the bench; `along` is a free place on the near leg. */
function sensorPlace(bench: Bench, path: readonly Point[], along: number): Point {
  const { frame, pots } = bench;
  switch (bench.control.sensor) {
    case 'loop':
      return [along, path[0]?.[1] ?? 0];
    case 'air':
      return [along, frame.width / 2];
    case 'pot':
      return [
        Math.max(frame.length - pots.diameter, frame.length / 2),
        Math.min(pots.diameter, frame.width / 2),
      ];
  }
}

interface Named {
  readonly at: Point;
  readonly side: 'above' | 'below';
  readonly text: string;
}

/** The bench from above, to scale: the loop under its edge, the turns of the cable, supply, stand-pipe and sensor. */
export const planDrawing: BenchDrawing = ({ situation, manner, width, sheet: worksheet }): Drawing => {
  const { bench } = situation;
  const { frame } = bench;
  const metres = (value: number) => showQuantity(value, 'length', manner);
  const size = (value: number) => showQuantity(value, 'size', manner);
  const pipe = pipeOf(bench);
  const path = loopPath(bench);
  const widthWords = metres(frame.width);
  const rightColumn = textWidth(widthWords, letters.body) + 9;
  const balloonRow = margin + balloonRadius;
  const sheet = sheetOf(
    bench,
    margin + supplyColumn,
    width - margin - rightColumn,
    worksheet ? margin + 2.5 : balloonRow + balloonRadius + 7,
    worksheet
      ? {
          most: Math.max(leastWide, Math.min(mostWide, worksheet.height - sheetRows)),
          round: (free) => roundScale(free, manner.system)?.perMetre ?? free,
          aside: signColumn,
        }
      : { most: mostWide, round: (free) => free, aside: Number.POSITIVE_INFINITY },
  );
  const { perMetre, left, right, top, bottom, cut } = sheet;
  const broken = cut[0] < cut[1];
  const on = ([along, over]: Point): Point => [xOn(sheet, frame.length, along), yOn(sheet, over)];
  const shows = ([along]: Point): boolean => along <= cut[0] || along >= cut[1];

  // A place that shows, this share of the way along the near leg; of a broken bench on one of its two ends.
  const [pipeStart, pipeStop] = [path[0]?.[0] ?? 0, path[1]?.[0] ?? frame.length];
  const alongPipe = (share: number): number => {
    if (!broken) return pipeStart + (pipeStop - pipeStart) * share;
    if (share < 0.5) return pipeStart + (cut[0] - pipeStart) * share * 2;
    return cut[1] + (pipeStop - cut[1]) * (share - 0.5) * 2;
  };

  const marks: Mark[] = [rectangle({ left, top, right, bottom }, { stroke: 'ink', width: pen.outline })];

  // The pipe: a broad line of ink with a narrower one of water on it, which leaves its two edges.
  const broad = Math.max(leastPipe, pipe.outsideDiameter * perMetre);
  // Where a piece of the bench is left out, a strip of paper is laid over it below.
  const run = path.map(on);
  marks.push(line(run, { width: broad, stroke: 'ink' }));
  marks.push(line(run, { width: broad - 2 * pen.edge, stroke: 'water' }));
  if (bench.loop.run === 'ring') marks.push(...ringCorner(on(path[0] ?? [0, 0]), broad));

  const drawn = pathLength(path);
  const turns = turnsOf(bench, perMetre, drawn, manner);
  const reach = broad / 2 + 0.3;
  const lean = Math.min(turns.lean * perMetre, broad * 0.6) / 2;
  for (const { at, way } of placesOn(path, turns.distances)) {
    if (!shows(at)) continue;
    const [x, y] = on(at);
    // Paper runs downward where the bench runs away from the reader.
    const [alongX, alongY] = [way[0], -way[1]];
    marks.push(
      line(
        [
          [x - alongX * lean + alongY * reach, y - alongY * lean - alongX * reach],
          [x + alongX * lean - alongY * reach, y + alongY * lean + alongX * reach],
        ],
        { stroke: 'heat', width: pen.outline },
      ),
    );
  }
  if (broken) {
    const middle = (xOn(sheet, frame.length, cut[0]) + xOn(sheet, frame.length, cut[1])) / 2;
    marks.push(...breakStrip(middle, strip, top - 2, bottom + 2));
  }

  // Ends of the cable and of the pipe. A ring and a U start at the near left corner.
  const start = on(path[0] ?? [0, 0]);
  const straight = bench.loop.run === 'straight';
  const end = on(straight || bench.loop.run === 'u' ? (path.at(-1) ?? [0, 0]) : (path[3] ?? [0, 0]));
  const supply: Point = [left - supplyColumn + 3, start[1]];
  marks.push(
    line(
      [
        [supply[0] + 2, supply[1]],
        [start[0], start[1]],
      ],
      { width: pen.edge, dash: [1.2, 0.8] },
    ),
    ...supplySign(supply),
    ...standpipeSign(end, Math.max(1.1, broad * 0.3)),
  );
  const sensor = on(sensorPlace(bench, path, alongPipe(0.8)));
  marks.push(sensorMark(sensor));

  const measuredPipe = bench.loop.length === null ? '' : ' as measured';
  const far = (bench.loop.run === 'straight' ? path[0] : path[2])?.[1] ?? 0;
  const inset =
    bench.loop.run === 'straight'
      ? ''
      : `; middle ${size(Math.min(bench.loop.inset, frame.width / 2))} from the edge`;
  const things: Named[] = [
    {
      at: end,
      side: 'above',
      text: expansionWords[bench.loop.expansion],
    },
    {
      at: on([alongPipe(0.9), far]),
      side: 'above',
      text: `Loop: ${pipe.label}, ${runWords[bench.loop.run]}, ${metres(loopLength(bench))}${measuredPipe}${inset}`,
    },
    { at: supply, side: 'below', text: 'Supply, with the cold lead (dashed) to where the cable starts' },
    { at: on([alongPipe(0.3), path[0]?.[1] ?? 0]), side: 'below', text: turns.words },
    { at: sensor, side: 'below', text: sensorWords[bench.control.sensor] },
  ];
  const rows = { above: balloonRow, below: bottom + 7 + balloonRadius } as const;
  const ordered: Named[] = [];
  for (const side of ['above', 'below'] as const) {
    const here = things.filter((thing) => thing.side === side).toSorted((a, b) => a.at[0] - b.at[0]);
    if (worksheet) {
      ordered.push(...here);
      continue;
    }
    const places = spread(
      here.map(({ at }) => at[0]),
      2 * balloonRadius + 2,
      margin + balloonRadius,
      width - margin - balloonRadius,
    );
    here.forEach(({ at }, index) =>
      marks.push(...pointer([places[index] ?? margin, rows[side]], at, ordered.length + index + 1)),
    );
    ordered.push(...here);
  }

  const lengthRow = worksheet ? bottom + 8.5 : rows.below + balloonRadius + 8;
  const chain = right + 5;
  marks.push(
    ...across({
      from: left,
      to: right,
      at: lengthRow,
      // Short extension lines: the rows between belong to the balloons.
      edges: [lengthRow - 3.3, lengthRow - 3.3],
      text: metres(frame.length),
      within: [margin, width - margin],
    }),
    ...upright({ from: top, to: bottom, at: chain, edges: [right, right] }),
    label([chain + 2, (top + bottom) / 2 + 0.36 * letters.body], widthWords),
  );
  const pipeWide = broad > pipe.outsideDiameter * perMetre + 0.01;
  const said = [
    broken ? 'To scale; a piece of the bench, with its turns, is left out in the middle.' : 'To scale.',
    ...(pipeWide ? ['The pipe is drawn wider than it is.'] : []),
  ].join(' ');
  const title = 'The bench from above';
  const description = [
    `Plan of the bench, ${metres(frame.length)} long and ${widthWords} wide.`,
    ...ordered.map(({ text }) => `${text}.`),
    said,
  ].join(' ');
  if (worksheet) {
    const scale = roundScale(perMetre, manner.system)?.name;
    const free = width - margin - (right + rightColumn);
    const aside = free >= signColumn;
    const signs = aside
      ? signRows(bench, width - margin - signColumn + 3, margin + 1, signColumn - 3)
      : signRows(bench, margin, lengthRow + roomUnder, width - 2 * margin);
    marks.push(...signs.marks);
    const under = lengthRow + roomUnder;
    const height = aside ? Math.max(under, margin + 1 + signs.height) : under + signs.height;
    return { width, height, title, description, marks, ...(scale ? { scale } : {}) };
  }
  const listTop = lengthRow + roomUnder + 2;
  const list = key(
    ordered.map(({ text }) => text),
    { left: margin, top: listTop, width: width - 2 * margin },
  );
  const small = notes([said], { left: margin, top: listTop + list.height + 1, width: width - 2 * margin });
  marks.push(...list.marks, ...small.marks);
  return {
    width,
    height: listTop + list.height + 1 + small.height + 1,
    title,
    description,
    marks,
  };
};

/** A ring has no ends: the corner where its line begins and ends is closed. */
function ringCorner([x, y]: Point, broad: number): Mark[] {
  const half = broad / 2;
  const inner = half - pen.edge;
  return [
    rectangle({ left: x - half, right: x + half, top: y - half, bottom: y + half }, { fill: 'ink' }),
    rectangle({ left: x - inner, right: x + half, top: y - half, bottom: y + inner }, { fill: 'water' }),
    rectangle({ left: x + inner, right: x + half, top: y - half, bottom: y - inner }, { fill: 'ink' }),
  ];
}

const supplySign = ([x, y]: Point): Mark[] => [
  rectangle(
    { left: x - 2, right: x + 2, top: y - 2, bottom: y + 2 },
    { fill: 'paper', stroke: 'ink', width: pen.outline },
  ),
  bolt([x, y]),
];

const standpipeSign = (at: Point, radius: number): Mark[] => [
  circle(at, radius + 0.6, { fill: 'paper', stroke: 'ink', width: pen.edge }),
  circle(at, radius - 0.3, { stroke: 'ink', width: pen.edge }),
];

const shortExpansion = {
  standpipe: 'stand-pipe, at the top',
  headspace: 'vent, at the top',
} as const satisfies Record<Bench['loop']['expansion'], string>;

/** Width of the signs of the plan with their words, under one another [mm]. */
const signColumn = 58;

/** What the signs of the plan stand for, in rows: the worksheet has no room for a numbered key. */
function signRows(
  bench: Bench,
  left: number,
  top: number,
  width: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const size = letters.small;
  const rowHeight = 5.6;
  const [signRoom, gap] = [4.4, 6];
  const signs: readonly (readonly [draw: (at: Point) => Mark[], words: string])[] = [
    [supplySign, 'supply, cold lead dashed'],
    [(at) => standpipeSign(at, 1.2), shortExpansion[bench.loop.expansion]],
    [([x, y]) => [sensorMark([x, y + 1.4])], 'sensor'],
  ];
  const marks: Mark[] = [];
  let [x, y] = [left, top + rowHeight / 2];
  for (const [draw, words] of signs) {
    const wide = signRoom + 1 + textWidth(words, size);
    if (x > left && x + wide > left + width) [x, y] = [left, y + rowHeight];
    marks.push(...draw([x + signRoom / 2, y]), label([x + signRoom + 1, y + 0.36 * size], words, { size }));
    x += wide + gap;
  }
  return { marks, height: y + rowHeight / 2 - top };
}

/** The sign of mains power. */
const bolt = ([x, y]: Point): Mark =>
  polygon(
    [
      [x + 0.5, y - 1.6],
      [x - 0.8, y + 0.2],
      [x, y + 0.2],
      [x - 0.5, y + 1.6],
      [x + 0.8, y - 0.2],
      [x, y - 0.2],
    ],
    { fill: 'ink' },
  );
