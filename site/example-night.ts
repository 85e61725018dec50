import { answer } from '../calculators/index.ts';
import type { Situation } from '../calculators/calculator.ts';
import { readLoggerFile } from '../content/logger-file.ts';
import { example, manner, situation } from './guide.ts';
import { loggerView } from './logger-view.ts';

/**
 * The invented night of the example bench: a logger's file, and what the calculator makes of its means. The example
 * itself has no readings, so that nobody takes them for their own.
 */

const logs = import.meta.glob<string>('../content/logs/*.csv', {
  eager: true,
  query: '?raw',
  import: 'default',
});

/** The files of invented nights, by the id of their bench. */
export const exampleLogs: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(logs).map(([path, text]) => [path.replace(/^.*\/|\.csv$/gu, ''), text]),
);

function readNight() {
  const text = exampleLogs[example.id];
  if (text === undefined) return null;
  const file = `${example.id}.csv`;
  const read = readLoggerFile(text, file);
  if (!read.ok) throw new Error([...read.problems, ...read.questions].map((one) => one.text).join('\n'));
  const { readings, window } = loggerView(read.log, read.account, manner);
  if (!window) throw new Error(`content/logs/${file} has no two steady hours of a night.`);
  const { bench } = situation;
  const night: Situation = {
    ...situation,
    bench: { ...bench, readings: { ...bench.readings, ...readings } },
  };
  return { file, log: read.log, account: read.account, readings, situation: night, answers: answer(night) };
}

/** The example's night, or null where content/logs has none for the example bench of this region. */
export const exampleNight = readNight();
