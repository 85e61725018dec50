import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { levelMarks, onScale, roomForLevels, type Level } from './levels.ts';
import { letters, line, pen, rectangle } from './pen.ts';
import { wave } from './water.ts';

/** All on paper [mm]. */
const margin = 2;
const least = 58;
const tubWide = 22;
const axisGap = 8;
const toText = 8;
/** How far the scale runs over its warmest and under its coldest mark [K]. */
const beyond = 1;

/** The mix in parts, as it stands in a tub, and beside it how cold it may get and how cold it gets here. */
export const mixDrawing: BenchDrawing = ({ situation: { bench, station }, answers, manner, width }) => {
  const { concentrateVolume, waterVolume, freezingPoint, burstPoint } = answers.mix.figures;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const volume = (value: number) => showQuantity(value, 'volume', manner);
  const plain = bench.mix.antifreeze === 'none';
  const concentrate = concentrateVolume?.value ?? 0;
  const water = waterVolume?.value ?? answers.loop.figures.volume?.value ?? 0;
  const share = concentrate + water > 0 ? concentrate / (concentrate + water) : 0;
  const below = (figure: typeof burstPoint) => (figure?.beyond ? `${figure.beyond} ` : '');
  const levels: Level[] = [
    { at: 0, text: `${level(0)}: plain water freezes${plain ? ', and can burst the pipe' : ''}` },
    ...(!plain && freezingPoint
      ? [
          {
            at: freezingPoint.value,
            text: `${below(freezingPoint)}${level(freezingPoint.value)}: first ice in your mix`,
            bold: true,
          },
        ]
      : []),
    ...(!plain && burstPoint
      ? [{ at: burstPoint.value, text: `${below(burstPoint)}${level(burstPoint.value)}: the pipe can burst` }]
      : []),
    ...(plain
      ? []
      : [{ at: bench.mix.protectTo, text: `${level(bench.mix.protectTo)}: what you asked for` }]),
    {
      at: station.recordLowest,
      text: `${level(station.recordLowest)}: coldest on the record of ${station.name}`,
      bold: true,
    },
  ];
  const values = levels.map(({ at }) => at);
  const axisAt = margin + tubWide + axisGap;
  const textAt = axisAt + toText;
  const right = width - margin;
  const high = Math.max(least, roomForLevels(levels, right - textAt));
  const scale = {
    x: axisAt,
    top: margin + letters.small,
    bottom: margin + letters.small + high,
    highest: Math.max(...values) + beyond,
    lowest: Math.min(...values) - beyond,
    textAt,
    right,
  };
  const tub = { left: margin, right: margin + tubWide, top: scale.top, bottom: scale.bottom };
  const surface = tub.bottom - share * (tub.bottom - tub.top);
  const marks: Mark[] = [
    rectangle({ ...tub, bottom: surface }, { fill: 'water' }),
    ...(surface - tub.top > 8
      ? [wave([tub.left + 8, tub.top + 3], 7), wave([tub.left + 14, (tub.top + surface) / 2], 7)]
      : []),
    ...(share > 0 ? hatch({ ...tub, top: surface }, 1.8) : []),
    line([
      [tub.left, surface],
      [tub.right, surface],
    ]),
    rectangle(tub, { stroke: 'ink', width: pen.outline }),
    line(
      [
        [axisAt, scale.top],
        [axisAt, scale.bottom],
      ],
      { width: pen.outline },
    ),
    ...(plain
      ? []
      : [
          // Where the mix is liquid: a second line beside the scale.
          line(
            [
              [axisAt - 1.4, scale.top],
              [axisAt - 1.4, onScale(freezingPoint?.value ?? 0, scale)],
            ],
            { stroke: 'heat', width: 1 },
          ),
        ]),
    ...levelMarks(levels, scale),
  ];
  const said = plain
    ? [`Plain water, ${volume(water)}. Drain it whenever the heat fails.`]
    : [
        `Hatched: antifreeze, ${volume(concentrate)}. Above it: water, ${volume(water)}. Stir: in the tub they are one.`,
        'The thick line beside the scale: here the mix is liquid.',
      ];
  const small = notes(said, { left: margin, top: scale.bottom + 2, width: width - 2 * margin });
  return {
    width,
    height: scale.bottom + 2 + small.height + margin,
    title: plain ? 'Plain water, and the cold of your place' : 'Your mix, and the cold of your place',
    description: [
      'A tub with the parts of the mix, beside a scale of temperatures.',
      ...said,
      ...levels.map(({ text }) => `${text}.`),
    ].join(' '),
    marks: [...marks, ...small.marks],
  };
};
