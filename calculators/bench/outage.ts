import type { Situation } from '../calculator.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { coldestMonth } from '../weather/cold-snap.ts';
import type { Body } from './assemble.ts';
import { sensible } from './enthalpy.ts';
import { iceShare, loopFreezes, rootsThawed } from './heat-held.ts';
import { around, staying } from './place.ts';
import type { Parameters } from './priors.ts';
import { rangedAll, weightyInputs, type Ranged } from './range.ts';
import { sensorNode } from './sensor.ts';
import { simulate, type Course } from './simulate.ts';
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
    start: temperatures,
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

/**
 * Ranges of the times to two limits [s]. A limit that is not reached at one end of an input's range is set at the horizon.
 * The inputs that the times rest on are told by the bench at rest without heat.
 */
export function holdOverRange(
  situation: Situation,
  outside: number,
  inputs = weightyInputs(situation, (parameters) => {
    const { coldestRoots: roots, temperatures, body } = restOn(situation, 'no-heat', parameters, outside);
    const start = restOn(situation, 'thermostat', parameters, ordinaryCold(situation));
    return { roots, loop: temperatures[body.loop]!, start: start.coldestRoots };
  }),
): Readonly<Record<(typeof rangedLimits)[number], Ranged>> {
  const results = (parameters: Parameters): Record<(typeof rangedLimits)[number], number> => {
    const found = holdOver({ situation, parameters, outside, limits: rangedLimits });
    return { roots: found.roots ?? outageHorizon, loopFreezing: found.loopFreezing ?? outageHorizon };
  };
  return rangedAll(situation, results, inputs);
}

/** Hours of hold-over; see `outageCourse`. */
export function holdOver(outage: Outage): HoldOver {
  const { situation, parameters, outside, limits = outageLimits } = outage;
  // What the bench comes to in the end tells which limits it can reach at all; nobody need wait for the others.
  const rest = restOn(situation, 'no-heat', parameters, outside);
  const reached = limits.filter((limit) => {
    const { nodes, level } = watched(situation, rest.body, limit);
    return nodes.some((node) => rest.temperatures[node]! < level);
  });
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
