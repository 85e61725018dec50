import { basename, extname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { allFields } from '../calculators/bench/all-fields.ts';
import { tableColumns } from '../content/bench-table.ts';
import { leftOutNames, type LeftOut } from '../site/worksheet/left-out.ts';
import { BadInput, given, runCommand, type Surroundings } from './command.ts';
import { languageManner, loadRegions, regionNamed } from './content-files.ts';
import { makeWorksheet } from './make-worksheet.ts';
import { asksForMany, makeWorksheets } from './worksheets.ts';

const help = `Makes the worksheet of a bench, a sheet for the wall and one for the folder, out of its bench file; or those
of many benches.

  npm run worksheet -- BENCH.yaml [options]
  npm run worksheet -- FOLDER | TABLE.csv | several of them [options]

  BENCH.yaml         the bench file; content/benches holds examples to copy
  FOLDER             every bench file in it, their names ending in .yaml or .yml
  TABLE.csv          a bench a line; the first line names the fields, such as identity.name,frame.length
  --region ID        stand the bench in this region instead of the one that the file names
  --paper a4|letter  the paper; that of the region unless given
  --language en|es   the language; that of the region unless given
  --leave-out PARTS  what not to print: drawings, buying, log, notes, with commas between them
  --out PLACE        where to write: a file for one bench, BENCH.pdf in the present folder unless given;
                     a folder for many, the folder worksheets unless given
  --figures PLACE    write the figures as JSON too, SI units, temperatures in °C: a file, or a folder for many
  --columns          print the names that the columns of a table may have
  --help             this text

With many benches all cores are used, and what cannot be made is listed at the end; the others are made.
`;

interface Request {
  readonly benches: readonly string[];
  readonly region: string | undefined;
  readonly paper: 'a4' | 'letter' | undefined;
  readonly language: string | undefined;
  readonly leaveOut: readonly LeftOut[];
  readonly out: string | undefined;
  readonly figures: string | undefined;
}

/** What is not to be printed, as it is written: "log,buying". */
function partsOf(text: string | undefined): LeftOut[] {
  const named = (text ?? '').split(',').map((part) => part.trim());
  return named.flatMap((part) => {
    if (part === '') return [];
    const found = leftOutNames.find((one) => one === part);
    if (!found) throw new BadInput(`--leave-out may have ${leftOutNames.join(', ')}. Found: ${part}`);
    return [found];
  });
}

/** What the command line asks for: worksheets, or a text to be printed. */
function requestOf(args: readonly string[], folder: string): Request | string {
  const text = { type: 'string' } as const;
  const flag = { type: 'boolean' } as const;
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: true,
    options: {
      ...{ region: text, paper: text, language: text, 'leave-out': text, out: text, figures: text },
      ...{ columns: flag, help: flag },
    },
  });
  if (values.help) return help;
  if (values.columns) return `${tableColumns.join(',')}\n`;
  if (positionals.length === 0) throw new BadInput('Which bench file? --help says how to ask.');
  const { region, paper, language, out, figures } = values;
  if (paper !== undefined && paper !== 'a4' && paper !== 'letter')
    throw new BadInput(`--paper must be a4 or letter. Found: ${paper}`);
  if (language !== undefined) languageManner(language);
  const leaveOut = partsOf(values['leave-out']);
  const place = (path: string | undefined) => (path === undefined ? undefined : given(path, folder));
  return {
    benches: positionals.map((path) => given(path, folder)),
    region,
    paper,
    language,
    leaveOut,
    out: place(out),
    figures: place(figures),
  };
}

/** The worksheet of one bench, and what there is to say of it. */
async function makeOne(
  bench: string,
  { region, paper, language, leaveOut, out, figures }: Request,
  { folder, write }: Surroundings,
): Promise<void> {
  const job = {
    bench: { path: bench },
    region,
    paper,
    language,
    leaveOut,
    out: out ?? given(`${basename(bench, extname(bench))}.pdf`, folder),
    figures,
  };
  const paths = [bench, job.out, ...(figures === undefined ? [] : [figures])];
  if (new Set(paths.map((path) => resolve(path))).size < paths.length)
    throw new BadInput('The bench file, the worksheet and the figures must be different files.');
  const { place, assumed, warnings } = await makeWorksheet(job);
  const say = (line: string): void => write(`${line}\n`);
  say(`Worksheet: ${job.out}`);
  if (figures !== undefined) say(`Figures:   ${figures}`);
  say(`Place:     ${place}`);
  if (assumed > 0)
    say(
      `Nobody has set ${assumed} of ${allFields.length} fields; they have their usual values, or those of an example.`,
    );
  for (const warning of warnings) say(warning);
}

/** Makes worksheets as `npm run worksheet` does; see the help above. */
export async function worksheet(args: readonly string[], surroundings: Surroundings): Promise<void> {
  const request = requestOf(args, surroundings.folder);
  if (typeof request === 'string') {
    surroundings.write(request);
    return;
  }
  const { benches, region, out } = request;
  if (region !== undefined) regionNamed(region, loadRegions());
  const [bench, ...more] = benches;
  if (bench !== undefined && more.length === 0 && !(await asksForMany(benches)))
    await makeOne(bench, request, surroundings);
  else
    await makeWorksheets(
      { ...request, paths: benches, out: out ?? given('worksheets', surroundings.folder) },
      surroundings,
    );
}

if (import.meta.main) await runCommand(worksheet);
