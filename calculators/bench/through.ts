import type { Situation } from '../calculator.ts';
import type { Series } from '../weather/series.ts';
import { lengthOf } from '../weather/series.ts';
import type { Body } from './assemble.ts';
import { surroundingsThrough } from './place.ts';
import type { Parameters } from './priors.ts';
import { sensorNode } from './sensor.ts';
import { simulate, type Course, type Run } from './simulate.ts';
import { restOn } from './steady.ts';

/** What a bench goes through. */
export interface Weather {
  readonly outside: Series;
  readonly sun: 'with-sun' | 'without-sun';
  /** Outside temperature at which the bench had come to rest before it begins [°C]. */
  readonly before: number;
  /** Ground temperature through time [°C]; without it the parameters' own, which does not change. */
  readonly ground?: (time: number) => number;
}

export interface Manner {
  /** Whether the thermostat may heat. */
  readonly heat: boolean;
  /** Longest step, and distance of what is kept [s]. */
  readonly every: number;
  readonly control?: Run['control'];
  /** When there is power, from the beginning [s]; always where left out. */
  readonly powered?: Run['powered'];
}

/** A bench with what happened to it. */
export interface Through {
  readonly body: Body;
  readonly course: Course;
}

/** Takes a bench through weather with its thermostat as set, from rest in the weather before. */
export function throughWeather(
  situation: Situation,
  parameters: Parameters,
  weather: Weather,
  { heat, every, control = 'averaged', powered = () => true }: Manner,
): Through {
  const { body, temperatures } = restOn(
    situation,
    heat ? 'thermostat' : 'no-heat',
    parameters,
    weather.before,
  );
  const { sensor, setPoint, differential } = situation.bench.control;
  const { outside, sun, ground } = weather;
  const course = simulate({
    body,
    start: temperatures,
    surroundings: surroundingsThrough(situation, outside, parameters, sun, ground),
    thermostat: {
      sensor: sensorNode(body, sensor),
      setPoint: setPoint + parameters.sensorError,
      differential,
    },
    powered: heat ? powered : () => false,
    until: Math.floor(lengthOf(outside) / every) * every,
    every,
    control,
  });
  return { body, course };
}

/** The coldest layer of the root zone at each time of a course [°C]. */
export function coldestRoots({ body, course }: Through): Float64Array {
  const layers = body.roots.map((node) => course.temperatures[node]!);
  return course.times.map((_, index) => Math.min(...layers.map((layer) => layer[index]!)));
}

/**
 * When a line through time first comes to a level [s], falling or rising, on the straight lines between its values;
 * zero where it begins beyond, null where it never comes there.
 */
export function firstAt(
  times: ArrayLike<number>,
  values: ArrayLike<number>,
  level: number,
  way: 'falling' | 'rising',
): number | null {
  const past = (index: number): number =>
    way === 'falling' ? level - values[index]! : values[index]! - level;
  if (past(0) >= 0) return 0;
  for (let index = 1; index < times.length; index++) {
    const [a, b] = [past(index - 1), past(index)];
    if (b < 0) continue;
    const [from, to] = [times[index - 1]!, times[index]!];
    return from + ((to - from) * a) / (a - b);
  }
  return null;
}

/** How long a line through time lies below a level [s]; between two times it runs straight. */
export function timeBelow(times: ArrayLike<number>, values: ArrayLike<number>, level: number): number {
  let below = 0;
  for (let index = 1; index < times.length; index++) {
    const step = times[index]! - times[index - 1]!;
    const [a, b] = [values[index - 1]! - level, values[index]! - level];
    if (a < 0 && b < 0) below += step;
    else if (a < 0 !== b < 0) below += (step * Math.abs(Math.min(a, b))) / Math.abs(a - b);
  }
  return below;
}
