import { fields, type Bench, type FieldPath } from '../calculators/bench/fields.ts';
import { loggedIds, type LoggedId } from '../calculators/logger/columns.ts';
import type { Log } from '../calculators/logger/log.ts';
import { steadiestWindow, type NoWindow, type Window } from '../calculators/logger/window.ts';
import { showQuantity, type Manner } from '../calculators/quantities/show.ts';
import type { LoggerAccount } from '../content/logger-file.ts';
import { loggerWords, momentWords } from '../content/logger-words.ts';

/** What a page says of a logger's file that was read: the same words at build and live. */
export interface LoggerView {
  /** What was read, a sentence each. */
  readonly read: readonly string[];
  /** Places that were left out, each with line, column, what was found and what is allowed. */
  readonly leftOut: readonly string[];
  /** Every column but that of the stamps. */
  readonly columns: readonly {
    readonly number: number;
    readonly head: string;
    readonly holds: LoggedId | null;
  }[];
  /** Which stretch was found, or why none was. */
  readonly stretch: string;
  readonly means: readonly Mean[];
  /** What the fields of readings would get; empty where there is no such stretch. */
  readonly readings: Partial<Bench['readings']>;
  readonly window: Window | null;
}

/** One of the means, for a list of terms and values. */
export interface Mean {
  readonly path: FieldPath;
  readonly label: string;
  readonly text: string;
}

/** More places than this are counted, not listed. */
const mostLeftOut = 10;

export const holdsWords: Readonly<Record<LoggedId | 'none', string>> = {
  outside: 'Outside',
  house: 'House',
  under: 'Under the bench',
  loop: 'Loop',
  roots: 'Roots, in the coldest pot',
  power: 'Power of the cable',
  none: 'Nothing for the readings',
};

/** The kinds of column in the order in which they are offered. */
export const columnChoices = ['house', 'under', 'roots', 'outside', 'loop', 'power', 'none'] as const;

const missingWords = {
  power: 'the power of the cable',
  surroundings: 'the house or outside',
  bench: 'a temperature of the bench (under it, in a pot or on the loop)',
} as const satisfies Record<NoWindow['missing'][number], string>;

/** Each reading in its field's words and the reader's units. */
export function meanWords(readings: Partial<Bench['readings']>, manner: Manner): Mean[] {
  return Object.entries(readings).flatMap(([name, value]): Mean[] => {
    const field = fields.readings.fields[name as keyof Bench['readings']];
    const path = `readings.${name}` as FieldPath;
    if (field.shape === 'choice') {
      const options: Readonly<Record<string, { readonly label: string }>> = field.options;
      return [{ path, label: field.label, text: options[String(value)]?.label ?? String(value) }];
    }
    return typeof value === 'number'
      ? [{ path, label: field.label, text: showQuantity(value, field.quantity, manner) }]
      : [];
  });
}

/** The temperature that changed most in a stretch, in words. */
function changeWords({ change }: Window, manner: Manner): string {
  const most = loggedIds.reduce<LoggedId | undefined>(
    (found, id) =>
      change[id] !== undefined && (!found || Math.abs(change[id]) > Math.abs(change[found] ?? 0))
        ? id
        : found,
    undefined,
  );
  if (!most) return '';
  const by = showQuantity(Math.abs(change[most] ?? 0), 'temperatureDifference', manner);
  return ` What changed most in them is “${holdsWords[most]}”, by ${by}.`;
}

function stretchWords(found: Window | NoWindow, powerApart: boolean, manner: Manner): string {
  if ('missing' in found)
    return found.missing.length > 0
      ? `No means can be taken yet: no column holds ${found.missing.map((one) => missingWords[one]).join(', nor ')}. Say above which column is which.`
      : 'No means can be taken: no two hours between ten in the evening and seven in the morning have a value for the house or outside, for the bench and, where the file has it, for the power.';
  const meter = powerApart
    ? ' The file has no power: read the meter at both ends of these hours, and type the mean power in yourself.'
    : '';
  return `The steadiest two hours of a night are ${momentWords(found.from)} to ${momentWords(found.to).slice(11)}, of ${found.outOf} such stretches.${changeWords(found, manner)}${meter}`;
}

/** All that is said of a file that was read. */
export function loggerView(log: Log, account: LoggerAccount, manner: Manner): LoggerView {
  const powerApart = log.values.power === undefined;
  const found = steadiestWindow(log, powerApart ? 'read-apart' : 'logged');
  const window = 'missing' in found ? null : found;
  const { leftOut, columns } = account;
  return {
    read: [
      ...loggerWords(log, { ...account, leftOut: [] }),
      leftOut.length === 0
        ? 'Nothing was left out.'
        : `${leftOut.length} ${leftOut.length === 1 ? 'place was' : 'places were'} left out:`,
    ],
    leftOut: [
      ...leftOut.slice(0, mostLeftOut).map(({ text }) => text),
      ...(leftOut.length > mostLeftOut ? [`and ${leftOut.length - mostLeftOut} more.`] : []),
    ],
    columns: columns.map(({ number, head, holds }) => ({ number, head, holds })),
    stretch: stretchWords(found, powerApart, manner),
    means: window ? meanWords(window.readings, manner) : [],
    readings: window ? window.readings : {},
    window,
  };
}
