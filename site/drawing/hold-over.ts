import type { Answer, Cell } from '../../calculators/calculator.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Mark, Point } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { textWidth } from './measure.ts';
import { circle, label, leading, letters, line, pen, rectangle } from './pen.ts';

const hour = 3600;
const day = 24 * hour;

/** All on paper [mm]. */
const margin = 2;
const size = letters.small;
const labelGap = 2;
/** One outside temperature: a lane for each limit, and the gap to the next. */
const lane = 2.7;
const rowGap = 3;
const signRadius = 1.15;

/** The axis of time, each step of it two to three times the one before, so that hours and days both have room. */
const ticks = [
  { at: hour, words: '1 h' },
  { at: 3 * hour, words: '3 h' },
  { at: 6 * hour, words: '6 h' },
  { at: 12 * hour, words: '12 h' },
  { at: day, words: '1 day' },
  { at: 2 * day, words: '2 days' },
  { at: 5 * day, words: '5 days' },
  { at: 10 * day, words: '10 days' },
] as const;
const [first, last] = [ticks[0], ticks[7]];
/** On a narrow drawing every second one is named. */
const wideFrom = 140;

/** A level of outside temperature counts as the design night's when nobody could read a difference [K]. */
const same = 0.05;

/** Limits are told apart by their sign and their lane, not by colour. */
const limits = [
  { id: 'roots', words: 'roots at your limit', sign: 'disc' },
  { id: 'rootsFrozen', words: 'a layer of roots frozen through', sign: 'square' },
  { id: 'loopFreezing', words: 'loop turns to slush', sign: 'ring' },
  { id: 'loopSolid', words: 'slush is stiff', sign: 'box' },
] as const;
type Sign = (typeof limits)[number]['sign'];

function sign([x, y]: Point, kind: Sign): Mark {
  const ink = { stroke: 'ink', width: pen.outline } as const;
  const fill = kind === 'disc' || kind === 'square' ? 'ink' : 'paper';
  if (kind === 'disc' || kind === 'ring') return circle([x, y], signRadius, { ...ink, fill });
  const half = signRadius * 0.9;
  return rectangle({ left: x - half, right: x + half, top: y - half, bottom: y + half }, { ...ink, fill });
}

interface Level {
  readonly outside: number;
  /** The night that the bench is built for. */
  readonly design: boolean;
  /** Time to each limit [s]; null where it is not reached within ten days. */
  readonly times: readonly (number | null)[];
}

const numberOf = (cell: Cell | undefined): number | null => (typeof cell === 'number' ? cell : null);

/** The rows of the table, from the mildest on, with the design night where it belongs. */
function levelsOf(answer: Answer): Level[] {
  const { hoursToRootLimit, hoursToRootsFrozen, hoursToLoopFreezing, hoursToLoopSolid, outside } =
    answer.figures;
  const design: Level = {
    outside: outside?.value ?? NaN,
    design: true,
    times: [hoursToRootLimit, hoursToRootsFrozen, hoursToLoopFreezing, hoursToLoopSolid].map((figure) =>
      !figure || figure.beyond ? null : figure.value,
    ),
  };
  const rows = (answer.tables?.['ladder']?.rows ?? []).map((row): Level => ({
    outside: numberOf(row['outside']) ?? NaN,
    design: false,
    times: limits.map(({ id }) => numberOf(row[id])),
  }));
  return [...rows.filter(({ outside: at }) => Math.abs(at - design.outside) >= same), design].sort(
    (a, b) => b.outside - a.outside,
  );
}

/**
 * A power cut by outside temperature: for each a line of time, on it a sign where a limit is reached. The night that
 * the bench is built for stands among them in bold, on a tone of its own.
 */
