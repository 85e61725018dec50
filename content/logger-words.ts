import { fields } from '../calculators/bench/fields.ts';
import type { LoggedId } from '../calculators/logger/columns.ts';
import type { Log } from '../calculators/logger/log.ts';
import type { LoggerAccount } from './logger-file.ts';

/** A time of a log as people write it: 2026-01-31 18:30. */
export const momentWords = (moment: number): string =>
  new Date(Math.round(moment / 60) * 60_000).toISOString().slice(0, 16).replace('T', ' ');

/** A number of things: "1 line", "12 lines". */
const counted = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;

/** A length of time: "10 minutes", "2 hours". */
export function lengthWords(seconds: number): string {
  if (seconds < 90) return counted(Math.round(seconds), 'second');
  if (seconds < 5400) return counted(Math.round(seconds / 60), 'minute');
  const hours = Math.round(seconds / 360) / 10;
  return hours < 48 ? counted(hours, 'hour') : counted(Math.round(hours / 2.4) / 10, 'day');
}

const orderWords = {
  'year-first': 'the year before the month',
  'day-first': 'the day before the month',
  'month-first': 'the month before the day',
} as const;

const orderReasons = {
  form: '',
  size: ', as some numbers are too large for a month',
  sequence: ', as the lines follow each other only so',
  choice: ', as you said',
} as const;

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

const nameOf = (id: LoggedId): string => {
  const { label } = fields.readings.fields[id];
  return label.charAt(0).toLowerCase() + label.slice(1);
};

/** What was read of a logger's file and what was left out, a sentence each, for people. */
export function loggerWords(log: Log, account: LoggerAccount): string[] {
  const { begin, times, every } = log;
  const { columns, duplicates, gaps, clockChanges, leftOut } = account;
  const end = begin + (times.at(-1) ?? 0);
  const used = columns.filter(({ holds }) => holds !== null);
  const unused = columns.filter(({ holds }) => holds === null);
  const longest = gaps.reduce((most, { length }) => Math.max(most, length), 0);
  return [
    `${counted(account.rows, 'line')} were read, one every ${lengthWords(every)}, from ${momentWords(begin)} to ${momentWords(end)}.`,
    `Cells are parted by a ${account.delimiter}. Days were read with ${orderWords[account.order]}${orderReasons[account.orderBy]}.`,
    ...used.map(
      ({ head, holds, unit, read, empty }) =>
        `“${head}” was taken for ${holds ? nameOf(holds) : ''} in ${unit}: ${read} values, ${empty} empty.`,
    ),
    ...(unused.length > 0 ? [`Not used: ${listed(unused.map(({ head }) => `“${head}”`))}.`] : []),
    ...(account.newestFirst ? ['The newest line came first; the order was turned round.'] : []),
    ...(account.unsorted > 0
      ? [`${counted(account.unsorted, 'line')} out of order; all were sorted by time.`]
      : []),
    ...(duplicates.length > 0
      ? [
          `${counted(duplicates.length, 'line')} had a time that another had already; the first was kept (line ${duplicates[0]}).`,
        ]
      : []),
    ...clockChanges.map(({ line, by }) =>
      by < 0
        ? `At line ${line} the clock was put back by an hour; times after it were put right.`
        : `At line ${line} the clock seems to have been put forward by an hour; times after it were put right. If the logger stood still for an hour instead, they are an hour early.`,
    ),
    ...(gaps.length > 0
      ? [
          `${gaps.length === 1 ? 'There is a gap' : `There are ${gaps.length} gaps`}, the longest of ${lengthWords(longest)}; nothing was filled in.`,
        ]
      : []),
    ...(leftOut.length > 0
      ? [
          `${leftOut.length} ${leftOut.length === 1 ? 'place was' : 'places were'} left out, the first: ${leftOut[0]?.text ?? ''}`,
        ]
      : []),
  ];
}
