import known from 'guide:known';
import type { Bench, FieldPath } from '../calculators/bench/fields.ts';
import { calculators, type CalculatorId } from '../calculators/index.ts';
import type { Calculator, Figure, FigureDeclaration, Situation, Warning } from '../calculators/calculator.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { say } from '../calculators/say.ts';
import { mannerOf } from './languages.ts';
import type { Region } from '../calculators/region.ts';
import { keptAnswers } from './build/kept.ts';

/**
 * What the pages are built with: the region of this build, its example bench, and the answers for it. Pages are
 * right before any script arrives because everything on them is worked out here first.
 */

/** A bench file as it was read at build. */
export interface ExampleBench {
  /** File name without its ending. */
  readonly id: string;
  readonly bench: Bench;
  /** Fields that the file leaves out. */
  readonly assumed: readonly FieldPath[];
}

/** Every region that the guide knows, by id. */
export const regions: Readonly<Record<string, Region>> = byId(known.regions);

/** Every example bench that the guide knows, by id. */
export const benches: Readonly<Record<string, ExampleBench>> = byId(known.benches);

function byId<T extends { readonly id: string }>(things: readonly T[]): Readonly<Record<string, T>> {
  return Object.fromEntries(things.map((thing) => [thing.id, thing]));
}

/** The one thing asked for, or an error that says what there is. */
function pick<T>(what: string, name: string, things: Readonly<Record<string, T>>): T {
  const found = Object.hasOwn(things, name) ? things[name] : undefined;
  if (found === undefined)
    throw new Error(`No ${what} is called "${name}". There are: ${Object.keys(things).join(', ')}.`);
  return found;
}

export const region: Region = pick('region', import.meta.env.REGION, regions);

export const example: ExampleBench = import.meta.env.EXAMPLE;

export const manner: Manner = {
  system: region.units,
  ...mannerOf(region.languages[0] ?? 'en'),
  currency: region.tariff.currency,
};

/** A message in the language of the pages, its places filled. */
export const inWords = (message: string, parts: Readonly<Record<string, string>> = {}): string =>
  say(manner, message, parts);

/** A bench where it stands. */
export function situationOf(bench: Bench): Situation {
  const where = pick('region', bench.place.region, regions);
  return { bench, region: where, station: pick('station', bench.place.station, byId(where.stations)) };
}

export const situation: Situation = situationOf(example.bench);

export const answers = keptAnswers(situation);

export const calculatorOf = (id: string): Calculator =>
  pick<Calculator>('calculator', id, byId<Calculator>(calculators));

interface AnyAnswer {
  readonly figures: Readonly<Record<string, Figure | null>>;
  readonly warnings: readonly Warning[];
}

export const answerOf = (id: string): AnyAnswer => pick<AnyAnswer>('calculator', id, answers);

/** A figure by its full name, "winding.pitch": its declaration and its value for the example. */
export function figureOf(name: string): {
  declaration: FigureDeclaration;
  figure: Figure | null;
  calculator: string;
} {
  const [id = '', key = ''] = name.split('.');
  const declaration = pick<FigureDeclaration>(`figure of ${id}`, key, calculatorOf(id).figures);
  return { declaration, figure: answerOf(id).figures[key] ?? null, calculator: id };
}

export type { CalculatorId };
