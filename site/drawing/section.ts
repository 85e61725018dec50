import { say } from '../../calculators/say.ts';
import { loopPath, pipeOf } from '../../calculators/bench/geometry.ts';
import type { Bench } from '../../calculators/bench/fields.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { leader } from './arrow.ts';
import { across, roomUnder, upright } from './dimension.ts';
import type { Mark } from './drawing.ts';
import { ground } from './hatch.ts';
import type { BenchDrawing, DrawingInput } from './input.ts';
import { balloonRadius, key, notes, pointer, widest } from './key.ts';
import { label, letters } from './pen.ts';
import { roundScale } from './scale.ts';
import { namesOf, type Named } from './section-names.ts';
import { benchAcross, plantHeight, sensorPlace, type Scale } from './section-parts.ts';
import { sensorSign } from './signs.ts';
import { spread } from './spread.ts';

/** All on paper [mm]. */
const margin = 2;
/** The highest point of what is drawn. */
const roof = margin + 3;
/** Highest that the section itself may be. */
const tallest = 92;
/** From the bench to the dimension line of its height, and what its text and arrows need beside the text. */
const chainGap = 5;
const chainRoom = 9;
/** On the worksheet: the least height of the section, what stands over and under it, and the column of short words. */
const lowest = 40;
const sheetRows = 18;
const shortColumn = 30;
/** From one short word to the next one under it. */
const shortRow = letters.small * 1.25;

/** How far the column of short words may reach under the dimension of the width. */
const columnBelow = 6;

/** Where everything lies on paper. */
interface Layout {
  readonly bench: Bench;
  readonly width: number;
  readonly scale: Scale;
  /** The name of the scale on the worksheet, "1:25". */
  readonly scaleName: string | undefined;
  readonly floor: number;
  /** Left of the bench and of whatever stands out over its edge. */
  readonly leftEdge: number;
  /** Where the ground ends on the right. */
  readonly groundEnd: number;
  /** The dimension line of the width. */
  readonly widthRow: number;
  /** Middles of the pipes across the bench [m]. */
  readonly middles: readonly number[];
  readonly metres: (value: number) => string;
}

/** Where everything lies; `lowered` moves the section down on the sheet [mm]. */
function layoutOf({ situation: { bench }, manner, width, sheet }: DrawingInput, lowered = 0): Layout {
  const { frame, cover, pots } = bench;
  const metres = (value: number) => showQuantity(value, 'length', manner);
  const over = cover.kind === 'none' ? 0 : cover.height;
  const high = frame.height + Math.max(pots.height + plantHeight(bench), over);
  const middles = [...new Set(loopPath(bench).map(([, across]) => across))];
  // Pots and pipes may stand out over the edge of a narrow bench.
  const beyond = Math.max(
    0,
    pots.diameter / 2 - frame.width / 2,
    pipeOf(bench).outsideDiameter / 2 - Math.min(...middles),
  );
  const leftColumn = widest([metres(frame.height), metres(over)], letters.body) + chainRoom;
  const rightColumn = sheet ? shortColumn : 2 * balloonRadius + 12;
  const room = width - 2 * margin - leftColumn - rightColumn;
  const most = sheet ? Math.max(lowest, Math.min(tallest, sheet.height - sheetRows)) : tallest;
  const across = frame.width + 2 * beyond;
  const free = Math.min(room / across, most / high);
  const round = sheet ? roundScale(free, manner.system, sheet.enlarged) : undefined;
  const perMetre = round?.perMetre ?? free;
  const leftEdge = margin + leftColumn + (room - perMetre * across) / 2;
  const left = leftEdge + beyond * perMetre;
  const floor = roof + lowered + high * perMetre;
  return {
    bench,
    width,
    scale: { perMetre, x: (m) => left + m * perMetre, y: (m) => floor - m * perMetre },
    scaleName: round?.name,
    floor,
    leftEdge,
    groundEnd: width - margin - rightColumn + 6,
    widthRow: floor + (sheet ? 8.5 : 11),
    middles,
    metres,
  };
}

/** The bench itself, from behind to before. */
function benchMarks({ situation }: DrawingInput, layout: Layout): Mark[] {
  const { bench, scale, floor, leftEdge, groundEnd, middles } = layout;
  return [
    ...ground(leftEdge - 3, groundEnd, floor),
    ...benchAcross({ situation, scale, middles }),
    sensorSign(sensorPlace(bench, scale, middles)),
  ];
}

