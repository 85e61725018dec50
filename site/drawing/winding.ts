import type { Bench } from '../../calculators/bench/fields.ts';
import { loopLength, pipeInside, pipeOf } from '../../calculators/bench/geometry.ts';
import { leastPitch, wind, type Winding } from '../../calculators/electric/winding.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { showNumber, showQuantity } from '../../calculators/quantities/show.ts';
import { arrow, arrowhead, leader } from './arrow.ts';
import { breakLine } from './break-line.ts';
import { arc, clip, quarterSine, reversed, type Cubic } from './curve.ts';
import { across, measured, upright } from './dimension.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import type { BenchDrawing, DrawingInput } from './input.ts';
import { notes, widest } from './key.ts';
import { textWidth } from './measure.ts';
import { circle, label, labels, leading, letters, line, pen, rectangle } from './pen.ts';
import { roundScale } from './scale.ts';
import { pipeEnd } from './water.ts';

/** All on paper [mm]. */
const margin = 2;
/** Heights of the rows: the pitch's dimension line, and the top of the pipe. */
const pitchRow = 9;
const pipeTop = 15;
/** Between the pipe seen from the side and its end. */
const sideGap = 10;
/** From the end of the pipe to the dimension line of its diameter. */
const dimensionGap = 5;
/** Width of the strip between the two halves of a broken view. */
const strip = 5;
/** How thick the pipe is drawn at least and at most. */
const slenderest = 12;
const thickest = 42;
/** A cable is drawn no thinner than this. */
const leastCable = 0.8;
/** On the worksheet, what stands over and under the pipe. */
const sheetRows = 34;
/** However many turns that is, this much of the pipe is shown. */
const leastShown = 20;
/** More turns than this are not told apart. */
const mostTurns = 70;

/** What the drawing needs to know of the bench, in metres. */
interface Wound {
  readonly pipe: number;
  readonly inside: number;
  readonly cable: number;
  readonly length: number;
  readonly winding: Winding;
  /** From turn to turn as drawn: turns that would lie on each other are drawn side by side. */
  readonly pitch: number | null;
}

function woundOf({ bench }: Situation): Wound {
  const pipe = pipeOf(bench).outsideDiameter;
  const cable = bench.cable.diameter;
  const length = loopLength(bench);
  const winding = wind({
    pipeDiameter: pipe,
    cableDiameter: cable,
    pipeLength: length,
    cableLength: bench.cable.length,
  });
  const pitch =
    winding.outcome === 'wound'
      ? winding.pitch
      : winding.outcome === 'touching'
        ? (leastPitch(pipe, cable, 0) ?? winding.pitch)
        : null;
  return { pipe, inside: pipeInside(pipeOf(bench)), cable, length, winding, pitch };
}

/** How the pipe is shown from the side: all of it, a window on it, or two windows a turn apart. */
interface View {
  readonly kind: 'whole' | 'window' | 'broken';
  /** Paper per metre [mm/m]. */
  readonly perMetre: number;
  /** Width on paper of what is shown of the pipe; of the broken view the strip included [mm]. */
  readonly wide: number;
}

/**
 * @param room what the side view and the end view may take up together [mm]
 * @param round the scale to keep for a scale that would fit
 */
function viewOf({ pipe, cable, length, pitch }: Wound, room: number, most: number, round: Round): View {
  const end = pipe + 2 * cable;
  const fit = (shown: number): number => round(Math.min(most / end, room / (shown + end)));
  const whole = fit(length);
  if (pipe * whole >= slenderest) return { kind: 'whole', perMetre: whole, wide: length * whole };
  if (pitch !== null && pitch <= length) {
    const turns = [3.6, 2.6, 1.8, 1.35].find((number) => pipe * fit(number * pitch) >= slenderest);
    if (turns !== undefined) {
      const perMetre = fit(turns * pitch);
      const wide = Math.min(room - end * perMetre, Math.max(mostTurns * pitch * perMetre, leastShown));
      return { kind: 'window', perMetre, wide };
    }
  }
  const perMetre = slenderest / pipe;
  return {
    kind: pitch !== null && pitch <= length ? 'broken' : 'window',
    perMetre,
    wide: room - end * perMetre,
  };
}

type Round = (perMetre: number) => number;

