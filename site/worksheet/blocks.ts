import type { Drawing } from '../drawing/drawing.ts';
import { millimetres, points, shift, type Item, type Part, type Tag } from './layout.ts';
import { bold, run, wrap, type Line, type Measure, type Run } from './text.ts';

/** The kinds of block that a sheet is made of. Words and numbers only: where they stand is worked out by `place`. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  /** The name of the sheet. */
  | { readonly kind: 'title'; readonly text: string }
  | {
      readonly kind: 'paragraph';
      readonly runs: readonly Run[];
      readonly small?: boolean;
      readonly mark?: string;
    }
  /** `from` is the number of its first entry where it goes on from another page. */
  | {
      readonly kind: 'list';
      readonly numbered: boolean;
      readonly entries: readonly (readonly Run[])[];
      readonly from?: number;
    }
  /** Labels with their values; `large` where the values are read in the dark. */
  | { readonly kind: 'rows'; readonly rows: readonly LabelledValue[]; readonly large?: boolean }
  | { readonly kind: 'table'; readonly columns: readonly TableColumn[]; readonly rows: readonly TableRow[] }
  /** Each with a warning sign: on a line of its own, or one after the other where room is short. */
  | { readonly kind: 'cautions'; readonly entries: readonly (readonly Run[])[] }
  /** Numbers to be read from across the shed, side by side. */
  | { readonly kind: 'numbers'; readonly cells: readonly LabelledValue[] }
  /**
   * A drawing under its title, which says its scale; `height` is the most that it may take [mm], and `enlarged` by how
   * much it is printed larger than drawn.
   */
  | {
      readonly kind: 'drawing';
      readonly title: string;
      readonly height: number;
      readonly enlarged: number;
      readonly draw: (width: number, height: number) => Drawing;
    }
  /** Reasons why the bench must not be built so, in a heavy frame. */
  | { readonly kind: 'banner'; readonly title: string; readonly entries: readonly (readonly Run[])[] }
  | {
      readonly kind: 'log';
      readonly columns: readonly { readonly name: string; readonly head: string; readonly share: number }[];
      readonly rows: number;
      /** What a blank is called to those who cannot see it, by its row and the head of its column. */
      readonly hint: (row: number, head: string) => string;
    }
  /** Blanks with a label before each. */
  | { readonly kind: 'blanks'; readonly blanks: readonly Blank[] }
  | {
      readonly kind: 'code';
      readonly modules: readonly (readonly boolean[])[];
      readonly link: string;
      readonly alt: string;
    };

export interface LabelledValue {
  readonly label: string;
  readonly value: string;
  /** Under the value, smaller: its range or its basis. */
  readonly note?: string;
}

export interface TableColumn {
  readonly head: string;
  readonly share: number;
  /** Its cells are numbers to be read from across the shed. */
  readonly large?: boolean;
}

export interface TableRow {
  /** What stands in each column: words, or a blank to fill in. The first one names the row. */
  readonly cells: readonly (string | Omit<Blank, 'label'>)[];
  /** Set in bold between heavier rules. */
  readonly strong?: boolean;
}

export interface Blank {
  readonly name: string;
  readonly label: string;
  readonly hint: string;
}

/** How large things are set [pt]. */
export interface Style {
  readonly size: number;
  /** The height that drawings take, as a share of the most that each may take. */
  readonly figures: number;
  /** Set close, for want of room: less air, and cautions in one running text. */
  readonly close: boolean;
  readonly measure: Measure;
}

/** Drawings made before, by block and room: they are asked for again at each size of letters. */
const drawn = new WeakMap<Block, Map<string, Drawing>>();

/** A block with its place inside its own corner. */
export interface PlacedBlock {
  readonly height: number;
  readonly items: readonly Item[];
  readonly parts: readonly Part[];
}

/**
 * Sizes that do not follow the body's [pt]: the numbers that matter, and the least that they may shrink to in a narrow
 * place; those of a table; the bench's name; what is no part of the sheet's own text.
 */
export const sizes = { number: 24, leastNumber: 20, tableNumber: 20, title: 24, small: 10.5 } as const;

/** Widths of rules [pt]: above a heading, around a banner, between rows, around a row that stands out. */
const rules = { heading: 1, banner: 2.4, row: 0.35, strong: 1 } as const;

