import type { Bench } from '../../calculators/bench/fields.ts';
import type { Point } from './drawing.ts';

/** Width of the strip where a piece of a long bench is left out [mm]. */
export const strip = 4;
/** How wide the bench is drawn at least and at most [mm]. */
export const leastWide = 13;
export const mostWide = 70;

/** From metres along and across the bench to paper. A long bench is shown by its two ends. */
export interface Sheet {
  /** Length of the bench [m]. */
  readonly length: number;
  readonly perMetre: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Where the piece that is left out begins and ends [m]; both the same where nothing is. */
  readonly cut: readonly [number, number];
}

/** How wide the bench may be drawn at most [mm], and the scale that is kept for one that would fit. */
export interface Fitting {
  readonly most: number;
  readonly round: (perMetre: number) => number;
  /** Room on the right that is made use of where there is as much [mm]. */
  readonly aside: number;
}

/** Whether a piece of the bench is left out. */
export const isBroken = ({ cut }: Sheet): boolean => cut[0] < cut[1];

/** Whether a place so far along the bench [m] shows. */
export const shows = ({ cut }: Sheet, along: number): boolean => along <= cut[0] || along >= cut[1];

/** What would lie on the piece that is left out is drawn at its nearer end. */
const xOn = ({ length, perMetre, left, right, cut }: Sheet, along: number): number =>
  along <= (cut[0] + cut[1]) / 2
    ? left + Math.min(along, cut[0]) * perMetre
    : right - (length - Math.max(along, cut[1])) * perMetre;

/** From a place on the bench [m] to paper. */
export const on = (sheet: Sheet, [along, over]: Point): Point => [
  xOn(sheet, along),
  sheet.bottom - over * sheet.perMetre,
];

/** Where the bench lies between two sides of the paper, its upper edge given. */
export function sheetOf({ frame }: Bench, left: number, right: number, top: number, fitting: Fitting): Sheet {
  const room = right - left;
  const fitted = Math.min(room / frame.length, fitting.most / frame.width);
  const perMetre = fitting.round(Math.max(fitted, leastWide / frame.width));
  const whole = perMetre * frame.length <= room + 1e-9;
  const wide = whole ? perMetre * frame.length : room;
  // In the middle, unless what is left over on the right has room for something else.
  const spare = room - wide >= fitting.aside ? 0 : (room - wide) / 2;
  const half = (room - strip) / 2 / perMetre;
  return {
    length: frame.length,
    perMetre,
    left: left + spare,
    right: left + spare + wide,
    top,
    bottom: top + frame.width * perMetre,
    cut: whole ? [frame.length, frame.length] : [half, frame.length - half],
  };
}
