/**
 * Checks everything and stops at the first thing that is wrong. What needs one core runs beside something else that
 * does: the linter beside types, build and style, then all tests on two workers. The last line is `N passed, N failed`, the sum
 * of what the test runner itself counted.
 *
 *   npm test                 everything
 *   npm test -- types lint   only these steps, by name
 */
import { mkdir, readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import { ensureTestPrograms } from './find-browser.ts';
import { root, run, timeInWords } from './steps.ts';

interface Count {
  readonly passed: number;
  readonly failed: number;
}

/** What a step says when it is done: why it failed, if it did, and the tests that it counted. */
interface Outcome extends Partial<Count> {
  readonly wrong?: string;
}

interface Step {
  readonly name: string;
  readonly what: string;
  /** What it does; `say` takes what is to be shown of it. */
  readonly work: (say: (text: string) => void) => Promise<Outcome>;
}

/** Runs programs one after the other, until one finds a problem. */
async function programs(
  say: (text: string) => void,
  ...lines: readonly (readonly string[])[]
): Promise<Outcome> {
  const color = process.stdout.isTTY ? { FORCE_COLOR: '1' } : {};
  for (const [program = '', ...words] of lines) {
    const { code, said } = await run(program, words, { env: color });
    if (said.trim() !== '') say(said.trimEnd());
    if (code !== 0) return { wrong: `${[program, ...words].join(' ')} found problems` };
  }
  return {};
}

interface Report {
  readonly numTotalTests: number;
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
}

/**
 * Runs projects of the test runner. Beside a failed test, a test that was left out and a run without any test count
 * as failures: green must mean that everything was checked.
 */
async function tests(projects: readonly string[]): Promise<Outcome> {
  const file = join(root, '.cache', 'test', `${projects.join('-')}.json`);
  await mkdir(join(root, '.cache', 'test'), { recursive: true });
  await rm(file, { force: true });
  const { code } = await run(
    'vitest',
    [
      'run',
      '--config=test/vitest.config.ts',
      ...projects.map((project) => `--project=${project}`),
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${file}`,
    ],
    { show: true },
  );
  let report: Report;
  try {
    report = JSON.parse(await readFile(file, 'utf8')) as Report;
  } catch {
    return { wrong: 'the test runner ended without a report', failed: 1 };
  }
  const { numPassedTests: passed, numFailedTests, numPendingTests, numTodoTests, numTotalTests } = report;
  // A file that cannot be loaded has no tests to count, yet it failed.
  const failed = Math.max(numFailedTests, code === 0 ? 0 : 1);
  const leftOut = numPendingTests + numTodoTests;
  if (failed > 0) return { passed, failed, wrong: 'not every test passed' };
  if (leftOut > 0) return { passed, failed: leftOut, wrong: `${leftOut} tests were left out` };
  if (numTotalTests === 0) return { passed, failed: 1, wrong: 'there was no test to run' };
  return { passed, failed };
}

/** The pages alone; the compiler looks at all that is not a page, and need not be told twice. */
const checkPages = [
  ...['astro', 'check', '--noSync', '--tsconfig', 'test/pages.tsconfig.json'],
  ...['--minimumFailingSeverity', 'warning', '--minimumSeverity', 'warning'],
];

const types: Step = {
  name: 'types',
  what: 'the types of pages and of everything else',
  work: (say) => programs(say, ['tsc', '--noEmit', '--pretty', 'false'], checkPages),
};

const lint: Step = {
  name: 'lint',
  what: 'the linter',
  work: (say) =>
    programs(say, ['eslint', '--config', 'scripts/eslint.config.js', '--max-warnings', '0', '.']),
};

const style: Step = {
  name: 'style',
  what: 'the house style',
  work: (say) => programs(say, ['prettier', '--check', '--log-level', 'warn', '.']),
};

const build: Step = {
  name: 'build',
  what: 'the guide and the worksheets',
  work: (say) =>
    programs(
      say,
      ['node', 'scripts/build.ts'],
      // Another region, under a path of a host that is known: what test/under-a-path.built.test.ts looks at.
      [
        ...['node', 'scripts/build.ts', '--without-book', '--out', '.cache/test/winter'],
        ...['--region', 'tallow', '--site', 'https://guide.example/winter/'],
      ],
    ),
};

/** Steps that the test runner does, by the project of `test/vitest.config.ts` that has the name. */
const projects = {
  source: 'tests of the source: arrows, units, laws, published values',
  built: 'tests of what was built: browser, PDF, site',
};

/** What the compiler does comes before the build, which writes the types of the content collections anew. */
const lanes: readonly (readonly Step[])[] = [[types, build, style], [lint]];

const names: readonly string[] = [...lanes.flat().map(({ name }) => name), ...Object.keys(projects)];

function choose(asked: readonly string[]): readonly string[] | string {
  const unknown = asked.find((name) => !names.includes(name));
  if (unknown) return `There is no step "${unknown}". There are: ${names.join(', ')}.`;
  return asked.length === 0 ? names : names.filter((name) => asked.includes(name));
}

/** Does a step, and shows all that it has to show in one piece, as another may be at work beside it. */
async function doStep({ name, what, work }: Step): Promise<Outcome> {
  const shown: string[] = [];
  const began = performance.now();
  const outcome = await work((text) => shown.push(text));
  const time = `-- ${name}: ${timeInWords(performance.now() - began)}`;
  console.log(['', `== ${name}: ${what}`, ...shown, time].join('\n'));
  return outcome.wrong === undefined ? outcome : { ...outcome, wrong: `${name}: ${outcome.wrong}` };
}

/** Does lanes of steps side by side; once something is wrong in one, none begins another step. */
async function sideBySide(chosen: readonly (readonly Step[])[]): Promise<Outcome> {
  const wrong: string[] = [];
  await Promise.all(
    chosen.map(async (lane) => {
      for (const step of lane) {
        if (wrong.length > 0) return;
        const outcome = await doStep(step);
        if (outcome.wrong !== undefined) wrong.push(outcome.wrong);
      }
    }),
  );
  return wrong.length === 0 ? {} : { wrong: wrong.join('; ') };
}

/** Runs the steps and gives back the tests counted. */
async function check(chosen: readonly string[]): Promise<Count> {
  const start = performance.now();
  const failedAt = ({ wrong = '', passed = 0, failed = 0 }: Outcome): Count => {
    console.error(`\nFailed at ${wrong}.`);
    return { passed, failed: Math.max(failed, 1) };
  };
  const suites = Object.keys(projects).filter((name) => chosen.includes(name));
  if (suites.length > 0)
    try {
      ensureTestPrograms();
    } catch (problem) {
      console.error(`\nFailed before the first step: ${(problem as Error).message}`);
      return { passed: 0, failed: 1 };
    }
  const programsFirst = lanes.map((lane) => lane.filter(({ name }) => chosen.includes(name)));
  if (chosen.includes(types.name) || chosen.includes(lint.name)) {
    // Writes the types of the content collections, which compiler and linter read.
    const synced = await programs(console.log, ['astro', 'sync', '--silent']);
    if (synced.wrong !== undefined) return failedAt(synced);
  }
  const outcome = await sideBySide(programsFirst);
  if (outcome.wrong !== undefined) return failedAt(outcome);
  let counted: Count = { passed: 0, failed: 0 };
  if (suites.length > 0) {
    for (const [name, what] of Object.entries(projects))
      if (suites.includes(name)) console.log(`\n== ${name}: ${what}`);
    const began = performance.now();
    const { wrong, passed = 0, failed = 0 } = await tests(suites);
    console.log(`-- ${suites.join(' and ')}: ${timeInWords(performance.now() - began)}`);
    if (wrong !== undefined) return failedAt({ wrong: `${suites.join(' and ')}: ${wrong}`, passed, failed });
    counted = { passed, failed };
  }
  console.log(`\nAll is well, in ${timeInWords(performance.now() - start)}.`);
  return counted;
}

const chosen = choose(process.argv.slice(2));
if (typeof chosen === 'string') {
  console.error(chosen);
  process.exitCode = 2;
} else {
  const { passed, failed } = await check(chosen);
  if (failed > 0) process.exitCode = 1;
  console.log(`${passed} passed, ${failed} failed`);
}
