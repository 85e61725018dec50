import type { Box } from './measure.ts';
import type { Mark, Point, Tone } from './drawing.ts';

/** The pens and letters of the guide. Whoever draws takes these, so that all drawings speak one language. */

/** Widths of lines [mm]: what is cut or outlined, what is seen behind it, what measures or points. */
export const pen = { outline: 0.5, edge: 0.35, thin: 0.2 } as const;

/** Sizes of letters [mm]; nothing is smaller than `small`, so that all can be read at arm's length. */
export const letters = { small: 3.2, body: 3.6, strong: 4 } as const;

interface Style {
  readonly stroke?: Tone;
  readonly width?: number;
  readonly dash?: readonly number[];
  readonly fill?: Tone;
}

/** A line, solid and of the edge's width unless told otherwise. */
export const line = (points: readonly Point[], style: Style = {}): Mark => ({
  kind: 'line',
  points,
  stroke: 'ink',
  width: pen.edge,
  ...style,
});

/** An outline that comes back to its start. */
export const polygon = (points: readonly Point[], style: Style): Mark => ({
  kind: 'line',
  points,
  closed: true,
  ...style,
});

export const rectangle = ({ left, top, right, bottom }: Box, style: Style): Mark =>
  polygon(
    [
      [left, top],
      [right, top],
      [right, bottom],
      [left, bottom],
    ],
    style,
  );

export const circle = (at: Point, radius: number, style: Style): Mark => ({
  kind: 'circle',
  at,
  radius,
  ...style,
});

interface Lettering {
  readonly size?: number;
  readonly align?: 'start' | 'middle' | 'end';
  readonly bold?: boolean;
  readonly upward?: boolean;
  readonly tone?: Tone;
}

export const label = (at: Point, text: string, lettering: Lettering = {}): Mark => ({
  kind: 'text',
  at,
  text,
  size: letters.body,
  ...lettering,
});

/** Distance between two lines of text, in shares of the letters' size. */
export const leading = 1.3;

/** Several lines of text, one under the other; the first one's letters stand on this point. */
export const labels = (at: Point, lines: readonly string[], lettering: Lettering = {}): Mark[] =>
  lines.map((text, index) =>
    label([at[0], at[1] + index * leading * (lettering.size ?? letters.body)], text, lettering),
  );
