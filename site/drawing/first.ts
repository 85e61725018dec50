import { showQuantity } from '../../calculators/quantities/show.ts';
import { barDrawing, type Bar } from './bars.ts';
import type { BenchDrawing } from './input.ts';

/** The axis begins this far under the coldest of the bars [K]. */
const under = 1;

/** How cold the roots get on the design night from the same bare bench after each change and after several. */
export const firstDrawing: BenchDrawing = ({ situation, answers, manner, width }) => {
  const { bare, cover, sensor, moreWatts, coverAndSensor, all } = answers.first.figures;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const bar = (name: string, figure: { readonly value: number } | null, look: Bar['look']): Bar => ({
    name,
    to: figure?.value ?? null,
    figure: figure ? level(figure.value) : '',
    look,
  });
  const bars = [
    bar('No cover, and the sensor on the pipe', bare, 'before'),
    bar('Only a film cover added', cover, 'after'),
    bar('Only the sensor moved into a pot', sensor, 'after'),
    bar('Only twice the watts', moreWatts, 'after'),
    bar('Cover and sensor', coverAndSensor, 'after'),
    bar('Cover, sensor and twice the watts', all, 'goal'),
  ];
  const limit = situation.bench.plants.lowestRootTemperature;
  const ends = [limit, ...bars.map(({ to }) => to ?? limit)];
  const axis = [Math.min(...ends) - under, Math.max(...ends)] as const;
  const marker = { at: limit, words: `The upright line: your limit, ${level(limit)}.` };
  return barDrawing({
    title: 'What each change does for the roots',
    lead: 'Bars of the temperature of the coldest roots on the design night, if it lasted, each longer the warmer they are.',
    bars,
    axis,
    marker,
    width,
  });
};
