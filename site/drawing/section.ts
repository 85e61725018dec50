import { loopPath, pipeInside, pipeOf, skirtClosed } from '../../calculators/bench/geometry.ts';
import { priorsOf } from '../../calculators/bench/priors.ts';
import type { Bench } from '../../calculators/bench/fields.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { benchTops, floors } from '../../calculators/tables/benches.ts';
import { sheets } from '../../calculators/tables/films.ts';
import { leader } from './arrow.ts';
import { arc } from './curve.ts';
import { across, roomUnder, upright } from './dimension.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import { ground, hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { balloonRadius, key, notes, pointer } from './key.ts';
import { textWidth } from './measure.ts';
import { circle, label, letters, line, pen, polygon, rectangle } from './pen.ts';
import { roundScale } from './scale.ts';
import { sensorMark } from './sensor.ts';
import { spread } from './spread.ts';
import { pipeEnd } from './water.ts';

const margin = 2;
/** Highest that the section itself may be on paper [mm]. */
const tallest = 92;
/** On the worksheet: the least height of the section, what stands over and under it, and the column of short words. */
const lowest = 40;
const sheetRows = 18;
const shortColumn = 30;
/** Nothing that can be seen through is drawn narrower than this [mm]. */
const leastGap = 0.9;
/** Narrower pots than this are drawn as one hatched block [mm]. */
const leastPot = 2.2;
/** Share of its square that a round pot covers: π/4. */
const roundInSquare = Math.PI / 4;

interface Scale {
  readonly perMetre: number;
  /** From metres across the bench to paper. */
  readonly x: (metres: number) => number;
  /** From metres over the floor to paper. */
  readonly y: (metres: number) => number;
}

/** Something that a balloon names. */
interface Named {
  readonly at: Point;
  readonly text: string;
  /** The same in a word or two, for the worksheet. */
  readonly short: string;
}

