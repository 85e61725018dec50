import type { Calculator, Situation } from './calculator.ts';
import circuit from './questions/circuit.ts';
import first from './questions/first.ts';
import heat from './questions/heat.ts';
import loop from './questions/loop.ts';
import mix from './questions/mix.ts';
import roots from './questions/roots.ts';
import settings from './questions/settings.ts';
import sheath from './questions/sheath.ts';
import watts from './questions/watts.ts';
import winding from './questions/winding.ts';

/** Every calculator, in the order of the guide. To add one: write its file, add its line. */
export const calculators = [
  roots,
  heat,
  watts,
  first,
  loop,
  mix,
  winding,
  sheath,
  circuit,
  settings,
] as const satisfies readonly Calculator[];

export type CalculatorId = (typeof calculators)[number]['id'];

/** The answers of every calculator for one bench, by calculator. */
export type Answers = {
  readonly [C in (typeof calculators)[number] as C['id']]: ReturnType<C['compute']>;
};

export const answer = (situation: Situation): Answers =>
  Object.fromEntries(calculators.map((one) => [one.id, one.compute(situation)])) as Answers;
