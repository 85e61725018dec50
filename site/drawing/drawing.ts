/**
 * The drawing language of the guide: one description of a drawing, put on a page as SVG (at build and live) and on
 * paper as PDF. Lengths are millimetres on paper, x to the right, y downward. Tones are few, and each can be told
 * from the others in black and white.
 */
export type Tone = 'ink' | 'soft' | 'faint' | 'paper' | 'heat' | 'water';

/** How light each tone is in black and white: 0 is black, 1 is white paper. */
export const lightness = {
  ink: 0,
  soft: 0.3,
  faint: 0.55,
  paper: 1,
  heat: 0,
  water: 0.87,
} as const satisfies Record<Tone, number>;

export type Point = readonly [x: number, y: number];

interface Stroke {
  readonly stroke?: Tone;
  /** Line width [mm]; 0.35 when left out. */
  readonly width?: number;
  /** Dash and gap lengths [mm]. */
  readonly dash?: readonly number[];
  readonly fill?: Tone;
}

export type Mark =
  | ({ readonly kind: 'line'; readonly points: readonly Point[]; readonly closed?: boolean } & Stroke)
  | ({ readonly kind: 'circle'; readonly at: Point; readonly radius: number } & Stroke)
  /** A smooth cubic curve: the start, then triples of two control points and an end. */
  | ({ readonly kind: 'curve'; readonly points: readonly Point[] } & Stroke)
  | {
      readonly kind: 'text';
      readonly at: Point;
      readonly text: string;
      /** Height of the letters' body [mm]. */
      readonly size: number;
      readonly align?: 'start' | 'middle' | 'end';
      readonly bold?: boolean;
      /** Turned a quarter to read upward. */
      readonly upward?: boolean;
      readonly tone?: Tone;
    };

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  /** "1:25" where the drawing keeps a round scale that a ruler can follow. */
  readonly scale?: string;
  /** What the drawing shows, in words, with its numbers: read aloud in place of the drawing. */
  readonly description: string;
  readonly marks: readonly Mark[];
}
