import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync, statSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** Names under which Chromium and Chrome are started, most likely first. */
const names = [
  'chromium',
  'chromium-browser',
  'google-chrome-stable',
  'google-chrome',
  'chrome',
  'microsoft-edge-stable',
];

/** Places outside PATH where installers put it. */
const places = [
  '/usr/bin/chromium',
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/opt/google/chrome/chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

function runs(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return statSync(path).isFile();
  } catch {
    return false;
  }
}

/** The full path of a program on PATH, or undefined. */
export const findProgram = (name: string): string | undefined =>
  (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, process.platform === 'win32' ? `${name}.exe` : name))
    .find(runs);

/**
 * The path of an installed Chromium or Chrome: what CHROME_PATH names, else by name on PATH, else in the usual
 * places; undefined where there is none.
 * @throws {Error} when CHROME_PATH names something that cannot be run: it is a wish, and a wrong one is not passed over
 */
export function findBrowser(): string | undefined {
  const wished = process.env['CHROME_PATH'];
  if (wished) {
    if (runs(wished)) return wished;
    throw new Error(`CHROME_PATH names ${wished}, which cannot be run.`);
  }
  for (const name of names) {
    const found = findProgram(name);
    if (found) return found;
  }
  return places.find(runs);
}

/** The installed browser, for tests that cannot go without. */
export function browserOrThrow(): string {
  const found = findBrowser();
  if (found) return found;
  throw new Error('No Chromium or Chrome was found. Install one, or set CHROME_PATH to where it is.');
}

interface Need {
  readonly what: string;
  /** The package of Debian that holds it. */
  readonly debian: string;
  /** How else to get it, for people on other systems. */
  readonly otherwise: string;
  readonly there: () => boolean;
}

const needs: readonly Need[] = [
  {
    what: 'a browser (Chromium or Chrome)',
    debian: 'chromium',
    otherwise: 'Install Chromium or Chrome, or set CHROME_PATH to where it is.',
    there: () => findBrowser() !== undefined,
  },
  {
    what: 'poppler (pdfinfo, pdftotext, pdftoppm, pdffonts)',
    debian: 'poppler-utils',
    otherwise: 'Install poppler: "poppler-utils" on most Linux systems, "poppler" in Homebrew.',
    there: () => ['pdfinfo', 'pdftotext', 'pdftoppm', 'pdffonts'].every((name) => findProgram(name)),
  },
  {
    what: 'qpdf',
    debian: 'qpdf',
    otherwise: 'Install "qpdf"; most systems have a package of this name.',
    there: () => findProgram('qpdf') !== undefined,
  },
];

const mayInstall = () =>
  existsSync('/etc/debian_version') && process.getuid?.() === 0 && findProgram('apt-get');

function aptGet(...words: string[]): boolean {
  const { status } = spawnSync('apt-get', words, {
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' },
  });
  return status === 0;
}

/**
 * Makes sure that the programs which only the tests need are there: a browser, poppler and qpdf. On Debian as root
 * they are installed; elsewhere nothing is touched.
 * @throws {Error} that says what to install, where something is still missing
 */
export function ensureTestPrograms(): void {
  const missing = () => needs.filter((need) => !need.there());
  const before = missing();
  if (before.length === 0) return;
  if (mayInstall()) {
    const packages = before.map((need) => need.debian);
    console.log(
      `The tests need ${before.map((need) => need.what).join(', ')}: installing ${packages.join(', ')} with apt-get.`,
    );
    const start = Date.now();
    if (!aptGet('update', '-q') || !aptGet('install', '-y', '-q', '--no-install-recommends', ...packages))
      console.error('apt-get did not succeed; what it said stands above.');
    console.log(`  ${Math.round((Date.now() - start) / 1000)} s`);
  }
  const after = missing();
  if (after.length === 0) return;
  const asRoot = existsSync('/etc/debian_version')
    ? `\nOn Debian: sudo apt-get install ${after.map((need) => need.debian).join(' ')}`
    : '';
  throw new Error(
    `The tests need ${after.map((need) => need.what).join(' and ')}, not found on this machine.\n` +
      after.map((need) => `  ${need.otherwise}`).join('\n') +
      asRoot,
  );
}
