import type { Situation } from '../calculator.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { coldestMonth } from '../weather/cold-snap.ts';
import { assemble, type Body } from './assemble.ts';
import type { Bench } from './fields.ts';
import { coldestOf, limitNight, stuckOn, type LimitNight } from './limit-night.ts';
import { around } from './place.ts';
import type { Parameters } from './priors.ts';
import { sensorNode } from './sensor.ts';
import { settle, type Settled } from './settle.ts';
import { warmestUnder } from './steady.ts';

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

/** How close the members of a range have to come to rest [K]: a thirtieth of what a reader is shown. */
const closeEnough = 3e-3;

/** The same night for other uncertain inputs: what the places read with the roots at their limit, and with the cable on. */
export function placesOn(
  situation: Situation,
  outside: Celsius,
): (parameters: Parameters) => { readonly atLimit: Readings; readonly on: Readings } {
  let first: { readonly held: Settled; readonly full: Settled } | undefined;
  return (parameters) => {
    const body = assemble(situation, parameters);
    const surroundings = around(situation, outside, parameters);
    const { lowestRootTemperature: at } = situation.bench.plants;
    const near = (one: 'held' | 'full') => first && { from: first[one], within: closeEnough };
    const held = settle(
      body,
      surroundings,
      {
        hold: body.roots,
        at,
        by: 'as-it-enters',
        warmest: warmestUnder,
      },
      near('held'),
    );
    const full = settle(
      body,
      surroundings,
      { hold: [body.loop], at: warmestUnder, by: 'cable' },
      near('full'),
    );
    first ??= { held, full };
    const reads = ({ temperatures }: Settled) => ({
      loop: temperatures[body.loop]!,
      air: temperatures[sensorNode(body, 'air')]!,
      pot: temperatures[sensorNode(body, 'pot')]!,
    });
    return { atLimit: reads(held), on: reads(full) };
  };
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
