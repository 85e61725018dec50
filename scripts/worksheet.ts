import { readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, dirname, extname, join, resolve } from 'node:path';
import process from 'node:process';
import { parseArgs } from 'node:util';
import { allFields } from '../calculators/bench/all-fields.ts';
import type { Region } from '../calculators/region.ts';
import { answer } from '../calculators/index.ts';
import { readBenchFile, type Problem } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { tooLarge } from '../content/yaml-tree.ts';
import { edition } from '../site/edition.ts';
import { sentenceText, warningWord } from '../site/widgets/text.ts';
import { BadInput, given, reasonOf, runCommand, type Surroundings } from './command.ts';
import { loadRegions } from './content-files.ts';

const help = `Makes the worksheet of a bench, two printed sides, out of its bench file.

  npm run worksheet -- BENCH.yaml [options]

  BENCH.yaml         the bench file; content/benches holds examples to copy
  --region ID        stand the bench in this region instead of the one that the file names
  --paper a4|letter  the paper; that of the region unless given
  --out FILE.pdf     where to write the worksheet; BENCH.pdf in the present folder unless given
  --figures FILE     write the figures as JSON too: SI units, temperatures in °C
  --help             this text
`;

interface Request {
  readonly bench: string;
  readonly region: string | undefined;
  readonly paper: 'a4' | 'letter' | undefined;
  readonly out: string;
  readonly figures: string | undefined;
}

/** What the command line asks for; null when it asks for help. */
function requestOf(args: readonly string[], folder: string): Request | null {
  const text = { type: 'string' } as const;
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: true,
    options: { region: text, paper: text, out: text, figures: text, help: { type: 'boolean' } },
  });
  if (values.help) return null;
  const [bench, ...more] = positionals;
  if (bench === undefined) throw new BadInput('Which bench file? --help says how to ask.');
  if (more.length > 0) throw new BadInput(`One bench file at a time. Found: ${positionals.join(', ')}`);
  const { region, paper, out, figures } = values;
  if (paper !== undefined && paper !== 'a4' && paper !== 'letter')
    throw new BadInput(`--paper must be a4 or letter. Found: ${paper}`);
  const request: Request = {
    bench: given(bench, folder),
    region,
    paper,
    out: given(out ?? `${basename(bench, extname(bench))}.pdf`, folder),
    figures: figures === undefined ? undefined : given(figures, folder),
  };
  const paths = [request.bench, request.out, ...(request.figures === undefined ? [] : [request.figures])];
  if (new Set(paths.map((path) => resolve(path))).size < paths.length)
    throw new BadInput('The bench file, the worksheet and the figures must be different files.');
  return request;
}

const refuse = (problems: readonly Problem[]): never => {
  throw new BadInput(problems.map(({ text }) => text).join('\n'));
};

/** The text of a bench file; its size is looked at before it is read. */
async function benchText(path: string, name: string): Promise<string> {
  try {
    const { size } = await stat(path);
    const large = tooLarge(name, size);
    if (large) refuse([large]);
    return await readFile(path, 'utf8');
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw new BadInput(`${name} cannot be read: ${reasonOf(error)}.`);
  }
}

/** The region asked for, if one was. */
function regionNamed(id: string | undefined, regions: readonly Region[]): Region | undefined {
  if (id === undefined) return undefined;
  const region = regions.find((one) => one.id === id);
  if (!region)
    throw new BadInput(`--region must be ${regions.map((one) => one.id).join(' or ')}. Found: ${id}`);
  return region;
}

/** Writes all of the files or none: each beside its place first, and all put there when all are whole. */
async function writeAll(
  files: readonly (readonly [path: string, data: Uint8Array | string])[],
): Promise<void> {
  const parts = files.map(([path]) => join(dirname(path), `.${basename(path)}.${process.pid}.part`));
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

/** Makes a worksheet as `npm run worksheet` does; see the help above. */
export async function worksheet(args: readonly string[], { folder, write }: Surroundings): Promise<void> {
  const request = requestOf(args, folder);
  if (!request) {
    write(help);
    return;
  }
  const name = basename(request.bench);
  const regions = loadRegions();
  const instead = regionNamed(request.region, regions);
  const read = readBenchFile(await benchText(request.bench, name), name, regions, instead);
  if (!read.ok) return refuse(read.problems);

  const { bench, assumed } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  // The reader of bench files lets nothing else through.
  if (!region || !station)
    throw new Error(`no region ${bench.place.region} or no station ${bench.place.station}`);
  const situation = { bench, region, station };
  // The drawing tools are large; whoever gets a message about a mistake should not wait for them.
  const [{ drawWorksheet }, { ensureFonts }, { figuresOf }] = await Promise.all([
    import('../site/worksheet/worksheet.ts'),
    import('./fonts.ts'),
    import('../site/figures.ts'),
  ]);
  const set = allFields.map(({ path }) => path).filter((path) => !assumed.includes(path));
  const answers = answer(situation);
  const manner = { system: region.units, locale: region.languages[0] ?? 'en' };
  const pdf = await drawWorksheet({
    situation,
    answers,
    manner,
    paper: request.paper ?? region.paper,
    fonts: await ensureFonts(),
    link: benchAddress(region.guide, bench, set),
    version: edition,
    assumed,
  });
  await writeAll([
    [request.out, pdf],
    ...(request.figures === undefined
      ? []
      : [[request.figures, `${JSON.stringify(figuresOf(situation, answers), null, 2)}\n`] as const]),
  ]);

  const say = (line: string): void => write(`${line}\n`);
  say(`Worksheet: ${request.out}`);
  if (request.figures !== undefined) say(`Figures:   ${request.figures}`);
  say(`Place:     ${station.name}, ${region.name}`);
  if (assumed.length > 0)
    say(
      `Nobody has set ${assumed.length} of ${allFields.length} fields; they have their usual values, or those of an example.`,
    );
  const warnings = Object.values(answers).flatMap((one) => one.warnings);
  // What must not be built so comes before what is only to be watched.
  for (const now of ['stop', 'care'] as const)
    for (const { level, text } of warnings)
      if (level === now) say(`${warningWord(level)} ${sentenceText(text, manner)}`);
}

if (import.meta.main) await runCommand(worksheet);
