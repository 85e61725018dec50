import { readingErrors, rootsReadApart } from '../bench/reading-errors.ts';
import type { Bench } from '../bench/fields.ts';
import { loggedIds, type LoggedId } from './columns.ts';
import { resampled, type Log } from './log.ts';

/** Hours of the night that are looked through: late enough that the day's sun is forgotten (assumption) [s after midnight]. */
const nightBegins = 22 * 3600;
const nightEnds = 7 * 3600;

/** The log is looked at in steps of this [s]. */
const step = 600;

/** The two hours of a log in which the bench was nearest to rest. */
export interface Window {
  /** By the clock that the file began with [s since 1970]. */
  readonly from: number;
  readonly to: number;
  /** What the fields of readings get. */
  readonly readings: Partial<Bench['readings']>;
  /** By how much each temperature changed in the window [K]. */
  readonly change: Readonly<Partial<Record<LoggedId, number>>>;
  /** How many windows of the log had all that is needed. */
  readonly outOf: number;
}

/** What a log does not have for two hours of any night: the columns, or times at which all have values. */
export interface NoWindow {
  readonly missing: readonly ('power' | 'surroundings' | 'bench')[];
}

/** A straight line through values at even steps: its middle, and its rise from end to end. */
function lineThrough(values: Float64Array): { readonly mean: number; readonly rise: number } {
  const count = values.length;
  const middle = (count - 1) / 2;
  const mean = values.reduce((sum, one) => sum + one, 0) / count;
  let [over, under] = [0, 0];
  values.forEach((value, index) => {
    over += (index - middle) * (value - mean);
    under += (index - middle) ** 2;
  });
  return { mean, rise: under === 0 ? 0 : (over / under) * (count - 1) };
}

/** Less of a window than this without a reading of the power is no hole [1]. */
const enoughPower = 0.9;

/** Index of the first of rising times that is later. */
function firstAfter(times: Float64Array, moment: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! > moment) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Power within a span of time: each value holds since the one before. Null where too much of the span has none. */
function powerIn(
  { times, values: { power }, every }: Log,
  from: number,
  to: number,
): { readonly mean: number; readonly running: Bench['readings']['running'] } | null {
  if (!power) return null;
  let [known, energy, least, most] = [0, 0, Infinity, -Infinity];
  for (let index = firstAfter(times, from); index < times.length; index++) {
    const [end, value] = [times[index]!, power[index]!];
    if (end - 2.5 * every > to) break;
    const since = Math.max(from, end - Math.min(2.5 * every, end - (times[index - 1] ?? end - every)));
    const length = Math.min(to, end) - since;
    if (length <= 0 || Number.isNaN(value)) continue;
    known += length;
    energy += value * length;
    least = Math.min(least, value);
    most = Math.max(most, value);
  }
  if (known < enoughPower * (to - from)) return null;
  return { mean: energy / known, running: runningOf(least, most, every) };
}

/** No thermostat goes on and off within this; means over longer would look even if one did (assumption) [s]. */
const shortestCycle = 120;

/** Whether the cable was on all the time, by the meter. A meter that is read in long steps cannot tell. */
function runningOf(least: number, most: number, every: number): Bench['readings']['running'] {
  if (every <= shortestCycle && most > 0 && least > 0.95 * most) return 'on';
  return least < 0.5 * most ? 'switching' : 'not-watched';
}

/** A change of the bench's temperatures counts by what a thermometer can tell of it. */
const weight: Readonly<Partial<Record<LoggedId, number>>> = {
  outside: 0.25 / readingErrors.outside,
  house: 1 / readingErrors.house,
  under: 1 / readingErrors.under,
  loop: 1 / readingErrors.loop,
  roots: 1 / readingErrors.roots,
};

/**
 * The two hours of a night in which the temperatures of a log changed least: the readings are the means of these hours,
 * the earlier root temperature is what the line through them falls from.
 *
 * @param power `read-apart` where the meter was read by hand: a log without power will do, and then gives none
 */
export function steadiestWindow(log: Log, power: 'logged' | 'read-apart' = 'logged'): Window | NoWindow {
  const has = (id: LoggedId): boolean => log.values[id] !== undefined;
  const needsPower = power === 'logged' || has('power');
  const missing = [
    ...(has('power') || !needsPower ? [] : ['power' as const]),
    ...(has('house') || has('outside') ? [] : ['surroundings' as const]),
    ...(has('under') || has('loop') || has('roots') ? [] : ['bench' as const]),
  ];
  if (missing.length > 0) return { missing };

  const length = log.times.at(-1) ?? 0;
  const first = step - (log.begin % step || step);
  const times = Float64Array.from(
    { length: Math.max(0, Math.floor((length - first) / step) + 1) },
    (_, index) => first + index * step,
  );
  const temperatures = loggedIds.filter((id) => id !== 'power' && has(id));
  const columns = temperatures.map((id) => ({ id, values: resampled(log, id, times) }));
  const span = rootsReadApart / step;
  let best: Window | undefined;
  let least = Infinity;
  let outOf = 0;
  for (let begin = 0; begin + span < times.length; begin++) {
    const clock = (log.begin + times[begin]!) % 86_400;
    const lasts = (clock >= nightBegins ? clock - 86_400 : clock) + rootsReadApart;
    if ((clock >= nightEnds && clock < nightBegins) || lasts > nightEnds) continue;
    const lines = columns.flatMap(({ id, values }) => {
      const part = values.subarray(begin, begin + span + 1);
      return part.some(Number.isNaN) ? [] : [{ id, ...lineThrough(part) }];
    });
    const found = new Map(lines.map((line) => [line.id, line]));
    const whole =
      (found.has('house') || found.has('outside')) &&
      (found.has('under') || found.has('loop') || found.has('roots'));
    if (!whole) continue;
    const logged = needsPower ? powerIn(log, times[begin]!, times[begin + span]!) : undefined;
    if (logged === null) continue;
    outOf++;
    // A column that has a hole here is missed: the window is worth less without it.
    const missed = columns.length - lines.length;
    const unrest =
      lines.reduce((sum, { id, rise }) => sum + ((weight[id] ?? 0) * rise) ** 2, 0) + 25 * missed;
    if (unrest >= least) continue;
    least = unrest;
    const mean = (id: LoggedId): number | null => found.get(id)?.mean ?? null;
    const roots = found.get('roots');
    best = {
      from: log.begin + times[begin]!,
      to: log.begin + times[begin + span]!,
      readings: {
        outside: mean('outside'),
        house: mean('house'),
        under: mean('under'),
        loop: mean('loop'),
        roots: mean('roots'),
        rootsEarlier: roots ? roots.mean - roots.rise : null,
        ...(logged ? { power: logged.mean, running: logged.running } : {}),
      },
      change: Object.fromEntries(lines.map(({ id, rise }) => [id, rise])),
      outOf,
    };
  }
  return best ? { ...best, outOf } : { missing: [] };
}
