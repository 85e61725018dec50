import { leading, part, place, setLines, sizes, type Block, type PlacedBlock, type Style } from './blocks.ts';
import {
  margin,
  papers,
  shift,
  type Item,
  type Page,
  type PaperName,
  type Part,
  type Sheet,
} from './layout.ts';
import { run, wrap, type Measure } from './text.ts';

/** Blocks side by side across the page: one column or two. */
export type Band =
  | { readonly columns: readonly Column[]; readonly gap?: number }
  /** Blocks of one kind, dealt to two columns of about the same height. */
  | { readonly balanced: readonly Block[]; readonly heading?: Block }
  /** Two columns with their first blocks, and groups that go under either, so that the taller one is as short as can be. */
  | {
      readonly heads: readonly [readonly Block[], readonly Block[]];
      readonly groups: readonly (readonly Block[])[];
    };

export interface Column {
  /** Share of the width. */
  readonly share: number;
  readonly blocks: readonly Block[];
}

/** One side of the sheet. */
export interface Side {
  readonly bands: readonly Band[];
}

/** What stands in the margins of every page, in small letters. */
export interface Margins {
  /** In the upper margin: what this page is. */
  readonly head: (page: number) => string;
  readonly footLeft: string;
  /** Told how many pages there are, and whether this side goes on after the two sides. */
  readonly footRight: (page: number, pages: number, continued: boolean) => string;
}

/**
 * How a side may be set, best first: the size of its letters [pt], and the height of its drawings as a share of the most
 * that they may take. Guides to clear print ask for 12 pt of faces such as Arial; the small letters of this typeface are as
 * tall at 11.5 pt (0.546 of the size against 0.519), which is the least that is used.
 */
const settings: readonly (readonly [size: number, figures: number])[] = [
  [14, 1],
  [14, 0.85],
  [13.5, 1],
  [13.5, 0.85],
  [13, 1],
  [13, 0.85],
  [12.5, 1],
  [12.5, 0.85],
  [12, 1],
  [12, 0.85],
  [12, 0.7],
  [12, 0.55],
  [11.5, 0.85],
  [11.5, 0.7],
  [11.5, 0.55],
];

/** Between two bands and two blocks, in shares of the letters' size. */
const gaps = { bands: 0.7, heading: 0.7, block: 0.35 } as const;
/** Between two columns [pt]; the same at every size, so that drawings keep their room. */
const columnGap = 19;
/** The most that the room left over may widen one gap between bands, in shares of the letters' size. */
const widestSpread = 1.6;

/** A log of fewer rows is no use; one of more is another sheet. */
const logRows = { least: 5, most: 26 } as const;

interface PlacedColumn {
  readonly height: number;
  readonly items: readonly Item[];
  readonly parts: readonly Part[];
}

/** Blocks under one another. */
function stack(blocks: readonly Block[], width: number, style: Style): PlacedColumn {
  const items: Item[] = [];
  const parts: Part[] = [];
  let y = 0;
  blocks.forEach((block, index) => {
    const before = blocks[index - 1];
    if (before && before.kind !== 'heading')
      y += style.size * (block.kind === 'heading' || block.kind === 'drawing' ? gaps.heading : gaps.block);
    const placed: PlacedBlock = place(block, width, style);
    items.push(...shift(placed.items, 0, y));
    parts.push(...placed.parts);
    y += placed.height;
  });
  return { height: y, items, parts };
}

/** A band as columns: what is to be balanced is dealt out so that the taller column is as short as can be. */
function columnsOf(band: Band, width: number, style: Style): readonly Column[] {
  if ('columns' in band) return band.columns;
  if ('heads' in band) return dealt(band.heads, band.groups, width, style);
  const { balanced } = band;
  const half = (width - columnGap) / 2;
  const heights = balanced.map((block) => place(block, half, style).height + gaps.block * style.size);
  const all = heights.reduce((sum, height) => sum + height, 0);
  let [best, cut] = [Number.POSITIVE_INFINITY, 0];
  let left = 0;
  for (let count = 0; count <= heights.length; count++) {
    const taller = Math.max(left, all - left);
    if (taller < best) [best, cut] = [taller, count];
    left += heights[count] ?? 0;
  }
  return [
    { share: 0.5, blocks: balanced.slice(0, cut) },
    { share: 0.5, blocks: balanced.slice(cut) },
  ];
}

