import type { Bench } from '../../calculators/bench/fields.ts';
import { loopLength, loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { messages, say } from '../../calculators/say.ts';
import { across, roomUnder, upright } from './dimension.ts';
import type { Mark, Point } from './drawing.ts';
import type { BenchDrawing, DrawingInput } from './input.ts';
import { balloonRadius, key, notes, pointer } from './key.ts';
import { textWidth } from './measure.ts';
import { label, letters, line, pen, rectangle } from './pen.ts';
import { drawnPipe, loopMarks, turnsOf, type TurnMarks } from './plan-loop.ts';
import { isBroken, leastWide, mostWide, on, sheetOf, type Fitting, type Sheet } from './plan-sheet.ts';
import { roundScale } from './scale.ts';
import { sensorSign, standpipeSign, supplySign } from './signs.ts';
import { spread } from './spread.ts';

/** All on paper [mm]. */
const margin = 2;
/** Left of the bench, for the supply. */
const supplyColumn = 13;
/** On the worksheet, what stands over and under the bench. */
const sheetRows = 22;
/** Height of the first row of balloons. */
const balloonRow = margin + balloonRadius;

const runWords = messages({
  u: 'a U along the outer edge',
  ring: 'a closed ring along the outer edge',
  straight: 'one straight run',
} satisfies Record<Bench['loop']['run'], string>);

const expansionWords = messages({
  standpipe: 'Open stand-pipe, at the highest point of the loop',
  headspace: 'Vent, at the highest point of the loop',
} satisfies Record<Bench['loop']['expansion'], string>);

const sensorWords = messages({
  loop: 'Sensor on the pipe, between two turns',
  air: 'Sensor in the air under the bench',
  pot: 'Sensor in a pot at the edge, where it gets coldest',
} satisfies Record<Bench['control']['sensor'], string>);

/** A place that shows, this share of the way along the near leg; of a broken bench on one of its two ends [m]. */
function alongPipe(bench: Bench, sheet: Sheet, share: number): number {
  const path = loopPath(bench);
  const [start, stop] = [path[0]?.[0] ?? 0, path[1]?.[0] ?? bench.frame.length];
  if (!isBroken(sheet)) return start + (stop - start) * share;
  const [before, behind] = sheet.cut;
  return share < 0.5 ? start + (before - start) * share * 2 : behind + (stop - behind) * (share - 0.5) * 2;
}

/** Where things are on paper. */
interface Places {
  readonly supply: Point;
  /** Where the cable and the loop start, and where they end. */
  readonly start: Point;
  readonly end: Point;
  readonly sensor: Point;
}

/** Where the sensor is [m]. */
function sensorPlace(bench: Bench, sheet: Sheet): Point {
  const { frame, pots } = bench;
  const along = alongPipe(bench, sheet, 0.8);
  switch (bench.control.sensor) {
    case 'loop':
      return [along, loopPath(bench)[0]?.[1] ?? 0];
    case 'air':
      return [along, frame.width / 2];
    case 'pot':
      return [
        Math.max(frame.length - pots.diameter, frame.length / 2),
        Math.min(pots.diameter, frame.width / 2),
      ];
  }
}

function placesOf(bench: Bench, sheet: Sheet): Places {
  const path = loopPath(bench);
  // A ring comes back to its first corner; what would be its end is the far corner on the same side.
  const last = bench.loop.run === 'ring' ? path[3] : path.at(-1);
  const start = on(sheet, path[0] ?? [0, 0]);
  return {
    supply: [sheet.left - supplyColumn + 3, start[1]],
    start,
    end: on(sheet, last ?? [0, 0]),
    sensor: on(sheet, sensorPlace(bench, sheet)),
  };
}

/** The signs on the plan: the supply with its cold lead, the stand-pipe or vent, the sensor. */
const signMarks = ({ supply, start, end, sensor }: Places, broad: number): Mark[] => [
  line([[supply[0] + 2, supply[1]], start], { width: pen.edge, dash: [1.2, 0.8] }),
  ...supplySign(supply),
  ...standpipeSign(end, Math.max(1.1, broad * 0.3)),
  sensorSign(sensor),
];

interface Named {
  readonly at: Point;
  readonly side: 'above' | 'below';
  readonly text: string;
}

function loopText(bench: Bench, manner: Manner): string {
  const { loop, frame } = bench;
  const length = showQuantity(loopLength(bench), 'length', manner);
  const inset = showQuantity(Math.min(loop.inset, frame.width / 2), 'size', manner);
  const parts = {
    pipe: say(manner, pipeOf(bench).label),
    run: say(manner, runWords[loop.run]),
    length: loop.length === null ? length : say(manner, '{length} as measured', { length }),
    inset,
  };
  return loop.run === 'straight'
    ? say(manner, 'Loop: {pipe}, {run}, {length}', parts)
    : say(manner, 'Loop: {pipe}, {run}, {length}; middle {inset} from the edge', parts);
}

/** Everything on the plan that has a name: first what is named over the bench, from left to right, then the rest. */
function namesOf(bench: Bench, manner: Manner, sheet: Sheet, places: Places, turns: TurnMarks): Named[] {
  const path = loopPath(bench);
  const near = path[0]?.[1] ?? 0;
  const far = bench.loop.run === 'straight' ? near : (path[2]?.[1] ?? near);
  const place = (share: number, over: number): Point => on(sheet, [alongPipe(bench, sheet, share), over]);
  const names: Named[] = [
    { at: places.end, side: 'above', text: say(manner, expansionWords[bench.loop.expansion]) },
    { at: place(0.9, far), side: 'above', text: loopText(bench, manner) },
    {
      at: places.supply,
      side: 'below',
      text: say(manner, 'Supply, with the cold lead (dashed) to where the cable starts'),
    },
    { at: place(0.3, near), side: 'below', text: turns.words },
    { at: places.sensor, side: 'below', text: say(manner, sensorWords[bench.control.sensor]) },
  ];
  return names.toSorted((a, b) => a.side.localeCompare(b.side) || a.at[0] - b.at[0]);
}

/** Numbers in rings over and under the bench. */
function balloonMarks(names: readonly Named[], width: number, under: number): Mark[] {
  return (['above', 'below'] as const).flatMap((side) => {
    const here = names.filter((name) => name.side === side);
    const wanted = here.map(({ at }) => at[0]);
    const columns = spread(wanted, 2 * balloonRadius + 2, balloonRow, width - balloonRow);
    const row = side === 'above' ? balloonRow : under;
    return here.flatMap((name, index) =>
      pointer([columns[index] ?? margin, row], name.at, names.indexOf(name) + 1),
    );
  });
}

/** The length of the bench under it, its width on the right. */
function dimensionMarks(
  { left, right, top, bottom }: Sheet,
  width: number,
  row: number,
  long: string,
  wide: string,
): Mark[] {
  const chain = right + 5;
  return [
    ...across({
      from: left,
      to: right,
      at: row,
      // Short extension lines: the rows between belong to the balloons.
      edges: [row - 3.3, row - 3.3],
      text: long,
      within: [margin, width - margin],
    }),
    ...upright({ from: top, to: bottom, at: chain, edges: [right, right] }),
    label([chain + 2, (top + bottom) / 2 + 0.36 * letters.body], wide),
  ];
}

const shortExpansion = messages({
  standpipe: 'stand-pipe, at the top',
  headspace: 'vent, at the top',
} satisfies Record<Bench['loop']['expansion'], string>);

/** Width of the signs of the plan with their words, under one another [mm]. */
const signColumn = 58;

/** What the signs of the plan stand for, in rows: the worksheet has no room for a numbered key. */
function signRows(
  bench: Bench,
  manner: Manner,
  left: number,
  top: number,
  width: number,
): { readonly marks: readonly Mark[]; readonly height: number } {
  const size = letters.small;
  const rowHeight = 5.6;
  const [signRoom, gap] = [4.4, 6];
  const signs: readonly (readonly [draw: (at: Point) => Mark[], words: string])[] = [
    [supplySign, say(manner, 'supply, cold lead dashed')],
    [(at) => standpipeSign(at, 1.2), say(manner, shortExpansion[bench.loop.expansion])],
    [([x, y]) => [sensorSign([x, y + 1.4])], say(manner, 'sensor')],
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

/** How the bench is fitted on a page of the guide, and how on the worksheet. */
const fittingOf = ({ manner, sheet }: DrawingInput): Fitting =>
  sheet
    ? {
        most: Math.max(leastWide, Math.min(mostWide, sheet.height - sheetRows)),
        round: (free) => roundScale(free, manner.system, sheet.enlarged)?.perMetre ?? free,
        aside: signColumn,
      }
    : { most: mostWide, round: (free) => free, aside: Number.POSITIVE_INFINITY };

interface Block {
  readonly marks: readonly Mark[];
  /** Where it ends. */
  readonly bottom: number;
}

/** On the worksheet: what the signs stand for, beside the bench where there is room, else under it. */
function sheetBlock(bench: Bench, manner: Manner, width: number, rightEdge: number, under: number): Block {
  if (width - margin - rightEdge < signColumn) {
    const { marks, height } = signRows(bench, manner, margin, under, width - 2 * margin);
    return { marks, bottom: under + height };
  }
  const { marks, height } = signRows(
    bench,
    manner,
    width - margin - signColumn + 3,
    margin + 1,
    signColumn - 3,
  );
  return { marks, bottom: Math.max(under, margin + 1 + height) };
}

/** In the guide: the key to the numbers, and how true the drawing is. */
function keyBlock(names: readonly Named[], said: string, width: number, under: number): Block {
  const place = { left: margin, width: width - 2 * margin };
  const list = key(
    names.map(({ text }) => text),
    { ...place, top: under + 2 },
  );
  const noteTop = under + 2 + list.height + 1;
  const small = notes([said], { ...place, top: noteTop });
  return { marks: [...list.marks, ...small.marks], bottom: noteTop + small.height + 1 };
}

/** The bench from above, to scale: the loop under its edge, the turns of the cable, supply, stand-pipe and sensor. */
export const planDrawing: BenchDrawing = (input) => {
  const { situation, manner, width, sheet: worksheet } = input;
  const { bench } = situation;
  const [long, wide] = [bench.frame.length, bench.frame.width].map((value) =>
    showQuantity(value, 'length', manner),
  ) as [string, string];
  const rightColumn = textWidth(wide, letters.body) + 9;
  const roof = worksheet ? margin + 2.5 : balloonRow + balloonRadius + 7;
  const sheet = sheetOf(bench, margin + supplyColumn, width - margin - rightColumn, roof, fittingOf(input));
  const { perMetre, left, right, top, bottom } = sheet;
  const broad = drawnPipe(bench, perMetre);
  const turns = turnsOf(bench, perMetre, manner);
  const places = placesOf(bench, sheet);
  const names = namesOf(bench, manner, sheet, places, turns);
  const balloonsUnder = bottom + 7 + balloonRadius;
  const lengthRow = worksheet ? bottom + 8.5 : balloonsUnder + balloonRadius + 8;
  const said = [
    say(
      manner,
      isBroken(sheet)
        ? 'To scale; a piece of the bench, with its turns, is left out in the middle.'
        : 'To scale.',
    ),
    ...(broad > pipeOf(bench).outsideDiameter * perMetre + 0.01
      ? [say(manner, 'The pipe is drawn wider than it is.')]
      : []),
  ].join(' ');
  const under = lengthRow + roomUnder;
  const block = worksheet
    ? sheetBlock(bench, manner, width, right + rightColumn, under)
    : keyBlock(names, said, width, under);
  const scale = worksheet ? roundScale(perMetre, manner.system, worksheet.enlarged)?.name : undefined;
  return {
    width,
    height: block.bottom,
    title: say(manner, 'The bench from above'),
    ...(scale ? { scale } : {}),
    description: [
      say(manner, 'Plan of the bench, {long} long and {wide} wide.', { long, wide }),
      ...names.map(({ text }) => `${text}.`),
      said,
    ].join(' '),
    marks: [
      rectangle({ left, top, right, bottom }, { stroke: 'ink', width: pen.outline }),
      ...loopMarks(bench, sheet, turns),
      ...signMarks(places, broad),
      ...(worksheet ? [] : balloonMarks(names, width, balloonsUnder)),
      ...dimensionMarks(sheet, width, lengthRow, long, wide),
      ...block.marks,
    ],
  };
};
