import { messages } from '../../calculators/say.ts';
import { designRest } from '../../calculators/bench/steady.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import type { Mark, Point } from './drawing.ts';
import { hatch } from './hatch.ts';
import type { BenchDrawing } from './input.ts';
import { notes } from './key.ts';
import { textWidth, wrap } from './measure.ts';
import { nothingDrawn } from './nothing.ts';
import { label, labels, leading, letters, line, pen, polygon, rectangle } from './pen.ts';
import { spread } from './spread.ts';

/** All on paper [mm]. */
const margin = 2;
const potHigh = 42;
const potWide = { least: 34, most: 52 } as const;
/** Narrower at the base: about three quarters. */
const taper = 0.125;
const plantHigh = 16;
const above = margin + 6;
const scaleGap = 9;
/** How far the axis of temperatures runs over its warmest and under its coldest mark [K]. */
const beyond = 0.6;

/** A plant as the section draws it, a stem with pairs of leaves. */
function plant([x, y]: Point): Mark[] {
  const leaf = plantHigh * 0.3;
  const pairs = [0.35, 0.6, 0.85].flatMap((share) =>
    [-1, 1].map((side) => {
      const from: Point = [x, y - plantHigh * share];
      return line([from, [x + side * leaf, from[1] - leaf * 0.7]], { width: pen.edge });
    }),
  );
  return [
    line([
      [x, y],
      [x, y - plantHigh],
    ]),
    ...pairs,
  ];
}

/**
 * A pot of the bench cut through on the design night without heat, its layers with their temperatures, and beside it a
 * scale with what the roots bear. Layers under the limit are hatched. The pot is not to scale.
 */
export const rootLayersDrawing: BenchDrawing = ({ situation, answers, manner, width }) => {
  const { bench } = situation;
  // Where the calculator was refused its figures the bench at rest would be refused as well.
  if (!answers.roots.figures.withoutHeat)
    return nothingDrawn(messages('A pot on the design night, without heat'), width, manner);
  const rest = designRest(situation, 'no-heat');
  const t = (node: number): number => rest.temperatures[node] ?? NaN;
  const level = (value: number) => showQuantity(value, 'temperature', manner);
  const limit = bench.plants.lowestRootTemperature;
  const { killing, withHeat } = answers.roots.figures;
  const killed = killing?.value ?? limit;
  // From the top layer down.
  const layers = rest.body.roots.map(t).toReversed();
  const coldest = Math.min(...layers);

  const wide = Math.min(potWide.most, Math.max(potWide.least, width * 0.3));
  const left = margin;
  const middle = left + wide / 2;
  const potTop = above + plantHigh + 1;
  const potBottom = potTop + potHigh;
  const edgeAt = (y: number): number => (wide * taper * (y - potTop)) / potHigh;
  const step = potHigh / layers.length;
  const marks: Mark[] = [...plant([middle, potTop])];
  const airAbove = `air at the plants ${level(t(rest.body.plants))}`;
  const airBelow = `air under the bench ${level(t(rest.body.under))}`;
  layers.forEach((value, index) => {
    const [top, bottom] = [potTop + index * step, potTop + (index + 1) * step];
    const inset = Math.max(edgeAt(top), edgeAt(bottom));
    const box = { left: left + inset, right: left + wide - inset, top, bottom };
    if (value < limit) marks.push(...hatch(box, value < killed ? 1.3 : 2.6));
    if (index > 0)
      marks.push(
        line(
          [
            [left + edgeAt(top), top],
            [left + wide - edgeAt(top), top],
          ],
          { width: pen.thin },
        ),
      );
    const text = level(value);
    const half = textWidth(text, letters.body, true) / 2 + 1;
    const at = (top + bottom) / 2;
    marks.push(
      rectangle(
        { left: middle - half, right: middle + half, top: at - 2.7, bottom: at + 2.7 },
        { fill: 'paper' },
      ),
      label([middle, at + 0.36 * letters.body], text, { align: 'middle', bold: true }),
    );
  });
  marks.push(
    polygon(
      [
        [left, potTop],
        [left + wide, potTop],
        [left + wide * (1 - taper), potBottom],
        [left + wide * taper, potBottom],
      ],
      { stroke: 'ink', width: pen.outline },
    ),
  );

  // The scale: the marks that belong to the plant on it, and the temperatures of this night.
  const entries = [
    { at: limit, text: `${level(limit)}: your limit`, bold: true },
    { at: killed, text: `${level(killed)}: has killed such roots`, bold: false },
    { at: coldest, text: `${level(coldest)}: coldest roots, no heat`, bold: true },
    ...(withHeat
      ? [{ at: withHeat.value, text: `${level(withHeat.value)}: with your heat`, bold: false }]
      : []),
    { at: 0, text: `${level(0)}: water freezes`, bold: false },
  ].toSorted((a, b) => b.at - a.at);
  const warmest = Math.max(...entries.map(({ at }) => at)) + beyond;
  const least = Math.min(...entries.map(({ at }) => at)) - beyond;
  const axisAt = left + wide + scaleGap;
  const [axisTop, axisBottom] = [above, potBottom];
  const yOf = (value: number): number =>
    axisBottom - ((axisBottom - axisTop) * (value - least)) / (warmest - least);
  const textAt = axisAt + 7;
  const said = entries.map(({ text, bold }) => wrap(text, letters.small, width - margin - textAt, bold));
  const most = Math.max(...said.map((lines) => lines.length));
  const places = spread(
    entries.map(({ at }) => yOf(at)),
    most * leading * letters.small + 1,
    axisTop,
    axisBottom - (most - 1) * leading * letters.small,
  );
  marks.push(
    line(
      [
        [axisAt, axisTop],
        [axisAt, axisBottom],
      ],
      { width: pen.outline },
    ),
  );
  entries.forEach(({ at, bold }, index) => {
    const place = places[index] ?? axisTop;
    marks.push(
      line(
        [
          [axisAt - 1.5, yOf(at)],
          [axisAt + 1.5, yOf(at)],
          [textAt - 1, place],
        ],
        { width: bold ? pen.outline : pen.thin },
      ),
      ...labels([textAt, place + 0.36 * letters.small], said[index] ?? [], { size: letters.small, bold }),
    );
  });
  // What stands over and under the pot runs as wide as it needs.
  marks.push(
    label([left, margin + letters.small], airAbove, { size: letters.small }),
    label([left, potBottom + 2.5 + letters.small], airBelow, { size: letters.small }),
  );
  const below = potBottom + 2.5 + letters.small + 3;
  const legend = layers.some((value) => value < limit)
    ? `Hatched: layers that come under your limit; close hatching: under ${level(killed)} as well.`
    : 'No layer comes under your limit.';
  const small = notes([legend], { left: margin, top: below, width: width - 2 * margin });
  marks.push(...small.marks);
  return {
    width,
    height: below + small.height + 1,
    title: 'A pot on the design night, without heat',
    description: [
      `A pot cut through on a night at ${level(rest.outside)} outside, without heat, if it lasted; not to scale.`,
      `From the top down its layers are at ${layers.map(level).join(', ')}.`,
      `${airAbove}; ${airBelow}.`,
      ...entries.map(({ text }) => `${text}.`),
      legend,
    ].join(' '),
    marks,
  };
};
