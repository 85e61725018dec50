import type { Situation } from '../calculator.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { seriesOfDays } from '../weather/days.ts';
import { groundThrough, heatingMonths, ordinaryWinter } from '../weather/winter.ts';
import { changed } from './changed.ts';
import type { Bench } from './fields.ts';
import { nightOf, nightSteps } from './night.ts';
import { ordinaryCold } from './outage.ts';
import { designOutside } from './place.ts';
import { expectedParameters } from './priors.ts';
import { seasonSteps } from './season.ts';
import { setPoints } from './set-points.ts';
import { throughWeather, type Through } from './through.ts';
import { warmUp } from './warm-up.ts';

const day = 86_400;

/** December, January and February, in which pots freeze and thaw. */
const [firstCold, lastCold] = [12, 2] as const;

/** When a loop with everything in order is at its warmest. */
export type WarmestWhen = 'hard-night' | 'snap' | 'winter' | 'warm-up' | 'each-time' | 'at-set-point';

/** The warmest that a loop comes to with everything in order, and the air under the bench at that moment [°C]. */
export interface WarmestLoop {
  readonly loop: Celsius;
  readonly air: Celsius;
  readonly when: WarmestWhen;
}

/** A place of the sensor with what is set there. */
export interface Placed {
  readonly sensor: Bench['control']['sensor'];
  readonly setPoint: Celsius;
}

/**
 * Where the guide wants the sensor and what it sets there: the grower's own place, unless that is the loop; and the set
 * point that follows from the roots, unless the grower's own is higher.
 */
export function advisedPlace(situation: Situation): Placed {
  const { sensor, setPoint } = situation.bench.control;
  const { pot, air } = setPoints(situation);
  if (sensor === 'air') return { sensor, setPoint: Math.max(setPoint, air ?? setPoint) };
  return { sensor: 'pot', setPoint: sensor === 'pot' ? Math.max(setPoint, pot) : pot };
}

/** The three coldest months of an ordinary winter of the station: nights and dull days, as sun melts ice without the cable. */
function coldMonths(situation: Situation): Through {
  const { station } = situation;
  const parameters = expectedParameters(situation);
  const before = (month: number): number => {
    const at = heatingMonths.findIndex((one) => one.month === month);
    return heatingMonths.slice(0, at).reduce((sum, { days }) => sum + days, 0);
  };
  const first = before(firstCold);
  const last = before(lastCold) + heatingMonths.find(({ month }) => month === lastCold)!.days;
  const outside = seriesOfDays(ordinaryWinter(station).slice(first, last));
  const ground = groundThrough(station, parameters.ground);
  return throughWeather(
    situation,
    parameters,
    {
      outside,
      ground: (time) => ground(time + outside.clock + first * day),
      sun: 'without-sun',
      before: ordinaryCold(situation),
    },
    { heat: true, every: seasonSteps.coarse, control: 'averaged' },
  );
}

/** The warmest moment of the loop in a course, of those at which the cable is on. */
function warmestOf({ body, course }: Through, when: WarmestWhen): WarmestLoop {
  const [loop, air] = [course.temperatures[body.loop]!, course.temperatures[body.under]!];
  let warmest = -Infinity;
  let at = 0;
  loop.forEach((value, index) => {
    if (course.power[index]! <= 0 || value <= warmest) return;
    [warmest, at] = [value, index];
  });
  return { loop: warmest, air: air[at]!, when };
}

/**
 * How warm the loop comes to with a sensor in this place at this set point and everything in order.
 *
 * A sensor in the air holds the air, so the loop comes to that and what the cable lifts it above. A sensor in a pot does
 * not: while the pots thaw after a frost it calls for heat without a pause, though the air is mild by then, and the loop
 * is warmer than on the frosty night. So the bench is followed through its cold snap, through the three coldest months of an
 * ordinary winter, and through the warm-up after the power cut that the grower looks at; and none of them is less than the
 * night at rest. Steps of half an hour and of three hours find the peak to about half a kelvin (against steps of half an
 * hour in the winter, on the example benches). No sun.
 */
export function warmestLoop(situation: Situation, { sensor, setPoint }: Placed): WarmestLoop {
  const { on } = setPoints(situation);
  const at = (node: number): number => on.settled.temperatures[node]!;
  const atRest = { loop: at(on.body.loop), air: at(on.body.under) };
  const off = setPoint + situation.bench.control.differential / 2;
  if (sensor === 'loop') return { loop: off, air: Math.min(off, atRest.air), when: 'at-set-point' };
  if (sensor === 'air') return { loop: off + atRest.loop - atRest.air, air: off, when: 'each-time' };
  const placed = changed(situation, { control: { sensor, setPoint } });
  const warm = warmUp(placed, expectedParameters(placed), {
    cut: placed.bench.outlook.outageHours,
    during: designOutside(placed),
    after: ordinaryCold(placed),
  });
  const all: readonly WarmestLoop[] = [
    { ...atRest, when: 'hard-night' },
    warmestOf(nightOf(placed, undefined, { every: nightSteps.coarse }), 'snap'),
    warmestOf(coldMonths(placed), 'winter'),
    { ...warm.warmestLoop, when: 'warm-up' },
  ];
  return all.reduce((warmest, one) => (one.loop > warmest.loop ? one : warmest));
}
