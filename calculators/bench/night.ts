import type { Situation } from '../calculator.ts';
import { hoursToLowest, snapAt, snapSeries, type Snap } from '../weather/cold-snap.ts';
import { temperatureThrough } from '../weather/series.ts';
import { designOutside } from './place.ts';
import { expectedParameters, type Parameters, type PriorId } from './priors.ts';
import { rangedAll, weightyInputs, type Ranged } from './range.ts';
import { restOn } from './steady.ts';
import {
  coldestRoots,
  throughWeather,
  timeBelow,
  type Manner,
  type Through,
  type Weather,
} from './through.ts';

const hour = 3600;

/** The cold snap that a bench is built for. */
export const designSnap = (situation: Situation): Snap =>
  snapAt(situation.station, designOutside(situation), situation.bench.place.coldHours / hour);

/** The weather of that snap, without sun; before it the bench stood in ordinary weather of the coldest month. */
export function snapWeather(snap: Snap): Weather {
  return {
    outside: snapSeries(snap),
    sun: 'without-sun',
    before: (snap.mildLow + snap.mildHigh) / 2,
  };
}

/**
 * Steps of a night that is looked at closely, of one that answers, and of one of many members of a range [s]. Against
 * one-minute steps, over any benches: ten minutes change the lowest root temperature by less than 0.03 K and, in nineteen
 * of twenty, the energy by less than 0.5 %; half an hour by less than 0.2 K and 1 % (a test holds them to that).
 */
export const nightSteps = { fine: 60, usual: 600, coarse: 1800 } as const;

/** A bench through its cold snap. */
export interface Night extends Through {
  readonly weather: Weather;
  readonly snap: Snap;
}

export function nightOf(
  situation: Situation,
  parameters: Parameters = expectedParameters(situation),
  manner: Partial<Manner> = {},
): Night {
  const snap = designSnap(situation);
  const weather = snapWeather(snap);
  const through = throughWeather(situation, parameters, weather, {
    heat: true,
    every: nightSteps.usual,
    ...manner,
  });
  return { ...through, weather, snap };
}

/**
 * The uncertain inputs that a night rests on, told by the bench at rest on it and in the weather before; and two that this
 * does not show: the error of the sensor where the cable is at its limit or off, and the conductivity of the medium, by
 * which pots freeze through or do not.
 */
export function inputsOfNight(situation: Situation): readonly PriorId[] {
  const { mildLow, mildHigh } = designSnap(situation);
  const weighty = weightyInputs(situation, (parameters) => {
    const { coldestRoots: coldest, power } = restOn(situation, 'thermostat', parameters);
    const before = restOn(situation, 'thermostat', parameters, (mildLow + mildHigh) / 2);
    return { coldest, power, before: before.power };
  });
  return [...new Set<PriorId>([...weighty, 'sensorError', 'mediumConductivity'])];
}

/** What of a night is told with a range. */
export type RangedOfNight = 'lowestRoots' | 'energy' | 'meanPower' | 'belowLimit' | 'lowestLoop';

/** Ranges of what a night comes to, in coarse steps. */
export function nightRange(
  situation: Situation,
  inputs = inputsOfNight(situation),
): Readonly<Record<RangedOfNight, Ranged>> {
  const results = (parameters: Parameters): Record<RangedOfNight, number> => {
    const night = nightOf(situation, parameters, { every: nightSteps.coarse });
    const { lowestRoots, energy, meanPower, belowLimit, lowestLoop } = summaryOf(situation, night);
    return { lowestRoots, energy, meanPower, belowLimit, lowestLoop };
  };
  return rangedAll(situation, results, inputs);
}

/** What a night came to. */
export interface NightSummary {
  /** Coldest layer of the root zone [°C], and when it was coldest, from the first hour at the lowest outside [s]. */
  readonly lowestRoots: number;
  readonly lowestAt: number;
  /** Time that the coldest layer is below the grower's limit [s]. */
  readonly belowLimit: number;
  /** Heat of the cable [J]. */
  readonly energy: number;
  /** Highest and mean power, the mean over the hours at the lowest outside [W]. */
  readonly peakPower: number;
  readonly meanPower: number;
  readonly lowestUnder: number;
  readonly lowestLoop: number;
}

const lowestOf = (values: Float64Array): number =>
  values.reduce((lowest, one) => Math.min(lowest, one), Infinity);

export function summaryOf(situation: Situation, night: Night): NightSummary {
  const { body, course, snap } = night;
  const roots = coldestRoots(night);
  const lowestRoots = lowestOf(roots);
  const arrives = hoursToLowest(snap) * hour;
  const leaves = arrives + snap.hoursAtLowest * hour;
  let peakPower = 0;
  let [sum, count] = [0, 0];
  course.times.forEach((time, index) => {
    peakPower = Math.max(peakPower, course.power[index]!);
    if (time <= arrives || time > leaves) return;
    sum += course.power[index]!;
    count++;
  });
  return {
    lowestRoots,
    lowestAt: course.times[roots.indexOf(lowestRoots)]! - arrives,
    belowLimit: timeBelow(course.times, roots, situation.bench.plants.lowestRootTemperature),
    energy: course.brought,
    peakPower,
    meanPower: sum / count,
    lowestUnder: lowestOf(course.temperatures[body.under]!),
    lowestLoop: lowestOf(course.temperatures[body.loop]!),
  };
}

/**
 * The cold night for other programs: SI, times from the beginning, temperatures in °C by the id of the node, the mean
 * power since the time before. One entry every ten minutes.
 */
export function nightForPrograms(situation: Situation): {
  readonly time: readonly number[];
  readonly outside: readonly number[];
  readonly power: readonly number[];
  readonly nodes: Readonly<Record<string, readonly number[]>>;
} {
  const { body, course, weather } = nightOf(situation);
  const time = Array.from(course.times);
  const nodes = course.temperatures.map((values, node) => [body.ids[node] ?? '', Array.from(values)]);
  return {
    time,
    outside: time.map(temperatureThrough(weather.outside)),
    power: Array.from(course.power),
    nodes: Object.fromEntries([...nodes, ['house', Array.from(course.house)]]) as Record<string, number[]>,
  };
}
