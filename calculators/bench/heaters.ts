import type { Situation } from '../calculator.ts';
import { ratedPower, sheathInFreeAir, sheathTemperature } from '../electric/cable.ts';
import { slabResistance } from '../laws/conduction.ts';
import { benchTops } from '../tables/benches.ts';
import { assemble, potBase, rootLayers, type Body, type HeatEntry } from './assemble.ts';
import { enthalpyAt } from './enthalpy.ts';
import { pipeOf, pottedArea } from './geometry.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { around, designOutside } from './place.ts';
import { expectedParameters, type Parameters } from './priors.ts';
import { settle } from './settle.ts';
import { warmestUnder } from './steady.ts';

/** Ways of bringing heat to a bench. They differ in where it enters and in what they hold. */
export const waysOfHeating = ['loop', 'cable', 'mat', 'lamps', 'tank'] as const;
export type WayOfHeating = (typeof waysOfHeating)[number];

/** Film on the underside of a bench top that is warmer than the air below: calm air and radiation [W/(m²·K)] (assumption). */
const undersideFilm = 6;

/** Where the heat of a lamp goes [1]: into the tops of the pots and the air at the plants; the rest past the bench (assumption). */
const ofLamp = { tops: 0.4, plants: 0.3 } as const;

/** Roots this near to the limit are held there [K]. */
const atLimit = 0.01;

/** Share of the heat of a mat that goes up into the pots [1]; the rest goes down through the bench top. */
export function matShare({ bench }: Situation, { mediumConductivity }: Parameters): number {
  const { openShare, resistance } = benchTops[bench.frame.top];
  const up = potBase + slabResistance(bench.pots.height / rootLayers / 2, mediumConductivity);
  const down = resistance * (1 - openShare) + 1 / undersideFilm;
  return down / (up + down);
}

function entries(way: WayOfHeating, body: Body, share: number): readonly HeatEntry[] | undefined {
  const [bottom, top] = [body.roots[0]!, body.roots.at(-1)!];
  switch (way) {
    case 'loop':
      return undefined;
    case 'cable':
      return [{ node: body.under, share: 1 }];
    case 'mat':
      return [
        { node: bottom, share },
        { node: body.under, share: 1 - share },
      ];
    case 'lamps':
      // Without a cover the air at the plants is the house's own, and what enters there is gone.
      return [
        { node: top, share: ofLamp.tops },
        ...(body.plants < body.nodeCount ? [{ node: body.plants, share: ofLamp.plants }] : []),
      ];
    case 'tank':
      return [{ node: body.loop, share: 1 }];
  }
}

/** The bench with its heat brought in another way. */
export function heatedBy(way: WayOfHeating, situation: Situation, parameters: Parameters): Body {
  const body = assemble(situation, parameters);
  const heat = entries(way, body, matShare(situation, parameters));
  if (heat === undefined) return body;
  return {
    ...body,
    at: (temperatures, faces) => ({ ...body.at(temperatures, faces), heat }),
  };
}

/** One way of heating on the design night, as if that night never ended. */
export interface HeatedBench {
  readonly way: WayOfHeating;
  /** Power that holds the coldest roots at the grower's limit [W]; null where no power does. */
  readonly power: number | null;
  /** Coldest layer of the roots with as much power as the bench has installed [°C]. */
  readonly coldest: number;
  /** From the coldest to the warmest layer then [K]. */
  readonly uneven: number;
  /** Heat that its water holds then, down to freezing [J]. */
  readonly stored: number;
  /** Hottest face of the heater then [°C]; null where it does not follow from the bench. */
  readonly surface: number | null;
}

/** Temperature of the hottest face: the cable's sheath, or the mat under the pots. */
function surfaceOf(
  way: WayOfHeating,
  situation: Situation,
  parameters: Parameters,
  body: Body,
  t: Float64Array,
  power: number,
): number | null {
  const { bench } = situation;
  const { cable } = bench;
  switch (way) {
    case 'loop':
      return sheathTemperature(cable, {
        pipe: pipeOf(bench),
        cableDiameter: cable.diameter,
        contact: parameters.contact,
        spreading: parameters.spreading,
        insideFilm: parameters.insideFilm,
        fluid: t[body.loop]!,
        air: t[body.under]!,
      }).sheath;
    case 'cable':
      return sheathInFreeAir(cable, { cableDiameter: cable.diameter, air: t[body.under]! });
    case 'mat': {
      const up = potBase + slabResistance(bench.pots.height / rootLayers / 2, parameters.mediumConductivity);
      return t[body.roots[0]!]! + ((power * matShare(situation, parameters)) / pottedArea(bench)) * up;
    }
    case 'lamps':
    case 'tank':
      return null;
  }
}

/** The bench with its coldest roots held at the limit by heat that enters in this way, as far as any power does it. */
function heldBy(way: WayOfHeating, situation: Situation, parameters: Parameters) {
  const body = heatedBy(way, situation, parameters);
  const surroundings = around(situation, designOutside(situation), parameters);
  const held = settle(body, surroundings, {
    hold: body.roots,
    at: situation.bench.plants.lowestRootTemperature,
    by: 'as-it-enters',
    warmest: warmestUnder,
  });
  return { body, surroundings, held };
}

/** The power that it takes [W]; where no power does it, the most that is thought about. */
export const powerBy = (way: WayOfHeating, situation: Situation, parameters: Parameters): number =>
  heldBy(way, situation, parameters).held.power;

export function heatedBench(
  way: WayOfHeating,
  situation: Situation,
  parameters: Parameters = expectedParameters(situation),
): HeatedBench {
  const limit = situation.bench.plants.lowestRootTemperature;
  const { body, surroundings, held } = heldBy(way, situation, parameters);
  const coldestOf = (temperatures: Float64Array): number =>
    Math.min(...body.roots.map((node) => temperatures[node]!));
  // As much power as the bench has, but no more than brings what is heated to where no heater belongs.
  const most = settle(body, surroundings, {
    hold: body.roots,
    at: Infinity,
    by: 'as-it-enters',
    warmest: warmestUnder,
  });
  const installed = ratedPower(situation.bench.cable);
  const { temperatures: t, power } =
    installed < most.power ? settle(body, surroundings, { power: installed }) : most;
  const curve = body.curves[body.loop]!;
  const freezing = Math.min(mediumFreezes.from, t[body.loop]!);
  return {
    way,
    power: coldestOf(held.temperatures) < limit - atLimit ? null : held.power,
    coldest: coldestOf(t),
    uneven: Math.max(...body.roots.map((node) => t[node]!)) - coldestOf(t),
    stored:
      way === 'loop' || way === 'tank' ? enthalpyAt(curve, t[body.loop]!) - enthalpyAt(curve, freezing) : 0,
    surface: surfaceOf(way, situation, parameters, body, t, power),
  };
}