/** Every way of dealing the groups is tried: there are few. */
function dealt(
  heads: readonly [readonly Block[], readonly Block[]],
  groups: readonly (readonly Block[])[],
  width: number,
  style: Style,
): readonly Column[] {
  const half = (width - columnGap) / 2;
  const tall = (blocks: readonly Block[]) => stack(blocks, half, style).height + gaps.heading * style.size;
  const heights = groups.map(tall);
  const starts = heads.map(tall);
  let [best, chosen] = [Number.POSITIVE_INFINITY, 0];
  for (let choice = 0; choice < 2 ** groups.length; choice++) {
    const sums = [...starts];
    heights.forEach((height, index) => {
      const side = (choice >> index) & 1;
      sums[side] = (sums[side] ?? 0) + height;
    });
    const taller = Math.max(...sums);
    if (taller < best - 1e-6) [best, chosen] = [taller, choice];
  }
  return heads.map((head, side) => ({
    share: 0.5,
    blocks: [...head, ...groups.filter((_, index) => ((chosen >> index) & 1) === side).flat()],
  }));
}

function placeColumns(columns: readonly Column[], width: number, style: Style): PlacedColumn {
  const gap = columns.length > 1 ? columnGap : 0;
  const room = width - gap * (columns.length - 1);
  const items: Item[] = [];
  const parts: Part[] = [];
  let [x, height] = [0, 0];
  for (const { share, blocks } of columns) {
    const column = stack(blocks, share * room, style);
    items.push(...shift(column.items, x, 0));
    parts.push(...column.parts);
    height = Math.max(height, column.height);
    x += share * room + gap;
  }
  return { height, items, parts };
}

function placeBand(band: Band, width: number, style: Style): PlacedColumn {
  const head = 'balanced' in band && band.heading ? stack([band.heading], width, style) : undefined;
  const body = placeColumns(columnsOf(band, width, style), width, style);
  if (!head) return body;
  return {
    height: head.height + body.height,
    items: [...head.items, ...shift(body.items, 0, head.height)],
    parts: [...head.parts, ...body.parts],
  };
}

/** A side with this many rows in its log. */
const withLog = (side: Side, rows: number): Side => ({
  bands: side.bands.map((band) =>
    'columns' in band
      ? {
          ...band,
          columns: band.columns.map((column) => ({
            ...column,
            blocks: column.blocks.map((block) => (block.kind === 'log' ? { ...block, rows } : block)),
          })),
        }
      : band,
  ),
});

const hasLog = (side: Side): boolean =>
  side.bands.some(
    (band) =>
      'columns' in band && band.columns.some(({ blocks }) => blocks.some(({ kind }) => kind === 'log')),
  );

interface SetSide {
  readonly bands: readonly PlacedColumn[];
  readonly height: number;
  readonly style: Style;
}

function setSide(side: Side, width: number, style: Style): SetSide {
  const bands = side.bands.map((band) => placeBand(band, width, style));
  const between = gaps.bands * style.size * Math.max(0, bands.length - 1);
  return { bands, height: bands.reduce((sum, { height }) => sum + height, between), style };
}

/** Bands on one page from the top down, what room is left over shared out between them. */
function pageOf({ bands, height, style }: SetSide, room: number): PlacedColumn {
  const spare = bands.length > 1 ? Math.max(0, room - height) / (bands.length - 1) : 0;
  const gap = gaps.bands * style.size + Math.min(spare, widestSpread * style.size);
  const items: Item[] = [];
  let y = 0;
  for (const band of bands) {
    items.push(...shift(band.items, 0, y));
    y += band.height + gap;
  }
  return { height: y - gap, items, parts: bands.flatMap(({ parts }) => parts) };
}

/** The blocks of a column that fit into a height, and the rest; a heading goes with what follows it. */
function splitColumn({ share, blocks }: Column, room: number, width: number, style: Style): [Column, Column] {
  let count = blocks.length;
  while (count > 0 && stack(blocks.slice(0, count), width, style).height > room) count--;
  while (count > 0 && blocks[count - 1]?.kind === 'heading') count--;
  return [
    { share, blocks: blocks.slice(0, count) },
    { share, blocks: blocks.slice(count) },
  ];
}

