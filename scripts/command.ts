import { isAbsolute, join, resolve } from 'node:path';
import process from 'node:process';
import { root } from './steps.ts';

/** What was asked for cannot be done, for a reason that whoever asked can mend: told without a stack trace. */
export class BadInput extends Error {
  override name = 'BadInput';
}

/** How a command ends that was given something it cannot use. */
const badInput = 2;

/** Runs a command of the project; what is wrong with its input goes to stderr, and its exit code is 2. */
export async function runCommand(command: () => Promise<void> | void): Promise<void> {
  try {
    await command();
  } catch (error) {
    // The parser of arguments has no class of its own for what it finds wrong.
    const wrongArguments =
      error instanceof TypeError && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');
    if (!(error instanceof BadInput) && !wrongArguments) throw error;
    console.error(`${error.message}${wrongArguments ? '. --help says what there is' : ''}`);
    process.exitCode = badInput;
  }
}

/**
 * A path as it was meant by whoever gave it. npm runs commands in the project's folder and tells where they were given.
 */
export function given(path: string): string {
  if (isAbsolute(path)) return path;
  const { INIT_CWD, npm_lifecycle_event } = process.env;
  const throughNpm = npm_lifecycle_event !== undefined && resolve(process.cwd()) === resolve(root);
  return join(throughNpm && INIT_CWD !== undefined ? INIT_CWD : process.cwd(), path);
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
