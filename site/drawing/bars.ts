import type { Drawing, Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import { notes } from './key.ts';
import { textWidth, wrap } from './measure.ts';
import { label, labels, leading, letters, line, pen, rectangle } from './pen.ts';

/** A level bar: what it stands for over it, its bar, and its figure behind it. */
export interface Bar {
  readonly name: string;
  /** Where it ends on the axis; null where it has no length: then its figure says why. */
  readonly to: number | null;
  /** The figure in words, such as "620 W". */
  readonly figure: string;
  /** `before`: dense hatching, what others are compared with; `after`: open; `goal`: bold outline. */
  readonly look: 'before' | 'after' | 'goal';
}

/** An upright line through all bars, such as a limit, with its words under them. */
interface Marker {
  readonly at: number;
  readonly words: string;
}

interface Bars {
  readonly bars: readonly Bar[];
  /** The values at the left end of every bar and at the right end of the longest. */
  readonly axis: readonly [from: number, to: number];
  readonly marker?: Marker;
  readonly left: number;
  readonly top: number;
  readonly width: number;
}

/** All on paper [mm]. */
const margin = 2;
const noteGap = 2.5;
const thick = 5;
const nameGap = 1.5;
const rowGap = 4;
const figureGap = 2;
const hatching = { before: 1.1, after: 2.6, goal: 2.6 } as const;
/** A bar of nothing still shows where it begins. */
const shortest = 0.3;

/**
 * Bars under one another, each with its name over it and its figure behind it: told apart by hatching, never by colour.
 *
 * @returns the marks and the height that they take
 */
function barMarks({ bars, axis, marker, left, top, width }: Bars): {
  readonly marks: readonly Mark[];
  readonly height: number;
} {
  const size = letters.small;
  const widest = Math.max(
    0,
    ...bars.filter(({ to }) => to !== null).map(({ figure }) => textWidth(figure, letters.body, true)),
  );
  const room = Math.max(10, width - widest - figureGap);
  const [from, to] = axis;
  const span = to > from ? to - from : 1;
  const across = (value: number): number =>
    left + room * Math.min(1, Math.max(shortest / room, (value - from) / span));
  const marks: Mark[] = [];
  const rows: { readonly top: number; readonly bottom: number }[] = [];
  let y = top;
  for (const { name, to: end, figure, look } of bars) {
    const lines = wrap(name, size, width, look === 'goal');
    marks.push(...labels([left, y + size], lines, { size, bold: look === 'goal' }));
    const barTop = y + lines.length * leading * size - (leading - 1) * size + nameGap;
    const box = { left, top: barTop, right: end === null ? left : across(end), bottom: barTop + thick };
    const base = barTop + thick / 2 + 0.36 * letters.body;
    if (end === null) {
      const said = wrap(figure, size, width);
      marks.push(...labels([left, barTop + size], said, { size }));
      y = barTop + said.length * leading * size + rowGap;
      continue;
    }
    marks.push(...hatch(box, hatching[look]));
    marks.push(rectangle(box, { stroke: 'ink', width: look === 'goal' ? 0.7 : pen.edge }));
    marks.push(label([box.right + figureGap, base], figure, { bold: look === 'goal' }));
    rows.push({ top: barTop - 0.8, bottom: barTop + thick + 0.8 });
    y = barTop + thick + rowGap;
  }
  let bottom = y - rowGap;
  if (marker && rows.length > 0) {
    const at = across(marker.at);
    // In pieces, so that it passes through no name; it gives way to a figure that stands where it would run.
    for (const row of rows) {
      const free = !marks.some(
        (mark) =>
          mark.kind === 'text' &&
          mark.at[1] > row.top &&
          mark.at[1] < row.bottom &&
          mark.at[0] - 1 < at &&
          at < mark.at[0] + textWidth(mark.text, mark.size, mark.bold) + 1,
      );
      if (free)
        marks.push(
          line(
            [
              [at, row.top],
              [at, row.bottom],
            ],
            { width: 0.8 },
          ),
        );
    }
    const lines = wrap(marker.words, size, width);
    const wide = Math.max(...lines.map((text) => textWidth(text, size)));
    const start = Math.min(Math.max(left, at - wide / 2), left + width - wide);
    marks.push(...labels([start, bottom + 1.5 + size], lines, { size }));
    bottom += 1.5 + lines.length * leading * size;
  }
  return { marks, height: bottom - top };
}

interface BarDrawing extends Omit<Bars, 'left' | 'top' | 'width'> {
  readonly title: string;
  /** What the bars tell, in a sentence, for those who cannot see them. */
  readonly lead: string;
  /** Sentences under the bars. */
  readonly after?: readonly string[];
  /** Width of the drawing on paper [mm]. */
  readonly width: number;
}

/** A drawing of nothing but bars, with its frame, its words under it and its text for those who cannot see it. */
export function barDrawing({ title, lead, after = [], width, ...bars }: BarDrawing): Drawing {
  const place = { left: margin, width: width - 2 * margin };
  const drawn = barMarks({ ...bars, ...place, top: margin });
  const below = margin + drawn.height + (after.length > 0 ? noteGap : 0);
  const small = notes(after, { ...place, top: below });
  return {
    width,
    height: below + small.height + margin,
    title,
    description: [
      lead,
      ...bars.bars.map(({ name, figure }) => `${name}: ${figure}.`),
      ...(bars.marker ? [bars.marker.words] : []),
      ...after,
    ].join(' '),
    marks: [...drawn.marks, ...small.marks],
  };
}
