import type { Situation } from '../calculator.ts';
import { assemble, type Body, type BodyLink, type HeatPath } from './assemble.ts';
import { capacityAt } from './enthalpy.ts';
import type { Network } from './network.ts';
import { around, designOutside } from './place.ts';
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
 * Warmest air under the bench with which roots are still held from below [°C]. The base of the pots comes near to it:
 * from about here up growth of container roots suffers (reviews of root-zone temperatures put it at 30 °C, from memory),
 * plants wake in midwinter, and what is called for is a cover.
 */
export const warmestAir = 30;

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
        warmest: warmestAir,
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
  const settled = settle(
    body,
    around(situation, outside, parameters),
    driveFor(asked, situation, body, parameters),
    near,
  );
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
 * Heat that leaves the bench for house, roof and ground along each path [W], negative where it comes in. Together they
 * are the power of the cable: what goes in comes out.
 */
export function heatLost({
  body,
  links,
  draws,
  temperatures,
}: Rest): Readonly<Partial<Record<HeatPath, number>>> {
  const lost: Partial<Record<HeatPath, number>> = {};
  const flow = ({ from, to, conductance }: BodyLink): number =>
    conductance * ((temperatures[from] ?? 0) - (temperatures[to] ?? 0));
  for (const link of links) {
    const outward = link.to >= body.nodeCount;
    const inward = link.from >= body.nodeCount;
    if (!outward && !inward) continue;
    lost[link.path] = (lost[link.path] ?? 0) + (outward ? flow(link) : -flow(link));
  }
  // What moving air has left over in the end, after all that it gave on its way.
  for (const draw of draws) lost[draw.path] = (lost[draw.path] ?? 0) - flow(draw);
  return lost;
}

/**
 * Moving air at these temperatures as links to the house, which lose what the air takes out of the bench, and as heat
 * that goes from one node to another [W].
 */
function carriedByAir(
  body: Body,
  draws: readonly BodyLink[],
  temperatures: Float64Array,
): { readonly links: readonly BodyLink[]; readonly heat: readonly { node: number; power: number }[] } {
  const heat = new Map<number, number>();
  let given = 0;
  const links: BodyLink[] = [];
  for (const draw of draws) {
    if (draw.from === body.house) {
      links.push(draw);
      continue;
    }
    const power = draw.conductance * (temperatures[draw.from]! - temperatures[draw.to]!);
    heat.set(draw.to, (heat.get(draw.to) ?? 0) + power);
    given += power;
  }
  const inlet = links.reduce<BodyLink | undefined>(
    (widest, link) => (widest && widest.conductance >= link.conductance ? widest : link),
    undefined,
  );
  if (inlet) {
    // What reaches other nodes has not left: the link loses as much less, and its node hands on as much more.
    const left = inlet.conductance - given / (temperatures[inlet.to]! - temperatures[body.house]!);
    // Where hardly anything leaves this way, the heat that nodes gain stays as it is and does not add up to nothing.
    if (left > inlet.conductance / 10) {
      links[links.indexOf(inlet)] = { ...inlet, conductance: left };
      heat.set(inlet.to, (heat.get(inlet.to) ?? 0) - given);
    }
  }
  return { links, heat: [...heat].map(([node, power]) => ({ node, power })) };
}

/**
 * The design night at rest with the thermostat as set, as a linear network that anyone can solve again: its
 * conductances are those at these temperatures, so that the solution is `steady`.
 *
 * Moving air carries heat one way, which links cannot say. What it takes from the air under the bench and gives to
 * pots and plants on its way out is in `heat`, beside the cable's, and adds up to nothing where much air leaves; what it
 * carries out of the bench in the end is a link.
 */
export function designNight(situation: Situation): {
  readonly network: Network;
  readonly steady: Readonly<Record<string, number>>;
} {
  const { body, temperatures, links, draws, power, heat } = designRest(situation, 'thermostat');
  const id = (node: number): string => body.ids[node] ?? '';
  const t = (node: number): number => temperatures[node] ?? NaN;
  const carried = carriedByAir(body, draws, temperatures);
  return {
    network: {
      nodes: body.curves.map((curve, node) => ({
        id: id(node),
        // Thawed, as the guide and any linear program take it; what freezing adds is not in a linear network.
        capacity: capacityAt(curve, thawed),
      })),
      boundaries: [body.house, body.ground, body.roof].map((node) => ({
        id: id(node),
        temperature: t(node),
      })),
      links: [...links, ...carried.links].map(({ from, to, conductance, path }) => ({
        from: id(from),
        to: id(to),
        conductance,
        path,
      })),
      heat: [
        ...heat.map(({ node, share }) => ({ node: id(node), power: power * share })),
        ...carried.heat.map(({ node, power: watts }) => ({ node: id(node), power: watts })),
      ],
    },
    steady: Object.fromEntries(body.ids.map((name, node) => [name, t(node)])),
  };
}
