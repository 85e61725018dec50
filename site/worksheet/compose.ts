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
import { run, wrap, type Line, type Measure } from './text.ts';

/** Blocks side by side across the page: one column or two. */
export type Band =
  | { readonly columns: readonly Column[] }
  /** Two columns with their first blocks, and groups that go under either, so that the taller one is as short as can be. */
  | {
      readonly heads: readonly [readonly Block[], readonly Block[]];
      readonly groups: readonly (readonly Block[])[];
    };

export interface Column {
  /** Share of the width that columns of a fixed width leave. */
  readonly share: number;
  /** Width of a column that takes no share [pt]. */
  readonly fixed?: number;
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
 * How a side may be set, best first: the size of its letters [pt], the height of its drawings as a share of the most that
 * they may take, and whether it is set close. Guides to clear print ask for 12 pt of faces such as Arial, whose small
 * letters are as tall as those of this typeface at 11.5 pt (0.519 of the size against 0.546). A little less, 11 pt, is the
 * last resort before a third page.
 */
const settings: readonly (readonly [size: number, figures: number, close: boolean])[] = [
  ...[14, 13.5, 13, 12.5, 12].flatMap((size) => [1, 0.85].map((figures) => [size, figures, false] as const)),
  [12, 0.7, false],
  [12, 0.55, false],
  ...[12, 11.5, 11].flatMap((size) => [0.85, 0.7, 0.55].map((figures) => [size, figures, true] as const)),
];

/** Between two bands and two blocks, in shares of the letters' size. */
const gaps = { bands: 0.75, heading: 0.75, block: 0.35 } as const;
/** What is left of a gap on a side that is set close. */
const closer = 0.7;

const gapOf = (kind: keyof typeof gaps, { size, close }: Style): number =>
  gaps[kind] * size * (close ? closer : 1);

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
      y += gapOf(block.kind === 'heading' || block.kind === 'drawing' ? 'heading' : 'block', style);
    const placed: PlacedBlock = place(block, width, style);
    items.push(...shift(placed.items, 0, y));
    parts.push(...placed.parts);
    y += placed.height;
  });
  return { height: y, items, parts };
}

/** A band as columns. */
const columnsOf = (band: Band, width: number, style: Style): readonly Column[] =>
  'columns' in band ? band.columns : dealt(band.heads, band.groups, width, style);

/** Every way of dealing the groups is tried: there are few. */
function dealt(
  heads: readonly [readonly Block[], readonly Block[]],
  groups: readonly (readonly Block[])[],
  width: number,
  style: Style,
): readonly Column[] {
  const half = (width - columnGap) / 2;
  const tall = (blocks: readonly Block[]) => stack(blocks, half, style).height + gapOf('heading', style);
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

/** The widths of columns side by side. */
function widthsOf(columns: readonly Column[], width: number): number[] {
  const fixed = columns.reduce((sum, column) => sum + (column.fixed ?? 0), 0);
  const shares = columns.reduce((sum, { share }) => sum + share, 0);
  const room = width - columnGap * (columns.length - 1) - fixed;
  return columns.map(({ share, fixed: own }) => own ?? (share / shares) * room);
}

function placeColumns(columns: readonly Column[], width: number, style: Style): PlacedColumn {
  const widths = widthsOf(columns, width);
  const items: Item[] = [];
  const parts: Part[] = [];
  let [x, height] = [0, 0];
  columns.forEach(({ blocks }, index) => {
    const column = stack(blocks, widths[index] ?? 0, style);
    items.push(...shift(column.items, x, 0));
    parts.push(...column.parts);
    height = Math.max(height, column.height);
    x += (widths[index] ?? 0) + columnGap;
  });
  return { height, items, parts };
}

const placeBand = (band: Band, width: number, style: Style): PlacedColumn =>
  placeColumns(columnsOf(band, width, style), width, style);

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
  const between = gapOf('bands', style) * Math.max(0, bands.length - 1);
  return { bands, height: bands.reduce((sum, { height }) => sum + height, between), style };
}

/** Bands on one page from the top down, what room is left over shared out between them. */
function pageOf({ bands, height, style }: SetSide, room: number): PlacedColumn {
  const spare = bands.length > 1 ? Math.max(0, room - height) / (bands.length - 1) : 0;
  const gap = gapOf('bands', style) + Math.min(spare, widestSpread * style.size);
  const items: Item[] = [];
  let y = 0;
  for (const band of bands) {
    items.push(...shift(band.items, 0, y));
    y += band.height + gap;
  }
  return { height: y - gap, items, parts: bands.flatMap(({ parts }) => parts) };
}

const opensGroup = (block: Block | undefined): boolean =>
  block === undefined || block.kind === 'heading' || block.kind === 'drawing';

/**
 * The blocks of a column that fit into a height, and the rest: cut before a heading where there is one to cut before,
 * else anywhere but behind a heading.
 */
function splitColumn(column: Column, room: number, width: number, style: Style): [Column, Column] {
  const { blocks } = column;
  let most = blocks.length;
  while (most > 0 && stack(blocks.slice(0, most), width, style).height > room) most--;
  let count = most;
  while (count > 0 && !opensGroup(blocks[count])) count--;
  if (count === 0) {
    count = most;
    while (count > 0 && blocks[count - 1]?.kind === 'heading') count--;
  }
  return [
    { ...column, blocks: blocks.slice(0, count) },
    { ...column, blocks: blocks.slice(count) },
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
      left -= height + gapOf('bands', style);
      continue;
    }
    const columns = columnsOf(band, width, style);
    const widths = widthsOf(columns, width);
    const halves = columns.map((column, at) => splitColumn(column, left, widths[at] ?? 0, style));
    const fits = halves.map(([fit]) => fit);
    if (fits.some(({ blocks }) => blocks.length > 0)) kept.push({ columns: fits });
    const rest = halves.map(([, later]) => later);
    // What is left of one column alone starts on the left.
    const over: Band = {
      columns: rest.toSorted((a, b) => Number(b.blocks.length > 0) - Number(a.blocks.length > 0)),
    };
    return [{ bands: kept }, { bands: [over, ...side.bands.slice(index + 1)] }];
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
  const styles = settings.map(([size, figures, close]): Style => ({ size, figures, close, measure }));
  for (const style of styles) {
    const set = setSide(least, width, style);
    if (set.height > room) continue;
    if (!hasLog(side)) return { first: pageOf(set, room), more: [] };
    const more = (rows: number) => setSide(withLog(side, rows), width, style);
    let rows: number = logRows.least;
    while (rows < logRows.most && more(rows + 1).height <= room) rows++;
    return { first: pageOf(more(rows), room), more: [] };
  }
  const style = styles.at(-1);
  if (!style) throw new Error('the worksheet has no way to be set');
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
    const headAt = { x: margin, y: margin - (head.length * leading + 0.25) * size, width: inner, size };
    const footY = height - margin + 0.6 * size;
    const corner = (lines: readonly Line[], of: Part, atRight = false): Item => {
      const wide = Math.max(0, ...lines.map((one) => one.width));
      return setLines(
        lines,
        { x: atRight ? width - margin - wide : margin, y: footY, width: wide, size },
        of,
      );
    };
    sections.push(part('Sect', [top, ...column.parts, left, right]));
    return {
      width,
      height,
      items: [
        setLines(head, headAt, top),
        ...shift(column.items, margin, margin),
        corner(line(margins.footLeft), left),
        corner(line(margins.footRight(index + 1, columns.length, continued)), right, true),
      ],
    };
  });
  return { pages, document: part('Document', sections) };
}
