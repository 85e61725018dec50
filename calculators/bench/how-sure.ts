import { beforeReadings, parametersAt, type Belief } from './belief.ts';
import { calibrate } from './calibrate.ts';
import { judge } from './diagnose.ts';
import type { Cell, Figure, Situation, Table } from '../calculator.ts';
import { sentence, amount } from '../calculator.ts';
import type { QuantityName } from '../quantities/quantity.ts';
import { ensemble, nightHeadlines, type EnsembleFigure, type Progress } from './ensemble.ts';
import { hardNight } from './hard-night.ts';
import { priorsOf, type Parameters, type PriorId } from './priors.ts';

/**
 * How sure the headline figures of a cold night are, told in two ways: with every uncertain input moved by itself, as
 * the calculators do (`rangedAll`), and with all of them moved at once, over many benches that this one may be.
 */

/** The figures that are told so. */
export const sureFigures = {
  lowestRoots: { label: 'Coldest roots in the frost', quantity: 'temperature' },
  energy: { label: 'Energy through the frost', quantity: 'energy' },
  required: { label: 'Power needed if the cold stays', quantity: 'power' },
} as const satisfies Record<string, { readonly label: string; readonly quantity: QuantityName }>;

export type SureName = keyof typeof sureFigures;

export const sureNames = Object.keys(sureFigures) as SureName[];

/** How many benches are tried. */
export const benchesTried = 200;

/** These figures as the calculators give them, with their ranges; base units. */
export type Headlines = Readonly<Record<SureName, Figure>>;

interface Ends {
  readonly low: number;
  readonly high: number;
}

/** A figure with the ranges of both ways, in its base unit. */
export interface SureFigure {
  readonly name: SureName;
  readonly value: number;
  readonly allAtOnce: Ends;
  readonly inputByInput: Ends;
}

export interface HowSure {
  readonly members: number;
  readonly figures: readonly SureFigure[];
  /** In words and numbers, for a page: the ranges, and what to measure first. */
  readonly tables: Readonly<Record<'ranges' | 'measure', Table>>;
}

/** Picks the headlines out of answers; nothing where one of the questions does not arise. */
export function headlinesOf(
  night: Readonly<Record<string, Figure | null>>,
  watts: Readonly<Record<string, Figure | null>>,
): Headlines | null {
  const { lowestRootTemperature: lowestRoots, energy } = night;
  const { required } = watts;
  return lowestRoots && energy && required ? { lowestRoots, energy, required } : null;
}

/** What is believed of the bench: after its readings, where there are enough of them and they do not contradict it. */
export function beliefOf(situation: Situation): Belief {
  const read = calibrate(situation);
  const fitted = read.kind === 'fitted' ? judge(situation, read.calibration).calibration : null;
  return fitted?.belief ?? beforeReadings(situation);
}

/** What one bench of many comes to. */
export function headlinesTried(
  situation: Situation,
): (parameters: Parameters) => Readonly<Record<SureName, number>> {
  const night = nightHeadlines(situation);
  const hard = hardNight(situation);
  return (parameters) => ({ ...night(parameters), required: hard(parameters).required });
}

/** Share of a variance from which on an input is named [1]; by chance alone one of 200 members shows half a hundredth. */
const worthNaming = 0.05;

const rangeCell = ({ low, high }: Ends, quantity: QuantityName): Cell =>
  sentence`${amount(low, quantity)} to ${amount(high, quantity)}`;

function measureRows(
  situation: Situation,
  figures: Readonly<Record<SureName, EnsembleFigure>>,
): Record<string, Cell>[] {
  const priors = priorsOf(situation);
  const shareOf = (name: SureName, id: PriorId): number =>
    figures[name].blame.find((one) => one.id === id)?.share ?? 0;
  return (Object.keys(priors) as PriorId[])
    .map((id) => ({ id, most: Math.max(...sureNames.map((name) => shareOf(name, id))) }))
    .filter(({ most }) => most >= worthNaming)
    .sort((one, other) => other.most - one.most)
    .map(({ id }) => ({
      input: [priors[id].label],
      ...Object.fromEntries(sureNames.map((name) => [name, shareOf(name, id)])),
      how: [priors[id].measure],
    }));
}

/**
 * Tries the benches, and hands out its progress after each, so that whoever asks may stop. The ranges of the trial lie
 * about the figure as the calculator gives it, whose steps through the night are finer. Where the bench was read, the trial
 * is of benches that read so, and the figure is that of the middle one. Deterministic.
 *
 * @throws {RangeError} where a bench tried lies outside what a law is published for
 */
export function* howSure(situation: Situation, headlines: Headlines): Generator<Progress, HowSure> {
  const results = headlinesTried(situation);
  const belief = beliefOf(situation);
  const { figures: tried } = yield* ensemble(situation, results, { members: benchesTried, belief });
  const middle = results(parametersAt(priorsOf(situation), belief.ids, belief.middle));
  const figures = sureNames.map((name): SureFigure => {
    const { value: unread, low = unread, high = unread } = headlines[name];
    const finer = unread - tried[name].expected;
    const least = name === 'lowestRoots' ? -Infinity : 0;
    return {
      name,
      value: middle[name] + finer,
      allAtOnce: { low: Math.max(least, tried[name].low + finer), high: tried[name].high + finer },
      inputByInput: { low, high },
    };
  });
  const rows = figures.map(({ name, value, allAtOnce, inputByInput }) => {
    const { label, quantity } = sureFigures[name];
    return {
      figure: [label],
      expected: sentence`${amount(value, quantity)}`,
      allAtOnce: rangeCell(allAtOnce, quantity),
      inputByInput: rangeCell(inputByInput, quantity),
    };
  });
  return {
    members: benchesTried,
    figures,
    tables: { ranges: { rows }, measure: { rows: measureRows(situation, tried) } },
  };
}