/** Height of a line of large numbers, which hang nothing below their line, in shares of their size. */
const numberLeading = 1.06;
/** From line to line, in shares of the size. */
export const leading = 1.21;
/** Where letters stand in a line of this leading, in shares of the size: the typeface's rise and fall about its middle. */
const baselineIn = (lead: number): number => (lead - 0.969 - 0.241) / 2 + 0.969;

/** Letters that are typed into a blank [pt]. */
const fieldSize = 12;

/** Height of a row to write in by hand [pt], a little more than ruled paper has. */
export const logRow = points(7);

const quietModules = 4;
/** Least size of one module of a QR code, and of the whole with its quiet zone [pt]. */
const code = { module: points(0.34), whole: points(27) } as const;

/** The side of a QR code with its quiet zone [pt]. */
export const codeSide = (modules: number): number => {
  const all = modules + 2 * quietModules;
  return Math.max(code.module * all, code.whole);
};

export const part = (tag: Tag, children: readonly Part[] = [], more: Partial<Part> = {}): Part => ({
  tag,
  children,
  ...more,
});

interface Setting {
  readonly x?: number;
  readonly y: number;
  readonly width: number;
  readonly size: number;
  readonly align?: 'left' | 'right';
  readonly lead?: number;
}

/** Lines set under one another as one item. */
export function setLines(lines: readonly Line[], setting: Setting, of?: Part): Item {
  const { x = 0, y, width, size, align, lead = leading } = setting;
  return {
    kind: 'text',
    box: { x, y, width, height: lines.length * size * lead },
    ...(of ? { part: of } : {}),
    lines: lines.map((line, index) => ({
      ...line,
      x: align === 'right' ? width - line.width : 0,
      baseline: (index * lead + baselineIn(lead)) * size,
    })),
  };
}

const rule = (x: number, y: number, width: number, height: number): Item => ({
  kind: 'rule',
  box: { x, y, width, height },
});

type Of<K extends Block['kind']> = Extract<Block, { kind: K }>;

function heading({ text }: Of<'heading'>, width: number, { size, measure }: Style): PlacedBlock {
  const large = size * 1.1;
  const top = rules.heading + size * 0.22;
  const lines = wrap([bold(text)], large, width, measure);
  const of = part('H2');
  return {
    height: top + lines.length * large * leading + size * 0.15,
    items: [rule(0, 0, width, rules.heading), setLines(lines, { y: top, width, size: large }, of)],
    parts: [of],
  };
}

/** A name as large as lets it stand on two lines, and never smaller than this share of its full size. */
const smallestTitle = 0.62;

function title({ text }: Of<'title'>, width: number, { measure }: Style): PlacedBlock {
  const of = part('H1');
  const least = sizes.title * smallestTitle;
  let size: number = sizes.title;
  let lines = wrap([bold(text)], size, width, measure);
  while (lines.length > 1 && size > least) {
    size = Math.max(size - 1, least);
    lines = wrap([bold(text)], size, width, measure);
  }
  if (lines.length > 1) {
    // Two lines either way: then as large as two lines allow.
    for (let larger = sizes.title; larger > least; larger -= 1) {
      const two = wrap([bold(text)], larger, width, measure);
      if (two.length > 2) continue;
      [size, lines] = [larger, two];
      break;
    }
  }
  return {
    height: lines.length * size * leading,
    items: [setLines(lines, { y: 0, width, size }, of)],
    parts: [of],
  };
}

function paragraph({ runs, small, mark }: Of<'paragraph'>, width: number, style: Style): PlacedBlock {
  const size = small ? sizes.small : style.size;
  const of = part('P');
  const indent = mark ? size * 1.45 : 0;
  const lines = wrap(runs, size, width - indent, style.measure);
  const items = [setLines(lines, { x: indent, y: 0, width: width - indent, size }, of)];
  if (mark)
    items.unshift(
      setLines(wrap([run(mark)], size, indent, style.measure), { y: 0, width: indent, size }, of),
    );
  return { height: lines.length * size * leading, items, parts: [of] };
}

const warningSign = '⚠';

