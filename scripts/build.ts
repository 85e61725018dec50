/**
 * Builds the guide into dist/, a folder for any static host, with the worksheets of the example benches in it:
 * `npm run build -- [--region ID,ID…|all] [--base PATH] [--site ADDRESS] [--out FOLDER] [--without-book]`.
 */
import { access, cp, mkdir, readFile, rm } from 'node:fs/promises';
import { basename, join, relative } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { bookFile, printBook } from './book.ts';
import { given } from './command.ts';
import type { FileText } from '../content/regions.ts';
import { benchesIn, filesOf, loadRegions, regionNamed } from './content-files.ts';
import { findBrowser } from './find-browser.ts';
import { ensureFonts } from './fonts.ts';
import { drawPreview, writeHostFiles } from './host-files.ts';
import { writeServiceWorker } from './offline.ts';
import { readOptions, root, run, runTask, step, TaskProblem } from './steps.ts';
import { worksheet } from './worksheet.ts';

/** Where the built guide lies. */
export const outFolder = join(root, 'dist');

export interface BuildOptions {
  /** The region that the guide is for; the default region when left out. */
  readonly region?: string | undefined;
  /** The path on the host that the guide will lie at, such as "/winter/"; the host's top when left out. */
  readonly base?: string | undefined;
  /** The whole address that the guide will lie at; that of its region when left out, if it leads anywhere. */
  readonly site?: string | undefined;
  /** Where the guide goes; dist/ when left out. */
  readonly out?: string | undefined;
  /** Prints no book, which takes a third of the time. */
  readonly withoutBook?: boolean | undefined;
  /** Address of the page on which readers choose a region, where there are several. */
  readonly chooser?: string | undefined;
  /** Makes the pages within this process, which is quicker from the second guide on. */
  readonly here?: boolean | undefined;
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

/** Ends of names that lead nowhere (RFC 2606). */
const nowhere = /\.(?:example|invalid|test|localhost)$/u;

/**
 * The whole address of the guide, where it is known: as it was said, or as its region has it.
 * @throws {TaskProblem} when what was said is no address of a guide
 */
export function siteOf(
  said: string | undefined,
  region: string | undefined,
  base: string | undefined,
): string | undefined {
  if (said !== undefined) {
    const whole = said.replace(/\/*$/u, '/');
    if (!/^https?:\/\/[^?#@]+$/u.test(whole) || !URL.canParse(whole))
      throw new TaskProblem(
        `--site must be an address, such as https://guide.example/winter/. Found: ${said}`,
      );
    const { pathname } = new URL(whole);
    if (base !== undefined && pathname !== '/' && pathname !== base)
      throw new TaskProblem(`--site ${said} and --base ${base} name two folders; leave one out.`);
    return new URL(base ?? pathname, whole).href;
  }
  if (region === undefined) return undefined;
  const { guide } = regionNamed(region, loadRegions());
  const { hostname, pathname } = new URL(guide);
  return nowhere.test(hostname) || pathname !== (base ?? pathname) ? undefined : guide;
}

async function runOrStop(program: string, words: readonly string[], env?: Readonly<Record<string, string>>) {
  const { code, said } = await run(program, words, env ? { env } : {});
  if (code !== 0)
    throw new TaskProblem(`\n${said.trim()}\n\n${[program, ...words].join(' ')} ended with ${code}.`);
}

/** What the configuration of the pages reads of the surroundings; what is not given must not be left from before. */
const surroundings = ['BOOK', 'REGION', 'BASE', 'SITE', 'PREVIEW', 'CHOOSER', 'OUT', 'CACHE', 'KEPT_ANSWERS'];

async function pagesHere(env: Readonly<Record<string, string>>): Promise<void> {
  for (const name of surroundings) Reflect.deleteProperty(process.env, name);
  Object.assign(process.env, env, { ASTRO_TELEMETRY_DISABLED: '1' });
  const { build } = await import('astro');
  await build({ root, logLevel: 'error' });
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
export async function buildGuide({
  region,
  base,
  site,
  out = outFolder,
  withoutBook = false,
  chooser,
  here = false,
}: BuildOptions = {}): Promise<Built> {
  const benches = benchesOf(region);
  const address = siteOf(site, region, base === undefined ? undefined : baseOf(base));
  const said = base ?? (site !== undefined && address !== undefined ? new URL(address).pathname : undefined);
  const place = said === undefined ? '/' : baseOf(said);
  const anyBrowser = findBrowser();
  const browser = withoutBook ? undefined : anyBrowser;
  // Pages and worksheets show the same bench: what one of them has worked out, the other finds there.
  const answers = join(root, '.cache', `answers-${process.pid}`);
  await rm(answers, { recursive: true, force: true });
  process.env['KEPT_ANSWERS'] = answers;
  const env = {
    KEPT_ANSWERS: answers,
    ...(browser === undefined ? {} : { BOOK: bookFile }),
    ...(region === undefined ? {} : { REGION: region }),
    ...(place === '/' ? {} : { BASE: place }),
    ...(address === undefined
      ? {}
      : { SITE: address, ...(anyBrowser === undefined ? {} : { PREVIEW: 'yes' }) }),
    ...(chooser === undefined ? {} : { CHOOSER: chooser }),
    OUT: out,
    ...(here ? { CACHE: join(root, '.cache', `astro-${process.pid}`) } : {}),
  };
  await step('Fonts of the worksheet', ensureFonts);
  // The pages are built by another process, which empties the folder that they go to.
  const sheets = join(root, '.cache', `worksheets-${process.pid}`);
  await rm(join(out, 'book'), { recursive: true, force: true });
  const pages = step('Pages', () => (here ? pagesHere(env) : runOrStop('astro', ['build'], env)));
  const beside = async (): Promise<readonly string[]> => {
    const made = await step('Worksheets', () => makeWorksheets(sheets, benches));
    // The book is one of the first pages: it is printed while the others are still being made.
    const page = join(out, 'book', 'index.html');
    if (browser !== undefined)
      await step('The guide as a PDF', () => printBook(out, place, browser, () => wholePage(page, pages)));
    return made;
  };
  let names: readonly string[] = [];
  const ended = await Promise.allSettled([pages, beside().then((made) => (names = made))]);
  delete process.env['KEPT_ANSWERS'];
  await rm(answers, { recursive: true, force: true });
  for (const one of ended) if (one.status === 'rejected') throw one.reason;
  const folder = join(out, 'worksheets');
  await cp(sheets, folder, { recursive: true });
  await rm(sheets, { recursive: true, force: true });
  const worksheets = names.map((name) => join(folder, name));
  await access(join(out, 'bench.schema.json'));
  await step('What the host is told', async () => {
    await writeHostFiles(out, place, address);
    if (address !== undefined && anyBrowser !== undefined) await drawPreview(out, place, anyBrowser);
  });
  if (anyBrowser === undefined) console.log('No Chromium or Chrome here: the guide as a PDF was not made.');
  await step('Use without a network', () => writeServiceWorker(out));
  const stray = strayCodes(region, place);
  if (stray !== undefined) console.log(stray);
  return { worksheets, book: browser === undefined ? undefined : join(out, bookFile) };
}

if (import.meta.main)
  await runTask(async () => {
    const text = { type: 'string' } as const;
    const options = readOptions({
      region: text,
      base: text,
      site: text,
      out: text,
      'without-book': { type: 'boolean' },
    });
    const out = options.out === undefined ? outFolder : given(options.out);
    const withoutBook = options['without-book'];
    const several =
      options.region === 'all' ? loadRegions().map(({ id }) => id) : (options.region?.split(',') ?? []);
    if (several.length > 1) {
      const { buildSeveral } = await import('./several.ts');
      const base = baseOf(
        options.base ?? (options.site === undefined ? '/' : new URL(options.site).pathname),
      );
      await buildSeveral({
        regions: several,
        base,
        site: siteOf(options.site, undefined, base),
        out,
        withoutBook,
      });
      console.log(
        `\nThe guides are in ${relative(process.cwd(), out) || '.'}/, to be put on any static host.`,
      );
      return;
    }
    const { worksheets, book } = await buildGuide({ ...options, out, withoutBook });
    console.log(`\nThe guide is in ${relative(process.cwd(), out) || '.'}/, to be put on any static host.`);
    for (const file of worksheets) console.log(`A worksheet: ${relative(process.cwd(), file)}`);
    if (book !== undefined) console.log(`The guide as a PDF: ${relative(process.cwd(), book)}`);
  });