interface Frame {
  readonly axis: number;
  /** Radius of the middle of the cable, on paper. */
  readonly radius: number;
  /** Pitch on paper. */
  readonly pitch: number;
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
function turns(frame: Frame, crest: number, left: number, right: number): { front: Mark[]; rear: Mark[] } {
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
function stretch(
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

/** The end of the pipe with the cable around it, and the arrow that says which way it goes. */
function endView(centre: Point, { pipe, inside, cable }: Wound, perMetre: number, thick: number): Mark[] {
  const outside = (pipe / 2) * perMetre;
  const marks = pipeEnd(centre, outside, (inside / 2) * perMetre);
  marks.push(
    circle(centre, outside + Math.max(thick, cable * perMetre) / 2, { stroke: 'heat', width: thick }),
  );
  const sweep = arc(centre, outside + thick + 2.2, -Math.PI / 5, -0.8 * Math.PI);
  const tip = sweep.at(-1);
  const before = sweep.at(-2);
  if (tip && before) {
    marks.push({ kind: 'curve', points: sweep, stroke: 'ink', width: pen.edge }, arrowhead(before, tip, 1.2));
  }
  return marks;
}

/** The gap's dimension: across the cable where two turns pass the middle of the pipe, if it can be seen there. */
function gapMarks(middle: Point, gap: number, { radius, pitch, thick }: Frame): Mark[] {
  // Slope of the cable where it passes the front: a sine of this radius and pitch.
  const slope = (2 * Math.PI * radius) / pitch;
  // A flatter helix bends away before the neighbouring turn is reached, so that the line would miss it.
  if (slope < 1.6 || gap < 6 || gap < thick) return [];
  const length = Math.hypot(slope, 1);
  const [x, y] = [((slope / length) * gap) / 2, ((-1 / length) * gap) / 2];
  return measured([middle[0] - x, middle[1] - y], [middle[0] + x, middle[1] + y]);
}

/** The places from one on, a step apart, both ways, that lie between two others. */
function repeated(one: number, step: number, from: number, to: number): number[] {
  const first = Math.ceil((from - step - one) / step);
  const last = Math.floor((to - one) / step);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) => one + (first + index) * step);
}

const nearest =
  (wanted: number) =>
  (a: number, b: number): number =>
    Math.abs(a - wanted) - Math.abs(b - wanted);

/** Limits of the cable's own sheet that the winding would break, by the calculator's names for them. */
const brokenLimits: Readonly<Record<string, (bench: Bench, size: (metres: number) => string) => string>> = {
  'gap-too-small': ({ cable }, size) =>
    `Not to be built: the cable’s sheet asks for a gap of at least ${size(cable.leastGap)}.`,
  'bend-too-tight': ({ cable }, size) =>
    `Not to be built: the cable’s sheet allows no bend tighter than ${size(cable.smallestBend)}.`,
};

const sentences = (
  wound: Wound,
  { situation, answers, manner }: Pick<DrawingInput, 'situation' | 'answers' | 'manner'>,
): { bold: string[]; plain: string[] } => {
  const { winding, length, cable, pipe } = wound;
  const metres = (value: number) => showQuantity(value, 'length', manner);
  const size = (value: number) => showQuantity(value, 'size', manner);
  const limits = answers.winding.warnings.flatMap(({ code }) => {
    const words = brokenLimits[code];
    return words ? [words(situation.bench, size)] : [];
  });
  switch (winding.outcome) {
    case 'too-short':
      return {
        bold: [`Not to be built: the cable is ${metres(winding.missing)} shorter than the pipe.`],
        plain: [],
      };
    case 'straight':
      return { bold: ['The cable is just as long as the pipe: it lies straight along it.'], plain: [] };
    case 'touching':
      return {
        bold: [
          `Not to be built: the turns would touch or lie on each other. ${metres(winding.tooMuch)} of cable has no room.`,
          ...limits,
        ],
        plain: [],
      };
    case 'wound':
      return {
        bold: [
          ...(winding.turns < 1 ? ['The cable is hardly longer than the pipe: not even one turn.'] : []),
          ...limits,
        ],
        plain: [
          `${showNumber(winding.turns, 'count', manner)} turns of ${size(cable)} cable on ${metres(length)} of ${size(pipe)} pipe.`,
        ],
      };
  }
};

const viewWords = {
  whole: 'The whole pipe, to scale.',
  window: 'Part of the pipe, to scale.',
  broken: 'Two parts of the pipe, one turn apart; a piece between them is left out.',
} as const satisfies Record<View['kind'], string>;

/**
 * A length of the loop pipe from the side, true to scale, with the cable wound around it: its front half solid, its
 * rear half dashed, which makes the helix a sine wave. Beside it the pipe's end.
 */
export const windingDrawing: BenchDrawing = ({ situation, answers, manner, width, sheet }): Drawing => {
  const wound = woundOf(situation);
  const { winding, pipe, cable } = wound;
  const size = (value: number) => showQuantity(value, 'size', manner);
  const helix = winding.outcome === 'wound' || winding.outcome === 'touching' ? winding : null;
  const diameterWords = ['pipe', size(pipe)];
  const lettersWide = widest(diameterWords, letters.body);
  // The cable around the end may have to be drawn thicker than it is.
  const room = width - 2 * margin - sideGap - dimensionGap - 2 - lettersWide - 2 * leastCable;
  const most = sheet ? Math.max(slenderest, Math.min(thickest, sheet.height - sheetRows)) : thickest;
  const round: Round = (free) => (sheet ? (roundScale(free, manner.system)?.perMetre ?? free) : free);
  const view = viewOf(wound, room, most, round);
  const { perMetre, wide } = view;
  const thickWanted = Math.max(leastCable, cable * perMetre);
  // Seen apart, turns leave some paper between them.
  const paperPitch = (wound.pitch ?? 0) * perMetre;
  const thick =
    helix && helix.gap > 0 ? Math.min(thickWanted, Math.max(0.25, 0.62 * paperPitch)) : thickWanted;
  const cableRoom = Math.max(thick, cable * perMetre);
  const halfPipe = (pipe / 2) * perMetre;
  const top = pipeTop + cableRoom;
  const axis = top + halfPipe;
  const bottom = axis + halfPipe;
  const frame: Frame = { axis, radius: halfPipe + cableRoom / 2, pitch: paperPitch, thick };
  const spare = Math.max(0, (room - wide - 2 * (halfPipe + cableRoom)) / 2);
  const left = margin + spare;
  const right = left + wide;
  const middle = (left + right) / 2;
  const marks: Mark[] = [];
  const within = [margin, width - margin] as const;

  const apart = winding.outcome === 'wound' ? winding : null;
  const pitchWords = apart ? `pitch ${size(apart.pitch)}` : '';
  const gapWords = apart && apart.turns > 1 ? `clear gap ${size(apart.gap)}` : '';
  const cableWords = `cable ${size(cable)}`;
  const cableWide = textWidth(cableWords, letters.body);
  const gapWide = textWidth(gapWords, letters.body);
  // A place on the cable, and the middle of a gap, for the leaders; both on paper.
  let onCable: Point = [middle, axis];
  let inGap: Point | undefined;

  if (apart && view.kind === 'broken') {
    const half = (wide - strip) / 2;
    const windows = [
      [left, left + half],
      [right - half, right],
    ] as const;
    for (const [from, to] of windows) {
      const shown = turns(frame, (from + to) / 2 - frame.pitch / 4, from, to);
      marks.push(...stretch([from, to], [top, bottom], [...shown.rear, ...shown.front], true));
    }
    const [first, second] = windows.map(([from, to]) => (from + to) / 2) as [number, number];
    onCable = [first, axis];
    marks.push(
      ...across({ from: first, to: second, at: pitchRow, edges: [axis, axis], text: pitchWords, within }),
    );
  } else if (wound.pitch !== null) {
    const whole = view.kind === 'whole';
    // The window is centred between two crests; on the whole pipe the first crest is its start.
    const fromStart = Math.max(0, Math.floor((wide / 2 - frame.pitch / 2) / frame.pitch));
    const crest = whole ? left + fromStart * frame.pitch : middle - frame.pitch / 2;
    const shown = turns(frame, crest, left, right);
    marks.push(...stretch([left, right], [top, bottom], [...shown.rear, ...shown.front], !whole));
    const isShown = (x: number): boolean => x >= left && x <= right + 0.01;
    if (apart && isShown(crest + frame.pitch)) {
      const edge = axis - frame.radius - thick / 2;
      const ends = { from: crest, to: crest + frame.pitch };
      marks.push(...across({ ...ends, at: pitchRow, edges: [edge, edge], text: pitchWords, within }));
    }
    // Of the gaps that show, the one nearest to where its name stands clear of the cable's.
    const free = margin + cableWide + 4 + gapWide / 2;
    const gaps = repeated(crest, frame.pitch, left, right).filter(
      (x) => isShown(x + 0.25 * frame.pitch) && isShown(x + 1.25 * frame.pitch),
    );
    const best = gaps.map((x) => x + 0.75 * frame.pitch).sort(nearest(Math.max(free, middle)))[0];
    if (apart && gapWords && best !== undefined) {
      inGap = [best, axis];
      marks.push(...gapMarks(inGap, apart.gap * perMetre, frame));
    }
    const dips = repeated(crest, frame.pitch, left, right).map((x) => x + frame.pitch / 2);
    const dip = dips
      .filter((x) => x > left + thick && x < right - thick && x < (inGap?.[0] ?? right))
      .sort(nearest(left + 4))[0];
    onCable =
      dip === undefined ? [Math.min(right, crest + frame.pitch / 4), axis] : [dip, axis + frame.radius];
  } else {
    // No helix: the cable lies along the pipe, and ends before it where it is too short.
    const end = winding.outcome === 'too-short' ? left + 0.6 * wide : right;
    const cableLine = line(
      [
        [left, axis],
        [end, axis],
      ],
      { stroke: 'heat', width: thick },
    );
    marks.push(...stretch([left, right], [top, bottom], [cableLine], view.kind !== 'whole'));
    onCable = [left + 0.3 * wide, axis];
  }

  const centre: Point = [right + sideGap + halfPipe + cableRoom, axis];
  marks.push(...endView(centre, wound, perMetre, thick));
  const dimensionAt = centre[0] + halfPipe + cableRoom + dimensionGap;
  marks.push(
    ...upright({ from: top, to: bottom, at: dimensionAt, edges: [centre[0], centre[0]] }),
    ...labels([dimensionAt + 2, axis - 0.36 * leading * letters.body + 0.5], diameterWords, {}),
  );

  // The row of names under the pipe: the cable's on the left, the gap's right of it, each under its place.
  const nameRow = bottom + cableRoom + 9;
  const clamp = (value: number, from: number, to: number) => Math.max(from, Math.min(value, to));
  const named = (words: string, wide: number, at: number, place: Point): Mark[] => {
    const start = clamp(place[0], at + 1.5, at + wide - 1.5);
    return [label([at, nameRow], words), ...leader([[start, nameRow - 3.4], place])];
  };
  const gapAt = clamp((inGap?.[0] ?? middle) - gapWide / 2, margin + cableWide + 4, width - margin - gapWide);
  const cableAt = clamp(onCable[0] - cableWide / 2, margin, gapAt - 4 - cableWide);
  marks.push(...named(cableWords, cableWide, cableAt, onCable));
  if (inGap) marks.push(...named(gapWords, gapWide, gapAt, inGap));
  else if (gapWords) marks.push(label([gapAt, nameRow], gapWords));

  let wayRow = nameRow;
  if (helix) {
    wayRow += 7;
    const way: readonly Point[] = [
      [margin, wayRow - 1.2],
      [margin + 12, wayRow - 1.2],
    ];
    marks.push(...arrow(way, 1.2), label([margin + 14.5, wayRow], 'all turns the same way'));
  }
  const { bold, plain } = sentences(wound, { situation, answers, manner });
  const boldSize = letters.small;
  let below = wayRow + 2.5;
  for (const sentence of bold) {
    const block = notes([sentence], { left: margin, top: below, width: (width - 2 * margin) / 1.06 });
    marks.push(
      ...block.marks.map((mark) => (mark.kind === 'text' ? { ...mark, bold: true, size: boldSize } : mark)),
    );
    below += block.height;
  }
  const small = notes(sheet ? [] : [...plain, viewWords[view.kind]], {
    left: margin,
    top: below,
    width: width - 2 * margin,
  });
  marks.push(...small.marks);

  const even = roundScale(perMetre, manner.system);
  const scale = even && Math.abs(even.perMetre - perMetre) < 1e-9 ? even.name : undefined;
  const spoken = apart ? ` ${[pitchWords, gapWords].filter(Boolean).join(', ')}.` : '';
  return {
    width,
    height: below + small.height + 1,
    title: 'The cable on the pipe',
    ...(scale ? { scale } : {}),
    description:
      `Side view of the loop pipe, ${size(pipe)} outside, with a ${size(cable)} cable.${spoken} ` +
      [
        ...bold,
        ...plain,
        'All turns run the same way round and none touches another.',
        viewWords[view.kind],
      ].join(' '),
    marks,
  };
};
