import { say } from '../../calculators/say.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { arrow, arrowhead, leader } from './arrow.ts';
import { arc } from './curve.ts';
import { across, upright } from './dimension.ts';
import type { Mark, Point } from './drawing.ts';
import { gapMarks, repeated, stretch, turns, type Frame } from './helix.ts';
import type { BenchDrawing, DrawingInput } from './input.ts';
import { notes, widest } from './key.ts';
import { textWidth } from './measure.ts';
import { circle, label, labels, leading, letters, line, pen } from './pen.ts';
import { roundScale } from './scale.ts';
import { pipeEnd } from './water.ts';
import { viewWords, windingWords } from './winding-words.ts';
import { thickest, viewOf, woundOf, type View, type Wound } from './wound.ts';

/** All on paper [mm]. */
const margin = 2;
/** Heights of the rows: the pitch's dimension line, and the top of the pipe. */
const pitchRow = 9;
const pipeTop = 15;
/** Between the pipe seen from the side and its end. */
const sideGap = 10;
/** From the end of the pipe to the dimension line of its diameter. */
const dimensionGap = 5;
/** From the pipe to the names under it, and from these to the arrow under them. */
const nameDrop = 9;
const wayDrop = 7;
/** Between two names in one row. */
const nameGap = 4;
/** Width of the strip between the two halves of a broken view. */
const strip = 5;
/** A cable is drawn no thinner than this. */
const leastCable = 0.8;
/** On the worksheet, what stands over and under the pipe. */
const sheetRows = 34;
/** On the worksheet, the pipe and the cable around it may be drawn this thick, so that a round scale is found. */
const leastOnSheet = 16;

/** A name in the row under the pipe; of no width where there is nothing to name. */
interface Name {
  readonly text: string;
  readonly wide: number;
}

const nameOf = (text: string): Name => ({ text, wide: textWidth(text, letters.body) });

/** Where everything lies on paper, and what it is called. */
interface Layout {
  readonly width: number;
  readonly wound: Wound;
  readonly view: View;
  readonly frame: Frame;
  /** The pipe from the side: its edges and what shows of it. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** How far the cable stands out from the pipe. */
  readonly cableRoom: number;
  readonly pitchText: string;
  readonly cable: Name;
  readonly gap: Name;
  readonly diameter: readonly string[];
}

function layoutOf({ situation, manner, width, sheet }: DrawingInput): Layout {
  const wound = woundOf(situation);
  const { winding, pipe, cable } = wound;
  const size = (value: number) => showQuantity(value, 'size', manner);
  const diameter = [say(manner, 'pipe'), size(pipe)];
  // The cable around the end may have to be drawn thicker than it is.
  const endColumn = sideGap + dimensionGap + 2 + widest(diameter, letters.body) + 2 * leastCable;
  const room = width - 2 * margin - endColumn;
  const most = sheet ? Math.max(leastOnSheet, Math.min(thickest, sheet.height - sheetRows)) : thickest;
  const round = (free: number): number =>
    sheet ? (roundScale(free, manner.system, sheet.enlarged)?.perMetre ?? free) : free;
  const view = viewOf(wound, room, most, round);
  const { perMetre, wide } = view;
  const pitch = (wound.pitch ?? 0) * perMetre;
  const drawnThick = Math.max(leastCable, cable * perMetre);
  // Turns that are apart leave some paper between them, however small they are drawn.
  const thick = winding.outcome === 'wound' ? Math.min(drawnThick, Math.max(0.25, 0.62 * pitch)) : drawnThick;
  const cableRoom = Math.max(thick, cable * perMetre);
  const half = (pipe / 2) * perMetre;
  const top = pipeTop + cableRoom;
  const axis = top + half;
  const left = margin + Math.max(0, (room - wide - 2 * (half + cableRoom)) / 2);
  const apart = winding.outcome === 'wound' ? winding : null;
  return {
    width,
    wound,
    view,
    frame: { axis, radius: half + cableRoom / 2, pitch, thick },
    left,
    right: left + wide,
    top,
    bottom: axis + half,
    cableRoom,
    pitchText: apart ? say(manner, 'pitch {size}', { size: size(apart.pitch) }) : '',
    cable: nameOf(say(manner, 'cable {size}', { size: size(cable) })),
    gap: nameOf(apart && apart.turns > 1 ? say(manner, 'clear gap {size}', { size: size(apart.gap) }) : ''),
    diameter,
  };
}

