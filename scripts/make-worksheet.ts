import { readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import process from 'node:process';
import { threadId } from 'node:worker_threads';
import { allFields } from '../calculators/bench/all-fields.ts';
import type { Region } from '../calculators/region.ts';
import { readBenchFile, readBenchTree, type Problem, type ReadBench } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { tooLarge, type Group } from '../content/yaml-tree.ts';
import { edition } from '../site/edition.ts';
import { keptAnswers } from '../site/build/kept.ts';
import type { LeftOut } from '../site/worksheet/left-out.ts';
import { warningWord } from '../site/widgets/text.ts';
import { BadInput, reasonOf } from './command.ts';
import { languageManner, loadRegions, regionNamed, tagOf } from './content-files.ts';

/** One worksheet to be made. Plain data, so that it can be handed to another thread. */
export interface WorksheetJob {
  /** A bench file, or a bench that was read out of a table. */
  readonly bench: { readonly path: string } | { readonly table: string; readonly tree: Group };
  /** The region to take instead of the one that the bench names. */
  readonly region: string | undefined;
  /** The paper; that of the region where it is left out. */
  readonly paper: 'a4' | 'letter' | undefined;
  /** The language, such as es; that of the region where it is left out. */
  readonly language: string | undefined;
  /** What is not to be printed; all is where this is left out. */
  readonly leaveOut?: readonly LeftOut[];
  /** Where the worksheet is written. */
  readonly out: string;
  /** Where the figures are written, if they are. */
  readonly figures: string | undefined;
}

/** What is said of a worksheet that was made. */
export interface MadeWorksheet {
  /** Station and region. */
  readonly place: string;
  /** How many fields nobody has set. */
  readonly assumed: number;
  /** What the sheet warns of; what must not be built so comes before what is only to be watched. */
  readonly warnings: readonly string[];
  /** Whether it is marked as not to be built. */
  readonly stopped: boolean;
}

export const refuse = (problems: readonly Problem[]): never => {
  throw new BadInput(problems.map(({ text }) => text).join('\n'));
};

/** The text of a file that someone named; its size is looked at before it is read. */
export async function textOf(
  path: string,
  name: string,
  largest: (name: string, bytes: number) => Problem | null = tooLarge,
): Promise<string> {
  try {
    const { size } = await stat(path);
    const large = largest(name, size);
    if (large) refuse([large]);
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput(`${name} cannot be read: ${reasonOf(error)}.`);
  }
}

async function readBench({ bench, region }: WorksheetJob, regions: readonly Region[]): Promise<ReadBench> {
  const instead = region === undefined ? undefined : regionNamed(region, regions);
  if ('tree' in bench) return readBenchTree(bench.tree, bench.table, regions, instead);
  const name = basename(bench.path);
  return readBenchFile(await textOf(bench.path, name), name, regions, instead);
}

/** Writes all of the files or none: each beside its place first, and all put there when all are whole. */
async function writeAll(
  files: readonly (readonly [path: string, data: Uint8Array | string])[],
): Promise<void> {
  const mark = `${process.pid}-${threadId}`;
  const parts = files.map(([path]) => join(dirname(path), `.${basename(path)}.${mark}.part`));
  try {
    for (const [index, [path, data]] of files.entries()) {
      const part = parts[index] ?? path;
      await writeFile(part, data).catch((error: unknown) => {
        throw new BadInput(`${path} cannot be written: ${reasonOf(error)}.`);
      });
      if (
        await stat(path).then(
          (found) => found.isDirectory(),
          () => false,
        )
      )
        throw new BadInput(`${path} cannot be written: it is a folder.`);
    }
    for (const [index, [path]] of files.entries()) await rename(parts[index] ?? path, path);
  } finally {
    await Promise.all(parts.map((part) => rm(part, { force: true })));
  }
}

/**
 * Makes one worksheet, from the bench file to the written PDF.
 * @throws {BadInput} when the bench cannot be read or a file cannot be written; nothing is written then
 */
export async function makeWorksheet(job: WorksheetJob, regions = loadRegions()): Promise<MadeWorksheet> {
  const read = await readBench(job, regions);
  if (!read.ok) return refuse(read.problems);

  const { bench, assumed } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  // The reader of bench files lets nothing else through.
  if (!region || !station)
    throw new Error(`no region ${bench.place.region} or no station ${bench.place.station}`);
  const situation = { bench, region, station };
  // The drawing tools are large; whoever gets a message about a mistake should not wait for them.
  const [{ drawWorksheet }, { reasonsAgainst, hints }, { ensureFonts }, { figuresOf }] = await Promise.all([
    import('../site/worksheet/worksheet.ts'),
    import('../site/worksheet/facts.ts'),
    import('./fonts.ts'),
    import('../site/figures.ts'),
  ]);
  const set = allFields.map(({ path }) => path).filter((path) => !assumed.includes(path));
  const answers = keptAnswers(situation);
  const manner = {
    system: region.units,
    ...languageManner(tagOf(job.language, region)),
    currency: region.tariff.currency,
  };
  const pdf = await drawWorksheet({
    situation,
    answers,
    manner,
    paper: job.paper ?? region.paper,
    fonts: await ensureFonts(),
    link: benchAddress(region.guide, bench, set),
    version: edition,
    assumed,
    leaveOut: job.leaveOut ?? [],
  });
  await writeAll([
    [job.out, pdf],
    ...(job.figures === undefined
      ? []
      : [[job.figures, `${JSON.stringify(figuresOf(situation, answers), null, 2)}\n`] as const]),
  ]);
  const facts = { situation, answers, manner };
  const [stops, cares] = [reasonsAgainst(facts), hints(facts)];
  return {
    place: `${station.name}, ${region.name}`,
    assumed: assumed.length,
    warnings: [
      ...stops.map((text) => `${warningWord('stop', manner)} ${text}`),
      ...cares.map((text) => `${warningWord('care', manner)} ${text}`),
    ],
    stopped: stops.length > 0,
  };
}
