import { fork, type ChildProcess } from 'node:child_process';
import { createHash } from 'node:crypto';
import { access, copyFile, mkdir, readdir, readFile, rm, writeFile } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import type { Region } from '../calculators/region.ts';
import { chooserPage, chooserStyles } from '../site/chooser.ts';
import { hostFiles, robots } from '../site/hosts.ts';
import type { BuildOptions } from './build.ts';
import { benchesIn, loadRegions, regionNamed } from './content-files.ts';
import { ensureFonts } from './fonts.ts';
import { workerFile } from './offline.ts';
import { root, TaskProblem, timeInWords } from './steps.ts';

/**
 * Guides of several regions in one folder: one below the name of each, and a page to choose from. A guide that nothing
 * has changed for is left as it is. The others are made by as many processes as there are cores, each of which makes one
 * after the other, as all but the first guide of a process take half the work.
 */

/** What every guide is made of, beside its region and its benches. */
const common = [
  ...['calculators', 'site', 'content/chapters', 'content/glossary', 'content/logs', 'scripts'],
  ...['package-lock.json', 'astro.config.mjs'],
];

async function filesBelow(path: string): Promise<readonly string[]> {
  const entries = await readdir(join(root, path), { recursive: true, withFileTypes: true }).catch(() => null);
  if (entries === null) return [join(root, path)];
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .sort();
}

/** A name for the state of what all guides share. */
async function commonHash(): Promise<string> {
  const hash = createHash('sha256');
  const readers = (await filesBelow('content')).filter((file) => /content[/\\][^/\\]+\.ts$/u.test(file));
  for (const file of [...readers, ...(await Promise.all(common.map(filesBelow))).flat()])
    hash
      .update(file.slice(root.length))
      .update('\0')
      .update(await readFile(file));
  return hash.digest('hex');
}

/** One guide to make. */
export interface Order {
  readonly options: BuildOptions & { readonly region: string; readonly out: string };
  /** Names everything that it is made of. */
  readonly hash: string;
}

const keptHash = (region: string): string => join(root, '.cache', 'regions', `${region}.txt`);

/** Names what lies in a folder now: its list of files with their hashes. */
async function madeHash(out: string): Promise<string> {
  const list = await readFile(join(out, workerFile), 'utf8').catch(() => '');
  return createHash('sha256').update(list).digest('hex');
}

/** Whether the guide that lies there is the one that would be made. */
async function isMade({ options: { region, out }, hash }: Order): Promise<boolean> {
  const kept = await readFile(keptHash(region), 'utf8').catch(() => '');
  return kept === `${hash} ${out} ${await madeHash(out)}`;
}

/** What a maker is told of an order, and what it says when it is done. */
export type Done = { readonly ok: true } | { readonly ok: false; readonly wrong: string };

/** Makes guides one after the other until none is left; several of these run side by side. */
async function maker(queue: Order[], tell: (order: Order, seconds: number) => Promise<void>): Promise<void> {
  let child: ChildProcess | undefined;
  try {
    for (let order = queue.shift(); order !== undefined; order = queue.shift()) {
      child ??= fork(join(root, 'scripts', 'several-maker.ts'), {
        stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
      });
      const worker = child;
      const begun = performance.now();
      const done = await new Promise<Done>((resolve) => {
        worker.once('message', (message) => {
          resolve(message as Done);
        });
        worker.once('exit', (code) => {
          resolve({ ok: false, wrong: `its process ended with ${code ?? 'a signal'}` });
        });
        worker.send(order);
      });
      worker.removeAllListeners('exit');
      if (!done.ok) throw new TaskProblem(`${order.options.region}: ${done.wrong}`);
      await tell(order, performance.now() - begun);
    }
  } finally {
    child?.kill();
  }
}

export interface SeveralOptions {
  readonly regions: readonly string[];
  /** With a slash at either end. */
  readonly base: string;
  readonly site?: string | undefined;
  readonly out: string;
  readonly withoutBook?: boolean | undefined;
}

/** The page to choose on, and what a host is told at the top. */
async function writeTop({ base, site, out }: SeveralOptions, regions: readonly Region[]): Promise<void> {
  await mkdir(out, { recursive: true });
  await copyFile(join(root, 'site/styles/chooser.css'), join(out, chooserStyles));
  const own = hostFiles(base);
  const ofRegions = regions.map(({ id }) => hostFiles(`${base}${id}/`)['_headers'] ?? '');
  const files = {
    'index.html': chooserPage(regions, base),
    '404.html': chooserPage(regions, base, true),
    'robots.txt':
      robots(undefined) +
      (site === undefined
        ? ''
        : regions.map(({ id }) => `Sitemap: ${new URL(`${id}/sitemap.xml`, site).href}\n`).join('')),
    _headers: [own['_headers'], ...ofRegions].join(''),
    '.htaccess': own['.htaccess'] ?? '',
  };
  for (const [name, text] of Object.entries(files)) await writeFile(join(out, name), text);
}

/**
 * Builds the guides of several regions and tells of each how long it took.
 * @throws {TaskProblem} when a region is not there, has no example bench, or cannot be built; it says which
 */
export async function buildSeveral(several: SeveralOptions): Promise<void> {
  const all = loadRegions();
  const regions = several.regions.map((id) => regionNamed(id, all));
  const shared = await commonHash();
  const orders = regions.map((region): Order => {
    const benches = benchesIn(region, all);
    if (benches.length === 0)
      throw new TaskProblem(
        `The region ${region.id} has no example bench: put a bench file with "region: ${region.id}" into content/benches/.`,
      );
    const { base, site, withoutBook } = several;
    const options = {
      region: region.id,
      base: `${base}${region.id}/`,
      site: site === undefined ? undefined : new URL(`${region.id}/`, site).href,
      out: join(several.out, region.id),
      chooser: base,
      withoutBook,
      here: true,
    };
    const hash = createHash('sha256')
      .update(JSON.stringify([shared, region, benches, options]))
      .digest('hex');
    return { options, hash };
  });
  const queue: Order[] = [];
  for (const order of orders) if (!(await isMade(order))) queue.push(order);
  const unchanged = orders.length - queue.length;
  if (unchanged > 0) console.log(`${unchanged} of ${orders.length} regions are as they were.`);
  await ensureFonts();
  await mkdir(join(root, '.cache', 'regions'), { recursive: true });
  let count = unchanged;
  const tell = async ({ options: { region, out }, hash }: Order, time: number): Promise<void> => {
    await writeFile(keptHash(region), `${hash} ${out} ${await madeHash(out)}`);
    console.log(`${region} (${++count} of ${orders.length}): ${timeInWords(time)}`);
  };
  const begun = performance.now();
  const makers = Math.min(availableParallelism(), queue.length);
  const made = queue.length;
  for (const { options } of queue) await rm(keptHash(options.region), { force: true });
  const ended = await Promise.allSettled(Array.from({ length: makers }, () => maker(queue, tell)));
  for (const one of ended) if (one.status === 'rejected') throw one.reason;
  await writeTop(several, regions);
  await access(join(several.out, 'index.html'));
  const time = performance.now() - begun;
  if (made > 0) console.log(`${made} made in ${timeInWords(time)}, ${timeInWords(time / made)} each.`);
}
