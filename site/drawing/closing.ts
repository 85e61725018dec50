import { improvements } from '../../calculators/bench/improvements.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { barDrawing, type Bar } from './bars.ts';
import type { BenchDrawing } from './input.ts';

/** The power that the bench needs as it is, after each way of closing it in, and after all of them. */
export const closingDrawing: BenchDrawing = ({ situation: { bench }, answers, manner, width }) => {
  const { required, installed } = answers.watts.figures;
  const after = answers.first.figures;
  const power = (value: number) => showQuantity(value, 'power', manner);
  const none = 'no heat from below holds the roots';
  const bar = (name: string, value: number | undefined, look: Bar['look']): Bar => ({
    name,
    to: value ?? null,
    figure: value === undefined ? none : power(value),
    look,
  });
  const thickness = improvements.floor.changes.frame.floorInsulation;
  const board = `Foam board, ${showQuantity(thickness, 'size', manner)}, on the floor`;
  const closings = [
    { improvement: improvements.cover, value: after.needCover?.value },
    { improvement: improvements.gaps, value: after.needGaps?.value },
    { improvement: improvements.secondLayer, value: after.needSecondLayer?.value },
    { improvement: { ...improvements.floor, label: board }, value: after.needFloor?.value },
  ];
  const missing = closings.filter(({ improvement }) => !improvement.present(bench));
  const there = closings.filter(({ improvement }) => improvement.present(bench));
  const bars = [
    bar('As it is', required?.value, 'before'),
    ...missing.map(({ improvement, value }) => bar(improvement.label, value, 'after')),
    bar('All of them', after.needAll?.value, 'goal'),
  ];
  const have = installed?.value ?? 0;
  const longest = Math.max(have, ...bars.map(({ to }) => to ?? 0));
  const marker = { at: have, words: `The upright line: your cable, ${power(have)}.` };
  return barDrawing({
    title: 'Watts before and after',
    lead: 'Bars of the power that holds the coldest roots at your limit on the design night, if it lasted.',
    bars,
    axis: [0, longest],
    marker,
    after: there.map(({ improvement }) => `${improvement.label}: does not arise, or your bench has it.`),
    width,
  });
};