/** The part of a side that fits on one page, and the part that has to go on another. */
function splitSide(side: Side, width: number, room: number, style: Style): [Side, Side] {
  const kept: Band[] = [];
  let left = room;
  for (const [index, band] of side.bands.entries()) {
    const { height } = placeBand(band, width, style);
    if (height <= left) {
      kept.push(band);
      left -= height + gaps.bands * style.size;
      continue;
    }
    const columns = columnsOf(band, width, style);
    const head = 'balanced' in band ? band.heading : undefined;
    const headHeight = head ? place(head, width, style).height : 0;
    const gap = columns.length > 1 ? columnGap : 0;
    const halves = columns.map((column) =>
      splitColumn(column, left - headHeight, column.share * (width - gap * (columns.length - 1)), style),
    );
    const fits = halves.map(([fit]) => fit);
    const rest = halves.map(([, over]) => over);
    const some = fits.some(({ blocks }) => blocks.length > 0);
    if (some) {
      if (head) kept.push({ columns: [{ share: 1, blocks: [head] }] });
      kept.push({ columns: fits });
    }
    const over: Band[] = [
      ...(head && !some ? [{ columns: [{ share: 1, blocks: [head] }] }] : []),
      { columns: rest },
    ];
    return [{ bands: kept }, { bands: [...over, ...side.bands.slice(index + 1)] }];
  }
  return [{ bands: kept }, { bands: [] }];
}

interface SetPages {
  readonly first: PlacedColumn;
  readonly more: readonly PlacedColumn[];
}

/** A side as large as fits on its page; at its smallest, what does not fit goes on further pages. */
function fit(side: Side, width: number, room: number, measure: Measure): SetPages {
  const least = withLog(side, logRows.least);
  for (const [size, figures] of settings) {
    const style = { size, figures, measure };
    const set = setSide(least, width, style);
    if (set.height > room) continue;
    if (!hasLog(side)) return { first: pageOf(set, room), more: [] };
    const more = (rows: number) => setSide(withLog(side, rows), width, style);
    let rows: number = logRows.least;
    while (rows < logRows.most && more(rows + 1).height <= room) rows++;
    return { first: pageOf(more(rows), room), more: [] };
  }
  const [size, figures] = settings.at(-1) ?? [12, 0.55];
  const style = { size, figures, measure };
  const pages: PlacedColumn[] = [];
  let rest: Side = least;
  while (rest.bands.length > 0) {
    const [now, later] = splitSide(rest, width, room, style);
    if (now.bands.length === 0) throw new Error('a block of the worksheet is taller than a page');
    pages.push(pageOf(setSide(now, width, style), room));
    rest = later;
  }
  const [first, ...more] = pages;
  if (!first) throw new Error('a side of the worksheet is empty');
  return { first, more };
}

/** The sides of a sheet on paper. Throws only when a single block is taller than a page. */
export function compose(
  sides: readonly [Side, Side],
  margins: Margins,
  paper: PaperName,
  measure: Measure,
): Sheet {
  const { width, height } = papers[paper];
  const inner = width - 2 * margin;
  const room = height - 2 * margin;
  const set = sides.map((side) => fit(side, inner, room, measure));
  const columns = [...set.map(({ first }) => first), ...set.flatMap(({ more }) => more)];
  const sections: Part[] = [];
  const pages = columns.map((column, index): Page => {
    const [top, left, right] = [part('P'), part('P'), part('P')];
    const continued = index < 2 && (set[index]?.more.length ?? 0) > 0;
    const { small: size } = sizes;
    const line = (text: string) => wrap([run(text)], size, inner, measure);
    const head = line(margins.head(index + 1));
    const headAt = { x: margin, y: margin - (head.length * leading + 0.35) * size, width: inner, size };
    const footAt = { x: margin, y: height - margin + 0.6 * size, width: inner, size };
    sections.push(part('Sect', [top, ...column.parts, left, right]));
    return {
      width,
      height,
      items: [
        setLines(head, headAt, top),
        ...shift(column.items, margin, margin),
        setLines(line(margins.footLeft), footAt, left),
        setLines(
          line(margins.footRight(index + 1, columns.length, continued)),
          { ...footAt, align: 'right' },
          right,
        ),
      ],
    };
  });
  return { pages, document: part('Document', sections) };
}
