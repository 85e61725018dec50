import { conductors } from '../../calculators/tables/conductors.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { sayingOf, valueText } from '../widgets/text.ts';
import { fields } from '../../calculators/bench/fields.ts';
import type { Mark, Point } from './drawing.ts';
import type { BenchDrawing } from './input.ts';
import { balloonRadius, key, notes, pointer } from './key.ts';
import { circle, line, pen, rectangle } from './pen.ts';

/** All on paper [mm]. */
const margin = 2;
const half = 3.2;
const balloonsAt = margin + balloonRadius;
const wireAt = balloonsAt + balloonRadius + 10;

/** Straight wire between two places. */
const wire = (from: number, to: number): Mark =>
  line([
    [from, wireAt],
    [to, wireAt],
  ]);

/** A switch in the wire: two dots and a blade that stands open. */
const blade = (x: number): Mark[] => [
  rectangle(
    { left: x - half, right: x + half, top: wireAt - half - 1, bottom: wireAt + half },
    {
      fill: 'paper',
      stroke: 'ink',
      width: pen.outline,
    },
  ),
  circle([x - 1.9, wireAt], 0.5, { fill: 'ink' }),
  circle([x + 1.9, wireAt], 0.5, { fill: 'ink' }),
  line([
    [x - 1.9, wireAt],
    [x + 1.3, wireAt - 2],
  ]),
];

/** A device in the wire with a ring around both conductors. */
const guard = (x: number, there: boolean): Mark[] => [
  rectangle(
    { left: x - half, right: x + half, top: wireAt - half - 1, bottom: wireAt + half },
    {
      fill: 'paper',
      stroke: 'ink',
      width: pen.outline,
      ...(there ? {} : { dash: [1, 1] }),
    },
  ),
  circle([x, wireAt - 0.5], 1.8, { stroke: 'ink', ...(there ? {} : { dash: [1, 1] }) }),
];

/** The heating cable: a line that goes up and down. */
const zigzag = (from: number, to: number): Mark => {
  const count = 6;
  const step = (to - from) / count;
  const points = Array.from({ length: count + 1 }, (_, index): Point => [
    from + index * step,
    wireAt + (index === 0 ? 0 : index % 2 === 1 ? -2.4 : 2.4),
  ]);
  return line(points, { stroke: 'heat', width: pen.outline });
};

/** What feeds the cable, one thing after another, with the numbers of the bench: a diagram, not a plan for wiring. */
export const feedDrawing: BenchDrawing = ({ situation: { bench, region }, answers, manner, width }) => {
  const { supply, cable } = bench;
  const { current, cableCurrent, startUpCurrent, smallestBreaker, voltageDrop, powerArriving } =
    answers.circuit.figures;
  const amperes = (value: number) => showQuantity(value, 'current', manner);
  const long = (value: number) => showQuantity(value, 'length', manner);
  const power = (value: number) => showQuantity(value, 'power', manner);
  const guarded = supply.protection !== 'none';
  const protection = valueText(supply.protection, sayingOf(fields.supply.fields.protection), manner);
  const least = smallestBreaker
    ? `the smallest that will do is ${showQuantity(smallestBreaker.value, 'breakerSize', manner)}`
    : 'no standard size is large enough';
  const switched = Math.max(cableCurrent?.value ?? 0, startUpCurrent?.value ?? 0);
  const entries = [
    `Supply: ${showQuantity(supply.voltage ?? region.mains.voltage, 'voltage', manner)}`,
    `Breaker: ${showQuantity(supply.breaker, 'breakerSize', manner)}; ${least}`,
    guarded
      ? `Ground-fault protection: ${protection.charAt(0).toLowerCase()}${protection.slice(1)}`
      : 'Ground-fault protection: none. Never switch on without it',
    `Feeder: ${long(supply.feederLength)} of ${conductors[supply.conductor].label}, takes ${showQuantity(voltageDrop?.value ?? 0, 'share', manner)} of the voltage`,
    `Thermostat, made to switch ${amperes(switched)} or more`,
    'Limit thermostat on the pipe, in the same wire',
    `Heating cable: ${long(cable.length)}, draws ${amperes(cableCurrent?.value ?? 0)}${powerArriving ? `; ${power(powerArriving.value)} arrive` : ''}`,
  ];
  const [left, right] = [margin + half + 1, width - margin - half - 1];
  const step = (right - left) / (entries.length - 1);
  const x = (index: number) => left + index * step;
  const marks: Mark[] = [
    wire(x(0), x(5) + half),
    // The feeder is the long piece: a break in it, and a thicker line.
    line(
      [
        [x(3) - step / 2 + half, wireAt],
        [x(3) + step / 2 - half, wireAt],
      ],
      { width: 0.9 },
    ),
    circle([x(0), wireAt], half, { fill: 'paper', stroke: 'ink', width: pen.outline }),
    line([
      [x(0) - 1.6, wireAt + 0.6],
      [x(0) - 0.4, wireAt - 1],
      [x(0) + 0.4, wireAt + 1],
      [x(0) + 1.6, wireAt - 0.6],
    ]),
    ...blade(x(1)),
    ...guard(x(2), guarded),
    ...blade(x(4)),
    ...blade(x(5)),
    zigzag(x(5) + half, width - margin),
    ...entries.flatMap((_, index) => {
      const top = index === 0 ? wireAt - half : index === 3 ? wireAt : wireAt - half - 1;
      const thing: Point = [x(index), index === 6 ? wireAt - 2 : top];
      return pointer([x(index), balloonsAt], thing, index + 1);
    }),
  ];
  const under = wireAt + half + 4;
  const legend = key(entries, { left: margin, top: under, width: width - 2 * margin });
  const said = `The whole circuit draws ${amperes(current?.value ?? 0)}. In what order the devices sit, and how they are wired, is the electrician’s work.`;
  const small = notes([said], { left: margin, top: under + legend.height + 1, width: width - 2 * margin });
  return {
    width,
    height: under + legend.height + 1 + small.height + margin,
    title: 'What feeds the cable',
    description: [
      'From the supply to the heating cable, one after the other:',
      ...entries.map((entry, index) => `${index + 1}. ${entry}.`),
      said,
    ].join(' '),
    marks: [...marks, ...legend.marks, ...small.marks],
  };
};
