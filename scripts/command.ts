import { isAbsolute, join, resolve } from 'node:path';
import process from 'node:process';
import { root, TaskProblem } from './steps.ts';

/** What was asked for cannot be done, for a reason that whoever asked can mend: told without a stack trace. */
export class BadInput extends TaskProblem {
  override name = 'BadInput';
}

/** The words of which one must be given: "a, b or c". */
export const oneOfThese = (words: readonly string[]): string =>
  new Intl.ListFormat('en-GB', { type: 'disjunction' }).format(words);

/** How a command ends that was given something it cannot use. */
const badInput = 2;

/** Where a command is given, and where its words go. */
export interface Surroundings {
  /** The folder that its paths start from. */
  readonly folder: string;
  /** Writes to standard output. */
  readonly write: (text: string) => void;
  /** Writes to standard error. */
  readonly complain: (text: string) => void;
  /** Whether a person watches standard output, so that a line may change under their eyes. */
  readonly terminal: boolean;
}

/** A command of the project. */
export type Command = (args: readonly string[], surroundings: Surroundings) => Promise<void> | void;

/**
 * Runs a command and says how it ended: 0, or 2 with a complaint where its input cannot be used. What is wrong with the
 * command itself is thrown on.
 */
export async function exitCodeOf(
  command: Command,
  args: readonly string[],
  surroundings: Surroundings,
): Promise<number> {
  try {
    await command(args, surroundings);
    return 0;
  } catch (error) {
    // The parser of arguments has no class of its own for what it finds wrong.
    const wrongArguments =
      error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
    if (!(error instanceof BadInput) && !wrongArguments) throw error;
    surroundings.complain(`${error.message}${wrongArguments ? '. --help says what there is' : ''}\n`);
    return badInput;
  }
}

/** The folder in which a command was given. npm runs commands in the project's folder and tells where that was. */
function callersFolder(): string {
  const { INIT_CWD, npm_lifecycle_event } = process.env;
  const throughNpm = npm_lifecycle_event !== undefined && resolve(process.cwd()) === resolve(root);
  return throughNpm && INIT_CWD !== undefined ? INIT_CWD : process.cwd();
}

/** A path as it was meant by whoever gave it. */
export const given = (path: string, folder = callersFolder()): string =>
  isAbsolute(path) ? path : join(folder, path);

/** Runs a command as this process: its arguments, its folder, its output and its exit code. */
export async function runCommand(command: Command): Promise<void> {
  process.exitCode = await exitCodeOf(command, process.argv.slice(2), {
    folder: callersFolder(),
    write: (text) => process.stdout.write(text),
    complain: (text) => process.stderr.write(text),
    terminal: process.stdout.isTTY,
  });
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'it may not be opened',
  EPERM: 'it may not be opened',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is not a folder',
  ENOSPC: 'there is no room left',
  EROFS: 'nothing can be written there',
};

/** Why a file could not be read or written, in words. */
export function reasonOf(error: unknown): string {
  const { code = '', message } = error as NodeJS.ErrnoException;
  return reasons[code] ?? message;
}
