import type { Mark, Point } from './drawing.ts';
import { pen, polygon } from './pen.ts';

/** A filled triangle that stands on its tip: the sign of a sensor. Its tip is where it measures. */
export const sensorMark = ([x, y]: Point): Mark =>
  polygon(
    [
      [x, y],
      [x - 1.5, y - 2.8],
      [x + 1.5, y - 2.8],
    ],
    { fill: 'ink', stroke: 'paper', width: pen.thin },
  );
