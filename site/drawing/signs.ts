import type { Mark, Point } from './drawing.ts';
import { circle, pen, polygon, rectangle } from './pen.ts';

/** The signs that plans and sections share; each can be told from the others by its shape. */

/** A filled triangle that stands on its tip: a sensor. Its tip is where it measures. */
export const sensorSign = ([x, y]: Point): Mark =>
  polygon(
    [
      [x, y],
      [x - 1.5, y - 2.8],
      [x + 1.5, y - 2.8],
    ],
    { fill: 'ink', stroke: 'paper', width: pen.thin },
  );

/** A flash: mains power. */
const bolt = ([x, y]: Point): Mark =>
  polygon(
    [
      [x + 0.5, y - 1.6],
      [x - 0.8, y + 0.2],
      [x, y + 0.2],
      [x - 0.5, y + 1.6],
      [x + 0.8, y - 0.2],
      [x, y - 0.2],
    ],
    { fill: 'ink' },
  );

/** A flash in a box: where the mains supply comes in. */
export const supplySign = ([x, y]: Point): Mark[] => [
  rectangle(
    { left: x - 2, right: x + 2, top: y - 2, bottom: y + 2 },
    { fill: 'paper', stroke: 'ink', width: pen.outline },
  ),
  bolt([x, y]),
];

/** Two rings: an upright pipe seen from above. */
export const standpipeSign = (at: Point, radius: number): Mark[] => [
  circle(at, radius + 0.6, { fill: 'paper', stroke: 'ink', width: pen.edge }),
  circle(at, radius - 0.3, { stroke: 'ink', width: pen.edge }),
];
