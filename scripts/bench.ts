/**
 * Measures how fast the parts are, beside what they are allowed to take. Machines differ and are busy, so every case
 * is also told as a multiple of a fixed piece of arithmetic that ran in the same minute: compare that figure between
 * runs. Nothing fails here, and no test measures time.
 */
import { availableParallelism, cpus } from 'node:os';
import { Bench } from 'tinybench';
import { besideOdex, cases, once, type Case } from './bench-cases.ts';
import { runTask } from './steps.ts';

/** What each case is compared with: a million steps of multiply, add and square root. */
function reference(): number {
  let sum = 0;
  for (let step = 1; step <= 1_000_000; step++) sum += Math.sqrt(step * 1.000001 + sum * 1e-9);
  return sum;
}

const referenceName = 'reference arithmetic';

interface Row {
  readonly name: string;
  /** Middle of all runs [ms]. */
  readonly median: number;
  readonly runs: number;
  /** The most that it may take [ms]. */
  readonly budget?: number;
}

const written = (milliseconds: number) =>
  milliseconds >= 1000
    ? `${(milliseconds / 1000).toFixed(2)} s`
    : `${Number(milliseconds.toPrecision(3))} ms`;

const perSecond = (milliseconds: number) => {
  const times = 1000 / milliseconds;
  return times >= 10 ? Math.round(times).toLocaleString('en') : times.toPrecision(2);
};

function print(rows: readonly Row[]): void {
  const unit = rows.find(({ name }) => name === referenceName)?.median ?? NaN;
  const heads = ['', 'median', 'runs', 'per second', '× reference', 'budget', ''];
  const lines = rows.map(({ name, median, runs, budget }) => [
    name,
    written(median),
    String(runs),
    perSecond(median),
    (median / unit).toPrecision(3),
    budget === undefined ? '' : `≤ ${written(budget)}`,
    budget === undefined ? '' : median <= budget ? 'within' : 'OVER',
  ]);
  const widths = heads.map((head, column) =>
    Math.max(head.length, ...lines.map((line) => line[column]?.length ?? 0)),
  );
  for (const line of [heads, ...lines])
    console.log(
      line
        .map((cell, column) =>
          column === 0 ? cell.padEnd(widths[0] ?? 0) : cell.padStart(widths[column] ?? 0),
        )
        .join('  '),
    );
}

/** How many times as long a case takes as another, where that was asked for. */
function printRatios(rows: readonly Row[], all: readonly Case[]): void {
  const median = (name: string) => rows.find((row) => row.name === name)?.median ?? NaN;
  for (const { name, slowerThan } of all) {
    if (!slowerThan) continue;
    const times = median(name) / median(slowerThan.name);
    const verdict = times >= slowerThan.times ? 'within' : 'OVER';
    console.log(
      `\n${name}: ${times.toPrecision(3)} times as long as ${slowerThan.name} (≥ ${slowerThan.times}, ${verdict})`,
    );
  }
}

/** The middle of many runs of each case. */
async function measured(cases: readonly Case[]): Promise<Row[]> {
  const bench = new Bench({ time: 1000, warmupTime: 300, iterations: 5 });
  for (const { name, work } of cases) bench.add(name, work);
  const tasks = await bench.run();
  return tasks.map(({ name, result }, index) => {
    if (result.state !== 'completed')
      throw new Error(`${name} did not run to its end`, {
        cause: 'error' in result ? result.error : undefined,
      });
    const budget = cases[index]?.budget;
    return {
      name,
      median: result.latency.p50,
      runs: result.latency.samplesCount,
      ...(budget === undefined ? {} : { budget }),
    };
  });
}

await runTask(async () => {
  console.log(
    `Node ${process.version}, ${availableParallelism()} × ${cpus()[0]?.model.trim() ?? 'unknown processor'}\n`,
  );
  const own = await cases();
  const rows = await measured([{ name: referenceName, work: () => void reference() }, ...own]);
  // After all others: what odex asks of a bench changes how the engine has compiled it, and would slow them.
  const others = besideOdex();
  rows.push(...(await measured(others)));
  for (const { name, work, budget } of once) {
    const start = performance.now();
    await work();
    rows.push({
      name,
      median: performance.now() - start,
      runs: 1,
      ...(budget === undefined ? {} : { budget }),
    });
  }
  print(rows);
  printRatios(rows, others);
});
