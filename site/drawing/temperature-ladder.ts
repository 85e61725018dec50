import { messages } from '../../calculators/say.ts';
import type { Cell } from '../../calculators/calculator.ts';
import { nightRung } from '../../calculators/bench/night-ladder.ts';
import { actionAt } from '../../calculators/bench/root-state.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { sentenceText } from '../widgets/text.ts';
import type { Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { wrap } from './measure.ts';
import { nothingDrawn } from './nothing.ts';
import { circle, labels, leading, letters, line, pen, rectangle } from './pen.ts';

/** All on paper [mm]. */
const margin = 2;
const size = letters.small;
/** The tube of the thermometer, its bulb, and how far the tube runs on over the mildest and under the coldest rung. */
const tubeHalf = 1.6;
const bulb = 3.6;
const beyond = 3;
const tubeAt = margin + bulb + 0.5;
/** From the tube to where the words begin. */
const wordsAt = tubeAt + 9;
const rungGap = 2.2;
/** Heads are of the body size, what stands under them of the small one. */
const headHigh = letters.body * leading;
const lineHigh = size * leading;

interface Rung {
  readonly outside: number;
  readonly roots: number;
  /** Share of the time that the cable is on; NaN where it gives nothing. */
  readonly on: number;
  readonly action: Cell;
}

/** Levels that nobody could tell apart on a thermometer are one [K]. */
const same = 0.05;

/** What is on for less or more of the time than this is called off, or on without a pause [1]. */
const [hardlyOn, allButOn] = [0.005, 0.98];

function cableWords(share: number, manner: Manner): string {
  if (Number.isNaN(share)) return 'no cable heats';
  if (share < hardlyOn) return 'the cable rests';
  if (share > allButOn) return 'the cable is on without a pause';
  return `the cable is on for ${showQuantity(share, 'share', manner)} of the time`;
}

const numberOf = (cell: Cell | undefined): number => (typeof cell === 'number' ? cell : NaN);

/**
 * A thermometer for outside, from a light frost down to the night that the bench is built for: beside each rung the roots
 * to expect if a snap goes as far, how much the cable is on while it is coldest, and what to do. Rungs stand as far apart as their words need, not by their degrees.
 */
export const temperatureLadderDrawing: BenchDrawing = ({ situation, answers, manner, width }) => {
  const limit = situation.bench.plants.lowestRootTemperature;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const room = width - margin - wordsAt;
  const { figures, tables } = answers.night;
  const design = figures.outside?.value ?? NaN;
  const milder = (tables?.['ladder']?.rows ?? []).flatMap((row): Rung[] => {
    const [outside, roots, on] = [numberOf(row['outside']), numberOf(row['roots']), numberOf(row['on'])];
    return outside > design + same ? [{ outside, roots, on, action: row['action'] ?? null }] : [];
  });
  if (!figures.outside)
    return nothingDrawn(messages('What the thermometer outside tells you to do'), width, manner);
  const lowest = figures.lowestRootTemperature?.value ?? NaN;
  const { on } = nightRung(situation, design);
  const all: Rung[] = [
    ...milder,
    { outside: design, roots: lowest, on: on ?? NaN, action: actionAt(lowest, limit) },
  ];
  const rungs = all.map(({ outside, roots, on: share, action }, index) => {
    const head = `${level(outside)} outside${index === all.length - 1 ? ': you build for this' : ''}`;
    const state = `Coldest roots ${level(roots)}; ${cableWords(share, manner)}.`;
    const deed = Array.isArray(action) ? sentenceText(action, manner) : '';
    const heads = wrap(head, letters.body, room, true);
    const lines = [state, deed].flatMap((text) => wrap(text, size, room));
    const high = heads.length * headHigh + lines.length * lineHigh;
    return { head, state, deed, heads, lines, high, below: roots < limit };
  });

  const marks: Mark[] = [];
  const top = margin + beyond;
  const places: number[] = [];
  let y = top;
  for (const { heads, lines, high } of rungs) {
    const at = y + headHigh / 2;
    places.push(at);
    const base = at + 0.36 * letters.body;
    marks.push(
      ...labels([wordsAt, base], heads, { bold: true }),
      ...labels([wordsAt, base + heads.length * headHigh - (letters.body - size) / 2], lines, { size }),
    );
    y += high + rungGap;
  }
  const bottom = y - rungGap;

  // From the first rung with roots below the limit the tube is hatched, half a step before it.
  const from = rungs.findIndex(({ below }) => below);
  const [left, right] = [tubeAt - tubeHalf, tubeAt + tubeHalf];
  const tube = { left, right, top: margin, bottom };
  if (from >= 0) {
    const begins = from === 0 ? tube.top : ((places[from - 1] ?? top) + (places[from] ?? top)) / 2;
    marks.push(...hatch({ ...tube, top: begins }, 1.2));
  }
  marks.push(
    rectangle(tube, { stroke: 'ink', width: pen.outline }),
    circle([tubeAt, bottom + bulb - 0.8], bulb, { stroke: 'ink', width: pen.outline, fill: 'ink' }),
  );
  for (const at of places)
    marks.push(
      line(
        [
          [right, at],
          [wordsAt - 1.2, at],
        ],
        { width: pen.outline },
      ),
    );
  const foot = bottom + 2 * bulb;
  const legend =
    from >= 0
      ? `Hatched: the roots come under your limit of ${level(limit)}.`
      : `Your limit is ${level(limit)}; no rung comes under it.`;
  const small = notes([`${legend} A frost that lasts longer goes deeper.`], {
    left: wordsAt,
    top: bottom + rungGap,
    width: room,
  });
  marks.push(...small.marks);
  return {
    width,
    height: Math.max(foot, bottom + rungGap + small.height) + margin,
    title: 'What the thermometer outside tells you to do',
    description: [
      'A thermometer for the temperature outside, from a light frost at the top to the night you build for at the bottom.',
      ...rungs.map(({ head, state, deed }) => `${head}. ${state} ${deed}`),
      legend,
    ].join(' '),
    marks,
  };
};
