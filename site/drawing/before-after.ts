import type { Cell, Figure } from '../../calculators/calculator.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showNumber, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import type { Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { wrap } from './measure.ts';
import { labels, leading, letters, line, pen, rectangle } from './pen.ts';

/** All on paper [mm]. */
const margin = 2;
const size = letters.small;
const thick = { before: 2.6, after: 3.6 } as const;
const barGap = 1;
const rowGap = 4.5;
/** Room for the words behind the bars; on a narrow sheet they stand under the bars. */
const wordsWide = 62;
const narrowBelow = 120;
/** Beyond the ends of the wider range, in parts of it. */
const beyond = 0.06;
/** A range of nothing is still seen [mm]. */
const leastBar = 0.6;

interface Range {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** One thing that is known better after the readings. */
interface Row {
  readonly name: string;
  readonly before: Range;
  /** Null before anything was read. */
  readonly after: Range | null;
  readonly quantity: QuantityName;
  /** Unit of what has no quantity of its own. */
  readonly unit: string;
  readonly headline: boolean;
}

const rangeOf = (figure: Figure | null | undefined): Range | null =>
  figure?.low === undefined || figure.high === undefined
    ? null
    : { value: figure.value, low: figure.low, high: figure.high };

/** The range that a cell of the table of inputs says: expected, low and high, with the unit after the first. */
function rangeIn(cell: Cell | undefined): (Range & { quantity: QuantityName; unit: string }) | null {
  if (!Array.isArray(cell)) return null;
  const parts = cell as readonly (string | { readonly value: number; readonly quantity: QuantityName })[];
  const amounts = parts.filter((part) => typeof part !== 'string');
  const [value, low, high] = amounts;
  if (!value || !low || !high) return null;
  const after = parts[1];
  const unit = typeof after === 'string' ? after.replace(/\s*\($/u, '') : '';
  return { value: value.value, low: low.value, high: high.value, quantity: value.quantity, unit };
}

/** A figure that has no quantity of its own, to three digits at most. */
const bare = (value: number): string =>
  Math.abs(value) >= 10 ? String(Math.round(value)) : String(Math.round(value * 100) / 100);

function words({ value, low, high }: Range, { quantity, unit }: Row, manner: Manner): string {
  if (quantity === 'number') return `${bare(value)}${unit} (${bare(low)} to ${bare(high)})`;
  const [from, to] = [showNumber(low, quantity, manner), showNumber(high, quantity, manner)];
  return `${showQuantity(value, quantity, manner)} (${from} to ${to})`;
}

/**
 * What was known before the readings and after: a line for each headline figure and for each uncertain input that the
 * readings speak to, with its range before as a hatched bar and after as an outlined one. Each line has a scale of its
 * own: what counts is how much shorter the second bar is, and where it lies.
 */
export const beforeAfterDrawing: BenchDrawing = ({ answers, manner, width }) => {
  const { figures, tables } = answers.readings;
  const headline = (
    name: string,
    before: Figure | null,
    after: Figure | null,
    quantity: QuantityName,
  ): Row[] => {
    const range = rangeOf(before);
    return range ? [{ name, before: range, after: rangeOf(after), quantity, unit: '', headline: true }] : [];
  };
  const { coldestRootsBefore, coldestRoots, requiredBefore, required, designRiseBefore, designRise } =
    figures;
  const rows: Row[] = [
    ...headline('Coldest roots on the design night', coldestRootsBefore, coldestRoots, 'temperature'),
    ...headline('Power needed to hold your limit', requiredBefore, required, 'power'),
    ...headline(
      'Rise under the bench on the design night',
      designRiseBefore,
      designRise,
      'temperatureDifference',
    ),
    ...(tables?.['inputs']?.rows ?? []).flatMap(({ input, before, after }): Row[] => {
      const [from, to] = [rangeIn(before), rangeIn(after)];
      const name = Array.isArray(input) && typeof input[0] === 'string' ? input[0] : '';
      if (!from || !to) return [];
      const { quantity, unit } = from;
      return [
        {
          name: name.charAt(0).toUpperCase() + name.slice(1),
          before: from,
          after: to,
          quantity,
          unit,
          headline: false,
        },
      ];
    }),
  ];

  const narrow = width < narrowBelow;
  const [left, right] = [margin, narrow ? width - margin : width - margin - wordsWide];
  const marks: Mark[] = [];
  let y = margin;
  for (const row of rows) {
    const { name, before, after, headline: bold } = row;
    const all = after ? [before, after] : [before];
    const least = Math.min(...all.map(({ low }) => low));
    const most = Math.max(...all.map(({ high }) => high));
    const room = (most - least) * beyond || 1;
    const [from, to] = [least - room, most + room];
    const xOf = (value: number): number => left + ((right - left) * (value - from)) / (to - from);
    const lines = wrap(name, size, width - 2 * margin, bold);
    marks.push(...labels([left, y + size], lines, { size, bold }));
    y += lines.length * leading * size + 0.6;
    const bars = [
      { range: before, high: thick.before, word: 'before', outline: pen.thin },
      ...(after ? [{ range: after, high: thick.after, word: 'after', outline: pen.outline }] : []),
    ];
    for (const { range, high, word, outline } of bars) {
      const ends = [xOf(range.low), xOf(range.high)] as const;
      const middle = (ends[0] + ends[1]) / 2;
      const half = Math.max(leastBar, ends[1] - ends[0]) / 2;
      const box = { left: middle - half, right: middle + half, top: y, bottom: y + high };
      if (word === 'before') marks.push(...hatch(box, 1.3));
      marks.push(rectangle(box, { stroke: 'ink', width: outline }));
      const at = xOf(range.value);
      marks.push(
        line(
          [
            [at, y - 0.5],
            [at, y + high + 0.5],
          ],
          { width: 0.8 },
        ),
      );
      const said = `${word} ${words(range, row, manner)}`;
      if (narrow) {
        y += high + barGap;
        const under = wrap(said, size, width - 2 * margin, word === 'after');
        marks.push(...labels([left, y + size], under, { size, bold: word === 'after' }));
        y += under.length * leading * size + 0.8;
      } else {
        const bold = word === 'after';
        const beside = wrap(said, size, wordsWide - 3, bold);
        marks.push(...labels([right + 3, y + high / 2 + 0.36 * size], beside, { size, bold }));
        y += high + barGap + 0.8 + (beside.length - 1) * leading * size;
      }
    }
    y += rowGap - barGap;
  }

  const legend = rows.some(({ after }) => after)
    ? [
        'Hatched: expected before the readings. Outlined: after them. The stroke is the middle; four of five benches lie within the bar.',
        'Each line has its own scale.',
      ]
    : ['Hatched: what is expected of a bench like this. Nothing that can be fitted was read yet.'];
  const small = notes([legend.join(' ')], { left, top: y, width: width - 2 * margin });
  marks.push(...small.marks);
  return {
    width,
    height: y + small.height + 1,
    title: 'What the readings change',
    description: [
      ...rows.map((row) => {
        const then = row.after ? `, after ${words(row.after, row, manner)}` : '';
        return `${row.name}: before ${words(row.before, row, manner)}${then}.`;
      }),
      ...legend,
    ].join(' '),
    marks,
  };
};
