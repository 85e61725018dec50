import { sentenceText } from '../widgets/text.ts';
import { barDrawing, type Bar } from './bars.ts';
import { energyWords } from './energy-words.ts';
import type { BenchDrawing } from './input.ts';

/** What the bench takes in each month of an ordinary winter, in energy and money. */
export const monthsDrawing: BenchDrawing = ({ answers, manner, width }) => {
  const { figures, tables } = answers.season;
  const { energy, cost } = figures;
  const bars = (tables?.['months']?.rows ?? []).map((row): Bar => {
    const [month, takes, costs] = [row['month'], Number(row['energy']), Number(row['cost'])];
    return {
      name: Array.isArray(month) ? sentenceText(month, manner) : '',
      to: takes,
      figure: energyWords(takes, costs, manner),
      look: 'after',
    };
  });
  return barDrawing({
    title: 'Energy and money, month by month',
    lead: 'Bars of the energy that the cable takes in each month of an ordinary winter.',
    bars,
    axis: [0, Math.max(0, ...bars.map(({ to }) => to ?? 0))],
    after: [`The whole winter: ${energyWords(energy?.value ?? 0, cost?.value ?? 0, manner)}.`],
    width,
  });
};
