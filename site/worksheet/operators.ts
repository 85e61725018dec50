import type { Drawing, Mark, Point, Tone } from '../drawing/drawing.ts';
import { points, type Box, type CodeItem, type Item } from './layout.ts';
import { tracking } from './text.ts';

/**
 * The page description operators of PDF (ISO 32000-1, annex A) as text. Positions come in as points from the top left
 * corner; PDF counts from the bottom left.
 */

/** Letters of one weight as the show-text operator takes them: glyphs in hexadecimal with kerning between them. */
export type Encode = (text: string, bold: boolean) => string;

/** Names of the two faces in the resources of each page. */
export const faces = { regular: 'R', bold: 'B' } as const;

/** To a thousandth of a point, finer than any printer; adding zero makes a negative zero a plain one. */
const number = (value: number): string => String(Math.round(value * 1000) / 1000 + 0);

const join = (...parts: (string | number)[]): string =>
  parts.map((one) => (typeof one === 'number' ? number(one) : one)).join(' ');

/** Shows letters with their baseline starting at a point; `upward` turns them a quarter to the left. */
const show = (glyphs: string, size: number, heavy: boolean, x: number, y: number, upward = false): string =>
  join(
    'BT',
    `/${heavy ? faces.bold : faces.regular}`,
    size,
    'Tf',
    tracking(size) * size,
    'Tc',
    ...(upward ? [0, 1, -1, 0] : [1, 0, 0, 1]),
    x,
    y,
    'Tm',
    glyphs,
    'TJ ET',
  );

/** Lightness of lines: black, or a grey that still prints as a line. Water is paper between the edges of its pipe. */
const strokeInk = { ink: 0, heat: 0, soft: 0.25, faint: 0.45, water: 1, paper: 1 } as const satisfies Record<
  Tone,
  number
>;

/** How a tone fills: solid, or with lines this far apart [mm]; no grey, which a printer breaks up into dots. */
const fills = {
  ink: 'solid',
  heat: 'solid',
  paper: 'blank',
  water: 'blank',
  soft: 0.9,
  faint: 2.2,
} as const satisfies Record<Tone, 'solid' | 'blank' | number>;

/** Width of the lines of a hatched fill [mm]. */
const hatchLine = 0.12;
const defaultLine = 0.35;
/** Control points of a quarter circle as cubic curves, in shares of its radius: 4/3 (√2 − 1). */
const quarter = (4 / 3) * (Math.SQRT2 - 1);

/** From a drawing's millimetres to the page's points. */
interface Frame {
  readonly x: (millimetres: number) => number;
  readonly y: (millimetres: number) => number;
  readonly long: (millimetres: number) => number;
}

type Shape = Exclude<Mark, { kind: 'text' }>;

function outline(mark: Shape, { x, y }: Pick<Frame, 'x' | 'y'>): string {
  const at = ([left, down]: Point) => join(x(left), y(down));
  if (mark.kind === 'circle') {
    const [cx, cy] = mark.at;
    const r = mark.radius;
    const k = r * quarter;
    return join(
      at([cx + r, cy]),
      'm',
      ...[
        [cx + r, cy + k, cx + k, cy + r, cx, cy + r],
        [cx - k, cy + r, cx - r, cy + k, cx - r, cy],
        [cx - r, cy - k, cx - k, cy - r, cx, cy - r],
        [cx + k, cy - r, cx + r, cy - k, cx + r, cy],
      ].map(([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0]) => join(at([a, b]), at([c, d]), at([e, f]), 'c')),
      'h',
    );
  }
  const [start, ...rest] = mark.points;
  if (!start) return '';
  if (mark.kind === 'curve') {
    const cubics: string[] = [];
    for (let index = 0; index + 2 < rest.length; index += 3)
      cubics.push(join(...rest.slice(index, index + 3).map(at), 'c'));
    return join(at(start), 'm', ...cubics);
  }
  return join(at(start), 'm', ...rest.map((point) => `${at(point)} l`), ...(mark.closed ? ['h'] : []));
}

/** The box around a shape [mm]. */
function extent(mark: Shape): { left: number; right: number; top: number; bottom: number } {
  if (mark.kind === 'circle') {
    const [x, y] = mark.at;
    return { left: x - mark.radius, right: x + mark.radius, top: y - mark.radius, bottom: y + mark.radius };
  }
  const xs = mark.points.map(([x]) => x);
  const ys = mark.points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), top: Math.min(...ys), bottom: Math.max(...ys) };
}

