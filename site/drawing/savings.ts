import type { Cell } from '../../calculators/calculator.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { sentenceText } from '../widgets/text.ts';
import { barDrawing, type Bar } from './bars.ts';
import { energyWords } from './energy-words.ts';
import type { BenchDrawing } from './input.ts';

const numberOf = (cell: Cell | undefined): number => (typeof cell === 'number' ? cell : 0);

/** What a winter takes as the bench is, and after each single change, the largest saving of money first. */
export const savingsDrawing: BenchDrawing = ({ situation, answers, manner, width }) => {
  const { figures, tables } = answers.season;
  const [energy, cost] = [figures.energy?.value ?? 0, figures.cost?.value ?? 0];
  const limit = situation.bench.plants.lowestRootTemperature;
  const asIs = figures.lowestRoots?.value ?? limit;
  const changes = (tables?.['savings']?.rows ?? []).map((row): Bar => {
    const change = row['change'];
    const takes = Math.max(0, energy - numberOf(row['saves']));
    const costs = Math.max(0, cost - numberOf(row['money']));
    const lowest = numberOf(row['lowest']);
    // Said only of a change that is to blame for it.
    const colder = lowest < Math.min(limit, asIs);
    const roots = colder ? `; roots at ${showQuantity(lowest, 'temperature', manner)}, below your limit` : '';
    return {
      name: `${Array.isArray(change) ? sentenceText(change, manner) : ''}${roots}`,
      to: takes,
      figure: energyWords(takes, costs, manner),
      look: 'after',
    };
  });
  const bars: Bar[] = [
    { name: 'As it is', to: energy, figure: energyWords(energy, cost, manner), look: 'before' },
    ...changes,
  ];
  return barDrawing({
    title: 'A winter as it is, and after one change',
    lead: 'Bars of the energy that an ordinary winter takes, as the bench is and after each single change, the largest saving of money first.',
    bars,
    axis: [0, Math.max(...bars.map(({ to }) => to ?? 0))],
    after: ['One change at a time. A bar longer than the first one costs more than it saves.'],
    width,
  });
};
