import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { parseArgs, type ParseArgsOptionsConfig } from 'node:util';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** A problem that whoever gave the command can solve: shown without a stack trace. */
export class TaskProblem extends Error {}

/** How long something took, as people say it: "0.4 s", "12 s", "1 min 5 s". */
export function timeInWords(milliseconds: number): string {
  const seconds = milliseconds / 1000;
  if (seconds < 10) return `${seconds.toFixed(1)} s`;
  const whole = Math.round(seconds);
  return whole < 60 ? `${whole} s` : `${Math.floor(whole / 60)} min ${whole % 60} s`;
}

/** Does one step of a task, and says on one line what it was and how long it took. */
export async function step<T>(name: string, work: () => Promise<T> | T): Promise<T> {
  const start = performance.now();
  const terminal = process.stdout.isTTY;
  if (terminal) process.stdout.write(`${name} …`);
  try {
    return await work();
  } finally {
    console.log(`${terminal ? '\r' : ''}${name}: ${timeInWords(performance.now() - start)}`);
  }
}

export interface Ended {
  readonly code: number;
  /** What it said, when it was not shown. */
  readonly said: string;
}

/**
 * Runs a program of the project's packages (or any on PATH), by name.
 * @param show its output goes to the terminal as it comes; otherwise it is kept, for when something goes wrong
 */
export function run(
  program: string,
  words: readonly string[],
  {
    show = false,
    env = {},
  }: { readonly show?: boolean; readonly env?: Readonly<Record<string, string>> } = {},
): Promise<Ended> {
  return new Promise((done, fail) => {
    const child = spawn(program, words, {
      cwd: root,
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1', ...env },
      stdio: show ? ['ignore', 'inherit', 'inherit'] : ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (part: Buffer) => (said += part.toString()));
    child.on('error', fail);
    child.on('close', (code) => {
      done({ code: code ?? 1, said });
    });
  });
}

/** Ends the task as its outcome asks: a problem of the caller's is a sentence, anything else a stack trace. */
export async function runTask(task: () => Promise<void>): Promise<void> {
  try {
    await task();
  } catch (problem) {
    console.error(problem instanceof TaskProblem ? problem.message : problem);
    process.exitCode = 1;
  }
}

/**
 * The options of a task, as they were given on the command line.
 * @throws {TaskProblem} on an option that the task does not have
 */
export function readOptions<T extends ParseArgsOptionsConfig>(options: T) {
  try {
    return parseArgs({ options, strict: true, allowPositionals: false }).values;
  } catch (problem) {
    const names = Object.keys(options).map((name) => `--${name}`);
    throw new TaskProblem(`${(problem as Error).message}\nThe options are: ${names.join(', ')}.`);
  }
}
