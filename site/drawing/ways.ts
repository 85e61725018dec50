import type { Figure } from '../../calculators/calculator.ts';
import { figureText } from '../widgets/text.ts';
import { barDrawing, type Bar } from './bars.ts';
import type { BenchDrawing } from './input.ts';

/** The power that each way of heating needs to hold the roots on the design night. */
export const waysDrawing: BenchDrawing = ({ answers, manner, width }) => {
  const { loop, cable, mat, lamps, tank } = answers.ways.figures;
  const power = (figure: Figure) => figureText(figure, 'power', manner);
  const bar = (name: string, figure: Figure | null): Bar => ({
    name,
    to: figure?.value ?? null,
    figure: figure ? power(figure) : 'no power does it: water or air would be too hot',
    look: 'after',
  });
  const bars = [
    bar('Cable on a water-filled loop', loop),
    bar('Bare cable in the air under the bench', cable),
    bar('Heating mat under the pots', mat),
    bar('Heat lamps over the plants', lamps),
    bar('Immersion heater in the loop or a tank', tank),
  ];
  const have = answers.watts.figures.installed ?? { value: 0 };
  const axis = [0, Math.max(have.value, ...bars.map(({ to }) => to ?? 0))] as const;
  const marker = { at: have.value, words: `The upright line: your cable, ${power(have)}.` };
  return barDrawing({
    title: 'Five ways, the same night',
    lead: 'Bars of the power that holds the coldest roots at your limit on the design night, if it lasted, by where the heat is brought in.',
    bars,
    axis,
    marker,
    width,
  });
};
