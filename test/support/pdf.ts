import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PDFArray, PDFDict, PDFDocument, PDFName, PDFRawStream, decodePDFRawStream } from 'pdf-lib';
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { PNG } from 'pngjs';
import type { Box } from '../../site/worksheet/layout.ts';

/** Programs that look at a PDF from outside, by the Debian package that brings them. */
const packageOf = {
  qpdf: 'qpdf',
  pdftoppm: 'poppler-utils',
  pdffonts: 'poppler-utils',
  pdfinfo: 'poppler-utils',
};

/** Runs a program on a PDF. A program that is not there fails with how to get it, and never skips. */
function look(
  bytes: Uint8Array,
  program: keyof typeof packageOf,
  args: (pdf: string, folder: string) => readonly string[],
): { readonly status: number | null; readonly said: string; readonly files: readonly Buffer[] } {
  const folder = mkdtempSync(join(tmpdir(), 'worksheet-pdf-'));
  try {
    const pdf = join(folder, 'sheet.pdf');
    writeFileSync(pdf, bytes);
    const { status, stdout, stderr, error } = spawnSync(program, args(pdf, folder), { encoding: 'utf8' });
    if (error)
      throw new Error(
        `${program} cannot be run. On Debian it comes with "apt-get install ${packageOf[program]}".`,
        { cause: error },
      );
    const files = readdirSync(folder)
      .filter((name) => name.endsWith('.png'))
      .sort()
      .map((name) => readFileSync(join(folder, name)));
    return { status, said: stdout + stderr, files };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What qpdf finds wrong with a file; empty where nothing is. */
export function faults(bytes: Uint8Array): string {
  const { status, said } = look(bytes, 'qpdf', (pdf) => ['--check', pdf]);
  return status === 0 ? '' : said;
}

export const fontList = (bytes: Uint8Array): string => look(bytes, 'pdffonts', (pdf) => [pdf]).said;
export const information = (bytes: Uint8Array): string => look(bytes, 'pdfinfo', (pdf) => [pdf]).said;

/** A page, or a part of one, as it comes out of the printer: dark dots on light. */
export class Picture {
  readonly png: PNG;
  /** Dots per point. */
  readonly scale: number;

  constructor(png: PNG, dpi: number) {
    this.png = png;
    this.scale = dpi / 72;
  }

  /** Whether a dot holds ink, from a black one to one that a thin line only grazes. */
  dark(x: number, y: number): boolean {
    const { width, height, data } = this.png;
    if (x < 0 || y < 0 || x >= width || y >= height) return false;
    return (data[(y * width + x) * 4] ?? 255) < 230;
  }

  /** The share of upright strips, one dot wide, of a box [pt] that hold ink. */
  inkedColumns({ x, y, width, height }: Box): number {
    const [left, right] = [Math.round(x * this.scale), Math.round((x + width) * this.scale)];
    const [top, bottom] = [Math.floor(y * this.scale), Math.ceil((y + height) * this.scale)];
    let inked = 0;
    for (let column = left; column < right; column++) {
      let row = top;
      while (row < bottom && !this.dark(column, row)) row++;
      if (row < bottom) inked++;
    }
    return inked / Math.max(1, right - left);
  }

  /** Dark dots in a box [pt]. */
  ink({ x, y, width, height }: Box): number {
    let count = 0;
    for (let row = Math.floor(y * this.scale); row < (y + height) * this.scale; row++)
      for (let column = Math.floor(x * this.scale); column < (x + width) * this.scale; column++)
        if (this.dark(column, row)) count++;
    return count;
  }
}

/** Every page of a PDF as poppler draws it. */
export const pictures = (bytes: Uint8Array, dpi: number): Picture[] =>
  look(bytes, 'pdftoppm', (pdf, folder) => [
    '-r',
    String(dpi),
    '-gray',
    '-png',
    pdf,
    join(folder, 'page'),
  ]).files.map((file) => new Picture(PNG.sync.read(file), dpi));

/** A box [pt] of a page, the first being 1, as poppler draws it. */
export function pictureOf(bytes: Uint8Array, dpi: number, page: number, box: Box): Picture {
  const dots = (length: number) => String(Math.round((length * dpi) / 72));
  const { files } = look(bytes, 'pdftoppm', (pdf, folder) => [
    ...['-r', String(dpi), '-gray', '-f', String(page), '-l', String(page)],
    ...['-x', dots(box.x), '-y', dots(box.y), '-W', dots(box.width), '-H', dots(box.height)],
    ...['-png', pdf, join(folder, 'page')],
  ]);
  const [file] = files;
  if (!file) throw new Error(`no picture of page ${page}`);
  return new Picture(PNG.sync.read(file), dpi);
}

/** Blanks of any width as one plain blank. */
export const plain = (text: string): string => text.replace(/\s+/gu, ' ').trim();

export interface StructNode {
  readonly role?: string;
  readonly alt?: string;
  readonly children?: readonly StructNode[];
  readonly type?: string;
}

/** What pdf.js gives back as a map, an object or nothing. */
const entriesOf = (found: object | null): Map<string, unknown> =>
  new Map<string, unknown>(found instanceof Map ? found : Object.entries(found ?? {}));

/** A PDF as pdf.js reads it. */
export async function readPdf(bytes: Uint8Array) {
  // pdf.js takes the bytes for itself.
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const file = await loading.promise;
  const pages = [];
  for (let number = 1; number <= file.numPages; number++) {
    const page = await file.getPage(number);
    const { items } = await page.getTextContent();
    pages.push({
      text: items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join(''),
      structure: (await page.getStructTree()) as StructNode,
    });
  }
  const fields = entriesOf(await file.getFieldObjects()) as Map<string, { readonly value: string }[]>;
  const { info, metadata } = await file.getMetadata();
  const read = {
    pages,
    fields,
    info: info as Readonly<Record<string, unknown>>,
    metadata: metadata.getRaw() as string | undefined,
    marks: entriesOf(await file.getMarkInfo()),
  };
  await loading.destroy();
  return read;
}

/** Every node of a tree of structure, parents before children, in the order of reading. */
export const nodesOf = (node: StructNode): StructNode[] => [
  node,
  ...(node.children ?? []).flatMap((child) => nodesOf(child)),
];

/** The operators that paint a page, as written in the file. */
export async function operatorsOf(bytes: Uint8Array): Promise<string[]> {
  const file = await PDFDocument.load(bytes, { updateMetadata: false });
  return file.getPages().map(({ node }) => {
    const stream = node.lookup(PDFName.of('Contents'));
    if (!(stream instanceof PDFRawStream)) throw new Error('a page whose content is no stream');
    return new TextDecoder('latin1').decode(decodePDFRawStream(stream).decode());
  });
}

export { PDFArray, PDFDict, PDFDocument, PDFName };