function cautionsBlock({ entries }: Of<'cautions'>, width: number, style: Style): PlacedBlock {
  if (style.close) {
    const runs = entries.flatMap((entry) => [bold(`${warningSign}\u00a0`), ...entry, run(' ')]);
    return paragraph({ kind: 'paragraph', runs }, width, style);
  }
  const items: Item[] = [];
  const parts: Part[] = [];
  let y = 0;
  for (const runs of entries) {
    const one = paragraph({ kind: 'paragraph', mark: warningSign, runs }, width, style);
    items.push(...shift(one.items, 0, y));
    parts.push(...one.parts);
    y += one.height + style.size * 0.22;
  }
  return { height: Math.max(0, y - style.size * 0.22), items, parts };
}

function list({ numbered, entries, from = 1 }: Of<'list'>, width: number, style: Style): PlacedBlock {
  const { size, close, measure } = style;
  const indent = size * (numbered ? 1.5 : 1.05);
  const between = size * (close ? 0.1 : 0.25);
  const items: Item[] = [];
  const parts: Part[] = [];
  let y = 0;
  entries.forEach((runs, index) => {
    const [label, body] = [part('Lbl'), part('LBody')];
    const lines = wrap(runs, size, width - indent, measure);
    const head = numbered ? bold(String(from + index)) : run('•');
    items.push(setLines(wrap([head], size, indent, measure), { y, width: indent, size }, label));
    items.push(setLines(lines, { x: indent, y, width: width - indent, size }, body));
    parts.push(part('LI', [label, body]));
    y += lines.length * size * leading + between;
  });
  return {
    height: Math.max(0, y - between),
    items,
    parts: [part('L', parts, { numbering: numbered ? 'Decimal' : 'Disc' })],
  };
}

/** A number and its unit set apart, so that the unit may be smaller: they are joined by a narrow no-break space. */
function bigLine(value: string, size: number, measure: Measure): Line {
  const cut = value.indexOf('\u202f') + 1;
  const [number, unit] = cut > 0 ? [value.slice(0, cut), value.slice(cut)] : [value, ''];
  const small = size * 0.66;
  const x = measure(number, size, true);
  const pieces = [{ x: 0, text: number, size, bold: true }];
  if (unit !== '') pieces.push({ x, text: unit, size: small, bold: true });
  return { pieces, width: x + (unit === '' ? 0 : measure(unit, small, true)) };
}

/** The number of a cell as large as it can be set in this width; rather small than cut. */
function largestLine(
  value: string,
  width: number,
  most: number,
  measure: Measure,
): { line: Line; size: number } {
  let size = most;
  let line = bigLine(value, size, measure);
  while (line.width > width && size > 6) {
    size -= 0.5;
    line = bigLine(value, size, measure);
  }
  return { line, size };
}

function numbers({ cells }: Of<'numbers'>, width: number, { size, measure }: Style): PlacedBlock {
  const gap = size;
  // As many side by side as leaves each of them large.
  const wideOf = (count: number): number => (width - gap * (count - 1)) / count;
  const fitting = (count: number): boolean =>
    cells.every(({ value }) => bigLine(value, sizes.leastNumber, measure).width <= wideOf(count));
  let across = cells.length;
  while (across > 1 && !fitting(across)) across--;
  // Four that do not fit beside one another stand two by two, not three and one.
  across = Math.ceil(cells.length / Math.ceil(cells.length / across));
  const wide = wideOf(across);
  const items: Item[] = [];
  const rows: Part[] = [];
  let top = 0;
  for (let from = 0; from < cells.length; from += across) {
    let deepest = 0;
    cells.slice(from, from + across).forEach(({ label, value, note }, index) => {
      const x = index * (wide + gap);
      const [head, cell] = [part('TH', [], { scope: 'Row' }), part('TD')];
      const { line, size: large } = largestLine(value, wide, sizes.number, measure);
      const labelLines = wrap([run(label)], size, wide, measure);
      let y = top + sizes.number * numberLeading;
      items.push(setLines(labelLines, { x, y, width: wide, size }, head));
      // On the line of the largest, whatever its own size.
      const down = top + baselineIn(numberLeading) * (sizes.number - large);
      items.push(setLines([line], { x, y: down, width: wide, size: large, lead: numberLeading }, cell));
      y += labelLines.length * size * leading;
      if (note) {
        const noteLines = wrap([run(note)], size, wide, measure);
        items.push(setLines(noteLines, { x, y, width: wide, size }, cell));
        y += noteLines.length * size * leading;
      }
      rows.push(part('TR', [head, cell]));
      deepest = Math.max(deepest, y);
    });
    top = deepest + size * 0.35;
  }
  return { height: top - size * 0.35, items, parts: [part('Table', rows)] };
}

