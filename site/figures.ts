import { unlessRefused } from '../calculators/answering.ts';
import { nightForPrograms } from '../calculators/bench/night.ts';
import { designNight } from '../calculators/bench/steady.ts';
import type { Answer, Calculator, Situation } from '../calculators/calculator.ts';
import { calculators, type Answers } from '../calculators/index.ts';
import { quantities } from '../calculators/quantities/quantity.ts';
import { sources } from '../calculators/sources.ts';
import { sentenceText } from './widgets/text.ts';

/** One figure for programs: in the base unit of its quantity, SI with temperatures in °C. */
export interface FigureForPrograms {
  readonly value: number;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  /** On which side of `value` the answer lies, where what is published ends there. */
  readonly beyond?: 'below' | 'above';
  /** What a reader is told in place of the number, where it would mislead alone. */
  readonly words?: string;
  /** Publications with the place in each. */
  readonly sources: readonly string[];
}

/** The figures of one bench for programs. The shape is a promise: add to it; rename nothing. */
export interface FiguresFile {
  readonly format: 1;
  readonly figures: Readonly<Record<string, Readonly<Record<string, FigureForPrograms>>>>;
  /** The design night at rest, as a linear network: whoever solves it again finds `steady`. Nothing where a law refuses. */
  readonly network: {
    readonly nodes: readonly { readonly id: string; readonly capacity: number }[];
    readonly boundaries: readonly { readonly id: string; readonly temperature: number }[];
    readonly links: readonly { readonly from: string; readonly to: string; readonly conductance: number }[];
    readonly heat: readonly { readonly node: string; readonly power: number }[];
    readonly steady: Readonly<Record<string, number>>;
  };
  /** The cold night that the bench is built for: times [s], temperatures [°C], mean power since the time before [W]. Nothing where a law refuses. */
  readonly night: {
    readonly time: readonly number[];
    readonly outside: readonly number[];
    readonly power: readonly number[];
    readonly nodes: Readonly<Record<string, readonly number[]>>;
  };
  readonly warnings: readonly { readonly code: string; readonly text: string }[];
}

/** What a calculator's figures rest on: its own citations and those of its formulas, each once. */
function sourcesOf({ cites, formulas }: Calculator): string[] {
  const all = [...cites, ...formulas.flatMap((formula) => formula.cites)];
  return [...new Set(all.map(({ source, at }) => `${sources[source].title}, ${at}`))];
}

/** Words too are in SI, as everything in this file. */
const programs = { system: 'metric', locale: 'en' } as const;

/** The figures that a calculator gave; those whose question does not arise are left out. */
function figuresOfOne(calculator: Calculator, answer: Answer): Record<string, FigureForPrograms> {
  const cited = sourcesOf(calculator);
  return Object.fromEntries(
    Object.entries(calculator.figures).flatMap(([name, { quantity }]) => {
      const figure = answer.figures[name];
      if (!figure) return [];
      const { value, low, high, beyond, words } = figure;
      const range = { ...(low === undefined ? {} : { low }), ...(high === undefined ? {} : { high }) };
      const side = beyond === undefined ? {} : { beyond };
      const told = words === undefined ? {} : { words: sentenceText(words, programs) };
      return [[name, { value, unit: quantities[quantity].base, ...range, ...side, ...told, sources: cited }]];
    }),
  );
}

/** Everything that was worked out for one bench, as data for other programs. */
export function figuresOf(situation: Situation, answers: Answers): FiguresFile {
  const answered: readonly [Calculator, Answer][] = calculators.map((one) => [one, answers[one.id]]);
  const { network, steady } = unlessRefused(
    () => designNight(situation),
    () => ({ network: { nodes: [], boundaries: [], links: [], heat: [] }, steady: {} }),
  );
  return {
    format: 1,
    figures: Object.fromEntries(answered.map(([one, its]) => [one.id, figuresOfOne(one, its)])),
    network: {
      nodes: network.nodes.map(({ id, capacity }) => ({ id, capacity })),
      boundaries: network.boundaries.map(({ id, temperature }) => ({ id, temperature })),
      links: network.links.map(({ from, to, conductance }) => ({ from, to, conductance })),
      heat: network.heat.map(({ node, power }) => ({ node, power })),
      steady,
    },
    night: unlessRefused(
      () => nightForPrograms(situation),
      () => ({ time: [], outside: [], power: [], nodes: {} }),
    ),
    warnings: answered.flatMap(([, { warnings }]) =>
      warnings.map(({ code, text }) => ({
        code,
        text: sentenceText(text, programs),
      })),
    ),
  };
}
