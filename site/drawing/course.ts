import { messages, say } from '../../calculators/say.ts';
import type { Figure } from '../../calculators/calculator.ts';
import { toBase, type QuantityName } from '../../calculators/quantities/quantity.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { hourWords } from '../../calculators/weather/clock.ts';
import type { Mark, Point } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { wrap } from './measure.ts';
import { nothingDrawn } from './nothing.ts';
import { label, labels, leading, letters, line, pen, polygon } from './pen.ts';
import { spread } from './spread.ts';

const hour = 3600;

/** All on paper [mm]. */
const margin = 2;
const plotHigh = { wide: 72, narrow: 62 } as const;
const bandHigh = 18;
const bandGap = 12;
/** The same on the worksheet, whose letters are larger and whose plot takes what height is left. */
const onSheet = { bandHigh: 10, bandGap: 5, least: 24 } as const;
/** Room for the letters of the axis, and for those at the ends of the lines. */
const axisWide = 11;
const endsWide = { wide: 36, narrow: 25 } as const;
const endGap = 2;
/** Drawings narrower than this count as narrow. */
const narrowBelow = 120;

/** Between two lines of the scale, in degrees of the reader. */
const steps = { metric: 5, us: 10 } as const;
const unit = { metric: '°C', us: '°F' } as const;

/** Lines are told apart by width and dashes, not by colour. */
const looks = {
  outside: { width: pen.thin },
  roots: { width: 0.9 },
  under: { width: pen.edge, dash: [2, 1] },
  loop: { width: pen.edge, dash: [4, 1, 0.7, 1] },
} as const;

const least = (values: readonly number[]): number =>
  values.reduce((lowest, one) => Math.min(lowest, one), Infinity);
const most = (values: readonly number[]): number => -least(values.map((one) => -one));

/**
 * The cold snap of the bench hour by hour: outside, coldest layer of the roots, air under the bench and loop against the
 * limit, and under them the power of the cable as the mean of each hour.
 */