function rowsBlock({ rows, large }: Of<'rows'>, width: number, { size, close, measure }: Style): PlacedBlock {
  const items: Item[] = [];
  const parts: Part[] = [];
  const pad = size * (close ? 0.06 : 0.12);
  const gap = size * 0.8;
  let y = 0;
  rows.forEach(({ label, value, note }, index) => {
    const [head, cell] = [part('TH', [], { scope: 'Row' }), part('TD')];
    if (index > 0) items.push(rule(0, y - rules.row / 2, width, rules.row));
    y += pad;
    // A large value that leaves its label less than two fifths of the row is set as the rest.
    const big = large && measure(value, sizes.tableNumber, true) <= width * 0.6 ? sizes.tableNumber : size;
    const valueWidth = Math.min(width, measure(value, big, true));
    // The label gives way to a value that leaves it a third of the row; else the value goes under it.
    const beside = width - valueWidth - gap;
    const labelWidth = beside >= width / 3 ? beside : width;
    const labelLines = wrap([run(label)], size, labelWidth, measure);
    const valueLines = wrap([bold(value)], big, width, measure);
    const labelHeight = labelLines.length * size * leading;
    // Both stand on one line: the last of the label.
    const down = labelWidth < width ? Math.max(0, baselineIn(leading) * (big - size)) : 0;
    const above =
      labelWidth < width && labelLines.length > 1 ? Math.min(down, labelHeight - size * leading) : 0;
    const labelTop = y + down - above;
    items.push(setLines(labelLines, { y: labelTop, width: labelWidth, size }, head));
    const labelEnd = labelTop + labelHeight;
    const valueTop = labelWidth < width ? labelEnd - size * leading - down : labelEnd;
    const wide = labelWidth < width ? valueWidth : width;
    items.push(
      setLines(valueLines, { x: width - wide, y: valueTop, width: wide, size: big, align: 'right' }, cell),
    );
    y = Math.max(labelEnd, valueTop + valueLines.length * big * leading);
    if (note) {
      const noteLines = wrap([run(note)], size, width, measure);
      items.push(setLines(noteLines, { y, width, size, align: 'right' }, cell));
      y += noteLines.length * size * leading;
    }
    y += pad;
    parts.push(part('TR', [head, cell]));
  });
  return { height: y, items, parts: [part('Table', parts)] };
}

/** Between two columns of a table [pt]. */
const cellGap = 8;

function table({ columns, rows }: Of<'table'>, width: number, { size, close, measure }: Style): PlacedBlock {
  const room = width - cellGap * (columns.length - 1);
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const widths = columns.map(({ share }) => (share / total) * room);
  const starts = widths.map((_, index) =>
    widths.slice(0, index).reduce((sum, one) => sum + one + cellGap, 0),
  );
  const pad = size * (close ? 0.1 : 0.2);
  const items: Item[] = [];
  const heads = columns.map(({ head }, index) => wrap([run(head)], size, widths[index] ?? 0, measure));
  const headHigh = Math.max(...heads.map((lines) => lines.length)) * size * leading;
  const headParts = heads.map((lines, index) => {
    const of = part('TH', [], { scope: 'Column' });
    // Heads stand on their rule, however many lines they have.
    const y = headHigh - lines.length * size * leading;
    items.push(setLines(lines, { x: starts[index] ?? 0, y, width: widths[index] ?? 0, size }, of));
    return of;
  });
  let y = headHigh + pad;
  const rowParts = rows.map(({ cells, strong = false }, row) => {
    const heavy = strong || (rows[row - 1]?.strong ?? false);
    const thick = row === 0 || heavy ? rules.strong : rules.row;
    items.push(rule(0, y - thick / 2, width, thick));
    y += pad;
    const set = cells.map((cell, index) => {
      const wide = widths[index] ?? 0;
      if (typeof cell !== 'string') return { lines: [], size };
      if (columns[index]?.large) {
        const { line, size: large } = largestLine(cell, wide, sizes.tableNumber, measure);
        return { lines: [line], size: large };
      }
      return { lines: wrap([strong ? bold(cell) : run(cell)], size, wide, measure), size };
    });
    // Large numbers hang nothing below their line.
    const leadOf = (own: number): number => (own > size ? numberLeading : leading);
    const line = Math.max(...set.map((one) => baselineIn(leadOf(one.size)) * one.size));
    const downOf = (own: number): number => line - baselineIn(leadOf(own)) * own;
    const blank = cells.some((cell) => typeof cell !== 'string') ? size * leading + 2 : 0;
    const high = Math.max(
      blank,
      ...set.map(({ lines, size: own }) => downOf(own) + lines.length * own * leadOf(own)),
    );
    const parts = cells.map((cell, index) => {
      const [x, wide] = [starts[index] ?? 0, widths[index] ?? 0];
      const { lines, size: own } = set[index] ?? { lines: [], size };
      if (typeof cell === 'string') {
        const of = index === 0 ? part('TH', [], { scope: 'Row' }) : part('TD');
        if (lines.length > 0)
          items.push(
            setLines(lines, { x, y: y + downOf(own), width: wide, size: own, lead: leadOf(own) }, of),
          );
        return of;
      }
      const of = part('Form');
      const box = { x, y: y + 0.5, width: wide, height: high - 1 };
      items.push({ kind: 'field', box, part: of, name: cell.name, hint: cell.hint, size: fieldSize });
      return part('TD', [of]);
    });
    y += high + pad;
    return part('TR', parts);
  });
  if (rows.at(-1)?.strong) {
    items.push(rule(0, y - rules.strong, width, rules.strong));
  }
  return { height: y, items, parts: [part('Table', [part('TR', headParts), ...rowParts])] };
}

