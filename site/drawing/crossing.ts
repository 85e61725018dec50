import { quarterSine, reversed } from './curve.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { breakLine } from './break-line.ts';
import { wrap } from './measure.ts';
import { circle, labels, leading, letters, line, pen, rectangle } from './pen.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';

/** All on paper [mm]. A sketch: it shows what may be and what may not, not the reader's own pipe. */
const margin = 2;
const pipeWide = 14;
const thick = 1.5;
const mostPitch = 9;
const signRadius = 3;
const columnGap = 8;
/** Narrower sheets have the sketches one under the other. */
const leastForThree = 120;

/** The front half of a turn: over the pipe from one edge to the other. */
const front = (crest: number, foot: number, axis: number): Mark => {
  const middle = (crest + foot) / 2;
  const radius = pipeWide / 2 + thick / 2;
  const first = reversed(quarterSine([middle, axis], [crest, axis - radius]));
  const second = quarterSine([middle, axis], [foot, axis + radius]);
  const points = [...first, ...second.slice(1)];
  return { kind: 'curve', points, stroke: 'heat', width: thick };
};

/** Short strokes around a place: it gets hot here. */
const hotSpot = ([x, y]: Point): Mark[] =>
  Array.from({ length: 8 }, (_, index) => {
    const angle = ((index + 0.5) * Math.PI) / 4;
    const on = (radius: number): Point => [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
    return line([on(2.6), on(4.4)], { width: pen.outline });
  });

/** A tick in a ring. */
const right = ([x, y]: Point): Mark[] => [
  circle([x, y], signRadius, { fill: 'paper', stroke: 'ink', width: pen.outline }),
  line(
    [
      [x - 1.5, y],
      [x - 0.4, y + 1.3],
      [x + 1.6, y - 1.4],
    ],
    { width: 0.7 },
  ),
];

/** A cross in a square: told from the tick by its outline, too. */
const wrong = ([x, y]: Point): Mark[] => {
  const arm = 1.5;
  const side = signRadius;
  return [
    rectangle(
      { left: x - side, right: x + side, top: y - side, bottom: y + side },
      { fill: 'ink', stroke: 'ink', width: pen.outline },
    ),
    line(
      [
        [x - arm, y - arm],
        [x + arm, y + arm],
      ],
      { stroke: 'paper', width: 0.9 },
    ),
    line(
      [
        [x - arm, y + arm],
        [x + arm, y - arm],
      ],
      { stroke: 'paper', width: 0.9 },
    ),
  ];
};

interface Sketch {
  readonly words: string;
  readonly sign: (at: Point) => Mark[];
  /** The cable on the pipe, about the middle of the sketch, its turns a pitch apart where they are right. */
  readonly cable: (middle: Point, pitch: number) => Mark[];
}

const turnsAt = (places: readonly number[], [x, y]: Point, pitch: number): Mark[] =>
  places.map((place) => front(x + place - pitch / 4, x + place + pitch / 4, y));

/** What is right and what must never be, side by side, told apart by shape. */
export const crossingDrawing: BenchDrawing = ({ answers, manner, width }): Drawing => {
  const { inService, atCrossing } = answers.sheath.figures;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const sketches: Sketch[] = [
    {
      words: `Right: every turn clear of the next.${inService ? ` The sheath settles near ${level(inService.value)}.` : ''}`,
      sign: right,
      cable: (middle, pitch) =>
        turnsAt([-1.5 * pitch, -0.5 * pitch, 0.5 * pitch, 1.5 * pitch], middle, pitch),
    },
    {
      words: 'Wrong: two turns have slipped together. Each heats the other.',
      sign: wrong,
      cable: (middle, pitch) => [
        ...turnsAt([-1.5 * pitch, -thick / 2, thick / 2, 1.5 * pitch], middle, pitch),
        ...hotSpot([middle[0], middle[1]]),
      ],
    },
    {
      words: `Wrong: the cable crosses itself.${atCrossing ? ` There it may reach ${level(atCrossing.value)}.` : ''}`,
      sign: wrong,
      cable: (middle, pitch) => [
        ...turnsAt([-1.5 * pitch, 1.5 * pitch], middle, pitch),
        front(middle[0] - 3.2, middle[0] + 3.2, middle[1]),
        // The turn that comes back leans the other way.
        front(middle[0] + 3.2, middle[0] - 3.2, middle[1]),
        ...hotSpot(middle),
      ],
    },
  ];
  const sideBySide = width >= leastForThree;
  const columns = sideBySide ? 3 : 1;
  const column = (width - 2 * margin - (columns - 1) * columnGap) / columns;
  const pipeLong = Math.min(column - 2 * signRadius - 4, 5 * mostPitch);
  const size = letters.small;
  const marks: Mark[] = [];
  let top = margin + 4;
  let height = 0;
  sketches.forEach(({ words, sign, cable }, index) => {
    const left = margin + (sideBySide ? index * (column + columnGap) : 0);
    const start = left + 2 * signRadius + 4;
    const axis = top + thick + pipeWide / 2;
    const [upper, lower] = [axis - pipeWide / 2, axis + pipeWide / 2];
    const edge = (y: number): Mark =>
      line(
        [
          [start, y],
          [start + pipeLong, y],
        ],
        { width: pen.outline },
      );
    const textWide = sideBySide ? column : width - 2 * margin;
    const lines = wrap(words, size, textWide);
    const textTop = lower + thick + 6.5;
    marks.push(
      edge(upper),
      edge(lower),
      ...cable([start + pipeLong / 2, axis], pipeLong / 5),
      breakLine([start, upper - 1.5], [start, lower + 1.5]),
      breakLine([start + pipeLong, upper - 1.5], [start + pipeLong, lower + 1.5]),
      ...sign([left + signRadius, axis]),
      ...labels([left, textTop], lines, { size }),
    );
    const bottom = textTop + (lines.length - 1) * leading * size + 2;
    height = Math.max(height, bottom);
    if (!sideBySide) top = bottom + 5;
  });
  return {
    width,
    height: height + margin,
    title: 'Right and wrong',
    description: `Three sketches. ${sketches.map(({ words }) => words).join(' ')}`,
    marks,
  };
};
