/**
 * Puts the project's packages in place. Plain JavaScript for an old Node with nothing installed: it runs before
 * anything that it installs. Run again it costs a few milliseconds and says nothing.
 */
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));
export const bin = join(root, 'node_modules', '.bin');
/** The Node that the project brings along, so that everyone runs the same one. */
export const ownNode = join(
  root,
  'node_modules',
  'node',
  'bin',
  process.platform === 'win32' ? 'node.exe' : 'node',
);

/** Needed to install: npm 9 and later read this lock file rightly, and they come with Node 18.17 and later. */
const oldestNode = [18, 17];
const stampFile = join(root, 'node_modules', '.set-up');
const lockFile = join(root, 'package-lock.json');
/** Time between two signs of life where the output is not a terminal [ms]. */
const quietPause = 10_000;

/** A problem that the reader can solve: shown without a stack trace. */
export class SetupProblem extends Error {}

function checkNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  if (major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1])) return;
  throw new SetupProblem(
    `This needs Node ${oldestNode.join('.')} or newer to set itself up; this is Node ${process.versions.node}.\n` +
      'Install a newer Node (any current release will do; the project then brings its own) and run the command again.',
  );
}

/** What the stamp must say: it changes with every package version and with the machine's kind. */
const stampNow = (lock) =>
  createHash('sha256').update(lock).update(`${process.platform} ${process.arch}`).digest('hex');

/**
 * Whether the packages in place are already those of the lock file, because someone ran npm by hand. npm notes what
 * it has installed once it is done; packages for other platforms are optional and may be missing.
 */
function alreadyInstalled(lock) {
  const noteFile = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(noteFile)) return false;
  const wanted = JSON.parse(lock).packages;
  const present = JSON.parse(readFileSync(noteFile, 'utf8')).packages;
  return Object.entries(wanted).every(([path, { version, optional, devOptional }]) => {
    if (path === '') return true;
    const there = present[path];
    return there ? there.version === version : Boolean(optional || devOptional);
  });
}

/** Shows that time passes: one line that counts on a terminal, a line now and then elsewhere. */
function showTime(what) {
  const start = Date.now();
  const seconds = () => Math.round((Date.now() - start) / 1000);
  const terminal = process.stdout.isTTY;
  const timer = setInterval(
    () => process.stdout.write(terminal ? `\r  ${what}: ${seconds()} s ` : `  ${what}: ${seconds()} s\n`),
    terminal ? 1000 : quietPause,
  );
  return () => {
    clearInterval(timer);
    if (terminal) process.stdout.write('\r\x1b[K');
    return seconds();
  };
}

function explain(output, code) {
  const name = /npm (?:error|ERR!) code (\S+)/u.exec(output)?.[1] ?? '';
  const tail = output.trim().split('\n').slice(-12).join('\n');
  if (
    /^(ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ECONNRESET|ETIMEDOUT|EHOSTUNREACH|ENETUNREACH|ERR_SOCKET_TIMEOUT|ENOTCACHED|EIDLETIMEOUT)$/u.test(
      name,
    )
  )
    return `The packages could not be fetched: no way to npm’s package registry (${name}).\nThey are needed once. Check the network (and npm’s proxy settings), then run the command again.`;
  if (name === 'ENOSPC') return `The disk is full: the packages need about 800 MB.\n\n${tail}`;
  if (name === 'EACCES' || name === 'EPERM')
    return `npm may not write here (${name}): the folder must belong to you.\n\n${tail}`;
  return `npm could not install the packages (exit code ${code}). It says:\n\n${tail}`;
}

function install() {
  const npm = process.platform === 'win32' ? 'npm.cmd' : 'npm';
  const stop = showTime('installing packages');
  return new Promise((resolve, reject) => {
    const child = spawn(npm, ['ci', '--no-audit', '--no-fund', '--loglevel=error', '--no-progress'], {
      cwd: root,
      stdio: ['ignore', 'pipe', 'pipe'],
      shell: process.platform === 'win32',
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (data) => (output += data));
    child.on('error', (error) => {
      stop();
      reject(
        new SetupProblem(
          error.code === 'ENOENT'
            ? 'npm was not found. It comes with Node; on some systems it is a package of its own, named npm.'
            : `npm could not be started: ${error.message}`,
        ),
      );
    });
    child.on('close', (code) => {
      const seconds = stop();
      if (code === 0) resolve(seconds);
      else reject(new SetupProblem(explain(output, code)));
    });
  });
}

/**
 * Makes sure that the packages of the lock file are in place.
 * @throws {SetupProblem} when Node is too old, npm is missing, or the packages cannot be had
 */
export async function setUp() {
  checkNode();
  const lock = readFileSync(lockFile, 'utf8');
  const stamp = stampNow(lock);
  if (existsSync(stampFile) && readFileSync(stampFile, 'utf8') === stamp && existsSync(ownNode)) return;
  if (!(alreadyInstalled(lock) && existsSync(ownNode))) {
    const count = Object.keys(JSON.parse(lock).packages).length - 1;
    console.log(
      `Setting up, once: up to ${count} packages go into node_modules, among them Node 24 for this project alone.`,
    );
    console.log('Nothing outside this folder changes. This takes about a minute on a good line.');
    const seconds = await install();
    if (!existsSync(ownNode))
      throw new SetupProblem(
        'The packages are in place, but the project’s own Node is not: npm was told not to run install scripts.\n' +
          'Set ignore-scripts=false for this folder, remove node_modules and run the command again.',
      );
    console.log(`Set up in ${seconds} s.\n`);
  }
  writeFileSync(stampFile, stamp);
}