/** The pipe from the side, with the places on the cable and in a gap that names point to. */
interface Side {
  readonly marks: readonly Mark[];
  readonly onCable: Point;
  readonly inGap?: Point;
}

/** The pitch's dimension between two places. */
const pitchMarks = ({ width, pitchText }: Layout, from: number, to: number, edge: number): Mark[] =>
  across({
    from,
    to,
    at: pitchRow,
    edges: [edge, edge],
    text: pitchText,
    within: [margin, width - margin],
  });

/** Two pieces of the pipe, a turn apart: the pitch is too long to be drawn. */
function brokenSide(layout: Layout): Side {
  const { left, right, top, bottom, frame } = layout;
  const half = (right - left - strip) / 2;
  const pieces = [
    [left, left + half],
    [right - half, right],
  ] as const;
  const marks = pieces.flatMap(([from, to]) => {
    const shown = turns(frame, (from + to) / 2 - frame.pitch / 4, from, to);
    return stretch([from, to], [top, bottom], [...shown.rear, ...shown.front], true);
  });
  const [first, second] = [left + half / 2, right - half / 2];
  return {
    marks: [...marks, ...pitchMarks(layout, first, second, frame.axis)],
    onCable: [first, frame.axis],
  };
}

const nearest =
  (wanted: number) =>
  (a: number, b: number): number =>
    Math.abs(a - wanted) - Math.abs(b - wanted);

/** The pipe with its turns, whole or as much of it as can be shown. */
function woundSide(layout: Layout): Side {
  const { left, right, top, bottom, frame, view, wound, cable, gap } = layout;
  const { axis, radius, pitch, thick } = frame;
  const whole = view.kind === 'whole';
  const middle = (left + right) / 2;
  // The window is centred between two crests; on the whole pipe the first crest is its start.
  const fromStart = Math.max(0, Math.floor(((right - left) / 2 - pitch / 2) / pitch));
  const crest = whole ? left + fromStart * pitch : middle - pitch / 2;
  const shown = turns(frame, crest, left, right);
  const marks = stretch([left, right], [top, bottom], [...shown.rear, ...shown.front], !whole);
  const shows = (x: number): boolean => x >= left && x <= right + 0.01;
  const apart = wound.winding.outcome === 'wound' ? wound.winding : null;
  if (apart && shows(crest + pitch))
    marks.push(...pitchMarks(layout, crest, crest + pitch, axis - radius - thick / 2));
  const crests = repeated(crest, pitch, left, right);
  // Of the gaps whose two turns show, the one nearest to where its name stands clear of the cable's.
  const free = margin + cable.wide + nameGap + gap.wide / 2;
  const best = crests
    .filter((x) => shows(x + 0.25 * pitch) && shows(x + 1.25 * pitch))
    .map((x) => x + 0.75 * pitch)
    .sort(nearest(Math.max(free, middle)))[0];
  const inGap: Point | null = apart && gap.text && best !== undefined ? [best, axis] : null;
  if (apart && inGap) marks.push(...gapMarks(inGap, apart.gap * view.perMetre, frame));
  const dip = crests
    .map((x) => x + pitch / 2)
    .filter((x) => x > left + thick && x < right - thick && x < (inGap?.[0] ?? right))
    .sort(nearest(left + 4))[0];
  const onCable: Point =
    dip === undefined ? [Math.min(right, crest + pitch / 4), axis] : [dip, axis + radius];
  return { marks, onCable, ...(inGap ? { inGap } : {}) };
}

/** No turns: the cable lies along the pipe, and ends before it where it is too short. */
function straightSide({ left, right, top, bottom, frame, view, wound }: Layout): Side {
  const { axis, thick } = frame;
  const end = wound.winding.outcome === 'too-short' ? left + 0.6 * (right - left) : right;
  const cable = line(
    [
      [left, axis],
      [end, axis],
    ],
    { stroke: 'heat', width: thick },
  );
  return {
    marks: stretch([left, right], [top, bottom], [cable], view.kind !== 'whole'),
    onCable: [left + 0.3 * (right - left), axis],
  };
}

function sideOf(layout: Layout): Side {
  if (layout.wound.pitch === null) return straightSide(layout);
  const isBroken = layout.view.kind === 'broken' && layout.wound.winding.outcome === 'wound';
  return isBroken ? brokenSide(layout) : woundSide(layout);
}

