import type { Situation } from '../calculator.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { coldestMonth } from '../weather/cold-snap.ts';
import type { Body } from './assemble.ts';
import { sensible } from './enthalpy.ts';
import { iceShare, loopFreezes, rootsThawed } from './heat-held.ts';
import { around, staying } from './place.ts';
import { expectedParameters, type Parameters, type PriorId } from './priors.ts';
import { rangedAll, weightyInputs, type Ranged, type Span } from './range.ts';
import { readingErrors } from './reading-errors.ts';
import { sensorNode } from './sensor.ts';
import { simulate, type Course } from './simulate.ts';
import { ninetieth } from './spread.ts';
import { restOn } from './steady.ts';
import { coldestRoots, firstAt } from './through.ts';

const hour = 3600;

/** A power cut is followed for as long [s]; beyond ten days nobody waits for figures. */
export const outageHorizon = 240 * hour;

/** Steps of a power cut [s]. Halving them moves no time by more than a hundredth of itself (measured). */
export const outageStep = 900;

/**
 * Share of ice at which a slush is stiff and breaks pipes: what tables of freeze and burst protection have in common,
 * whose mix for the one is half as strong again as that for the other (from memory).
 */
const stiffAt = 1 / 3;

/** What may be reached in a power cut. */
export const outageLimits = ['roots', 'rootsFrozen', 'loopFreezing', 'loopSolid'] as const;
export type OutageLimit = (typeof outageLimits)[number];

/** Time from the failure to each limit [s]; null where it is not reached within the horizon. */
export type HoldOver = Readonly<Record<OutageLimit, number | null>>;

/** Outside temperature of an ordinary day and night in the coldest month [°C]. */
export function ordinaryCold({ station }: Situation): number {
  const { meanLow, meanHigh } = coldestMonth(station);
  return (meanLow + meanHigh) / 2;
}

/** Temperature of the loop at which its slush is stiff [°C], by halving; never less than 60 K below freezing. */
function loopStiff(situation: Situation): number {
  let [solid, liquid] = [loopFreezes(situation.bench) - 60, loopFreezes(situation.bench)];
  for (let round = 0; round < 40; round++) {
    const middle = (solid + liquid) / 2;
    if (iceShare(situation.bench, middle) >= stiffAt) solid = middle;
    else liquid = middle;
  }
  return solid;
}

export interface Outage {
  readonly situation: Situation;
  readonly parameters: Parameters;
  /** Outside temperature from the failure on [°C]. */
  readonly outside: number;
  /** Whether the water in the pots gives up heat as it freezes; without it, what that is worth can be told. */
  readonly latent?: boolean;
  /** By how much the bench is warmer all over when the power fails than at rest in ordinary weather [K]. */
  readonly warmer?: number;
  /** Followed for as long [s]. */
  readonly until?: number;
  /** Which limits are asked for; the run ends when they are reached. */
  readonly limits?: readonly OutageLimit[];
}

/** The pots as if their water never froze. */
const withoutLatent = (situation: Situation, body: Body): Body => ({
  ...body,
  curves: body.curves.map((curve, node) =>
    body.roots.includes(node) ? sensible(rootsThawed(situation.bench, body.roots.length)) : curve,
  ),
});

/** What is looked at for a limit: the coldest of these nodes, against a temperature. */
function watched(
  situation: Situation,
  body: Body,
  limit: OutageLimit,
): { nodes: readonly number[]; level: number } {
  switch (limit) {
    case 'roots':
      return { nodes: body.roots, level: situation.bench.plants.lowestRootTemperature };
    case 'rootsFrozen':
      return { nodes: body.roots, level: mediumFreezes.to };
    case 'loopFreezing':
      return { nodes: [body.loop], level: loopFreezes(situation.bench) };
    case 'loopSolid':
      return { nodes: [body.loop], level: loopStiff(situation) };
  }
}

