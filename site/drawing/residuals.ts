import type { Cell } from '../../calculators/calculator.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import type { Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { wrap } from './measure.ts';
import { circle, label, labels, leading, letters, line, pen } from './pen.ts';

/** All on paper [mm]. */
const margin = 2;
const size = letters.small;
const namesWide = 48;
const wordsWide = 62;
/** Between names and words the scale needs room of its own. */
const narrowBelow = 150;
const rowHigh = 10;
const dot = 1.1;

/** Beyond this many of its usual errors a reading is not taken for chance; the scale ends a little further out. */
const standsOut = 3;
const furthest = 4;

/** The words of a cell in the reader's units. */
const said = (cell: Cell | undefined, manner: Manner): string =>
  Array.isArray(cell)
    ? (cell as readonly (string | { readonly value: number; readonly quantity: QuantityName })[])
        .map((part) => (typeof part === 'string' ? part : showQuantity(part.value, part.quantity, manner)))
        .join('')
    : '';

/** A number of errors as it is said: "1.3 above", "0.4 below". */
const offWords = (off: number): string =>
  Math.abs(off) < 0.05 ? 'none' : `${Math.abs(off).toFixed(1)} ${off > 0 ? 'above' : 'below'}`;

/**
 * Each reading against what all the others say of it, in parts of its usual error: a dot on a line, with the band in
 * which careful readings of a sound bench lie. What was read and what the fitted model gives stand beside it.
 */
export const residualsDrawing: BenchDrawing = ({ answers, manner, width }) => {
  const rows = (answers.readings.tables?.['compared']?.rows ?? []).map(({ reading, read, after, off }) => ({
    name: said(reading, manner),
    read: said(read, manner),
    fitted: said(after, manner),
    off: typeof off === 'number' ? off : 0,
  }));
  const narrow = width < narrowBelow;
  const left = narrow ? margin + 1 : margin + namesWide;
  const right = width - margin - (narrow ? 1 : wordsWide);
  const xOf = (off: number): number =>
    left + ((right - left) * (Math.max(-furthest, Math.min(furthest, off)) + furthest)) / (2 * furthest);
  const marks: Mark[] = [];
  const top = margin;
  const begins = top + leading * size + 1;
  const high = narrow ? 5 + 2 * leading * size + 3 : rowHigh;
  const bottom = begins + rows.length * high;

  if (rows.length > 0) {
    for (const tick of [-standsOut, 0, standsOut])
      marks.push(
        label([xOf(tick), top + size], `${tick < 0 ? '−' : ''}${Math.abs(tick)}`, { size, align: 'middle' }),
      );
  }
  rows.forEach(({ name, read, fitted, off }, index) => {
    const place = begins + index * high;
    const words = `read ${read}, fitted ${fitted}`;
    const out = Math.abs(off) > standsOut;
    if (narrow) {
      marks.push(label([margin, place + size], name, { size, bold: out }));
      marks.push(label([margin, place + high - 4], words, { size }));
    } else {
      const lines = wrap(name, size, namesWide - 3, out).slice(0, 2);
      const first = place + rowHigh / 2 + 0.36 * size - ((lines.length - 1) * leading * size) / 2;
      marks.push(...labels([margin, first], lines, { size, bold: out }));
      const behind = wrap(words, size, wordsWide - 4).slice(0, 2);
      const start = place + rowHigh / 2 + 0.36 * size - ((behind.length - 1) * leading * size) / 2;
      marks.push(...labels([right + 3, start], behind, { size }));
    }
    const y = narrow ? place + leading * size + 2.6 : place + rowHigh / 2;
    const box = { left: xOf(-furthest), right: xOf(furthest), top: y - 2, bottom: y + 2 };
    // What is beyond chance is hatched, so that the band between stays white.
    marks.push(
      ...hatch({ ...box, right: xOf(-standsOut) }, 1.3),
      ...hatch({ ...box, left: xOf(standsOut) }, 1.3),
      line(
        [
          [box.left, y],
          [box.right, y],
        ],
        { width: pen.thin, stroke: 'faint' },
      ),
      ...[-standsOut, 0, standsOut].map((tick) =>
        line(
          [
            [xOf(tick), box.top],
            [xOf(tick), box.bottom],
          ],
          { width: tick === 0 ? pen.edge : pen.thin },
        ),
      ),
      line(
        [
          [xOf(0), y],
          [xOf(off), y],
        ],
        { width: 0.8 },
      ),
      circle([xOf(off), y], dot, { fill: 'ink', stroke: 'ink', width: pen.thin }),
    );
  });

  const legend =
    rows.length === 0
      ? 'Nothing was read yet that could be compared with the model.'
      : 'Each dot: how far a reading lies above (right) or below (left) what all the others say, in parts of its usual error. In the hatched parts, beyond 3, something is wrong.';
  const small = notes([legend], { left: margin, top: bottom + 2, width: width - 2 * margin });
  marks.push(...small.marks);
  return {
    width,
    height: bottom + 2 + small.height + 1,
    title: 'Readings against the model',
    description: [
      ...rows.map(
        ({ name, read, fitted, off }) =>
          `${name.charAt(0).toUpperCase()}${name.slice(1)}: read ${read}, fitted ${fitted}, off by its usual errors: ${offWords(off)}.`,
      ),
      legend,
    ].join(' '),
    marks,
  };
};
