import { sureFigures, type HowSure } from '../../calculators/bench/how-sure.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import type { Drawing, Mark } from './drawing.ts';
import { hatch } from './hatch.ts';
import { textWidth } from './measure.ts';
import { label, letters, line, pen, rectangle } from './pen.ts';

/** All on paper [mm]. */
const thick = 4;
const rowStep = 6.5;
const figureStep = 9;
const nameStep = 5.5;
const gap = 1.5;

const waysOfTelling = [
  { key: 'allAtOnce', words: 'all at once' },
  { key: 'inputByInput', words: 'one by one' },
] as const;

/**
 * The ranges of the headline figures by both ways, one under the other, each figure on a scale of its own: hatched with
 * all inputs moved at once, open with one moved at a time, an upright line through both at the expected value.
 */
export function howSureDrawing({
  sure,
  manner,
  width,
}: {
  readonly sure: HowSure;
  readonly manner: Manner;
  readonly width: number;
}): Drawing {
  const marks: Mark[] = [];
  const said: string[] = [];
  const size = letters.small;
  const wordsWide = Math.max(...waysOfTelling.map(({ words }) => textWidth(words, size))) + gap;
  let y = 1;
  for (const { name, value, ...ends } of sure.figures) {
    const { label: title, quantity } = sureFigures[name];
    const show = (one: number): string => showQuantity(one, quantity, manner);
    marks.push(label([0, y + letters.body], `${title}: ${show(value)}`, { bold: true }));
    y += nameStep + letters.body - letters.small;
    const numbers = waysOfTelling.flatMap(({ key }) => [ends[key].low, ends[key].high]);
    const widest = Math.max(...numbers.map((one) => textWidth(show(one), size))) + gap;
    const left = wordsWide + widest;
    const right = width - widest;
    const least = Math.min(...numbers, value);
    const span = Math.max(...numbers, value) - least || 1;
    const across = (one: number): number => left + ((right - left) * (one - least)) / span;
    const top = y;
    for (const { key, words } of waysOfTelling) {
      const { low, high } = ends[key];
      const box = { left: across(low), right: across(high), top: y, bottom: y + thick };
      const base = y + thick / 2 + 0.36 * size;
      if (key === 'allAtOnce') marks.push(...hatch(box, 1.1));
      marks.push(rectangle(box, { stroke: 'ink', width: pen.edge }));
      marks.push(label([0, base], words, { size }));
      marks.push(label([box.left - gap, base], show(low), { size, align: 'end' }));
      marks.push(label([box.right + gap, base], show(high), { size }));
      y += rowStep;
    }
    const ticks = [
      [across(value), top - 1],
      [across(value), y - rowStep + thick + 1],
    ] as const;
    marks.push(line(ticks, { width: 0.8 }));
    const range = (key: 'allAtOnce' | 'inputByInput'): string =>
      `${show(ends[key].low)} to ${show(ends[key].high)}`;
    said.push(
      `${title}: expected ${show(value)}; ${range('allAtOnce')} with all inputs at once, ${range('inputByInput')} one by one.`,
    );
    y += figureStep - (rowStep - thick);
  }
  return {
    width,
    height: y - figureStep + rowStep,
    title: 'The ranges by two ways',
    description: `Two bars for each figure, from the low end of its range to the high end, the expected value marked across both. ${said.join(' ')}`,
    marks,
  };
}
