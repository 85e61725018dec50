/**
 * Builds the guide into dist/, a folder for any static host, with the worksheets of the example benches in it:
 * `npm run build -- [--region ID] [--base PATH]`.
 */
import { access, cp, mkdir, readFile, rm } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { bookFile, printBook } from './book.ts';
import type { FileText } from '../content/regions.ts';
import { benchesIn, filesOf, loadRegions, regionNamed } from './content-files.ts';
import { findBrowser } from './find-browser.ts';
import { ensureFonts } from './fonts.ts';
import { writeServiceWorker } from './offline.ts';
import { readOptions, root, run, runTask, step, TaskProblem } from './steps.ts';
import { worksheet } from './worksheet.ts';

/** Where the built guide lies. */
export const outFolder = join(root, 'dist');

interface BuildOptions {
  /** The region that the guide is for; the default region when left out. */
  readonly region?: string | undefined;
  /** The path on the host that the guide will lie at, such as "/winter/"; the host's top when left out. */
  readonly base?: string | undefined;
}

interface Built {
  /** Paths of the worksheets that were made. */
  readonly worksheets: readonly string[];
  /** The path of the whole guide as a PDF; undefined where there is no browser to print it. */
  readonly book: string | undefined;
}

/** The path in the form that pages need it: with a slash at either end. */
function baseOf(written: string): string {
  if (/^[\w./~-]*$/u.test(written) && !written.includes('..')) return `/${written}/`.replace(/\/{2,}/gu, '/');
  throw new TaskProblem(`--base must be a path on the host, such as /winter/. Found: ${written}`);
}

/** The example benches that go with a guide: those of its region, or of all where none was asked for. */
function benchesOf(id: string | undefined): readonly FileText[] {
  if (id === undefined) return filesOf('benches');
  const regions = loadRegions();
  const benches = benchesIn(regionNamed(id, regions), regions);
  if (benches.length > 0) return benches;
  throw new TaskProblem(
    `The region ${id} has no example bench: put a bench file with "region: ${id}" into content/benches/.`,
  );
}

/** Where the codes on worksheets lead to another place than the one that the guide is built for. */
function strayCodes(id: string | undefined, base: string): string | undefined {
  if (id === undefined) return undefined;
  const { guide } = regionNamed(id, loadRegions());
  const { origin, pathname } = new URL(guide);
  return pathname === base
    ? undefined
    : `The codes on worksheets lead to ${guide}, and the guide is built for ${base}: write "guide: ${origin}${base}" in content/regions/${id}.yaml, or give --base ${pathname}.`;
}

async function runOrStop(program: string, words: readonly string[], env?: Readonly<Record<string, string>>) {
  const { code, said } = await run(program, words, env ? { env } : {});
  if (code !== 0)
    throw new TaskProblem(`\n${said.trim()}\n\n${[program, ...words].join(' ')} ended with ${code}.`);
}

/** The worksheets of the example benches with their figures, made by the command that makes anyone's; their names. */
async function makeWorksheets(folder: string, benches: readonly FileText[]): Promise<readonly string[]> {
  await rm(folder, { recursive: true, force: true });
  await mkdir(folder, { recursive: true });
  const quiet = { folder: root, write: () => undefined, complain: () => undefined, terminal: false };
  const names: string[] = [];
  for (const { file } of benches) {
    const out = join(folder, basename(file, '.yaml'));
    await worksheet([join(root, file), '--out', `${out}.pdf`, '--figures', `${out}.json`], quiet);
    names.push(`${basename(out)}.pdf`);
  }
  return names;
}

/** How often it is looked whether a page is there [ms]. */
const glance = 50;

/**
 * Waits until a page has been written to its end, or all pages have.
 * @throws whatever ended the making of pages
 */
async function wholePage(file: string, pages: Promise<unknown>): Promise<void> {
  let over = false;
  const ended = pages.finally(() => (over = true));
  const there = async (): Promise<void> => {
    while (!over) {
      const text = await readFile(file, 'utf8').catch(() => '');
      if (text.trimEnd().endsWith('</html>')) return;
      await setTimeout(glance);
    }
  };
  await Promise.race([ended, there()]);
}

/**
 * Builds the guide and the worksheets of the example benches, and tells how long each step took.
 * @throws {TaskProblem} when a page, a bench file or a region has a mistake; it says which
 */
export async function buildGuide({ region, base }: BuildOptions = {}): Promise<Built> {
  const benches = benchesOf(region);
  const place = base === undefined ? '/' : baseOf(base);
  const browser = findBrowser();
  // Pages and worksheets show the same bench: what one of them has worked out, the other finds there.
  const answers = join(root, '.cache', 'answers');
  await rm(answers, { recursive: true, force: true });
  process.env['KEPT_ANSWERS'] = answers;
  const env = {
    KEPT_ANSWERS: answers,
    ...(browser === undefined ? {} : { BOOK: bookFile }),
    ...(region === undefined ? {} : { REGION: region }),
    ...(base === undefined ? {} : { BASE: place }),
  };
  await step('Fonts of the worksheet', ensureFonts);
  // The pages are built by another process, which empties the folder that they go to.
  const sheets = join(root, '.cache', 'worksheets');
  await rm(join(outFolder, 'book'), { recursive: true, force: true });
  const pages = step('Pages', () => runOrStop('astro', ['build'], env));
  const beside = async (): Promise<readonly string[]> => {
    const made = await step('Worksheets', () => makeWorksheets(sheets, benches));
    // The book is one of the first pages: it is printed while the others are still being made.
    const page = join(outFolder, 'book', 'index.html');
    if (browser !== undefined)
      await step('The guide as a PDF', () =>
        printBook(outFolder, place, browser, () => wholePage(page, pages)),
      );
    return made;
  };
  let names: readonly string[] = [];
  const ended = await Promise.allSettled([pages, beside().then((made) => (names = made))]);
  delete process.env['KEPT_ANSWERS'];
  await rm(answers, { recursive: true, force: true });
  for (const one of ended) if (one.status === 'rejected') throw one.reason;
  const folder = join(outFolder, 'worksheets');
  await cp(sheets, folder, { recursive: true });
  const worksheets = names.map((name) => join(folder, name));
  await access(join(outFolder, 'bench.schema.json'));
  if (browser === undefined) console.log('No Chromium or Chrome here: the guide as a PDF was not made.');
  await step('Use without a network', () => writeServiceWorker(outFolder));
  const stray = strayCodes(region, place);
  if (stray !== undefined) console.log(stray);
  return { worksheets, book: browser === undefined ? undefined : join(outFolder, bookFile) };
}

if (import.meta.main)
  await runTask(async () => {
    const { worksheets, book } = await buildGuide(
      readOptions({ region: { type: 'string' }, base: { type: 'string' } }),
    );
    console.log(
      `\nThe guide is in ${relative(process.cwd(), outFolder) || '.'}/, to be put on any static host.`,
    );
    for (const file of worksheets) console.log(`A worksheet: ${relative(process.cwd(), file)}`);
    if (book !== undefined) console.log(`The guide as a PDF: ${relative(process.cwd(), book)}`);
  });