/**
 * A bench without power at one outside temperature, from the state in which its heat holds it in ordinary weather of
 * the coldest month. No sun.
 */
export function outageCourse({
  situation,
  parameters,
  outside,
  latent = true,
  warmer = 0,
  until = outageHorizon,
  limits,
}: Outage): {
  readonly body: Body;
  readonly course: Course;
} {
  const { body: wet, temperatures } = restOn(situation, 'thermostat', parameters, ordinaryCold(situation));
  const body = latent ? wet : withoutLatent(situation, wet);
  const waits = limits?.map((limit) => watched(situation, body, limit));
  const { setPoint, differential, sensor } = situation.bench.control;
  const course = simulate({
    body,
    start: warmer === 0 ? temperatures : temperatures.map((one) => one + warmer),
    surroundings: staying(around(situation, outside, parameters)),
    thermostat: { sensor: sensorNode(body, sensor), setPoint, differential },
    powered: () => false,
    until,
    every: outageStep,
    control: 'averaged',
    ...(waits && {
      enough: (now) => waits.every(({ nodes, level }) => nodes.some((node) => now[node]! <= level)),
    }),
  });
  return { body, course };
}

/** Limits whose times are given with a range. */
export const rangedLimits = ['roots', 'loopFreezing'] as const satisfies readonly OutageLimit[];

/** The uncertain inputs that a power cut rests on, told by the bench at rest without heat and before the cut. */
export const inputsOfOutage = (situation: Situation, outside: number): readonly PriorId[] =>
  weightyInputs(situation, (parameters) => {
    const { coldestRoots: roots, temperatures, body } = restOn(situation, 'no-heat', parameters, outside);
    const start = restOn(situation, 'thermostat', parameters, ordinaryCold(situation));
    return { roots, loop: temperatures[body.loop]!, start: start.coldestRoots };
  });

/**
 * Ranges of the times to two limits [s]. A limit that is not reached at one end of an input's range is set at the horizon.
 */
export function holdOverRange(
  situation: Situation,
  outside: number,
  inputs = inputsOfOutage(situation, outside),
): Readonly<Record<(typeof rangedLimits)[number], Ranged>> {
  const results = (parameters: Parameters): Record<(typeof rangedLimits)[number], number> => {
    const found = holdOver({ situation, parameters, outside, limits: rangedLimits });
    return { roots: found.roots ?? outageHorizon, loopFreezing: found.loopFreezing ?? outageHorizon };
  };
  return rangedAll(situation, results, inputs);
}

/** What the bench comes to in the end tells which limits it can reach at all; nobody need wait for the others. */
function withinReach<Limit extends OutageLimit>(
  { situation, parameters, outside }: Pick<Outage, 'situation' | 'parameters' | 'outside'>,
  limits: readonly Limit[],
): readonly Limit[] {
  const rest = restOn(situation, 'no-heat', parameters, outside);
  return limits.filter((limit) => {
    const { nodes, level } = watched(situation, rest.body, limit);
    return nodes.some((node) => rest.temperatures[node]! < level);
  });
}

/** Hours of hold-over; see `outageCourse`. */
export function holdOver(outage: Outage): HoldOver {
  const { situation, limits = outageLimits } = outage;
  const reached = withinReach(outage, limits);
  const found: Record<OutageLimit, number | null> = {
    roots: null,
    rootsFrozen: null,
    loopFreezing: null,
    loopSolid: null,
  };
  if (reached.length === 0) return found;
  const run = outageCourse({ ...outage, limits: reached });
  const roots = coldestRoots(run);
  for (const limit of reached) {
    const { nodes, level } = watched(situation, run.body, limit);
    const values = nodes === run.body.roots ? roots : run.course.temperatures[nodes[0]!]!;
    found[limit] = firstAt(run.course.times, values, level, 'falling');
  }
  return found;
}

