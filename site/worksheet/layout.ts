import type { Drawing } from '../drawing/drawing.ts';
import type { Line } from './text.ts';

/**
 * A laid-out sheet as data: what stands where, and what it is to a reader who cannot see it. Points (1/72 in) from the
 * top left corner of the page, y downward.
 */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** What a part of the sheet is, by the names that tagged PDF gives it (ISO 32000-1, 14.8.4). */
export type Tag =
  | 'Document'
  | 'Sect'
  | 'H1'
  | 'H2'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Form'
  | 'Link';

/** A part of the sheet in the order of reading. Items point to the part that they show. */
export interface Part {
  readonly tag: Tag;
  readonly children: readonly Part[];
  /** Read aloud in place of what is drawn. */
  readonly alt?: string;
  /** Of a table's head: what it is the head of. */
  readonly scope?: 'Row' | 'Column';
  /** Of a list: how its entries are marked. */
  readonly numbering?: 'Decimal' | 'Disc';
}

interface Placed {
  readonly box: Box;
  /** Left out of what is only ornament. */
  readonly part?: Part;
}

export interface TextItem extends Placed {
  readonly kind: 'text';
  /** Lines with their baselines [pt below the box's top]. */
  readonly lines: readonly (Line & { readonly x: number; readonly baseline: number })[];
}

/** A rule or the side of a frame: a filled bar. */
export interface RuleItem extends Placed {
  readonly kind: 'rule';
}

export interface FigureItem extends Placed {
  readonly kind: 'figure';
  readonly drawing: Drawing;
  /** How much larger it is printed than it was drawn. */
  readonly enlarged: number;
}

/** A blank to fill in. */
export interface FieldItem extends Placed {
  readonly kind: 'field';
  readonly name: string;
  /** What belongs in it; read aloud and shown by viewers. */
  readonly hint: string;
  readonly size: number;
}

/** A QR code, true for a dark module, without its quiet zone, which the box includes. */
export interface CodeItem extends Placed {
  readonly kind: 'code';
  /** The part inside the link that its squares are. */
  readonly picture: Part;
  readonly modules: readonly (readonly boolean[])[];
  readonly quiet: number;
  readonly link: string;
}

export type Item = TextItem | RuleItem | FigureItem | FieldItem | CodeItem;

export interface Page {
  readonly width: number;
  readonly height: number;
  /** In the order of reading. */
  readonly items: readonly Item[];
}

export interface Sheet {
  readonly pages: readonly Page[];
  readonly document: Part;
}

const pointsPerInch = 72;
const millimetresPerInch = 25.4;

/** Millimetres as points. */
export const points = (millimetres: number): number => (millimetres * pointsPerInch) / millimetresPerInch;

/** Points as millimetres. */
export const millimetres = (length: number): number => (length * millimetresPerInch) / pointsPerInch;

export type PaperName = 'a4' | 'letter';

/** ISO 216 A4 and ANSI Letter [pt]. */
export const papers = {
  a4: { width: points(210), height: points(297) },
  letter: { width: 612, height: 792 },
} as const satisfies Record<PaperName, { readonly width: number; readonly height: number }>;

/** Blank edge all round [pt], for a clip, a pin or the rim of a pocket; only the lines of head and foot stand in it. */
export const margin = points(12);

/** The same items further right and down. */
export const shift = (items: readonly Item[], right: number, down: number): Item[] =>
  items.map((item) => ({ ...item, box: { ...item.box, x: item.box.x + right, y: item.box.y + down } }));