export const courseDrawing: BenchDrawing = ({ situation, answers, manner, width, sheet }) => {
  const size = sheet ? letters.body : letters.small;
  const curve = answers.night.curves?.['course'];
  if (!curve) return nothingDrawn(messages('Your bench through the cold snap'), width, manner);
  const { times, clock, series } = curve;
  const { system } = manner;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const of = (id: string): readonly number[] => series[id] ?? [];
  const layers = Object.keys(series)
    .filter((id) => id.startsWith('roots-'))
    .map(of);
  const roots = times.map((_, index) => least(layers.map((layer) => layer[index] ?? Infinity)));
  const limit = situation.bench.plants.lowestRootTemperature;

  // A point an hour is all that can be seen.
  const every = Math.max(1, Math.round(hour / ((times[1] ?? hour) - (times[0] ?? 0))));
  const hourly = times.flatMap((_, index) => (index % every === 0 ? [index] : []));
  const lines = [
    { name: say(manner, 'loop'), values: of('loop'), look: looks.loop },
    {
      name: say(manner, sheet ? 'bench air' : 'air under the bench'),
      values: of('under'),
      look: looks.under,
    },
    { name: say(manner, sheet ? 'roots' : 'coldest roots'), values: roots, look: looks.roots },
    { name: say(manner, 'outside'), values: of('outside'), look: looks.outside },
  ];
  const shown = lines.flatMap(({ values }) => values);
  const inReader = (base: number): number => {
    const [zero, one] = [toBase('temperature', 0, unit[system]), toBase('temperature', 1, unit[system])];
    return (base - zero) / (one - zero);
  };
  const coldest = inReader(Math.min(limit, least(shown)) - 0.5);
  const warmest = inReader(Math.max(limit, most(shown)) + 0.5);

  const form = width < narrowBelow ? 'narrow' : 'wide';
  const [left, right] = [margin + axisWide, width - margin - endsWide[form]];
  const top = margin + leading * size + 2;
  const [gapHigh, powerHigh] = sheet ? [onSheet.bandGap, onSheet.bandHigh] : [bandGap, bandHigh];
  const around = top + gapHigh + powerHigh + 2 * leading * size;
  const bottom = top + (sheet ? Math.max(onSheet.least, sheet.height - around) : plotHigh[form]);
  const [bandTop, bandBottom] = [bottom + gapHigh, bottom + gapHigh + powerHigh];
  // Twice as far apart until their letters have room.
  let step: number = steps[system];
  while ((step * (bottom - top)) / (warmest - coldest + 2 * step) < leading * size) step *= 2;
  const [lowest, highest] = [Math.floor(coldest / step), Math.ceil(warmest / step)];
  const [begins, stops] = [times[0] ?? 0, times.at(-1) ?? hour];
  const xOf = (time: number): number => left + ((right - left) * (time - begins)) / (stops - begins);
  const yOf = (value: number): number =>
    bottom - ((bottom - top) * (inReader(value) - lowest * step)) / ((highest - lowest) * step);
  const marks: Mark[] = [label([margin, margin + size], unit[system], { size })];

  for (let tick = lowest; tick <= highest; tick++) {
    const reads = tick * step;
    const y = yOf(toBase('temperature', reads, unit[system]));
    marks.push(
      line(
        [
          [left, y],
          [right, y],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
      label([left - 1.5, y + 0.36 * size], `${reads < 0 ? '−' : ''}${Math.abs(reads)}`, {
        size,
        align: 'end',
      }),
    );
  }

  // Noon and midnight, or midnight alone where there is less room.
  const between = form === 'wide' ? 12 * hour : 24 * hour;
  for (let at = Math.ceil((clock + begins) / between) * between; at <= clock + stops; at += between) {
    const x = xOf(at - clock);
    marks.push(
      line(
        [
          [x, top],
          [x, bottom],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
      line(
        [
          [x, bandTop],
          [x, bandBottom],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
      label([x, bandBottom + leading * size], hourWords(at), { size, align: 'middle' }),
    );
  }

  marks.push(
    line(
      [
        [left, yOf(limit)],
        [right, yOf(limit)],
      ],
      { width: pen.outline, dash: [0.6, 1] },
    ),
  );
  for (const { values, look } of lines)
    marks.push(
      line(
        hourly.map((index): Point => [xOf(times[index] ?? 0), yOf(values[index] ?? NaN)]),
        look,
      ),
    );

  // Every line is named at its right end, the limit too.
  const named = [
    ...lines.map(({ name, values }) => ({
      text: name,
      bold: values === roots,
      y: yOf(values.at(-1) ?? limit),
    })),
    {
      text: say(manner, sheet ? 'limit {limit}' : 'your limit, {limit}', { limit: level(limit) }),
      bold: false,
      y: yOf(limit),
    },
  ];
  const room = width - margin - right - endGap - 2;
  const said = named.map(({ text, bold }) => wrap(text, size, room, bold));
  const highestLabel = Math.max(...said.map((one) => one.length)) * leading * size;
  const places = spread(
    named.map(({ y }) => y),
    highestLabel + 0.8,
    top,
    bottom + gapHigh - highestLabel,
  );
  named.forEach(({ y, bold }, index) => {
    const place = places[index] ?? y;
    marks.push(
      line(
        [
          [right, y],
          [right + endGap + 1, place],
        ],
        { width: pen.thin },
      ),
      ...labels([right + endGap + 2, place + 0.36 * size], said[index] ?? [], { size, bold }),
    );
  });

  // The power under them, each hour at its mean.
  const power = of('power');
  const means = hourly.slice(1).map((index) => {
    const since = power.slice(index - every + 1, index + 1);
    return since.reduce((sum, one) => sum + one, 0) / since.length;
  });
  const peak = most(power);
  const full = Math.max(peak, 1);
  const heightOf = (value: number): number => bandBottom - (powerHigh * value) / full;
  const outline = means.flatMap((mean, index): Point[] => [
    [xOf(times[hourly[index] ?? 0] ?? 0), heightOf(mean)],
    [xOf(times[hourly[index + 1] ?? 0] ?? 0), heightOf(mean)],
  ]);
  const lastAt = outline.at(-1)?.[0] ?? right;
  marks.push(
    polygon([[left, bandBottom], ...outline, [lastAt, bandBottom]], {
      fill: 'faint',
      stroke: 'ink',
      width: pen.thin,
    }),
    ...labels(
      [right + endGap + 2, bandTop + 0.74 * size],
      wrap(
        say(manner, sheet ? 'power to {power}' : 'power, at most {power}', {
          power: showQuantity(peak, 'power', manner),
        }),
        size,
        room,
      ),
      { size },
    ),
  );

  const { outside, belowLimit, meanPower } = answers.night.figures;
  const inWords = (figure: Figure | null, quantity: QuantityName) =>
    figure ? showQuantity(figure.value, quantity, manner) : say(manner, 'an unknown value');
  return {
    width,
    height: bandBottom + 2 * leading * size,
    title: say(manner, 'Your bench through the cold snap'),
    description: [
      say(manner, 'Three days with a cold night between them, every hour: outside falls to {outside}.', {
        outside: inWords(outside, 'temperature'),
      }),
      say(
        manner,
        'The coldest roots come to {roots}, the air under the bench to {under}, the loop to {loop}.',
        { roots: level(least(roots)), under: level(least(of('under'))), loop: level(least(of('loop'))) },
      ),
      say(manner, 'Your limit is {limit}; the roots are below it for {hours}.', {
        limit: level(limit),
        hours: inWords(belowLimit, 'duration'),
      }),
      say(manner, 'The cable gives {mean} on the mean while it is coldest and {most} at most.', {
        mean: inWords(meanPower, 'power'),
        most: showQuantity(peak, 'power', manner),
      }),
    ].join(' '),
    marks,
  };
};
