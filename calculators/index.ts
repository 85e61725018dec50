import { answerOf } from './answering.ts';
import type { Calculator, Situation } from './calculator.ts';
import circuit from './questions/circuit.ts';
import first from './questions/first.ts';
import heat from './questions/heat.ts';
import loop from './questions/loop.ts';
import mix from './questions/mix.ts';
import night from './questions/night.ts';
import outage from './questions/outage.ts';
import readings from './questions/readings.ts';
import roots from './questions/roots.ts';
import season from './questions/season.ts';
import settings from './questions/settings.ts';
import sheath from './questions/sheath.ts';
import tonight from './questions/tonight.ts';
import warmUp from './questions/warm-up.ts';
import watts from './questions/watts.ts';
import ways from './questions/ways.ts';
import winding from './questions/winding.ts';

/** Every calculator, in the order of the guide. To add one: write its file, add its line. */
export const calculators = [
  roots,
  heat,
  watts,
  first,
  ways,
  loop,
  mix,
  winding,
  sheath,
  circuit,
  settings,
  night,
  tonight,
  outage,
  warmUp,
  season,
  readings,
] as const satisfies readonly Calculator[];

export type CalculatorId = (typeof calculators)[number]['id'];

/** The answers of every calculator for one bench, by calculator. */
export type Answers = {
  readonly [C in (typeof calculators)[number] as C['id']]: ReturnType<C['compute']>;
};

/**
 * Each answer is worked out when it is first looked at: a page or a sheet waits for those that it shows. One that a law
 * refuses has no figures and takes none of the others away.
 */
export function answer(situation: Situation): Answers {
  const answers: Record<string, unknown> = {};
  for (const calculator of calculators as readonly Calculator[]) {
    const { id } = calculator;
    Object.defineProperty(answers, id, {
      enumerable: true,
      configurable: true,
      get() {
        const value = answerOf(calculator, situation);
        Object.defineProperty(answers, id, { value, enumerable: true });
        return value;
      },
    });
  }
  return answers as Answers;
}
