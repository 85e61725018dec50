import { assemble, type Body } from '../../calculators/bench/assemble.ts';
import { beforeReadings, parametersAt } from '../../calculators/bench/belief.ts';
import { around } from '../../calculators/bench/place.ts';
import { unseen } from '../../calculators/bench/reading-errors.ts';
import { priorsOf, type Parameters } from '../../calculators/bench/priors.ts';
import { settle } from '../../calculators/bench/settle.ts';
import { simulate, type Course } from '../../calculators/bench/simulate.ts';
import type { Situation } from '../../calculators/calculator.ts';
import type { seeded } from './random.ts';

/** A bench that was followed through invented weather from one midnight on, with its uncertain inputs drawn by lot. */
export interface Followed {
  readonly parameters: Parameters;
  readonly body: Body;
  readonly course: Course;
}

const day = 86_400;

/** Some mild days, each with its own mean and one swing, and five hours of the last night. */
export function followed(
  one: Situation,
  { normal, uniform }: ReturnType<typeof seeded>,
  every: number,
  days = 3,
): Followed {
  const { ids } = beforeReadings(one);
  const parameters = parametersAt(priorsOf(one), ids, Float64Array.from(ids, normal));
  const means = Array.from({ length: days + 2 }, () => 6 + 2 * normal());
  const swing = 2 + uniform();
  const house = (time: number): number => {
    const [whole, part] = [Math.floor(time / day), (time % day) / day];
    const mean = (means[whole] ?? NaN) * (1 - part) + (means[whole + 1] ?? NaN) * part;
    return mean - swing * Math.cos(2 * Math.PI * (part - 5.5 / 24));
  };
  const body = assemble(one, parameters);
  const { ground } = parameters;
  const sky = unseen.sky.expected + unseen.sky.spread * normal();
  const surroundings = {
    house,
    ground: () => ground,
    roof: (time: number) =>
      around(one, house(time) - parameters.houseOffset, { ...parameters, clearness: Math.max(0, sky) }).roof,
  };
  const course = simulate({
    body,
    start: settle(body, { house: house(0), ground, roof: surroundings.roof(0) }, { power: 300 }).temperatures,
    surroundings,
    thermostat: { sensor: body.under, setPoint: 9, differential: 1 },
    powered: () => true,
    until: days * day + 5 * 3600,
    every,
  });
  return { parameters, body, course };
}
