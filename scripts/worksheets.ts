import { mkdir, readdir, stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename, extname, join, resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import { largestTable, readBenchTable } from '../content/bench-table.ts';
import { problem } from '../content/problem.ts';
import type { LeftOut } from '../site/worksheet/left-out.ts';
import { BadInput, reasonOf, type Surroundings } from './command.ts';
import { ensureFonts } from './fonts.ts';
import { refuse, textOf, type WorksheetJob } from './make-worksheet.ts';
import { timeInWords } from './steps.ts';
import type { Outcome } from './worksheet-thread.ts';

/** The worksheets of many benches: of several files, of a folder, of a table. */
export interface ManyRequest {
  /** Bench files, folders of them, and tables. */
  readonly paths: readonly string[];
  readonly region: string | undefined;
  readonly paper: 'a4' | 'letter' | undefined;
  readonly language?: string | undefined;
  readonly leaveOut?: readonly LeftOut[];
  /** The folder for the worksheets. */
  readonly out: string;
  /** The folder for the figures. */
  readonly figures: string | undefined;
}

interface Task {
  /** What a person calls it: the file, or the table and the line. */
  readonly called: string;
  readonly job: WorksheetJob;
}

interface Failure {
  readonly called: string;
  readonly reason: string;
}

const isTable = (path: string): boolean => /^\.(csv|tsv)$/iu.test(extname(path));

const isFolder = (path: string): Promise<boolean> =>
  stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );

/** Whether what was asked for is more than one bench file. */
export const asksForMany = async (paths: readonly string[]): Promise<boolean> =>
  paths.length > 1 || (paths[0] !== undefined && (isTable(paths[0]) || (await isFolder(paths[0]))));

/** Letters that every file system and every mail takes; a name of a bench may hold any. */
const longestName = 60;

/** A name as the name of a file: words with hyphens between them; empty where no letter is left. */
export const fileName = (name: string): string =>
  [...name.normalize('NFC').toLowerCase()]
    .join('')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .slice(0, longestName)
    .replace(/^-+|-+$/gu, '');

/** Names that nothing has yet, whether or not a file system minds capitals. */
function freshNames(): (wanted: string) => string {
  const taken = new Set<string>();
  return (wanted) => {
    let name = wanted;
    for (let number = 2; taken.has(name.toLowerCase()); number++) name = `${wanted}-${number}`;
    taken.add(name.toLowerCase());
    return name;
  };
}

/** The bench files of a folder, in the order of their names. */
async function filesIn(folder: string): Promise<string[]> {
  const names = await readdir(folder).catch((error: unknown) => {
    throw new BadInput(`${folder} cannot be read: ${reasonOf(error)}.`);
  });
  const files = names.filter((name) => /\.ya?ml$/iu.test(name) && !name.startsWith('.')).sort();
  if (files.length === 0)
    throw new BadInput(`${folder} has no bench files in it: their names end in .yaml or .yml.`);
  return files.map((name) => join(folder, name));
}

const tableTooLarge = (file: string, bytes: number) => {
  if (bytes <= largestTable) return null;
  const allowed = `${largestTable / 1024 / 1024} MB or less`;
  const found = `${Math.ceil(bytes / 1024 / 1024)} MB`;
  return problem({ file, line: 1, field: '', found, allowed }, `The table must have ${allowed}`);
};

/** Everything that is to be made, and what can be said at once not to be possible. */
async function tasksOf({
  paths,
  region,
  paper,
  language,
  leaveOut = [],
  out,
  figures,
}: ManyRequest): Promise<{
  readonly tasks: readonly Task[];
  readonly failures: readonly Failure[];
}> {
  const fresh = freshNames();
  const tasks: Task[] = [];
  const failures: Failure[] = [];
  const add = (called: string, wanted: string, bench: WorksheetJob['bench']): void => {
    const name = fresh(wanted);
    tasks.push({
      called,
      job: {
        bench,
        region,
        paper,
        language,
        leaveOut,
        out: join(out, `${name}.pdf`),
        figures: figures === undefined ? undefined : join(figures, `${name}.json`),
      },
    });
  };
  const addFile = (path: string): void => {
    add(basename(path), basename(path, extname(path)), { path });
  };
  for (const path of paths) {
    if (isTable(path)) {
      const file = basename(path);
      const read = readBenchTable(await textOf(path, file, tableTooLarge), file);
      if (!read.ok) return refuse(read.problems);
      for (const { line, text } of read.wrong)
        failures.push({ called: `${file}, line ${line}`, reason: text });
      for (const { line, name, tree } of read.rows)
        add(`${file}, line ${line}${name === '' ? '' : `, ${name}`}`, fileName(name) || `line-${line}`, {
          table: file,
          tree,
        });
    } else if (await isFolder(path)) (await filesIn(path)).forEach(addFile);
    else addFile(path);
  }
  return { tasks, failures };
}

