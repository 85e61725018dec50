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

/** Blocks side by side across the page: in columns as given, or in two that share them out. */
export type Band = {
  /** Stands on the last side where its own has no room for it. */
  readonly movable?: boolean;
} & (
  | { readonly columns: readonly Column[] }
  /** Two columns with their first blocks, and groups that go under either, so that the taller one is as short as can be. */
  | {
      readonly heads: readonly [readonly Block[], readonly Block[]];
      readonly groups: readonly (readonly Block[])[];
    }
);

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

/** A side with what it is, in words: "build". */
export interface NamedSide extends Side {
  readonly name: string;
}

/** What stands in the margins of every page, in small letters. */
export interface Margins {
  /** In the upper margin: what this page is, by the name of its side. */
  readonly head: (page: number, side: string, continuation: boolean) => string;
  readonly footLeft: string;
  /** Told how many pages there are, and on which page this side goes on, if it does. */
  readonly footRight: (page: number, pages: number, continuedOn: number | undefined) => string;
}

/**
 * How a side may be set, best first: the size of its letters [pt], the height of its drawings as a share of the most that
 * they may take, and whether it is set close. Guides to clear print ask for 12 pt and more; rather than set anything
 * smaller, what has no room goes on another page.
 */
const settings: readonly (readonly [size: number, figures: number, close: boolean])[] = [
  ...[14, 13, 12.5, 12].flatMap((size) => [1, 0.85].map((figures) => [size, figures, false] as const)),
  [12, 0.7, false],
  ...[0.85, 0.7, 0.6, 0.5].map((figures) => [12, figures, true] as const),
];

/** Between two bands and two blocks, in shares of the letters' size. */
const gaps = { bands: 0.75, heading: 0.75, block: 0.35 } as const;
/** What is left of a gap on a side that is set close. */
const closer = 0.6;

const gapOf = (kind: keyof typeof gaps, { size, close }: Style): number =>
  gaps[kind] * size * (close ? closer : 1);

/** Between two columns [pt]; the same at every size, so that drawings keep their room. */
const columnGap = 19;
/** The most that the room left over may widen one gap between bands, in shares of the letters' size. */
const widestSpread = 1.6;

/** A winter has some thirty weeks, from October to the end of April; at least as many rows as from November to March. */
const logRows = { least: 22, most: 32 } as const;

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

/** A column that is filled to this share of its page may end before a heading; less, and a list is parted. */
const fullEnough = 0.75;

/** A block that is made of entries, with its first few of them and with the rest; null where it cannot be cut there. */
function cut(block: Block, count: number): readonly [Block, Block] | null {
  switch (block.kind) {
    case 'list': {
      const { entries, from = 1 } = block;
      if (count < 1 || count >= entries.length) return null;
      return [
        { ...block, entries: entries.slice(0, count) },
        { ...block, entries: entries.slice(count), from: from + count },
      ];
    }
    case 'cautions':
      if (count < 1 || count >= block.entries.length) return null;
      return [
        { ...block, entries: block.entries.slice(0, count) },
        { ...block, entries: block.entries.slice(count) },
      ];
    case 'rows':
    case 'table':
      if (count < 1 || count >= block.rows.length) return null;
      return [
        { ...block, rows: block.rows.slice(0, count) } as Block,
        { ...block, rows: block.rows.slice(count) } as Block,
      ];
    default:
      return null;
  }
}

/** How many entries a block has that may be parted by the end of a page. */
const entriesOf = (block: Block): number =>
  block.kind === 'list' || block.kind === 'cautions'
    ? block.entries.length
    : block.kind === 'rows' || block.kind === 'table'
      ? block.rows.length
      : 0;

/**
 * The blocks of a column that fit into a height, and the rest: cut before a heading where there is one to cut before,
 * else inside a block of several entries, else anywhere but behind a heading.
 */
