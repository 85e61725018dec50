import { loggedIds, type LoggedId } from '../../calculators/logger/columns.ts';
import type { Log } from '../../calculators/logger/log.ts';
import type { Window } from '../../calculators/logger/window.ts';
import { toBase } from '../../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import type { Drawing, Mark, Point } from './drawing.ts';
import { textWidth, wrap } from './measure.ts';
import { label, labels, leading, letters, line, pen, polygon, rectangle } from './pen.ts';
import { spread } from './spread.ts';

const hour = 3600;
const day = 24 * hour;

/** All on paper [mm]. */
const margin = 2;
const plotHigh = { wide: 66, narrow: 60 } as const;
const bandHigh = 14;
const bandGap = 10;
const size = letters.small;
/** Room for the letters of the axis, and for those at the ends of the lines. */
const axisWide = 11;
const endsWide = { wide: 34, narrow: 24 } as const;
const endGap = 2;
const narrowBelow = 120;

/** Between two lines of the scale, in degrees of the reader; the first with which there are few enough. */
const steps = [1, 2, 5, 10, 20, 50] as const;
const mostLevels = 8;
const unit = { metric: '°C', us: '°F' } as const;
/** Between two times that are named. */
const spans = [
  hour,
  2 * hour,
  3 * hour,
  6 * hour,
  12 * hour,
  day,
  2 * day,
  7 * day,
  14 * day,
  28 * day,
  91 * day,
];

/** More points than this to a line cannot be told apart. */
const mostPoints = 360;

/** Lines are told apart by width and dashes, not by colour; as in the drawing of the cold snap. */
const looks: Readonly<
  Record<Exclude<LoggedId, 'power'>, { readonly width: number; readonly dash?: readonly number[] }>
> = {
  outside: { width: pen.thin },
  house: { width: pen.edge, dash: [0.6, 0.8] },
  under: { width: pen.edge, dash: [2, 1] },
  loop: { width: pen.edge, dash: [4, 1, 0.7, 1] },
  roots: { width: 0.9 },
};

const names: Readonly<Record<LoggedId, string>> = {
  outside: 'outside',
  house: 'house',
  under: 'under the bench',
  loop: 'loop',
  roots: 'roots',
  power: 'power',
};

const monthNames = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const two = (value: number): string => String(value).padStart(2, '0');

/** A time by the clock on the wall: the hour, or the day where a day begins. */
function timeWords(moment: number, between: number): string {
  const date = new Date(moment * 1000);
  return between < day
    ? `${two(date.getUTCHours())}:00`
    : `${date.getUTCDate()} ${monthNames[date.getUTCMonth()] ?? ''}`;
}

