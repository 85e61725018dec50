import type { Situation } from '../calculator.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { coldestMonth } from '../weather/cold-snap.ts';
import type { Body } from './assemble.ts';
import type { Bench } from './fields.ts';
import { coldestOf, limitNight, stuckOn, type LimitNight } from './limit-night.ts';
import { sensorNode } from './sensor.ts';
import type { Settled } from './settle.ts';

/**
 * What to set a thermostat to, by the place of its sensor: worked out in one place, so that every question of the guide
 * that moves a sensor sets it alike.
 */

/** By how much a sensor and a dial may be wrong together [K] (common practice: thermostats are good to about 1 K). */
export const sensorError = 1;

/** Kept free between a set point and the alarm that is to ring when it is missed [K] (design rule of this guide). */
export const inHand = 1;

/** Set point of a thermostat on the loop in common practice [°C]: 4 to 5. */
export const commonOnLoop = 4.5;

/** Set point under the bench where none follows from the roots, the low end of 2 to 5 °C [°C] (common practice). */
const commonInAir = 2;

/** What each of the three places reads when the roots are at their limit [°C]. */
interface Readings {
  readonly loop: Celsius;
  readonly air: Celsius;
  readonly pot: Celsius;
}

export interface SetPoints {
  /** The night that the thermostat is set for; null where no cable of this power holds the roots. */
  readonly night: LimitNight | null;
  /** The bench with the cable on in ordinary weather of the coldest month. */
  readonly stuck: { readonly body: Body; readonly settled: Settled };
  /** At rest with the cable on: on that night, or where there is none in ordinary weather. */
  readonly on: { readonly body: Body; readonly settled: Settled };
  /** Null where the roots need no heat, or none of this cable holds them. */
  readonly atLimit: Readings | null;
  /** Low alarm in the coldest pot [°C]. */
  readonly alarmLow: Celsius;
  /** Set points by place [°C]; null as above. */
  readonly pot: Celsius;
  readonly air: Celsius | null;
  readonly loop: Celsius | null;
}

function readings(night: LimitNight | null, limit: Celsius): Readings | null {
  if (!night) return null;
  const { body, held } = night;
  if (coldestOf(body, held) > limit + 0.01) return null;
  const at = (node: number): number => held.temperatures[node]!;
  return { loop: at(body.loop), air: at(sensorNode(body, 'air')), pot: at(sensorNode(body, 'pot')) };
}

const kept = new WeakMap<Situation, SetPoints>();

function worked(situation: Situation): SetPoints {
  const { bench, station } = situation;
  const { lowestRootTemperature: limit } = bench.plants;
  const night = limitNight(situation);
  const atLimit = readings(night, limit);
  const half = bench.control.differential / 2;
  const month = coldestMonth(station);
  const stuck = stuckOn(situation, (month.meanLow + month.meanHigh) / 2);
  const on = night ? { body: night.body, settled: night.full } : stuck;
  const potOverColdest = atLimit
    ? atLimit.pot - limit
    : on.settled.temperatures[sensorNode(on.body, 'pot')]! - coldestOf(on.body, on.settled);
  const alarmLow = limit + Math.max(0, potOverColdest) + sensorError;
  const setIn = (place: number): number => place + sensorError + half;
  return {
    night,
    stuck,
    on,
    atLimit,
    alarmLow,
    pot: alarmLow + half + inHand,
    air: atLimit && setIn(atLimit.air),
    loop: atLimit && setIn(atLimit.loop),
  };
}

/** Set points of a bench, for the hardest night that it must and can come through. */
export function setPoints(situation: Situation): SetPoints {
  const known = kept.get(situation) ?? worked(situation);
  kept.set(situation, known);
  return known;
}

/**
 * The set point that the guide tries a sensor with [°C]: the grower's own where it sits already; in a pot or in the air what
 * follows from the roots; on the loop that of common practice, as what would hold the roots from there is right for one
 * night alone.
 */
export function triedSetPoint(situation: Situation, place: Bench['control']['sensor']): Celsius {
  const { control } = situation.bench;
  if (control.sensor === place) return control.setPoint;
  if (place === 'loop') return commonOnLoop;
  const { pot, air } = setPoints(situation);
  return place === 'pot' ? pot : (air ?? commonInAir);
}