/** The middles of the pots in one row across the bench [m], and whether they stand in one block. */
function potRow({ frame, pots }: Bench): readonly number[] {
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

/** Half an outline of a cover, from the bench edge up over rounded shoulders, mirrored on the other side. */
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

const coverWords = {
  none: '',
  fleece: 'Cover of fleece',
  film: 'Cover of film',
  'film-infrared': 'Cover of film that holds back heat radiation',
  both: 'Cover of fleece (dashed) with film over it',
} as const satisfies Record<Bench['cover']['kind'], string>;

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

const sensorWords = {
  loop: 'Sensor on the loop pipe',
  air: 'Sensor in the air under the bench',
  pot: 'Sensor in a pot, at the roots',
} as const satisfies Record<Bench['control']['sensor'], string>;

const drawnGap = (metres: number, perMetre: number): number =>
  metres <= 0 ? 0 : Math.max(leastGap, metres * perMetre);

const gapWords = (what: string, expected: number, measured: number | null, manner: Manner): string => {
  if (measured === 0) return `${what}: none`;
  const size = showQuantity(expected, 'size', manner);
  return measured === null ? `${what}: not measured, about ${size} taken` : `${what}: ${size}`;
};

/** How high the plants are drawn [m]: they fill most of the cover, or are a sapling's height without one. */
const plantHeight = ({ cover, pots }: Bench): number =>
  cover.kind === 'none' ? 0.25 : Math.max(0, Math.min(0.3, (cover.height - pots.height) * 0.75));

const sheetWords = ({ skirt }: Bench): string => {
  if (skirt.material === 'none') return 'No skirt: the sides are open';
  const layers = Math.round(skirt.layers);
  return `Skirt: ${sheets[skirt.material].label.toLowerCase()}${layers > 1 ? `, ${layers} layers` : ''}`;
};

function namedThings(
  situation: Situation,
  manner: Manner,
  scale: Scale,
  middles: readonly number[],
): Named[] {
  const { bench } = situation;
  const { frame, loop, cover, skirt, pots } = bench;
  const { x, y, perMetre } = scale;
  const priors = priorsOf(situation);
  const pipe = pipeOf(bench);
  const size = (metres: number) => showQuantity(metres, 'size', manner);
  const gap = (metres: number) => `gap ${size(metres)}`;
  const right = Math.max(...middles);
  const radius = pipe.outsideDiameter / 2;
  const level = pipeLevel(bench);
  const lies =
    loop.run === 'straight'
      ? 'under the middle of the bench'
      : `middle ${size(Math.min(loop.inset, frame.width / 2))} from the edge`;
  const things: Named[] = [];
  if (cover.kind !== 'none') {
    const top = y(frame.height + cover.height);
    things.push({ at: [x(frame.width * 0.62), top], text: coverWords[cover.kind], short: 'cover' });
    things.push({
      at: [x(frame.width), y(frame.height) - drawnGap(priors.coverGap.expected, perMetre) / 2],
      text: gapWords('Gap at the edge of the cover', priors.coverGap.expected, cover.gap, manner),
      short: gap(priors.coverGap.expected),
    });
  }
  const row = potRow(bench);
  things.push({
    at: [x(row.at(-1) ?? frame.width / 2), y(frame.height + pots.height * 0.6)],
    text: `Pots: ${size(pots.diameter)} across, ${size(pots.height)} of medium`,
    short: 'pots',
  });
  things.push({
    at: [x(frame.width * 0.8), y(frame.height) + 0.4],
    text: `Bench top: ${benchTops[frame.top].label.toLowerCase()}`,
    short: 'bench top',
  });
  if (skirtClosed(bench) > 0) {
    things.push({
      at: [x(frame.width) + 0.3, y(frame.height) + 0.8 + drawnGap(priors.topGap.expected, perMetre) / 2],
      text: gapWords('Gap at the bench edge', priors.topGap.expected, skirt.topGap, manner),
      short: gap(priors.topGap.expected),
    });
    const closed =
      bench.skirt.closed < 1 ? `; it closes ${showQuantity(skirt.closed, 'share', manner)} of the sides` : '';
    things.push({
      at: [x(frame.width) + 0.5, y(frame.height * 0.62)],
      text: sheetWords(bench) + closed,
      short: 'skirt',
    });
  } else
    things.push({ at: [x(frame.width), y(frame.height * 0.62)], text: sheetWords(bench), short: 'no skirt' });
  things.push({
    at: [x(right + radius * 0.7), y(level + radius * 0.7)],
    text: `Loop: ${pipe.label}, cable wound round it; ${lies}`,
    short: 'loop',
  });
  if (skirtClosed(bench) > 0)
    things.push({
      at: [x(frame.width) + 0.5, y(0) - drawnGap(priors.bottomGap.expected, perMetre) / 2],
      text: gapWords('Gap at the floor', priors.bottomGap.expected, skirt.bottomGap, manner),
      short: gap(priors.bottomGap.expected),
    });
  if (frame.floorInsulation > 0)
    things.push({
      at: [x(frame.width * 0.8), y(frame.floorInsulation / 2)],
      text: `Foam board on the floor: ${size(frame.floorInsulation)}`,
      short: 'foam board',
    });
  things.push({
    at: [x(frame.width * 0.9), y(0) + 1.2],
    text: `Floor: ${floors[frame.floor].label.toLowerCase()}`,
    short: 'floor',
  });
  things.push({
    at: sensorPlace(bench, scale, middles),
    text: sensorWords[bench.control.sensor],
    short: 'sensor',
  });
  return things;
}

/** Height of the pipe's middle [m]: about a third of the way up, clear of floor and top; the height is free. */
const pipeLevel = (bench: Bench): number => {
  const radius = pipeOf(bench).outsideDiameter / 2 + bench.cable.diameter;
  const { height, floorInsulation } = bench.frame;
  const lowest = Math.min(floorInsulation, height / 2) + radius;
  return Math.max(Math.min(lowest + 0.15, height - radius), Math.min(lowest, height / 2));
};

function sensorPlace(bench: Bench, { x, y }: Scale, middles: readonly number[]): Point {
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

/** From one short word to the next one under it. */
const shortRow = letters.small * 1.25;

/** Things named by short words in a column, each with a thin line to its place. */
function shortNames(things: readonly Named[], left: number, top: number, bottom: number): Mark[] {
  const size = letters.small;
  const rows = spread(
    things.map(({ at }) => at[1]),
    shortRow,
    top,
    bottom,
  );
  return things.flatMap(({ at, short }, index) => {
    const row = rows[index] ?? top;
    return [...leader([[left - 1, row], at]), label([left, row + 0.36 * size], short, { size })];
  });
}

/** The bench cut across, to scale: floor, loop, top with pots, skirt and cover, with its gaps called out. */
export const sectionDrawing: BenchDrawing = ({ situation, manner, width, sheet }): Drawing => {
  const { bench } = situation;
  const { frame, cover, pots } = bench;
  const metres = (value: number) => showQuantity(value, 'length', manner);
  const covered = cover.kind !== 'none';
  const plant = plantHeight(bench);
  const high = frame.height + Math.max(pots.height + plant, covered ? cover.height : 0);
  const middles = [...new Set(loopPath(bench).map(([, across]) => across))];
  // Pots and pipes may stand out over the edge of a narrow bench.
  const beyond = Math.max(
    0,
    pots.diameter / 2 - frame.width / 2,
    pipeOf(bench).outsideDiameter / 2 - Math.min(...middles),
  );
  const heights = [metres(frame.height), ...(covered ? [metres(cover.height)] : [])];
  const leftColumn = Math.max(...heights.map((text) => textWidth(text, letters.body))) + 9;
  const rightColumn = sheet ? shortColumn : 2 * balloonRadius + 12;
  const room = width - 2 * margin - leftColumn - rightColumn;
  const most = sheet ? Math.max(lowest, Math.min(tallest, sheet.height - sheetRows)) : tallest;
  const free = Math.min(room / (frame.width + 2 * beyond), most / high);
  const round = sheet ? roundScale(free, manner.system) : undefined;
  const perMetre = round?.perMetre ?? free;
  const spare = (room - perMetre * (frame.width + 2 * beyond)) / 2;
  const left = margin + leftColumn + spare + beyond * perMetre;
  const roof = margin + 3;
  const floor = roof + high * perMetre;
  const scale: Scale = { perMetre, x: (m) => left + m * perMetre, y: (m) => floor - m * perMetre };
  const { x, y } = scale;
  const priors = priorsOf(situation);
  const pipe = pipeOf(bench);
  const top = y(frame.height);

  const marks: Mark[] = [...ground(x(-beyond) - 3, width - margin - rightColumn + 6, floor)];
  if (frame.floorInsulation > 0) {
    const board = {
      left: x(0),
      right: x(frame.width),
      top: y(Math.min(frame.floorInsulation, frame.height / 2)),
      bottom: floor,
    };
    marks.push(...hatch(board, 1.6), rectangle(board, { stroke: 'ink', width: pen.edge }));
  }
  // Legs stand a little in from the edge, behind the pipes.
  for (const at of [x(0) + 1.2, x(frame.width) - 1.2])
    marks.push(
      line(
        [
          [at, top],
          [at, y(Math.min(frame.floorInsulation, frame.height / 2))],
        ],
        { stroke: 'soft', width: pen.edge },
      ),
    );
  marks.push(
    ...skirtMarks(
      scale,
      bench,
      drawnGap(priors.topGap.expected, perMetre),
      drawnGap(priors.bottomGap.expected, perMetre),
    ),
  );
  const rail = y(pipeLevel(bench) - pipe.outsideDiameter / 2 - bench.cable.diameter) + 0.3;
  marks.push(
    line(
      [
        [x(0) + 1.2, rail],
        [x(frame.width) - 1.2, rail],
      ],
      { stroke: 'soft', width: pen.edge },
    ),
  );
  for (const middle of middles) {
    const at: Point = [x(middle), y(pipeLevel(bench))];
    const outside = (pipe.outsideDiameter / 2) * perMetre;
    marks.push(...pipeEnd(at, outside, (pipeInside(pipe) / 2) * perMetre));
    const cable = Math.max(0.8, bench.cable.diameter * perMetre);
    marks.push(circle(at, outside + cable / 2, { stroke: 'heat', width: cable }));
  }
  marks.push(...potMarks(scale, bench, plant));
  const board = [
    [x(0), top + 0.4],
    [x(frame.width), top + 0.4],
  ] as const;
  marks.push(
    line(board, {
      width: 0.8,
      ...(frame.top === 'mesh' || frame.top === 'slats' ? { dash: [2.4, 0.8] } : {}),
    }),
  );
  marks.push(...coverMarks(scale, bench, drawnGap(priors.coverGap.expected, perMetre)));
  marks.push(sensorMark(sensorPlace(bench, scale, middles)));

  // Heights on the left, one over the other.
  const chain = x(-beyond) - 5;
  const edge = x(-beyond) - 2;
  const standing = (from: number, to: number, text: string, place: number): Mark[] => [
    ...upright({ from: y(from), to: y(to), at: chain, edges: [edge, edge] }),
    label([chain - 2, place + 0.36 * letters.body], text, { align: 'end' }),
  ];
  const places = spread(
    [y(frame.height / 2), ...(covered ? [y(frame.height + cover.height / 2)] : [])],
    letters.body * 1.2,
    roof,
    floor,
  );
  marks.push(...standing(0, frame.height, metres(frame.height), places[0] ?? floor));
  if (covered)
    marks.push(
      ...standing(frame.height, frame.height + cover.height, metres(cover.height), places[1] ?? roof),
    );

  const widthRow = floor + (sheet ? 8.5 : 11);
  marks.push(
    ...across({
      from: x(0),
      to: x(frame.width),
      at: widthRow,
      edges: [floor + 2.6, floor + 2.6],
      text: metres(frame.width),
      within: [margin, width - margin],
    }),
  );

  const things = namedThings(situation, manner, scale, middles).toSorted((a, b) => a.at[1] - b.at[1]);
  const description = [
    `Section to scale. The bench is ${metres(frame.width)} wide and ${metres(frame.height)} high${covered ? `; the cover rises ${metres(cover.height)} over it` : ''}.`,
    ...things.map(({ text }) => `${text}.`),
  ].join(' ');
  const title = 'The bench cut across';
  if (sheet) {
    const words = width - margin - shortColumn + 9;
    const last = Math.max(widthRow, roof + things.length * shortRow);
    marks.push(...shortNames(things, words, roof, last));
    const height = Math.max(widthRow + roomUnder, last + letters.small);
    return { width, height, title, description, marks, ...(round ? { scale: round.name } : {}) };
  }
  const column = width - margin - balloonRadius;
  const rows = spread(
    things.map(({ at }) => at[1]),
    2 * balloonRadius + 0.6,
    roof,
    Math.max(widthRow, roof + things.length * 6),
  );
  const under = Math.max(widthRow + roomUnder, ...rows.map((row) => row + balloonRadius + 1));
  things.forEach(({ at }, index) => marks.push(...pointer([column, rows[index] ?? floor], at, index + 1)));

  const list = key(
    things.map(({ text }) => text),
    { left: margin, top: under + 3, width: width - 2 * margin },
  );
  const small = notes(
    [
      'To scale, but gaps and cable are drawn wide enough to be seen. How high the pipe lies is yours to choose.',
    ],
    { left: margin, top: under + 3 + list.height + 1, width: width - 2 * margin },
  );
  marks.push(...list.marks, ...small.marks);

  return {
    width,
    height: under + 3 + list.height + 1 + small.height + 1,
    title,
    description,
    marks,
  };
};
