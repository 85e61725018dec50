import { designSnap, snapWeather } from '../calculators/bench/night.ts';
import { surroundingsThrough } from '../calculators/bench/place.ts';
import { expectedParameters } from '../calculators/bench/priors.ts';
import { sensorNode } from '../calculators/bench/sensor.ts';
import { simulate } from '../calculators/bench/simulate.ts';
import { restOn } from '../calculators/bench/steady.ts';
import { stepper } from '../calculators/bench/stepper.ts';
import type { Situation } from '../calculators/calculator.ts';
import { lengthOf } from '../calculators/weather/series.ts';
import type { Case } from './bench-cases.ts';
import { byOdex, exact, nightByOdex, type Exactness, type OtherNight } from './second-opinion.ts';

/** Our own steps, the quickest first [s]. */
const ownSteps = [3600, 1800, 1200, 900, 600, 300, 60];

/** The settings that odex may choose from. */
const settings: readonly Exactness[] = [1, 2].flatMap((rounds) =>
  [7200, 3600, 1800, 900].flatMap((longestStep) =>
    [1800, 900, 300].flatMap((firstStep) =>
      [1e-1, 1e-2, 1e-3]
        .filter(() => firstStep <= longestStep)
        .map((tolerance) => ({ tolerance, longestStep, firstStep, rounds })),
    ),
  ),
);

/** The first of several ways whose outcome is right. */
function firstRight<Way, Outcome>(
  ways: readonly Way[],
  run: (way: Way) => Outcome,
  right: (outcome: Outcome) => boolean,
): Way {
  const found = ways.find((way) => right(run(way)));
  if (found === undefined) throw new Error('no setting is right enough');
  return found;
}

/** The setting with which odex asks the laws least often and is still right. */
function leastAsking<Outcome extends { readonly evaluations: number }>(
  run: (one: Exactness) => Outcome,
  right: (outcome: Outcome) => boolean,
): Exactness {
  const tried = settings.map((one) => ({ one, outcome: run(one) }));
  tried.sort((a, b) => a.outcome.evaluations - b.outcome.evaluations);
  return firstRight(tried, ({ outcome }) => outcome, right).one;
}

type Hourly = readonly (readonly number[])[];

const apart = (one: Hourly, other: Hourly): number =>
  Math.max(...other.flatMap((row, hour) => row.map((t, node) => Math.abs(t - (one[hour]?.[node] ?? NaN)))));

const wordsOf = ({ tolerance, longestStep, firstStep }: Exactness): string =>
  `tolerance ${tolerance}, steps from ${firstStep} to ${longestStep} s`;

/** How right a night is asked to be: the heat brought [1], and each layer of the roots at each hour [K]. */
const demands = [
  { heat: 0.003, roots: 0.1 },
  { heat: 0.001, roots: 0.1 },
] as const;

/** Hours at a steady power, and how right each node is asked to be at each of them [K]. */
const steadyHours = 20;
const steadyDemand = 0.05;

/**
 * Our steps and odex through the same weather, both asking the same laws, and both with the quickest of their settings
 * that is as right as is asked (for odex the one that asks the laws least often, as nearly all of its time goes there).
 * What is right is told by odex with a tolerance ten thousand times finer and with all faces at rest.
 *
 * First the night as the guide asks for it, with the switchings of its thermostat. Then the same by each as it is set
 * where the answer is not known: our steps of a minute, and odex with the tolerance and the longest step below which it
 * can be trusted (with neither it says that it has converged and is 20 K off). Then a steady power, which no bench
 * has: nothing stops a method of high order there, and it is a matter of how often the laws are asked alone.
 */
export function odexCases(situation: Situation): readonly Case[] {
  const { bench } = situation;
  const parameters = expectedParameters(situation);
  const weather = snapWeather(designSnap(situation));
  const surroundings = surroundingsThrough(situation, weather.outside, parameters, 'without-sun');
  const rest = restOn(situation, 'thermostat', parameters, weather.before);
  const { body, temperatures: start } = rest;
  const hours = Math.floor(lengthOf(weather.outside) / 3600);
  const thermostat = {
    sensor: sensorNode(body, bench.control.sensor),
    setPoint: bench.control.setPoint + parameters.sensorError,
    differential: bench.control.differential,
  };
  const night = (every: number): Omit<OtherNight, 'evaluations'> => {
    const run = { body, start, surroundings, thermostat, powered: () => true, until: hours * 3600, every };
    const { temperatures, brought } = simulate({ ...run, control: 'switched' });
    const roots = Array.from({ length: hours }, (_, hour) =>
      body.roots.map((node) => temperatures[node]?.[((hour + 1) * 3600) / every] ?? NaN),
    );
    return { roots, brought };
  };
  const otherNight = (one: Exactness): OtherNight =>
    nightByOdex(body, surroundings, start, hours, thermostat, one);
  const rightNight = otherNight({ ...exact, longestStep: 300 });
  // Whoever does not know the right answer cannot pick the quickest setting that comes near it.
  const trusted: Exactness = { ...exact, rounds: 1 };
  const nights = demands.flatMap(({ heat, roots }): readonly Case[] => {
    const right = (one: Pick<OtherNight, 'roots' | 'brought'>): boolean =>
      Math.abs(one.brought / rightNight.brought - 1) <= heat && apart(one.roots, rightNight.roots) <= roots;
    const own = firstRight(ownSteps, night, right);
    const other = leastAsking(otherNight, right);
    const asked = `${hours} h with thermostat, right to ${heat * 100} %`;
    const name = `${asked}: steps of ${own} s`;
    return [
      { name, work: () => night(own) },
      {
        name: `${asked}: odex, ${wordsOf(other)}`,
        work: () => otherNight(other),
        slowerThan: { name, times: 10 },
      },
    ];
  });

  const minutes = `${hours} h with thermostat: steps of 60 s`;
  const unknown: readonly Case[] = [
    { name: minutes, work: () => night(60) },
    {
      name: `${hours} h with thermostat: odex, ${wordsOf(trusted)}`,
      work: () => otherNight(trusted),
      slowerThan: { name: minutes, times: 10 },
    },
  ];

  const power = rest.fullPower / 2;
  const steady = (every: number): Hourly => {
    const steps = stepper(body, surroundings, start);
    const hourly: number[][] = [];
    for (let time = 0; time < steadyHours * 3600; time += every) {
      steps.renew(time);
      steps.attempt(time, every, power);
      steps.accept();
      if ((time + every) % 3600 === 0) hourly.push(Array.from(steps.now.subarray(0, body.nodeCount)));
    }
    return hourly;
  };
  const otherSteady = (one: Exactness) => byOdex(body, surroundings, start, steadyHours, () => power, one);
  const rightSteady = otherSteady(exact).temperatures;
  const own = firstRight(ownSteps, steady, (hourly) => apart(hourly, rightSteady) <= steadyDemand);
  const other = leastAsking(
    otherSteady,
    ({ temperatures }) => apart(temperatures, rightSteady) <= steadyDemand,
  );
  const asked = `${steadyHours} h of steady power, right to ${steadyDemand} K`;
  return [
    ...nights,
    ...unknown,
    { name: `${asked}: steps of ${own} s`, work: () => steady(own) },
    { name: `${asked}: odex, ${wordsOf(other)}`, work: () => otherSteady(other) },
  ];
}
