import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Figure } from '../../calculators/calculator.ts';
import type { Mark, Point } from './drawing.ts';
import { ground } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { balloonRadius, key, notes, pointer } from './key.ts';
import { circle, line, pen, polygon, rectangle } from './pen.ts';
import { pipeEnd } from './water.ts';

/** All on paper [mm]. */
const margin = 2;
const balloonsAt = margin + balloonRadius;
const benchTop = balloonsAt + balloonRadius + 24;
const potHigh = 13;
const under = 30;
const floor = benchTop + under;
const pipeRadius = 4;
/** How many pots are drawn across the bench. */
const pots = { least: 4, most: 8 } as const;

/** A sensor that belongs here: a filled triangle, as in the other drawings of a bench. */
const sensor = ([x, y]: Point): Mark =>
  polygon(
    [
      [x - 1.4, y - 1.2],
      [x + 1.4, y - 1.2],
      [x, y + 1.4],
    ],
    { fill: 'ink' },
  );

/** A place where none belongs: a cross. */
const wrong = ([x, y]: Point): Mark[] =>
  [-1, 1].map((way) =>
    line(
      [
        [x - 1.5, y - 1.5 * way],
        [x + 1.5, y + 1.5 * way],
      ],
      { stroke: 'heat', width: 0.8 },
    ),
  );

const potAt = (x: number, wide: number): Mark =>
  polygon(
    [
      [x - wide / 2, benchTop - potHigh],
      [x + wide / 2, benchTop - potHigh],
      [x + wide * 0.37, benchTop],
      [x - wide * 0.37, benchTop],
    ],
    { fill: 'paper', stroke: 'ink', width: pen.edge },
  );

/** Where the sensors go on the bench and where not, with what to set: the bench cut across, not to scale. */
export const sensorPlacesDrawing: BenchDrawing = ({ situation: { bench }, answers, manner, width }) => {
  const { setInPot, setInAir, alarmLow, alarmHigh, loopPause, loopFrost } = answers.settings.figures;
  const level = (figure: Figure | null, words: string) =>
    figure ? `${words} ${showQuantity(figure.value, 'temperature', manner)}` : '';
  const and = (...parts: string[]) => parts.filter((part) => part !== '').join(', ');
  const entries = [
    and('Thermostat: in the middle of a pot that stands in the coldest place', level(setInPot, 'set')),
    and('Low alarm: in the middle of another of the coldest pots', level(alarmLow, 'rings at')),
    'Not here: hanging in the air over the pots, where it reads the house',
    'Not here: in the warmest pot, above the pipe or in the middle of the bench',
    and('Second best: in the air halfway up, with foil between it and the pipe', level(setInAir, 'set')),
    'Not here: in sight of the pipe, or against the skirt',
    and(
      'On the pipe, between two turns: limit thermostat',
      level(alarmHigh, 'high alarm, rings at'),
      level(loopPause, 'pausing thermostat, heat off above'),
      // A mix stays liquid; plain water does not.
      level(bench.mix.antifreeze === 'none' ? loopFrost : null, 'thermostat against freezing, heats below'),
    ),
  ];
  const [left, right] = [margin + 3, width - margin - 3];
  const wide = right - left;
  const count = Math.max(
    pots.least,
    Math.min(pots.most, Math.floor(bench.frame.width / bench.pots.diameter)),
  );
  const step = wide / count;
  const pot = (index: number) => left + (index + 0.5) * step;
  const pipes: Point[] = [
    [left + wide * 0.16, floor - 7],
    [right - wide * 0.16, floor - 7],
  ];
  const skirted = bench.skirt.material !== 'none';
  const [pipeLeft = [left, floor]] = pipes;
  const halfway = benchTop + under * 0.42;
  const places: readonly { readonly at: Point; readonly good: boolean; readonly balloon: Point }[] = [
    { at: [pot(0), benchTop - potHigh / 2], good: true, balloon: [pot(0), balloonsAt] },
    { at: [pot(count - 1), benchTop - potHigh / 2], good: true, balloon: [pot(count - 1), balloonsAt] },
    {
      at: [left + wide * 0.32, benchTop - potHigh - 7],
      good: false,
      balloon: [left + wide * 0.32, balloonsAt],
    },
    {
      at: [pot(Math.floor(count / 2)), benchTop - potHigh / 2],
      good: false,
      balloon: [pot(Math.floor(count / 2)), balloonsAt],
    },
    { at: [left + wide / 2, halfway], good: true, balloon: [left + wide / 2 + 11, halfway] },
    { at: [right - 3, halfway], good: false, balloon: [right - 13, halfway] },
    {
      at: [pipeLeft[0], pipeLeft[1] - pipeRadius - 1.4],
      good: true,
      balloon: [pipeLeft[0] + 11, pipeLeft[1] - pipeRadius],
    },
  ];
  const marks: Mark[] = [
    ...ground(left - 2, right + 2, floor),
    line(
      [
        [left, benchTop],
        [right, benchTop],
      ],
      { width: 0.9 },
    ),
    ...[left + 1.5, right - 1.5].map((x) =>
      line([
        [x, benchTop],
        [x, floor],
      ]),
    ),
    ...(skirted
      ? [left - 1, right + 1].map((x) =>
          line(
            [
              [x, benchTop - 1],
              [x, floor - 0.5],
            ],
            { width: pen.outline },
          ),
        )
      : []),
    ...Array.from({ length: count }, (_, index) => potAt(pot(index), step * 0.92)),
    ...pipes.flatMap((at) => [
      circle(at, pipeRadius + 0.6, { fill: 'heat' }),
      ...pipeEnd(at, pipeRadius, pipeRadius - 0.6),
    ]),
    // The foil that shades the sensor from the pipe.
    rectangle(
      {
        left: left + wide / 2 - 3,
        right: left + wide / 2 + 3,
        top: halfway + 2.6,
        bottom: halfway + 3.2,
      },
      { fill: 'ink' },
    ),
    ...places.flatMap(({ at, balloon }, index) => pointer(balloon, at, index + 1)),
    ...places.flatMap(({ at, good }) => (good ? [sensor(at)] : wrong(at))),
  ];
  const below = floor + 5;
  const legend = key(entries, { left: margin, top: below, width: width - 2 * margin });
  const said = 'Triangles: sensors. Crosses: places that mislead. Not to scale.';
  const small = notes([said], { left: margin, top: below + legend.height + 1, width: width - 2 * margin });
  return {
    width,
    height: below + legend.height + 1 + small.height + margin,
    title: 'Where the sensors go, and where not',
    description: [
      'The bench cut across, with seven places for a sensor.',
      ...entries.map((entry, index) => `${index + 1}. ${entry}.`),
      said,
    ].join(' '),
    marks: [...marks, ...legend.marks, ...small.marks],
  };
};