/** Level lines through a shape, on white. The lines keep their places on the page, so that neighbours match. */
function hatched(mark: Shape, path: string, apart: number, { x, y }: Pick<Frame, 'x' | 'y'>): string {
  const { left, right, top, bottom } = extent(mark);
  const lines: string[] = [];
  for (let row = Math.ceil(top / apart); row * apart <= bottom; row++)
    lines.push(join(x(left), y(row * apart), 'm', x(right), y(row * apart), 'l'));
  return join('q 1 g', path, 'f', path, 'W n', points(hatchLine), 'w 0 G', ...lines, 'S Q');
}

function shape(mark: Shape, frame: Frame): string[] {
  const path = outline(mark, frame);
  if (path === '') return [];
  const out: string[] = [];
  if (mark.fill) {
    const fill = fills[mark.fill];
    if (typeof fill === 'number') out.push(hatched(mark, path, fill, frame));
    else out.push(join(fill === 'solid' ? '0 g' : '1 g', path, 'f'));
  }
  if (mark.stroke) {
    const dash = (mark.dash ?? []).map(frame.long).map(number).join(' ');
    out.push(
      join(
        strokeInk[mark.stroke],
        'G',
        frame.long(mark.width ?? defaultLine),
        'w',
        `[${dash}] 0 d`,
        path,
        'S',
      ),
    );
  }
  return out;
}

/** A drawing with its top left corner at a point of the page. */
export function drawDrawing(
  { marks }: Drawing,
  enlarged: number,
  box: Box,
  pageHeight: number,
  encode: Encode,
  width: (text: string, size: number, heavy: boolean) => number,
): string[] {
  const long = (millimetres: number): number => points(millimetres * enlarged);
  const frame: Frame = {
    x: (millimetres) => box.x + long(millimetres),
    y: (millimetres) => pageHeight - box.y - long(millimetres),
    long,
  };
  return [
    'q 0 J 1 j',
    ...marks.flatMap((mark) => {
      if (mark.kind !== 'text') return shape(mark, frame);
      const size = long(mark.size);
      const heavy = mark.bold ?? false;
      const share = { start: 0, middle: 0.5, end: 1 }[mark.align ?? 'start'];
      const back = share * width(mark.text, size, heavy);
      const [x, y] = [frame.x(mark.at[0]), frame.y(mark.at[1])];
      const glyphs = encode(mark.text, heavy);
      return [
        '0 g',
        mark.upward ? show(glyphs, size, heavy, x, y - back, true) : show(glyphs, size, heavy, x - back, y),
      ];
    }),
    'Q',
  ];
}

/** Dark modules of a QR code, run by run: black squares on the paper's white. */
function drawCode({ box, modules, quiet }: CodeItem, pageHeight: number): string[] {
  const side = (box.width - 2 * quiet) / modules.length;
  const out = ['q 0 g'];
  modules.forEach((row, down) => {
    const y = pageHeight - box.y - quiet - (down + 1) * side;
    for (let from = 0; from < row.length; from++) {
      if (!row[from]) continue;
      let to = from;
      while (row[to + 1]) to++;
      out.push(join(box.x + quiet + from * side, y, (to - from + 1) * side, side, 're'));
      from = to;
    }
  });
  return [...out, 'f Q'];
}

/** What one item paints; nothing for a blank, which its form field paints. */
export function paint(
  item: Item,
  pageHeight: number,
  encode: Encode,
  width: (text: string, size: number, heavy: boolean) => number,
): string[] {
  const { box } = item;
  switch (item.kind) {
    case 'text':
      return item.lines.flatMap(({ pieces, x, baseline }) =>
        pieces.map((piece) =>
          show(
            encode(piece.text, piece.bold),
            piece.size,
            piece.bold,
            box.x + x + piece.x,
            pageHeight - box.y - baseline,
          ),
        ),
      );
    case 'rule':
      return [join('0 g', box.x, pageHeight - box.y - box.height, box.width, box.height, 're f')];
    case 'figure':
      return drawDrawing(item.drawing, item.enlarged, box, pageHeight, encode, width);
    case 'code':
      return drawCode(item, pageHeight);
    case 'field':
      return [];
  }
}
