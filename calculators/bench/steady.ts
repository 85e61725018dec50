import type { Situation } from '../calculator.ts';
import { assemble, type Body, type HeatPath } from './assemble.ts';
import { capacityAt } from './enthalpy.ts';
import type { Network } from './network.ts';
import { designOutside, houseAir } from './place.ts';
import { expectedParameters, type Parameters } from './priors.ts';
import { sensorNode } from './sensor.ts';
import { settle, type Drive, type Near, type Settled } from './settle.ts';

/** A temperature at which nothing of a bench is frozen [°C]. */
const thawed = 5;

/**
 * Warmest air under the bench that is still thought about [°C]: film, plastic pots and drain pipe soften from here on
 * (PVC 60 °C in service, supplier data).
 */
export const warmestUnder = 60;

/**
 * Steady states of a bench on the night that it is built for, as if that night never ended. A real night ends: what
 * the wet pots hold back makes it milder. So these are the safe side of a short frost and the truth of a long one.
 */
export interface Rest extends Settled {
  readonly body: Body;
  /** Coldest layer of the root zone [°C]. */
  readonly coldestRoots: number;
  readonly outside: number;
}

/**
 * What the question asks of the cable: nothing; the thermostat at its set point as far as the cable goes; or whatever
 * keeps the coldest roots at the lowest temperature that the grower accepts.
 */
export type Asked = 'no-heat' | 'thermostat' | 'hold-roots';

function driveFor(asked: Asked, situation: Situation, body: Body, parameters: Parameters): Drive {
  const { control, plants } = situation.bench;
  switch (asked) {
    case 'no-heat':
      return { power: 0 };
    case 'thermostat': {
      return {
        hold: [sensorNode(body, control.sensor)],
        at: control.setPoint + parameters.sensorError,
        by: 'cable',
      };
    }
    case 'hold-roots':
      return {
        hold: body.roots,
        at: plants.lowestRootTemperature,
        by: 'any-means',
        warmest: warmestUnder,
      };
  }
}

/**
 * The bench at rest on its design night; `outside` may be given to ask about another night [°C], and `near` a bench that
 * hardly differs, from which to start.
 */
export function restOn(
  situation: Situation,
  asked: Asked,
  parameters: Parameters = expectedParameters(situation),
  outside: number = designOutside(situation),
  near?: Near,
): Rest {
  const body = assemble(situation, parameters);
  const boundary = {
    house: houseAir(situation, outside, parameters.houseOffset),
    ground: parameters.ground,
  };
  const settled = settle(body, boundary, driveFor(asked, situation, body, parameters), near);
  const coldestRoots = Math.min(...body.roots.map((node) => settled.temperatures[node] ?? NaN));
  return { ...settled, body, coldestRoots, outside };
}

/** Several calculators ask the same of one situation; its answer is kept for as long as the situation is. */
const kept = new WeakMap<Situation, Map<Asked, Rest>>();

/** `restOn` with the expected parameters on the design night. */
export function designRest(situation: Situation, asked: Asked): Rest {
  const known = kept.get(situation) ?? new Map<Asked, Rest>();
  kept.set(situation, known);
  const rest = known.get(asked) ?? restOn(situation, asked);
  known.set(asked, rest);
  return rest;
}

/**
 * Heat that leaves the bench for the house and the ground along each path [W], negative where it comes in. Together
 * they are the power of the cable: what goes in comes out.
 */
export function heatLost({ body, links, temperatures }: Rest): Readonly<Partial<Record<HeatPath, number>>> {
  const lost: Partial<Record<HeatPath, number>> = {};
  for (const { from, to, conductance, path } of links) {
    const outward = to === body.house || to === body.ground;
    const inward = from === body.house || from === body.ground;
    if (!outward && !inward) continue;
    const flow = conductance * ((temperatures[from] ?? 0) - (temperatures[to] ?? 0));
    lost[path] = (lost[path] ?? 0) + (outward ? flow : -flow);
  }
  return lost;
}

/**
 * The design night at rest with the thermostat as set, as a linear network that anyone can solve again: its
 * conductances are those at these temperatures, so that the solution is `steady`.
 */
export function designNight(situation: Situation): {
  readonly network: Network;
  readonly steady: Readonly<Record<string, number>>;
} {
  const { body, temperatures, links, power, heat } = designRest(situation, 'thermostat');
  const id = (node: number): string => body.ids[node] ?? '';
  const t = (node: number): number => temperatures[node] ?? NaN;
  return {
    network: {
      nodes: body.curves.map((curve, node) => ({
        id: id(node),
        // Thawed, as the guide and any linear program take it; what freezing adds is not in a linear network.
        capacity: capacityAt(curve, thawed),
      })),
      boundaries: [body.house, body.ground].map((node) => ({ id: id(node), temperature: t(node) })),
      links: links.map(({ from, to, conductance, path }) => ({
        from: id(from),
        to: id(to),
        conductance,
        path,
      })),
      heat: heat.map(({ node, share }) => ({ node: id(node), power: power * share })),
    },
    steady: Object.fromEntries(body.ids.map((name, node) => [name, t(node)])),
  };
}