/** The heights on the left, one over the other, and the width under the bench. */
function dimensionMarks({ bench, width, scale, floor, leftEdge, widthRow, metres }: Layout): Mark[] {
  const { frame, cover } = bench;
  const { x, y } = scale;
  const top = frame.height + cover.height;
  const heights: readonly (readonly [from: number, to: number])[] =
    cover.kind === 'none'
      ? [[0, frame.height]]
      : [
          [0, frame.height],
          [frame.height, top],
        ];
  const wanted = heights.map(([from, to]) => y((from + to) / 2));
  const places = spread(wanted, letters.body * 1.2, roof, floor);
  const chain = leftEdge - chainGap;
  const standing = heights.flatMap(([from, to], index) => [
    ...upright({ from: y(from), to: y(to), at: chain, edges: [leftEdge - 2, leftEdge - 2] }),
    label([chain - 2, (places[index] ?? floor) + 0.36 * letters.body], metres(to - from), { align: 'end' }),
  ]);
  const level = across({
    from: x(0),
    to: x(frame.width),
    at: widthRow,
    edges: [floor + 2.6, floor + 2.6],
    text: metres(frame.width),
    within: [margin, width - margin],
  });
  return [...standing, ...level];
}

interface Block {
  readonly marks: readonly Mark[];
  /** Where it ends. */
  readonly bottom: number;
}

/** On the worksheet, things are named by short words in a column, each with a thin line to its place. */
function shortNames(things: readonly Named[], { width, widthRow }: Layout): Block {
  const size = letters.small;
  const left = width - margin - shortColumn + 9;
  const last = Math.max(widthRow, roof + things.length * shortRow);
  const wanted = things.map(({ at }) => at[1]);
  const rows = spread(wanted, shortRow, roof, last);
  const marks = things.flatMap(({ at, short }, index) => {
    const row = rows[index] ?? roof;
    return [...leader([[left - 1, row], at]), label([left, row + 0.36 * size], short, { size })];
  });
  return { marks, bottom: Math.max(widthRow + roomUnder, last + size) };
}

/** In the guide, things are numbered in a column, and a key under the drawing names them. */
function numberedNames(things: readonly Named[], { width, widthRow }: Layout, manner: Manner): Block {
  const column = width - margin - balloonRadius;
  const last = Math.max(widthRow, roof + things.length * 6);
  const wanted = things.map(({ at }) => at[1]);
  const rows = spread(wanted, 2 * balloonRadius + 0.6, roof, last);
  const balloons = things.flatMap(({ at }, index) => pointer([column, rows[index] ?? roof], at, index + 1));
  const under = Math.max(widthRow + roomUnder, ...rows.map((row) => row + balloonRadius + 1));
  const place = { left: margin, width: width - 2 * margin };
  const texts = things.map(({ text }) => text);
  const list = key(texts, { ...place, top: under + 3 });
  const noteTop = under + 3 + list.height + 1;
  const said = say(
    manner,
    'To scale, but gaps and cable are drawn wide enough to be seen. How high the pipe lies is yours to choose.',
  );
  const small = notes([said], { ...place, top: noteTop });
  return { marks: [...balloons, ...list.marks, ...small.marks], bottom: noteTop + small.height + 1 };
}

/** The bench cut across, to scale: floor, loop, top with pots, skirt and cover, with its gaps called out. */
export const sectionDrawing: BenchDrawing = (input) => {
  const { situation, manner, width, sheet } = input;
  const named = (one: Layout) => namesOf({ situation, manner, scale: one.scale, middles: one.middles });
  let layout = layoutOf(input);
  // Beside a very small section the column of names would reach far under it, its lines through the width below.
  const lacking = sheet ? roof + named(layout).length * shortRow - layout.widthRow - columnBelow : 0;
  if (lacking > 0) layout = layoutOf(input, lacking);
  const { bench, scaleName, metres } = layout;
  const { frame, cover } = bench;
  const things = named(layout);
  const names = sheet ? shortNames(things, layout) : numberedNames(things, layout, manner);
  const size = { wide: metres(frame.width), high: metres(frame.height), rise: metres(cover.height) };
  return {
    width,
    height: names.bottom,
    title: say(manner, 'The bench cut across'),
    ...(scaleName === undefined ? {} : { scale: scaleName }),
    description: [
      cover.kind === 'none'
        ? say(manner, 'Section to scale. The bench is {wide} wide and {high} high.', size)
        : say(
            manner,
            'Section to scale. The bench is {wide} wide and {high} high; the cover rises {rise} over it.',
            size,
          ),
      ...things.map(({ text }) => `${text}.`),
    ].join(' '),
    marks: [...benchMarks(input, layout), ...dimensionMarks(layout), ...names.marks],
  };
};
