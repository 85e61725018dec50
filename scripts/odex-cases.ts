import type { Body } from '../calculators/bench/assemble.ts';
import { designSnap, nightSteps, snapWeather } from '../calculators/bench/night.ts';
import { surroundingsThrough, type Surroundings } from '../calculators/bench/place.ts';
import { expectedParameters } from '../calculators/bench/priors.ts';
import { restOn } from '../calculators/bench/steady.ts';
import { stepper } from '../calculators/bench/stepper.ts';
import type { Situation } from '../calculators/calculator.ts';
import type { Case } from './bench-cases.ts';
import { byOdex, exact, type Exactness } from './second-opinion.ts';

/** Hours of the cold snap that both go through. */
const hours = 20;
/** Our own steps, as of a night that answers [s]. */
const every = nightSteps.usual;

/** The settings that odex may choose from, the quickest first. */
const settings: readonly Exactness[] = [1, 2].flatMap((rounds) =>
  [1200, 600, 300, 120].flatMap((longestStep) =>
    [1e-2, 1e-3, 1e-4].map((tolerance) => ({ tolerance, longestStep, rounds })),
  ),
);

type Hourly = readonly (readonly number[])[];

function bySteps(body: Body, surroundings: Surroundings, start: Float64Array, power: number): Hourly {
  const steps = stepper(body, surroundings, start);
  const hourly: number[][] = [];
  for (let time = 0; time < hours * 3600; time += every) {
    steps.renew(time);
    steps.attempt(time, every, power);
    steps.accept();
    if ((time + every) % 3600 === 0) hourly.push(Array.from(steps.now.subarray(0, body.nodeCount)));
  }
  return hourly;
}

const apart = (one: Hourly, other: Hourly): number =>
  Math.max(...one.flatMap((row, hour) => row.map((t, node) => Math.abs(t - (other[hour]?.[node] ?? NaN)))));

/**
 * Our steps and odex through the same hours at the same power, both asking the same laws: odex with the quickest setting
 * that is no further from its own exact answer than ours are.
 */
export function odexCases(situation: Situation): readonly Case[] {
  const parameters = expectedParameters(situation);
  const weather = snapWeather(designSnap(situation));
  const surroundings = surroundingsThrough(situation, weather.outside, parameters, 'without-sun');
  const rest = restOn(situation, 'thermostat', parameters, weather.before);
  const { body } = rest;
  const power = rest.fullPower / 2;
  const ours = (): Hourly => bySteps(body, surroundings, rest.temperatures, power);
  const odex = (exactness: Exactness): Hourly =>
    byOdex(body, surroundings, rest.temperatures, hours, () => power, exactness).temperatures;
  const right = odex(exact);
  const off = apart(ours(), right);
  const enough = settings.find((one) => apart(odex(one), right) <= off) ?? exact;
  const name = `${hours} h of a snap, right to ${off.toPrecision(1)} K`;
  return [
    { name, work: ours },
    {
      name: `the same by odex, steps to ${enough.longestStep} s`,
      work: () => odex(enough),
      slowerThan: { name, times: 10 },
    },
  ];
}