/** The pieces of a column, thinned out: a gap of the log or of the column ends a piece. */
function piecesOf({ times, values, every }: Log, id: LoggedId): (readonly (readonly [number, number])[])[] {
  const column = values[id];
  if (!column) return [];
  const stride = Math.max(1, Math.ceil(times.length / mostPoints));
  const pieces: [number, number][][] = [[]];
  let last = -Infinity;
  for (let index = 0; index < times.length; index += stride) {
    // The mean of a stride, so that what is passed over still counts.
    let [sum, count] = [0, 0];
    for (let one = index; one < Math.min(times.length, index + stride); one++) {
      const value = column[one] ?? NaN;
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
    if (count === 0) continue;
    const time = times[index] ?? 0;
    if (time - last > 2.5 * every * stride) pieces.push([]);
    pieces.at(-1)?.push([time, sum / count]);
    last = time;
  }
  return pieces.filter((piece) => piece.length > 0);
}

const extent = (values: readonly number[]): readonly [number, number] =>
  values.reduce(([low, high], one) => [Math.min(low, one), Math.max(high, one)], [Infinity, -Infinity]);

export interface LoggedInput {
  readonly log: Log;
  /** The stretch of which the means are taken; null where the log has none. */
  readonly window: Window | null;
  readonly manner: Manner;
  /** Width of the drawing on paper [mm]; 80 and more. */
  readonly width: number;
}

/** What a logger recorded: its temperatures against the clock, the steadiest stretch of a night marked, and the power. */
export function loggedDrawing({ log, window, manner, width }: LoggedInput): Drawing {
  const { system } = manner;
  const lines = loggedIds.flatMap((id) =>
    id === 'power' || !log.values[id] ? [] : [{ id, pieces: piecesOf(log, id) }],
  );
  const levels = lines.flatMap(({ pieces }) => pieces.flat().map(([, value]) => value));
  const [coldest, warmest] = levels.length > 0 ? extent(levels) : ([0, 10] as const);
  const [zero, one] = [toBase('temperature', 0, unit[system]), toBase('temperature', 1, unit[system])];
  const inReader = (base: number): number => (base - zero) / (one - zero);
  const step = steps.find((by) => (inReader(warmest) - inReader(coldest)) / by <= mostLevels - 2) ?? 50;
  const lowest = Math.floor((inReader(coldest) - 0.1) / step);
  const highest = Math.ceil((inReader(warmest) + 0.1) / step);

  const form = width < narrowBelow ? 'narrow' : 'wide';
  const [left, right] = [margin + axisWide, width - margin - endsWide[form]];
  const top = margin + 2 * leading * size + 2;
  const bottom = top + plotHigh[form];
  const powered = log.values.power !== undefined;
  const [bandTop, bandBottom] = powered ? [bottom + bandGap, bottom + bandGap + bandHigh] : [bottom, bottom];
  const length = Math.max(log.times.at(-1) ?? 0, 1);
  const xOf = (time: number): number => left + ((right - left) * time) / length;
  const yOf = (value: number): number =>
    bottom - ((bottom - top) * (inReader(value) - lowest * step)) / ((highest - lowest) * step);
  const marks: Mark[] = [label([margin, margin + size], unit[system], { size })];

  if (window) {
    const [from, to] = [xOf(window.from - log.begin), xOf(window.to - log.begin)];
    // Wide enough to be seen in a log of months.
    const half = Math.max(0.6, (to - from) / 2);
    const middle = (from + to) / 2;
    const box = { left: middle - half, right: middle + half, top, bottom };
    marks.push(rectangle(box, { fill: 'water', stroke: 'ink', width: pen.edge }));
    const text = 'steadiest two hours';
    const wide = textWidth(text, size, true) / 2;
    const at = Math.min(Math.max(middle, left + wide), width - margin - wide);
    marks.push(label([at, top - 1.5], text, { size, align: 'middle', bold: true }));
  }
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
  const room = textWidth('00:00 ', size) * 1.25;
  const between = spans.find((span) => ((right - left) * span) / length >= room) ?? length;
  for (let at = Math.ceil(log.begin / between) * between; at <= log.begin + length; at += between) {
    const x = xOf(at - log.begin);
    for (const [from, to] of powered
      ? [[top, bottom] as const, [bandTop, bandBottom] as const]
      : [[top, bottom] as const])
      marks.push(
        line(
          [
            [x, from],
            [x, to],
          ],
          { width: pen.thin, stroke: 'faint' },
        ),
      );
    marks.push(label([x, bandBottom + leading * size], timeWords(at, between), { size, align: 'middle' }));
  }

  for (const { id, pieces } of lines)
    for (const piece of pieces)
      marks.push(
        line(
          (piece.length > 1 ? piece : [...piece, ...piece]).map(([time, value]): Point => [
            xOf(time),
            yOf(value),
          ]),
          looks[id],
        ),
      );

  // Every line is named at its right end.
  const textRoom = width - margin - right - endGap - 2;
  const ends = lines.flatMap(({ id, pieces }) => {
    const last = pieces.at(-1)?.at(-1);
    return last ? [{ id, y: yOf(last[1]), said: wrap(names[id], size, textRoom, id === 'roots') }] : [];
  });
  const tall = Math.max(1, ...ends.map(({ said }) => said.length)) * leading * size;
  const places = spread(
    ends.map(({ y }) => y),
    tall + 0.8,
    top,
    bottom - tall + size,
  );
  ends.forEach(({ id, y, said }, index) => {
    const place = places[index] ?? y;
    marks.push(
      line(
        [
          [right, y],
          [right + endGap + 1, place],
        ],
        { width: pen.thin },
      ),
      ...labels([right + endGap + 2, place + 0.36 * size], said, { size, bold: id === 'roots' }),
    );
  });

  const power = powered ? piecesOf(log, 'power') : [];
  const peak = extent(power.flat().map(([, value]) => value))[1];
  const heightOf = (value: number): number =>
    bandBottom - (bandHigh * Math.max(0, value)) / Math.max(peak, 1);
  for (const piece of power) {
    const [begins, ends] = [piece[0]?.[0] ?? 0, piece.at(-1)?.[0] ?? 0];
    marks.push(
      polygon(
        [
          [xOf(begins), bandBottom],
          ...piece.map(([time, value]): Point => [xOf(time), heightOf(value)]),
          [xOf(ends), bandBottom],
        ],
        { fill: 'water', stroke: 'ink', width: pen.thin },
      ),
    );
  }
  if (powered && Number.isFinite(peak))
    marks.push(
      ...labels(
        [right + endGap + 2, bandTop + 0.74 * size],
        wrap(`power, at most ${showQuantity(peak, 'power', manner)}`, size, textRoom),
        { size },
      ),
    );

  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const reaches = lines.map(({ id, pieces }) => {
    const [low, high] = extent(pieces.flat().map(([, value]) => value));
    return `${names[id]} from ${level(low)} to ${level(high)}`;
  });
  return {
    width,
    height: bandBottom + 2 * leading * size,
    title: 'What the logger recorded',
    description: [
      `Temperatures against the clock: ${reaches.join('; ')}.`,
      ...(window
        ? [
            `The steadiest two hours of a night, from ${timeWords(window.from, hour)} to ${timeWords(window.to, hour)}, are shaded.`,
          ]
        : ['No two hours of a night have all that is needed.']),
      ...(powered && Number.isFinite(peak)
        ? [`The power, at most ${showQuantity(peak, 'power', manner)}, stands under them.`]
        : []),
    ].join(' '),
    marks,
  };
}