/**
 * Hands tasks to as many threads as the machine has cores for, one at a time each, so that no more benches are in memory
 * than there are cores.
 */
async function makeAll(tasks: readonly Task[], ended: (task: Task, outcome: Outcome) => void): Promise<void> {
  let next = 0;
  const work = (thread: Worker): Promise<void> =>
    new Promise((done, fail) => {
      let current: Task | undefined;
      const hand = (): void => {
        current = tasks[next++];
        if (current) thread.postMessage(current.job);
        else done();
      };
      thread.on('message', (outcome: Outcome) => {
        if (current) ended(current, outcome);
        hand();
      });
      thread.on('error', fail);
      thread.on('exit', (code) => {
        fail(new Error(`a thread of the command ended with ${code}`));
      });
      hand();
    });
  const threads = Array.from(
    { length: Math.min(availableParallelism(), tasks.length) },
    () => new Worker(new URL('./worksheet-thread.ts', import.meta.url)),
  );
  try {
    await Promise.all(threads.map(work));
  } finally {
    for (const thread of threads) {
      thread.removeAllListeners('exit');
      await thread.terminate();
    }
  }
}

/** Tells how far the work is: a line that changes on a terminal, a line for every tenth elsewhere. */
function progressOf(
  count: number,
  { write, terminal }: Surroundings,
): (done: number, failed: number) => void {
  let tenths = 0;
  return (done, failed) => {
    const words = `${done} of ${count} worksheets${failed === 0 ? '' : `, ${failed} of them not made`}`;
    const now = Math.floor((10 * done) / count);
    if (terminal) write(`\r${words}${done === count ? '\n' : ''}`);
    else if (now > tenths) write(`${words}\n`);
    tenths = now;
  };
}

/** A list in a report: as many lines as one reads, and how many more there are. */
const mostListed = 20;

const listed = (names: readonly string[]): string[] => [
  ...names.slice(0, mostListed).map((name) => `  ${name}`),
  ...(names.length > mostListed ? [`  and ${names.length - mostListed} more`] : []),
];

/**
 * Makes many worksheets at once. One that cannot be made keeps no other from being made.
 * @throws {BadInput} at the end, when some could not be made: each with its reason; the others are written
 */
export async function makeWorksheets(request: ManyRequest, surroundings: Surroundings): Promise<void> {
  const begun = performance.now();
  const { tasks, failures: atOnce } = await tasksOf(request);
  const sources = new Set(tasks.flatMap(({ job }) => ('path' in job.bench ? [resolve(job.bench.path)] : [])));
  const overwritten = tasks.find(({ job }) => sources.has(resolve(job.out)));
  if (overwritten) throw new BadInput(`${overwritten.job.out} is a bench file and would be written over.`);
  for (const folder of new Set([request.out, request.figures ?? request.out]))
    await mkdir(folder).catch(async (error: unknown) => {
      if (!(await isFolder(folder)))
        throw new BadInput(`The folder ${folder} cannot be made: ${reasonOf(error)}.`);
    });
  // Made here once: two threads would make them both.
  await ensureFonts();

  const failures: Failure[] = [...atOnce];
  const stopped: string[] = [];
  const count = tasks.length + atOnce.length;
  const tell = progressOf(count, surroundings);
  let done = atOnce.length;
  await makeAll(tasks, ({ called }, outcome) => {
    if (!outcome.ok) failures.push({ called, reason: outcome.reason });
    else if (outcome.made.stopped) stopped.push(called);
    tell(++done, failures.length);
  });

  const say = (line: string): void => surroundings.write(`${line}\n`);
  say(
    `${count - failures.length} worksheets in ${request.out}, in ${timeInWords(performance.now() - begun)}.`,
  );
  if (request.figures !== undefined) say(`Their figures are in ${request.figures}.`);
  if (stopped.length > 0) {
    say(`Marked as not to be built, for the reasons on their first side: ${stopped.length}.`);
    for (const line of listed(stopped.sort(inOrder))) say(line);
  }
  if (failures.length > 0)
    throw new BadInput(
      [
        `${failures.length} of ${count} worksheets could not be made:`,
        ...failures
          .sort((one, other) => inOrder(one.called, other.called))
          .map(({ reason }) => reason.replaceAll(/^/gmu, '  ')),
      ].join('\n'),
    );
}

/** By number where there are numbers: line 9 before line 10, whatever the language of the machine. */
const { compare: inOrder } = new Intl.Collator('en', { numeric: true });
