import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import process from 'node:process';
import { exitCodeOf, type Command } from '../../scripts/command.ts';
import { root } from './imports.ts';

/** How a command ended, and what it said. */
export interface Ran {
  readonly status: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs a script of the project in a folder, as a process of its own: half a second and more. */
export const runAlone = (script: string, folder: string, args: readonly string[]): Ran =>
  spawnSync(process.execPath, [join(root, 'scripts', script), ...args], { cwd: folder, encoding: 'utf8' });

/** Runs a command in a folder, within this process: all but its start. A fault of the command itself is thrown. */
export async function runHere(command: Command, folder: string, args: readonly string[]): Promise<Ran> {
  const said = { stdout: '', stderr: '' };
  const status = await exitCodeOf(command, args, {
    folder,
    write: (text) => (said.stdout += text),
    complain: (text) => (said.stderr += text),
    terminal: false,
  });
  return { status, ...said };
}