function drawing(block: Of<'drawing'>, width: number, style: Style): PlacedBlock {
  const { title: name, height, enlarged, draw } = block;
  const before = drawn.get(block) ?? new Map<string, Drawing>();
  drawn.set(block, before);
  const room = `${width} ${style.figures}`;
  const figure = before.get(room) ?? draw(millimetres(width) / enlarged, (height * style.figures) / enlarged);
  before.set(room, figure);
  const head = heading(
    { kind: 'heading', text: figure.scale ? `${name}, ${figure.scale}` : name },
    width,
    style,
  );
  const of = part('Figure', [], { alt: figure.description });
  const [wide, high] = [points(figure.width * enlarged), points(figure.height * enlarged)];
  const box = { x: 0, y: head.height, width: wide, height: high };
  return {
    height: head.height + box.height,
    items: [...head.items, { kind: 'figure', box, part: of, drawing: figure, enlarged }],
    parts: [...head.parts, of],
  };
}

function banner({ title: text, entries }: Of<'banner'>, width: number, style: Style): PlacedBlock {
  const pad = style.size * 0.7;
  const inner = width - 2 * pad;
  const of = part('H2');
  const large = style.size * 1.5;
  const head = wrap([bold(text)], large, inner, style.measure);
  const body = list({ kind: 'list', numbered: false, entries }, inner, style);
  const bodyTop = pad + head.length * large * leading + style.size * 0.2;
  const height = bodyTop + body.height + pad;
  return {
    height,
    items: [
      rule(0, 0, width, rules.banner),
      rule(0, height - rules.banner, width, rules.banner),
      rule(0, 0, rules.banner, height),
      rule(width - rules.banner, 0, rules.banner, height),
      setLines(head, { x: pad, y: pad, width: inner, size: large }, of),
      ...body.items.map((item) => ({
        ...item,
        box: { ...item.box, x: item.box.x + pad, y: item.box.y + bodyTop },
      })),
    ],
    parts: [of, ...body.parts],
  };
}

