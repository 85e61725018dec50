/**
 * Checks everything, in order, and stops at the first thing that is wrong. The last line is `N passed, N failed`, the
 * sum of what the test runner itself counted.
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
  readonly work: () => Promise<Outcome>;
}

/** Runs programs side by side, as there are two cores or more, and shows what each said once it is done. */
async function programs(...lines: readonly (readonly string[])[]): Promise<Outcome> {
  const color = process.stdout.isTTY ? { FORCE_COLOR: '1' } : {};
  const failed = await Promise.all(
    lines.map(async ([program = '', ...words]) => {
      const { code, said } = await run(program, words, { env: color });
      if (said.trim() !== '') console.log(said.trimEnd());
      return code === 0 ? [] : [[program, ...words].join(' ')];
    }),
  );
  const wrong = failed.flat();
  return wrong.length === 0 ? {} : { wrong: `${wrong.join(' and ')} found problems` };
}

/** Does one after the other, until one goes wrong. */
async function inOrder(...parts: readonly (() => Promise<Outcome>)[]): Promise<Outcome> {
  for (const part of parts) {
    const outcome = await part();
    if (outcome.wrong !== undefined) return outcome;
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
 * Runs a project of the test runner. Beside a failed test, a test that was left out and a run without any test count
 * as failures: green must mean that everything was checked.
 */
async function tests(project: string): Promise<Outcome> {
  const file = join(root, '.cache', 'test', `${project}.json`);
  await mkdir(join(root, '.cache', 'test'), { recursive: true });
  await rm(file, { force: true });
  const { code } = await run(
    'vitest',
    [
      'run',
      '--config=test/vitest.config.ts',
      `--project=${project}`,
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

const steps: readonly Step[] = [
  {
    name: 'types',
    what: 'the types of pages and of everything else',
    work: () =>
      inOrder(
        // Writes the types of the content collections, which both of the others read.
        () => programs(['astro', 'sync', '--silent']),
        () => programs(checkPages, ['tsc', '--noEmit', '--pretty', 'false']),
      ),
  },
  {
    name: 'lint',
    what: 'the linter and the house style',
    work: () =>
      programs(
        ['eslint', '--config', 'scripts/eslint.config.js', '--max-warnings', '0', '.'],
        ['prettier', '--check', '--log-level', 'warn', '.'],
      ),
  },
  {
    name: 'source',
    what: 'tests of the source: arrows, units, laws, published values',
    work: () => tests('source'),
  },
  {
    name: 'build',
    what: 'the guide and the worksheets',
    work: async () => {
      const { code } = await run('node', ['scripts/build.ts'], { show: true });
      return code === 0 ? {} : { wrong: 'it could not be built' };
    },
  },
  { name: 'built', what: 'tests of what was built: browser, PDF, site', work: () => tests('built') },
];

function choose(names: readonly string[]): readonly Step[] | string {
  const unknown = names.find((name) => !steps.some((step) => step.name === name));
  if (unknown)
    return `There is no step "${unknown}". There are: ${steps.map((step) => step.name).join(', ')}.`;
  return names.length === 0 ? steps : steps.filter((step) => names.includes(step.name));
}

/** Runs the steps and gives back the tests counted. */
async function check(chosen: readonly Step[]): Promise<Count> {
  let passed = 0;
  let failed = 0;
  if (chosen.some((step) => step.name === 'source' || step.name === 'built')) {
    try {
      ensureTestPrograms();
    } catch (problem) {
      console.error(`\nFailed before the first step: ${(problem as Error).message}`);
      return { passed: 0, failed: 1 };
    }
  }
  const start = performance.now();
  for (const { name, what, work } of chosen) {
    console.log(`\n== ${name}: ${what}`);
    const began = performance.now();
    const outcome = await work();
    passed += outcome.passed ?? 0;
    failed += outcome.failed ?? 0;
    console.log(`-- ${name}: ${timeInWords(performance.now() - began)}`);
    if (outcome.wrong !== undefined) {
      console.error(`\nFailed at ${name}: ${outcome.wrong}.`);
      return { passed, failed: Math.max(failed, 1) };
    }
  }
  console.log(`\nAll is well, in ${timeInWords(performance.now() - start)}.`);
  return { passed, failed };
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
