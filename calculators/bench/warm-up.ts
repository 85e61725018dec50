import type { Situation } from '../calculator.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { outageCourse, outageHorizon, outageStep } from './outage.ts';
import { around, staying } from './place.ts';
import type { Parameters } from './priors.ts';
import { sensorNode } from './sensor.ts';
import { simulate } from './simulate.ts';
import { restOn } from './steady.ts';
import { coldestRoots, firstAt } from './through.ts';

/** Steps of a warm-up [s]. */
const warmUpStep = 900;
const firstHour = 3600 / warmUpStep;

/** A sensor that comes to rest as near to the set point as this is held there [K]. */
const atSetPoint = 0.01;

/** Time from the return of the power [s]; null where it is not reached within ten days. */
export interface WarmUp {
  /** Until the sensor is at the set point and the cable rests for the first time. */
  readonly setPoint: number | null;
  /** Until no layer of the roots is below the grower's limit. */
  readonly rootLimit: number | null;
  /** Until no ice is left in the pots. */
  readonly thawed: number | null;
  /** Heat of the cable until the pots are thawed and the sensor is at the set point, as far as that is reached [J]. */
  readonly energy: number;
  /** By how much the loop warms in the first hour [K]. */
  readonly firstHour: number;
  /** Coldest layer of the roots when the power comes back [°C]. */
  readonly coldestBefore: number;
  /** The loop at its warmest on the way, and the air under the bench then [°C]. */
  readonly warmestLoop: { readonly loop: number; readonly air: number };
}

/**
 * A bench after a power cut: `cut` seconds without power at `during` outside, then the heat as set at `after`. No sun.
 */
export function warmUp(
  situation: Situation,
  parameters: Parameters,
  { cut, during, after }: { cut: number; during: number; after: number },
): WarmUp {
  const outage = outageCourse({ situation, parameters, outside: during, until: Math.max(cut, outageStep) });
  const { body } = outage;
  const start = outage.course.temperatures.map((values) => values.at(-1)!);
  const { sensor, setPoint, differential } = situation.bench.control;
  const node = sensorNode(body, sensor);
  const level = setPoint + parameters.sensorError;
  const limit = situation.bench.plants.lowestRootTemperature;
  // What the bench comes to in the end tells what it can reach at all; nobody need wait for the rest.
  const rest = restOn(situation, 'thermostat', parameters, after);
  const warmest = [limit, mediumFreezes.from].filter((one) => rest.coldestRoots > one);
  const comesOn = rest.temperatures[node]! > level - atSetPoint;
  let seen = !comesOn;
  let looks = 0;
  const run = {
    body,
    course: simulate({
      body,
      start,
      surroundings: staying(around(situation, after, parameters)),
      thermostat: { sensor: node, setPoint: level, differential },
      powered: () => true,
      until: outageHorizon,
      every: warmUpStep,
      enough: (now) => {
        seen ||= now[node]! >= level;
        // The first hour is looked at in any case.
        return (
          ++looks > firstHour &&
          seen &&
          body.roots.every((layer) => warmest.every((one) => now[layer]! >= one))
        );
      },
    }),
  };
  const { times, temperatures, brought } = run.course;
  const roots = coldestRoots(run);
  const loop = temperatures[body.loop]!;
  const peak = loop.reduce((best, value, index) => (value > loop[best]! ? index : best), 0);
  return {
    setPoint: firstAt(times, temperatures[node]!, level, 'rising'),
    rootLimit: firstAt(times, roots, limit, 'rising'),
    thawed: firstAt(times, roots, mediumFreezes.from, 'rising'),
    energy: brought,
    firstHour: loop[firstHour]! - loop[0]!,
    coldestBefore: roots[0]!,
    warmestLoop: { loop: loop[peak]!, air: temperatures[body.under]![peak]! },
  };
}
