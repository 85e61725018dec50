import { assemble } from '../../calculators/bench/assemble.ts';
import { beforeReadings, parametersAt } from '../../calculators/bench/belief.ts';
import { around } from '../../calculators/bench/place.ts';
import { priorsOf, type Parameters, type PriorId } from '../../calculators/bench/priors.ts';
import { settle } from '../../calculators/bench/settle.ts';
import { simulate } from '../../calculators/bench/simulate.ts';
import type { Situation } from '../../calculators/calculator.ts';
import type { LoggedId } from '../../calculators/logger/columns.ts';
import { seeded } from './random.ts';

/**
 * How the invented logs of content/logs were made: a bench whose uncertain inputs are not what is expected of it is
 * followed through three invented days and a calm, cloudy night, and read with instruments that are a little off. The
 * files are kept as they came out, as a real log would be; a test holds them against this.
 */

const hour = 3600;
const day = 24 * hour;
const every = 600;

/** When the log begins, counted from the first midnight of the invented weather [s]: noon of the third day. */
const begins = 2 * day + 12 * hour;
/** The cable is on from here to the end: four in the afternoon. */
const switchedOn = 2 * day + 16 * hour;
const ends = 3 * day + 9 * hour;

/** How far the truth lies from what is expected, in standard deviations of the priors: a bench with a badly closed skirt. */
const truth: Partial<Record<PriorId, number>> = {
  bottomGap: 1.6,
  topGap: 1,
  mediumConductivity: -0.6,
  longwave: 0.5,
  contact: -0.4,
  insideFilm: 0.3,
  soilConductivity: 0.5,
  ground: 0.4,
  closeBy: -0.3,
  sideShare: 0.3,
  houseOffset: -0.3,
};

/** How cloudy the night was, of what a clear sky draws out of the roof [1]. */
const clearness = 0.25;

/** What the instruments are off, all night: degrees, and the share of the meter. */
const off: Readonly<Record<LoggedId, number>> = {
  outside: 0.2,
  house: -0.2,
  under: 0.3,
  loop: -0.4,
  roots: -0.2,
  power: 0.01,
};

/** From one reading to the next a cheap thermometer strays by this [K]. */
const strays = 0.07;

export interface ExampleLog {
  /** Seconds since the midnight before. */
  readonly times: readonly number[];
  /** As read: °C to a tenth of a degree of its display, W. */
  readonly values: Readonly<Record<LoggedId, readonly number[]>>;
  readonly parameters: Parameters;
}

/** The log of a bench with its cable on from four in the afternoon until nine in the morning. */
export function exampleLog(situation: Situation, coldest: number): ExampleLog {
  const { ids } = beforeReadings(situation);
  const parameters = parametersAt(
    priorsOf(situation),
    ids,
    Float64Array.from(ids, (id) => truth[id] ?? 0),
  );
  // Mild days that swing by seven degrees, coldest at half past six.
  const outside = (time: number): number => {
    const swing = Math.cos((2 * Math.PI * (time - 6.5 * hour)) / day);
    return coldest + 3.5 * (1 - swing) + 0.4 * Math.sin((2 * Math.PI * time) / (5.3 * hour));
  };
  // A weak sun through cloud lifts the house by four degrees more at one o'clock.
  const sun = (time: number): number => Math.max(0, Math.cos((2 * Math.PI * (time - 13 * hour)) / day)) ** 2;
  const house = (time: number): number => outside(time) + parameters.houseOffset + 4 * sun(time);
  const body = assemble(situation, parameters);
  const { ground } = parameters;
  const roof = (time: number): number =>
    around(situation, outside(time), { ...parameters, clearness }, house(time)).roof;
  const surroundingsFrom = (since: number) => ({
    house: (time: number) => house(since + time),
    ground: () => ground,
    roof: (time: number) => roof(since + time),
  });
  const thermostat = { sensor: body.under, setPoint: 60, differential: 1 };
  const before = simulate({
    body,
    start: settle(body, { house: house(0), ground, roof: roof(0) }, { power: 0 }).temperatures,
    surroundings: surroundingsFrom(0),
    thermostat: { ...thermostat, setPoint: 4.5 },
    powered: () => true,
    until: begins,
    every,
  });
  const start = new Float64Array(body.ids.length);
  before.temperatures.forEach((course, node) => (start[node] = course.at(-1) ?? NaN));
  const course = simulate({
    body,
    start,
    surroundings: surroundingsFrom(begins),
    thermostat,
    powered: (time) => begins + time >= switchedOn,
    until: ends - begins,
    every,
  });

  const { normal } = seeded(1225);
  const middle = body.roots[Math.floor(body.roots.length / 2)] ?? NaN;
  const shown = {
    outside: Float64Array.from(course.times, (time) => outside(begins + time)),
    house: course.house,
    under: course.temperatures[body.under] ?? [],
    loop: course.temperatures[body.loop] ?? [],
    roots: course.temperatures[middle] ?? [],
  };
  const readWith = (id: LoggedId, values: ArrayLike<number>): number[] =>
    Array.from(values, (value) =>
      id === 'power' ? value * (1 + off[id]) : value + off[id] + strays * normal(),
    );
  return {
    times: Array.from(course.times, (time) => begins - 2 * day + time),
    values: {
      outside: readWith('outside', shown.outside),
      house: readWith('house', shown.house),
      under: readWith('under', shown.under),
      loop: readWith('loop', shown.loop),
      roots: readWith('roots', shown.roots),
      power: readWith('power', course.power),
    },
    parameters,
  };
}