export const holdOverDrawing: BenchDrawing = ({ situation, answers, manner, width }) => {
  const levels = levelsOf(answers.outage);
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const time = (value: number) => showQuantity(value, 'duration', manner);
  const names = levels.map(({ outside }) => level(outside));
  const named = Math.max(...names.map((name) => textWidth(name, size, true)));
  const left = margin + named + labelGap + signRadius;
  const right = width - margin - textWidth(last.words, size) / 2;
  const [from, to] = [Math.log(first.at), Math.log(last.at)];
  const xOf = (seconds: number): number =>
    left + ((right - left) * (Math.log(Math.min(last.at, Math.max(first.at, seconds))) - from)) / (to - from);

  const top = margin + leading * size + 1.5;
  const high = limits.length * lane;
  const rowTop = (index: number): number => top + index * (high + rowGap) + rowGap / 2;
  const bottom = top + levels.length * (high + rowGap);
  const laneOf = (index: number, limit: number): number => rowTop(index) + (limit + 0.5) * lane;
  const marks: Mark[] = [];

  levels.forEach(({ design }, index) => {
    if (!design) return;
    const band = { top: rowTop(index) - rowGap / 2, bottom: rowTop(index) + high + rowGap / 2 };
    marks.push(rectangle({ left: margin, right: width - margin, ...band }, { fill: 'water' }));
  });
  const every = width >= wideFrom ? 1 : 2;
  ticks.forEach(({ at, words }, index) => {
    const x = xOf(at);
    marks.push(
      line(
        [
          [x, top],
          [x, bottom],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
    );
    // Counted from the right, so that the end of the axis is named in any case.
    if ((ticks.length - 1 - index) % every === 0)
      marks.push(label([x, margin + size], words, { size, align: 'middle' }));
  });
  for (let index = 0; index <= levels.length; index++) {
    const y = top + index * (high + rowGap);
    marks.push(
      line(
        [
          [margin, y],
          [right, y],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
    );
  }

  // A limit from one temperature to the next: a thin line, so that the eye can follow it.
  limits.forEach((_, limit) => {
    const points = levels.flatMap(({ times }, index): Point[] => {
      const at = times[limit];
      return at === null || at === undefined ? [] : [[xOf(at), laneOf(index, limit)]];
    });
    if (points.length > 1) marks.push(line(points, { width: pen.thin, stroke: 'soft' }));
  });
  levels.forEach(({ design, times }, index) => {
    marks.push(
      label([margin, rowTop(index) + high / 2 + 0.36 * size], names[index] ?? '', { size, bold: design }),
    );
    limits.forEach(({ sign: kind }, limit) => {
      const at = times[limit];
      if (at !== null && at !== undefined) marks.push(sign([xOf(at), laneOf(index, limit)], kind));
    });
    if (times.every((at) => at === null)) {
      const middle = (left + right) / 2;
      const said = 'nothing within ten days';
      const half = textWidth(said, size) / 2 + 1;
      const y = rowTop(index) + high / 2;
      marks.push(
        rectangle(
          { left: middle - half, right: middle + half, top: y - 2.4, bottom: y + 2.4 },
          { fill: 'paper' },
        ),
        label([middle, y + 0.36 * size], said, { size, align: 'middle' }),
      );
    }
  });

  // The signs named under the drawing, as many to a line as there is room for.
  let [x, y] = [margin, bottom + 3 + size / 2];
  for (const { words, sign: kind } of limits) {
    const wide = 2 * signRadius + 1.5 + textWidth(words, size) + 5;
    if (x > margin && x + wide - 5 > width - margin) [x, y] = [margin, y + leading * size + 0.6];
    marks.push(
      sign([x + signRadius, y], kind),
      label([x + 2 * signRadius + 1.5, y + 0.36 * size], words, { size }),
    );
    x += wide;
  }
  const said = `From left to right: time since the power failed, each step two to three times the one before; what is reached within the first hour stands at its left end. Shaded: the night you build for, ${level(answers.outage.figures.outside?.value ?? NaN)} outside.`;
  const small = notes([said], { left: margin, top: y + size, width: width - 2 * margin });
  marks.push(...small.marks);

  const told = levels.map(({ outside, design: built, times }) => {
    const reached = limits.flatMap(({ words }, limit) => {
      const at = times[limit];
      return at === null || at === undefined ? [] : [`${words} after ${time(at)}`];
    });
    const where = `At ${level(outside)}${built ? ', the night you build for' : ''}`;
    return `${where}: ${reached.length > 0 ? reached.join(', ') : 'nothing within ten days'}.`;
  });
  return {
    width,
    height: y + size + small.height + 1,
    title: 'A power cut, by outside temperature',
    description: [
      `Time from the failure until each limit is reached; your limit of the roots is ${level(situation.bench.plants.lowestRootTemperature)}.`,
      ...told,
    ].join(' '),
    marks,
  };
};
