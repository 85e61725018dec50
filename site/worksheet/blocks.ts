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
  | { readonly kind: 'list'; readonly numbered: boolean; readonly entries: readonly (readonly Run[])[] }
  | { readonly kind: 'rows'; readonly rows: readonly LabelledValue[] }
  /** Each with a warning sign: on a line of its own, or one after the other where room is short. */
  | { readonly kind: 'cautions'; readonly entries: readonly (readonly Run[])[] }
  /** Numbers to be read from across the shed, side by side. */
  | { readonly kind: 'numbers'; readonly cells: readonly LabelledValue[] }
  /** A drawing under its title, which says its scale; `height` is the most that it may take [mm]. */
  | {
      readonly kind: 'drawing';
      readonly title: string;
      readonly height: number;
      readonly draw: (width: number, height: number) => Drawing;
    }
  /** Reasons why the bench must not be built so, in a heavy frame. */
  | { readonly kind: 'banner'; readonly title: string; readonly entries: readonly (readonly Run[])[] }
  | {
      readonly kind: 'log';
      readonly columns: readonly { readonly name: string; readonly head: string; readonly share: number }[];
      readonly rows: number;
    }
  /** Blanks with a label before each. */
  | { readonly kind: 'blanks'; readonly blanks: readonly Blank[] }
  | { readonly kind: 'code'; readonly modules: readonly (readonly boolean[])[]; readonly link: string };

export interface LabelledValue {
  readonly label: string;
  readonly value: string;
  /** Under the value, smaller: its range or its basis. */
  readonly note?: string;
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

/** Sizes that do not follow the body's [pt]: the numbers that matter, the bench's name, what is small. */
export const sizes = { number: 24, title: 24, small: 10.5 } as const;

/** Widths of rules [pt]: above a heading, around a banner, between rows. */
const rules = { heading: 1.4, banner: 2.4, row: 0.35 } as const;

/** Height of a line of large numbers, which hang nothing below their line, in shares of their size. */
const numberLeading = 1.06;
/** From line to line, in shares of the size. */
export const leading = 1.21;
/** Where letters stand in a line of this leading, in shares of the size: the typeface's rise and fall about its middle. */
const baselineIn = (lead: number): number => (lead - 0.969 - 0.241) / 2 + 0.969;

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

function list({ numbered, entries }: Of<'list'>, width: number, style: Style): PlacedBlock {
  const { size, close, measure } = style;
  const indent = size * (numbered ? 1.5 : 1.05);
  const between = size * (close ? 0.1 : 0.25);
  const items: Item[] = [];
  const parts: Part[] = [];
  let y = 0;
  entries.forEach((runs, index) => {
    const [label, body] = [part('Lbl'), part('LBody')];
    const lines = wrap(runs, size, width - indent, measure);
    const head = numbered ? bold(String(index + 1)) : run('•');
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

function numbers({ cells }: Of<'numbers'>, width: number, { size, measure }: Style): PlacedBlock {
  const gap = size;
  const wide = (width - gap * (cells.length - 1)) / cells.length;
  const items: Item[] = [];
  const rows: Part[] = [];
  let deepest = 0;
  cells.forEach(({ label, value, note }, index) => {
    const x = index * (wide + gap);
    const [head, cell] = [part('TH', [], { scope: 'Row' }), part('TD')];
    let large: number = sizes.number;
    let line = bigLine(value, large, measure);
    // Rather small than cut: only a number of seven digits and more comes to this.
    while (line.width > wide && large > 6) {
      large -= 0.5;
      line = bigLine(value, large, measure);
    }
    const labelLines = wrap([run(label)], size, wide, measure);
    let y = sizes.number * numberLeading;
    items.push(setLines(labelLines, { x, y, width: wide, size }, head));
    // On the line of the largest, whatever its own size.
    const down = baselineIn(numberLeading) * (sizes.number - large);
    items.push(setLines([line], { x, y: down, width: wide, size: large, lead: numberLeading }, cell));
    y += labelLines.length * size * leading;
    if (note) {
      const noteLines = wrap([run(note)], sizes.small, wide, measure);
      items.push(setLines(noteLines, { x, y, width: wide, size: sizes.small }, cell));
      y += noteLines.length * sizes.small * leading;
    }
    rows.push(part('TR', [head, cell]));
    deepest = Math.max(deepest, y);
  });
  return { height: deepest, items, parts: [part('Table', rows)] };
}

function rowsBlock({ rows }: Of<'rows'>, width: number, { size, close, measure }: Style): PlacedBlock {
  const items: Item[] = [];
  const parts: Part[] = [];
  const pad = size * (close ? 0.06 : 0.12);
  const gap = size * 0.8;
  let y = 0;
  rows.forEach(({ label, value, note }, index) => {
    const [head, cell] = [part('TH', [], { scope: 'Row' }), part('TD')];
    if (index > 0) items.push(rule(0, y - rules.row / 2, width, rules.row));
    y += pad;
    const valueWidth = Math.min(width, measure(value, size, true));
    // The label gives way to a value that leaves it a third of the row; else the value goes under it.
    const beside = width - valueWidth - gap;
    const labelWidth = beside >= width / 3 ? beside : width;
    const labelLines = wrap([run(label)], size, labelWidth, measure);
    const valueLines = wrap([bold(value)], size, width, measure);
    items.push(setLines(labelLines, { y, width: labelWidth, size }, head));
    const labelHeight = labelLines.length * size * leading;
    const valueTop = labelWidth < width ? y + labelHeight - size * leading : y + labelHeight;
    const wide = labelWidth < width ? valueWidth : width;
    items.push(
      setLines(valueLines, { x: width - wide, y: valueTop, width: wide, size, align: 'right' }, cell),
    );
    y = valueTop + valueLines.length * size * leading;
    if (note) {
      const noteLines = wrap([run(note)], sizes.small, width, measure);
      items.push(setLines(noteLines, { y, width, size: sizes.small, align: 'right' }, cell));
      y += noteLines.length * sizes.small * leading;
    }
    y += pad;
    parts.push(part('TR', [head, cell]));
  });
  return { height: y, items, parts: [part('Table', parts)] };
}

function drawing(block: Of<'drawing'>, width: number, style: Style): PlacedBlock {
  const { title: name, height, draw } = block;
  const before = drawn.get(block) ?? new Map<string, Drawing>();
  drawn.set(block, before);
  const room = `${width} ${style.figures}`;
  const figure = before.get(room) ?? draw(millimetres(width), height * style.figures);
  before.set(room, figure);
  const head = heading(
    { kind: 'heading', text: figure.scale ? `${name}, ${figure.scale}` : name },
    width,
    style,
  );
  const of = part('Figure', [], { alt: figure.description });
  const box = { x: 0, y: head.height, width: points(figure.width), height: points(figure.height) };
  return {
    height: head.height + box.height,
    items: [...head.items, { kind: 'figure', box, part: of, drawing: figure }],
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

function log({ columns, rows }: Of<'log'>, width: number, { measure }: Style): PlacedBlock {
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
          hint: `Row ${row + 1}: ${head}`,
          size: 11,
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
      size: 12,
    });
    items.push(rule(x, y + tall - 1, width - x, 0.6));
    parts.push(words, of);
    y += tall;
  }
  return { height: y, items, parts };
}

function codeBlock({ modules, link }: Of<'code'>): PlacedBlock {
  const side = codeSide(modules.length);
  const picture = part('Figure', [], { alt: 'QR code: opens this bench in the guide' });
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