/** The end of the pipe with the cable around it, its diameter, and the arrow that says which way the cable goes. */
function endMarks({ right, top, bottom, cableRoom, frame, view, wound, diameter }: Layout): Mark[] {
  const outside = (bottom - top) / 2;
  const centre: Point = [right + sideGap + outside + cableRoom, frame.axis];
  const sweep = arc(centre, outside + frame.thick + 2.2, -Math.PI / 5, -0.8 * Math.PI);
  const [before = centre, tip = centre] = sweep.slice(-2);
  const at = centre[0] + outside + cableRoom + dimensionGap;
  return [
    ...pipeEnd(centre, outside, (wound.inside / 2) * view.perMetre),
    circle(centre, outside + cableRoom / 2, { stroke: 'heat', width: frame.thick }),
    { kind: 'curve', points: sweep, stroke: 'ink', width: pen.edge },
    arrowhead(before, tip, 1.2),
    ...upright({ from: top, to: bottom, at, edges: [centre[0], centre[0]] }),
    ...labels([at + 2, frame.axis - 0.36 * leading * letters.body + 0.5], diameter),
  ];
}

const clamp = (value: number, from: number, to: number): number => Math.max(from, Math.min(value, to));

/** The row of names under the pipe: the cable's on the left, the gap's right of it, each under its place. */
function nameMarks(
  { width, left, right, cable, gap }: Layout,
  { onCable, inGap }: Side,
  row: number,
): Mark[] {
  const named = ({ text, wide }: Name, at: number, place: Point): Mark[] => {
    const start = clamp(place[0], at + 1.5, at + wide - 1.5);
    return [label([at, row], text), ...leader([[start, row - 3.4], place])];
  };
  const wanted = (inGap?.[0] ?? (left + right) / 2) - gap.wide / 2;
  const gapAt = clamp(wanted, margin + cable.wide + nameGap, width - margin - gap.wide);
  const cableAt = clamp(onCable[0] - cable.wide / 2, margin, gapAt - nameGap - cable.wide);
  const marks = named(cable, cableAt, onCable);
  if (inGap) return [...marks, ...named(gap, gapAt, inGap)];
  return gap.text ? [...marks, label([gapAt, row], gap.text)] : marks;
}

/** The arrow under the names, along the pipe. */
const wayMarks = (row: number, manner: Manner): Mark[] => [
  ...arrow(
    [
      [margin, row - 1.2],
      [margin + 12, row - 1.2],
    ],
    1.2,
  ),
  label([margin + 14.5, row], say(manner, 'all turns the same way')),
];

/**
 * A length of the loop pipe from the side, true to scale, with the cable wound around it: its front half solid, its
 * rear half dashed, which makes the helix a sine wave. Beside it the pipe's end.
 */
export const windingDrawing: BenchDrawing = (input) => {
  const { manner, width, sheet } = input;
  const layout = layoutOf(input);
  const { wound, view, bottom, cableRoom, pitchText, cable, gap, diameter } = layout;
  const side = sideOf(layout);
  const nameRow = bottom + cableRoom + nameDrop;
  const isWound = wound.pitch !== null;
  const lastRow = isWound ? nameRow + wayDrop : nameRow;
  const { bold, plain } = windingWords(wound, input);
  const seen = say(manner, viewWords[view.kind]);
  const room = { left: margin, width: width - 2 * margin };
  const strong = notes(bold, { ...room, top: lastRow + 2.5, bold: true });
  const small = notes(sheet ? [] : [...plain, seen], { ...room, top: lastRow + 2.5 + strong.height });
  const even = roundScale(view.perMetre, manner.system, sheet?.enlarged);
  const isEven = even !== undefined && Math.abs(even.perMetre - view.perMetre) < 1e-9;
  return {
    width,
    height: lastRow + 2.5 + strong.height + small.height + 1,
    title: say(manner, 'The cable on the pipe'),
    ...(isEven ? { scale: even.name } : {}),
    description: [
      say(manner, 'Side view of the loop pipe, {diameter} outside, with its {cable}.', {
        diameter: diameter[1] ?? '',
        cable: cable.text,
      }),
      ...[pitchText, gap.text].filter(Boolean).map((text) => `${text}.`),
      ...bold,
      ...plain,
      ...(pitchText ? [say(manner, 'All turns run the same way round and none touches another.')] : []),
      seen,
    ].join(' '),
    marks: [
      ...side.marks,
      ...endMarks(layout),
      ...nameMarks(layout, side, nameRow),
      ...(isWound ? wayMarks(lastRow, manner) : []),
      ...strong.marks,
      ...small.marks,
    ],
  };
};
