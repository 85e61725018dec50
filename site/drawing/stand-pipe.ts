import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Mark } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { levelMarks, onScale, roomForLevels, type Level } from './levels.ts';
import { letters, line, pen, rectangle } from './pen.ts';
import { hatch } from './hatch.ts';
import { wave } from './water.ts';

/** All on paper [mm]. */
const margin = 2;
const least = 62;
const tubeWide = 9;
const pipeHigh = 11;
const pipeReach = 12;
const toText = 9;
/** Tube over its top mark, and under its lowest, in shares of the scale. */
const spare = 0.04;

/**
 * The stand-pipe on the end of the loop, with the level at filling, at the hottest and at the coldest: heights to scale,
 * widths not. A loop with an air space has a vent there, whose room is said in words.
 */
export const standPipeDrawing: BenchDrawing = ({ situation: { bench }, answers, manner, width }) => {
  const { loop } = bench;
  const { rise, contractionVolume, expansionVolume, headspace, fullAt } = answers.loop.figures;
  const size = (value: number) => showQuantity(value, 'size', manner);
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const volume = (value: number) => showQuantity(value, 'volume', manner);
  const open = loop.expansion === 'standpipe';
  const area = (Math.PI / 4) * loop.standpipeDiameter ** 2;
  const up = rise?.value ?? 0;
  const down = (contractionVolume?.value ?? 0) / area;
  const top = open ? loop.standpipeHeight : 1;
  const levels: Level[] = open
    ? [
        {
          at: top,
          text: `${size(top)}: top of the stand-pipe, open to the air${fullAt ? `; reached at ${level(fullAt.value)}` : ''}`,
        },
        {
          at: up,
          text: `${size(up)}: hottest, ${level(Math.max(loop.hottest, loop.fillTemperature))}${up > top ? '; it spills' : ''}`,
          bold: true,
        },
        { at: 0, text: `0: filled at ${level(loop.fillTemperature)}; put a mark here`, bold: true },
        { at: -down, text: `${size(-down)}: coldest that it stays liquid at` },
      ]
    : [
        { at: 1, text: 'Vent, always open, at the highest point' },
        {
          at: 0.5,
          text: `Air space of ${volume(headspace?.value ?? 0)}, left when filling`,
          bold: true,
        },
        { at: 0, text: `Level when filled at ${level(loop.fillTemperature)}` },
      ];
  const values = levels.map(({ at }) => at);
  const [most, lowest] = [Math.max(...values), Math.min(...values)];
  const reach = Math.max(most - lowest, 1e-3);

  const tubeLeft = margin + pipeReach;
  const textAt = tubeLeft + tubeWide + toText;
  const right = width - margin;
  const high = Math.max(least, roomForLevels(levels, right - textAt));
  const scale = {
    x: tubeLeft + tubeWide,
    top: margin + letters.small,
    bottom: margin + letters.small + high,
    highest: most + spare * reach,
    lowest: lowest - spare * reach,
    textAt,
    right,
  };
  const y = (value: number) => onScale(value, scale);
  const pipeTop = scale.bottom + 2;
  const box = (from: number, to: number) => ({
    left: tubeLeft,
    right: tubeLeft + tubeWide,
    top: to,
    bottom: from,
  });
  const hot = Math.min(up, top);
  const marks: Mark[] = [
    rectangle(
      { left: margin, right: tubeLeft + tubeWide, top: pipeTop, bottom: pipeTop + pipeHigh },
      {
        fill: 'water',
        stroke: 'ink',
        width: pen.outline,
      },
    ),
    wave([margin + 6, pipeTop + pipeHigh / 3], 6),
    wave([margin + 13, pipeTop + (2 * pipeHigh) / 3], 6),
    rectangle(box(pipeTop + 0.5, y(0)), { fill: 'water' }),
    ...(open && up > 0 ? hatch(box(y(0), y(hot)), 1.6) : []),
    // The walls of the tube, open at its top and at its foot.
    ...[tubeLeft, tubeLeft + tubeWide].map((x) =>
      line(
        [
          [x, y(top)],
          [x, pipeTop + 0.5],
        ],
        { width: pen.outline },
      ),
    ),
    ...(open ? [hot, 0, -down] : [0]).map((at) =>
      line(
        [
          [tubeLeft, y(at)],
          [tubeLeft + tubeWide, y(at)],
        ],
        at === 0 ? {} : { dash: [1.2, 0.8] },
      ),
    ),
    ...levelMarks(levels, scale),
  ];
  const said = open
    ? `Hatched: the ${volume(expansionVolume?.value ?? 0)} by which the loop swells. Heights are to scale, widths are not.`
    : 'Not to scale. An air space shows nobody how full the loop is: look for leaks each week.';
  const small = notes([said], { left: margin, top: pipeTop + pipeHigh + 2, width: width - 2 * margin });
  return {
    width,
    height: pipeTop + pipeHigh + 2 + small.height + margin,
    title: open ? 'How far the level rises' : 'The air space of the loop',
    description: [
      open
        ? `The stand-pipe on the end of the loop, ${size(loop.standpipeDiameter)} wide inside.`
        : 'The highest point of the loop, with its vent.',
      ...levels.map(({ text }) => `${text}.`),
      said,
    ].join(' '),
    marks: [...marks, ...small.marks],
  };
};