function log({ columns, rows, hint }: Of<'log'>, width: number, { measure }: Style): PlacedBlock {
  const items: Item[] = [];
  const inset = 2.5;
  const total = columns.reduce((sum, { share }) => sum + share, 0);
  const starts = columns.map(
    (_, index) => (columns.slice(0, index).reduce((sum, { share }) => sum + share, 0) / total) * width,
  );
  const widths = columns.map(({ share }) => (share / total) * width);
  const size = 12;
  const heads = columns.map(({ head }, index) =>
    wrap([run(head)], size, (widths[index] ?? 0) - 2 * inset, measure),
  );
  const headHeight = Math.max(...heads.map((lines) => lines.length)) * size * leading + 3;
  const headParts = columns.map(() => part('TH', [], { scope: 'Column' }));
  columns.forEach((_, index) => {
    const lines = heads[index] ?? [];
    // Heads stand on their rule, however many lines they have.
    const y = headHeight - 3 - lines.length * size * leading;
    const box = { x: (starts[index] ?? 0) + inset, y, width: (widths[index] ?? 0) - 2 * inset, size };
    items.push(setLines(lines, box, headParts[index]));
  });
  const rowParts = Array.from({ length: rows }, (_, row) => {
    const y = headHeight + row * logRow;
    return part(
      'TR',
      columns.map(({ name, head }, index) => {
        const of = part('Form');
        items.push({
          kind: 'field',
          box: { x: (starts[index] ?? 0) + 1, y: y + 1, width: (widths[index] ?? 0) - 2, height: logRow - 2 },
          part: of,
          name: `log_${row + 1}_${name}`,
          hint: hint(row + 1, head),
          size: fieldSize,
        });
        return part('TD', [of]);
      }),
    );
  });
  // The lowest rule stands on its line with half of its width.
  const height = headHeight + rows * logRow + 0.25;
  for (let row = 0; row <= rows; row++)
    items.push(rule(0, headHeight + row * logRow - 0.25, width, row === 0 ? 1 : 0.5));
  starts.slice(1).forEach((x) => items.push(rule(x, headHeight, 0.5, rows * logRow)));
  return { height, items, parts: [part('Table', [part('TR', headParts), ...rowParts])] };
}

function blanks({ blanks: all }: Of<'blanks'>, width: number, { size, measure }: Style): PlacedBlock {
  const items: Item[] = [];
  const parts: Part[] = [];
  const high = Math.max(logRow, size * leading + 4);
  let y = 0;
  for (const { name, label, hint } of all) {
    const lines = wrap([run(label)], size, width * 0.6, measure);
    const [words, of] = [part('P'), part('Form')];
    const wide = Math.max(...lines.map((line) => line.width));
    const tall = Math.max(high, lines.length * size * leading + 4);
    items.push(
      setLines(lines, { y: y + tall - lines.length * size * leading - 2, width: wide, size }, words),
    );
    const x = wide + size * 0.5;
    items.push({
      kind: 'field',
      box: { x, y: y + tall - high + 1, width: width - x, height: high - 2 },
      part: of,
      name,
      hint,
      size: fieldSize,
    });
    items.push(rule(x, y + tall - 1, width - x, 0.6));
    parts.push(words, of);
    y += tall;
  }
  return { height: y, items, parts };
}

function codeBlock({ modules, link, alt }: Of<'code'>): PlacedBlock {
  const side = codeSide(modules.length);
  const picture = part('Figure', [], { alt });
  const of = part('Link', [picture]);
  const quiet = (side / (modules.length + 2 * quietModules)) * quietModules;
  return {
    height: side,
    items: [
      {
        kind: 'code',
        box: { x: 0, y: 0, width: side, height: side },
        part: of,
        picture,
        modules,
        quiet,
        link,
      },
    ],
    parts: [of],
  };
}

/** Blocks that were placed before, by width and style: fitting a side asks for the same ones again and again. */
const placed = new WeakMap<Block, Map<string, PlacedBlock>>();

/** Places one block in a column of this width: measured, nothing cut. */
export function place(block: Block, width: number, style: Style): PlacedBlock {
  const key = `${width} ${style.size} ${style.close} ${block.kind === 'drawing' ? style.figures : ''}`;
  const before = placed.get(block) ?? new Map<string, PlacedBlock>();
  placed.set(block, before);
  const found = before.get(key);
  if (found) return found;
  const made = placeAnew(block, width, style);
  before.set(key, made);
  return made;
}

function placeAnew(block: Block, width: number, style: Style): PlacedBlock {
  switch (block.kind) {
    case 'heading':
      return heading(block, width, style);
    case 'title':
      return title(block, width, style);
    case 'paragraph':
      return paragraph(block, width, style);
    case 'cautions':
      return cautionsBlock(block, width, style);
    case 'list':
      return list(block, width, style);
    case 'rows':
      return rowsBlock(block, width, style);
    case 'numbers':
      return numbers(block, width, style);
    case 'table':
      return table(block, width, style);
    case 'drawing':
      return drawing(block, width, style);
    case 'banner':
      return banner(block, width, style);
    case 'log':
      return log(block, width, style);
    case 'blanks':
      return blanks(block, width, style);
    case 'code':
      return codeBlock(block);
  }
}
