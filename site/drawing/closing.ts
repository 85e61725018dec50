import { improvements, type Improvement } from '../../calculators/bench/improvements.ts';
import type { Figure } from '../../calculators/calculator.ts';
import { figureText, sentenceText } from '../widgets/text.ts';
import { barDrawing, type Bar } from './bars.ts';
import type { BenchDrawing } from './input.ts';

/** The power that the bench needs as it is, after each way of closing it in, and after all of them. */
export const closingDrawing: BenchDrawing = ({ situation: { bench }, answers, manner, width }) => {
  const { required, installed } = answers.watts.figures;
  const after = answers.first.figures;
  const power = (figure: Figure) => figureText(figure, 'power', manner);
  const none = 'no heat from below holds the roots';
  const bar = (name: string, figure: Figure | null, look: Bar['look']): Bar => ({
    name,
    to: figure?.value ?? null,
    figure: figure ? power(figure) : none,
    look,
  });
  const nameOf = ({ label }: Improvement): string => sentenceText(label, manner);
  const closings = [
    { improvement: improvements.cover, figure: after.needCover },
    { improvement: improvements.gaps, figure: after.needGaps },
    { improvement: improvements.secondLayer, figure: after.needSecondLayer },
    { improvement: improvements.floor, figure: after.needFloor },
  ];
  const missing = closings.filter(({ improvement }) => !improvement.present(bench));
  const there = closings.filter(({ improvement }) => improvement.present(bench));
  const bars = [
    bar('As it is', required, 'before'),
    ...missing.map(({ improvement, figure }) => bar(nameOf(improvement), figure, 'after')),
    bar('All of them', after.needAll, 'goal'),
  ];
  const have = installed ?? { value: 0 };
  const longest = Math.max(have.value, ...bars.map(({ to }) => to ?? 0));
  const marker = { at: have.value, words: `The upright line: your cable, ${power(have)}.` };
  return barDrawing({
    title: 'Watts before and after',
    lead: 'Bars of the power that holds the coldest roots at your limit on the design night, if it lasted.',
    bars,
    axis: [0, longest],
    marker,
    after: there.map(({ improvement }) => `${nameOf(improvement)}: does not arise, or your bench has it.`),
    width,
  });
};
