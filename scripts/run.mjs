/**
 * Runs a task of the project: `node scripts/run.mjs TASK [arguments]`. Every npm script comes through here, so that
 * each works on a fresh clone: set-up first, then scripts/TASK.ts with the project's own Node.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { constants } from 'node:os';
import { delimiter, join } from 'node:path';
import process from 'node:process';
import { bin, ownNode, root, setUp, SetupProblem } from './setup.mjs';

/** What a reader may ask for. Each is a file of this folder with the same name. */
const tasks = {
  start: 'build the guide and the worksheets of the example benches, and serve them on this machine',
  test: 'check everything',
  build: 'build the guide into dist/',
  dev: 'serve the guide while you edit it',
  worksheet: 'make the worksheet of a bench file',
  book: 'make the whole guide as one PDF',
  region: 'begin the file of a region, or read one over',
  station: 'make a station out of a file of temperatures',
  languages: 'say how far the guide is translated',
  bench: 'measure how fast the parts are',
  'bench-pages': 'measure how soon the built pages answer a key or a click',
  reports: 'write anew what the calculators say of the example benches',
  format: 'put the files into the house style',
};

function list() {
  return Object.entries(tasks)
    .map(([name, what]) => `  npm ${/^(start|test)$/u.test(name) ? '' : 'run '}${name}`.padEnd(22) + what)
    .join('\n');
}

function run(file, given) {
  const path = [bin, process.env.PATH].filter(Boolean).join(delimiter);
  // Node keeps what it made of each file, so that the next command starts in a third of the time.
  const cache = process.env.NODE_COMPILE_CACHE ?? join(root, '.cache', 'node');
  const env = { ...process.env, PATH: path, NODE_COMPILE_CACHE: cache };
  const child = spawn(ownNode, [file, ...given], { stdio: 'inherit', env });
  // The task decides how it ends: a Ctrl-C reaches it by itself, other signals are handed on.
  process.on('SIGINT', () => undefined);
  process.on('SIGTERM', () => child.kill('SIGTERM'));
  child.on('error', (error) => {
    console.error(`The project’s own Node does not run on this machine: ${error.message}`);
    process.exitCode = 1;
  });
  child.on('close', (code, signal) => {
    process.exitCode = signal ? 128 + (constants.signals[signal] ?? 0) : code;
  });
}

const [task, ...given] = process.argv.slice(2);
const file = join(root, 'scripts', `${task}.ts`);
if (!task || !Object.hasOwn(tasks, task) || !existsSync(file)) {
  console.error(`${task ? `There is no task "${task}".` : 'Which task?'} There are:\n${list()}`);
  process.exitCode = 2;
} else {
  try {
    await setUp();
    run(file, given);
  } catch (problem) {
    if (!(problem instanceof SetupProblem)) throw problem;
    console.error(`\n${problem.message}`);
    process.exitCode = 1;
  }
}