function splitColumn(column: Column, room: number, width: number, style: Style): [Column, Column] {
  const { blocks } = column;
  const fits = (some: readonly Block[]): boolean => stack(some, width, style).height <= room;
  const parted = (first: readonly Block[], rest: readonly Block[]): [Column, Column] => [
    { ...column, blocks: first },
    { ...column, blocks: rest },
  ];
  let most = blocks.length;
  while (most > 0 && !fits(blocks.slice(0, most))) most--;
  if (most === blocks.length) return parted(blocks, []);
  let count = most;
  while (count > 0 && !opensGroup(blocks[count])) count--;
  if (count > 0 && stack(blocks.slice(0, count), width, style).height >= fullEnough * room)
    return parted(blocks.slice(0, count), blocks.slice(count));
  const next = blocks[most];
  if (next) {
    for (let kept = entriesOf(next) - 1; kept > 0; kept--) {
      const halves = cut(next, kept);
      if (halves && fits([...blocks.slice(0, most), halves[0]]))
        return parted([...blocks.slice(0, most), halves[0]], [halves[1], ...blocks.slice(most + 1)]);
    }
  }
  count = most;
  while (count > 0 && blocks[count - 1]?.kind === 'heading') count--;
  return parted(blocks.slice(0, count), blocks.slice(count));
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

/** Whether a side fits on its page in the closest setting that there is. */
function fitsClosest(side: Side, width: number, room: number, measure: Measure): boolean {
  const [size, figures, close] = settings.at(-1) ?? [12, 1, true];
  return setSide(withLog(side, logRows.least), width, { size, figures, close, measure }).height <= room;
}

/** A side without the bands that it has no room for, and these; the last ones go first. */
function eased(side: Side, fits: (side: Side) => boolean): [Side, readonly Band[]] {
  const bands = [...side.bands];
  const moved: Band[] = [];
  while (!fits({ bands })) {
    const at = bands.findLastIndex(({ movable }) => movable);
    if (at < 0) break;
    moved.unshift(...bands.splice(at, 1));
  }
  return [{ bands }, moved];
}

/**
 * The sides of a sheet on paper, each on a page of its own; what a side has no room for stands on the last side, and what
 * that has no room for on further pages. Throws only when a single block is taller than a page.
 */
export function compose(
  sides: readonly NamedSide[],
  margins: Margins,
  paper: PaperName,
  measure: Measure,
): Sheet {
  const { width, height } = papers[paper];
  const inner = width - 2 * margin;
  const { small: size } = sizes;
  const line = (text: string) => wrap([run(text)], size, inner, measure);
  // A long name makes the head longer, and each side begins so much lower.
  const longest = Math.max(...sides.map(({ name }) => line(margins.head(sides.length, name, true)).length));
  const top = margin + (longest - 1) * leading * size;
  const room = height - margin - top;
  const moved: Band[] = [];
  const set = sides.flatMap(({ name, ...side }, index) => {
    if (index === sides.length - 1) {
      const bands = [...moved, ...side.bands];
      return bands.length > 0 ? [{ name, ...fit({ bands }, inner, room, measure) }] : [];
    }
    const [kept, away] = eased(side, (one) => fitsClosest(one, inner, room, measure));
    moved.push(...away);
    return [{ name, ...fit(kept, inner, room, measure) }];
  });
  const columns = [
    ...set.map(({ name, first }) => ({ name, column: first, again: false })),
    ...set.flatMap(({ name, more }) => more.map((column) => ({ name, column, again: true }))),
  ];
  const sections: Part[] = [];
  const pages = columns.map(({ name, column, again }, index): Page => {
    const [above, left, right] = [part('P'), part('P'), part('P')];
    const next = columns.findIndex((one, at) => at > index && one.name === name);
    const head = line(margins.head(index + 1, name, again));
    const headAt = { x: margin, y: top - (head.length * leading + 0.25) * size, width: inner, size };
    const footY = height - margin + 0.6 * size;
    const corner = (lines: readonly Line[], of: Part, atRight = false): Item => {
      const wide = Math.max(0, ...lines.map((one) => one.width));
      return setLines(
        lines,
        { x: atRight ? width - margin - wide : margin, y: footY, width: wide, size },
        of,
      );
    };
    sections.push(part('Sect', [above, ...column.parts, left, right]));
    return {
      width,
      height,
      items: [
        setLines(head, headAt, above),
        ...shift(column.items, margin, top),
        corner(line(margins.footLeft), left),
        corner(
          line(margins.footRight(index + 1, columns.length, next < 0 ? undefined : next + 1)),
          right,
          true,
        ),
      ],
    };
  });
  return { pages, document: part('Document', sections) };
}