/** What a grower can say in the middle of a power cut. */
export interface CutSoFar {
  /** Outside, and as it is taken to stay [°C]. */
  readonly outside: number;
  /** Since the power failed [s]; null where that is not known. */
  readonly since: number | null;
  /** Temperature read halfway down in the coldest pot [°C]; null where it was not read. */
  readonly pot: number | null;
}

/** Where in the cut a reading may have been taken: at its middle, or at an end of what it may be off. */
type When = 'expected' | 'earliest' | 'latest';

/**
 * Time left until the roots are at the limit and the loop turns to slush [s]; the horizon where that is further off.
 *
 * The bench is followed from ordinary weather. A pot that was read says how far it has come: the time at which the model's
 * pot, halfway down, is within the error of the reading. While the pots freeze that is a long time, and the hours since
 * the failure pick the moment in it. A pot that is warmer than the model's was at the failure says that the whole bench was.
 */
export function timeLeft(
  situation: Situation,
  parameters: Parameters,
  { outside, since, pot }: CutSoFar,
  when: When = 'expected',
): Readonly<Record<(typeof rangedLimits)[number], number>> {
  const off = ninetieth * readingErrors.roots;
  const found = { roots: outageHorizon, loopFreezing: outageHorizon };
  // A pot that was read at the limit needs no reckoning.
  const over = pot !== null && pot <= situation.bench.plants.lowestRootTemperature;
  const limits = withinReach({ situation, parameters, outside }, rangedLimits);
  if (limits.length === 0) return { ...found, ...(over && { roots: 0 }) };
  const follow = (warmer: number) => {
    const run = outageCourse({ situation, parameters, outside, warmer, limits });
    const middle = run.course.temperatures[run.body.roots[Math.floor(run.body.roots.length / 2)]!]!;
    return { ...run, middle };
  };
  let run = follow(0);
  const warmer = pot === null ? 0 : pot - run.middle[0]!;
  const fresh = warmer > off;
  if (fresh) run = follow(warmer);
  const { body, course, middle } = run;
  const { times } = course;
  const firstBelow = (level: number): number =>
    firstAt(times, middle, level, 'falling') ?? times[times.length - 1]!;
  const elapsed = (): number => {
    if (pot === null) return since ?? 0;
    if (fresh) return 0;
    const [from, to] = [firstBelow(pot + off), firstBelow(pot - off)];
    if (when === 'earliest') return from;
    if (when === 'latest') return to;
    return since === null ? (from + to) / 2 : Math.min(to, Math.max(from, since));
  };
  const roots = coldestRoots(run);
  const gone = elapsed();
  for (const limit of limits) {
    const { nodes, level } = watched(situation, body, limit);
    const values = limit === 'roots' ? roots : course.temperatures[nodes[0]!]!;
    const reached = firstAt(times, values, level, 'falling');
    if (reached !== null) found[limit] = Math.max(0, reached - gone);
  }
  return { ...found, ...(over && { roots: 0 }) };
}

/**
 * Ranges of `timeLeft`, by the inputs that a bench without heat hangs on and, as one more that is independent of them, by
 * what the reading of the pot may be off.
 */
export function timeLeftRange(
  situation: Situation,
  so: CutSoFar,
  inputs: readonly PriorId[],
): Readonly<Record<(typeof rangedLimits)[number], Span>> {
  const byInputs = rangedAll(situation, (parameters) => timeLeft(situation, parameters, so), inputs);
  if (so.pot === null) return byInputs;
  const expected = expectedParameters(situation);
  const [early, late] = (['earliest', 'latest'] as const).map((when) =>
    timeLeft(situation, expected, so, when),
  );
  const one = (limit: (typeof rangedLimits)[number]): Span => {
    const { value, low, high } = byInputs[limit];
    return {
      value,
      low: value - Math.hypot(value - low, Math.max(0, value - late![limit])),
      high: value + Math.hypot(high - value, Math.max(0, early![limit] - value)),
    };
  };
  return { roots: one('roots'), loopFreezing: one('loopFreezing') };
}
