import type { Situation } from '../calculator.ts';
import { foilEmissivity, sheathEmissivity, sheathTemperature } from '../electric/cable.ts';
import { slabResistance, tubeResistance } from '../laws/conduction.ts';
import { gravity } from '../laws/gravity.ts';
import { rimConductance } from '../laws/ground.ts';
import { buoyantFlow, evaporation, flowConductance, openingsInSeries } from '../laws/leakage.ts';
import { cylinderFilm, horizontalFilm, verticalFilm } from '../laws/natural-convection.ts';
import { exchangeEmissivity, radiantFilm } from '../laws/radiation.ts';
import { airConductivity, airHeatCapacity } from '../properties/air.ts';
import { frozenConductivityRatio, mediumFreezes } from '../properties/medium.ts';
import { kelvin } from '../properties/temperature.ts';
import { benchTops, floors } from '../tables/benches.ts';
import { sheets, type Sheet } from '../tables/films.ts';
import { media } from '../tables/media.ts';
import {
  coverArea,
  loopLength,
  mediumVolume,
  perimeter,
  pipeInside,
  pipeOf,
  potBaseArea,
  pottedArea,
  potSideArea,
  potTopArea,
  sideArea,
  skirtClosed,
  topArea,
} from './geometry.ts';
import type { EnthalpyCurve } from './enthalpy.ts';
import { canopyHolds, loopHolds, rootsHold, soilHolds, underHolds } from './heat-held.ts';
import { powerArriving } from './power-arriving.ts';
import type { Parameters } from './priors.ts';
import { faceCount, stackTransmittance, stackTransmittances, type SheetStack } from './sheet-stack.ts';

/**
 * The one place where a bench becomes a thermal network. Steady state, range and every later question put to the
 * bench use what is assembled here. SI; temperatures in °C.
 *
 * Cable sheath, pipe surface and the faces of skirt and cover hold no heat and are eliminated into the links. The
 * links' conductances depend on the temperatures at both ends and are asked for anew as these change.
 */

/** Layers of medium from the base of the pots up. */
export const rootLayers = 3;

/** Soil layers below the floor, from the top down [m]; together three quarters of a metre. */
const soilLayers = [0.05, 0.1, 0.2, 0.4] as const;

/** Emissivity of pots, wood, leaves and moist surfaces [1] (emissivity tables: 0.90 to 0.95). */
const surfaceEmissivity = 0.92;

/** Emissivity of rigid PVC [1]: 0.91 to 0.93, from memory. */
const pipeEmissivity = 0.92;

/**
 * Base of a pot: its wall, and the air that stays under its foot, per area [m²·K/W] (assumption: 3 mm of still air
 * in parallel with radiation).
 */
export const potBase = 0.08;

/**
 * Width of the strip along the foot of the skirt over which the floor changes from the temperature under the bench
 * to that of the house [m] (assumption: as wide as a hand).
 */
const edgeStrip = 0.1;

/**
 * Counterflow through a level opening with the warm air below: Q = 0.055 √(g D⁵ ΔT/T) per round opening of diameter
 * D (M. Epstein, J. Heat Transfer 110, 1988, for short openings, from memory), which is 0.070 √(g D ΔT/T) per area.
 */
const counterflow = 0.055 / (Math.PI / 4);

/**
 * Difference of temperature to which the stir of the air under a bench is equal, where there is none [K] (assumption):
 * air is never quite at rest.
 */
const unrest = 0.3;

/** The size of a difference, rounded off towards a least one as the two sides of a right angle make the third. */
const atLeast = (least: number, difference: number): number =>
  Math.sqrt(least * least + difference * difference);

/** Width of the openings between slats or pots [m] (assumption). */
const openingWidth = 0.03;

/** Width of the foil tape that holds a cable on a pipe [m]: 50 mm (common practice). */
const tapeWidth = 0.05;

/** Extruded polystyrene [W/(m·K)]: 0.026 fresh, 0.034 aged (ASHRAE-based insulation table, from memory for aged). */
const foamConductivity = 0.034;

/** Share of the water of a medium that is ice at a temperature [1]: freezing is spread over its range. */
const frozenShare = (t: number): number =>
  Math.min(1, Math.max(0, (mediumFreezes.from - t) / (mediumFreezes.from - mediumFreezes.to)));

export interface Body {
  /** Ids of the nodes in the order of the temperatures, boundaries after them. */
  readonly ids: readonly string[];
  readonly nodeCount: number;
  /** Heat that each node holds against its temperature. */
  readonly curves: readonly EnthalpyCurve[];
  /** Nodes of the root zone from the base up. */
  readonly roots: readonly number[];
  readonly loop: number;
  readonly under: number;
  /** Air at the plants: under the cover, or the house's own. */
  readonly plants: number;
  readonly house: number;
  readonly ground: number;
  /** Inner face of the roof over the bench. */
  readonly roof: number;
  /** How many faces of cable, pipe, pots, floor, skirt and cover have a temperature of their own, without capacity. */
  readonly faceCount: number;
  /**
   * What the bench is at these temperatures, which are in the order of `ids`. The temperatures of the faces are
   * improved in place, one round a call; NaN where there is none yet.
   */
  readonly at: (temperatures: ArrayLike<number>, faces: Float64Array) => BodyNow;
}

/** A bench at given temperatures. */
export interface BodyNow {
  readonly links: readonly BodyLink[];
  /**
   * Air that moves on: `to` gains conductance × (temperature of `from` − its own), and `from` gives nothing for it, as
   * what it loses is told by the air that comes in its place.
   */
  readonly draws: readonly BodyLink[];
  /** Where the heat that is paid for enters. */
  readonly heat: readonly HeatEntry[];
  /** What the whole cable gives when it is on [W]. */
  readonly fullPower: number;
}

/** A node at which heat enters, and its share of the whole [1]. */
export interface HeatEntry {
  readonly node: number;
  readonly share: number;
}

export interface BodyLink {
  readonly from: number;
  readonly to: number;
  readonly conductance: number;
  readonly path: HeatPath;
}

/** The ways that heat takes out of and through a bench, as a reader knows them. */
export type HeatPath =
  'cable' | 'pipe' | 'skirt' | 'leakage' | 'pots' | 'between' | 'tops' | 'sides' | 'cover' | 'floor' | 'edge';

/** What a cover is made of, from the plants outward. */
const coverSheets: Readonly<Record<'fleece' | 'film' | 'film-infrared' | 'both', readonly Sheet[]>> = {
  fleece: [sheets.fleece],
  film: [sheets['film-plain']],
  'film-infrared': [sheets['film-infrared']],
  both: [sheets.fleece, sheets['film-plain']],
};

/**
 * A face with a film of air on it and a fixed resistance behind, as one resistance per area [m²·K/W]. The
 * temperature of the face lies between the air and what is behind; it is read from `faces[slot]` as the best guess
 * (NaN: none yet) and overwritten by a better one.
 */
function faced(
  air: number,
  behind: number,
  resistance: number,
  faces: Float64Array,
  slot: number,
  film: (face: number, air: number) => number,
): number {
  const known = faces[slot] ?? NaN;
  const outer = 1 / film(Number.isNaN(known) ? (air + behind) / 2 : known, air);
  faces[slot] = air + ((behind - air) * outer) / (outer + resistance);
  return outer + resistance;
}

/**
 * The same for a face that has air on it and sees something else through that air: heat from what is behind to the
 * one and to the other, per area and degree [W/(m²·K)].
 *
 * @param film and radiant: the face's exchange with the air, and with what it sees
 */
function facedTwice(
  air: number,
  seen: number,
  behind: number,
  resistance: number,
  faces: Float64Array,
  slot: number,
  film: (face: number, air: number) => number,
  radiant: (face: number, seen: number) => number,
): { readonly toAir: number; readonly toSeen: number } {
  const known = faces[slot] ?? NaN;
  const face = Number.isNaN(known) ? (air + behind) / 2 : known;
  const byAir = film(face, air);
  const bySight = radiant(face, seen);
  const through = 1 / resistance;
  const all = byAir + bySight + through;
  faces[slot] = (byAir * air + bySight * seen + through * behind) / all;
  return { toAir: (byAir * through) / all, toSeen: (bySight * through) / all };
}

/**
 * Nusselt number of slow air in a long round passage with walls at one temperature [1] (Incropera, table 8.1, from
 * memory); between flat walls it is twice as much, in the corners between round pots less.
 */
const passageNusselt = 3.66;

export function assemble(situation: Situation, parameters: Parameters): Body {
  const { bench } = situation;
  const pipe = pipeOf(bench);
  const inside = pipeInside(pipe);
  const top = benchTops[bench.frame.top];
  const floor = floors[bench.frame.floor];
  const covered = bench.cover.kind !== 'none';
  const wet = bench.skirt.wet === 'wet';

  const rootIds = Array.from({ length: rootLayers }, (_, index) => `roots-${index + 1}`);
  const floorIds = soilLayers.map((_, index) => `floor-${index + 1}`);
  const nodeIds = ['loop', 'under', ...rootIds, ...(covered ? ['canopy'] : []), ...floorIds];
  const ids = [...nodeIds, 'house', 'ground', 'roof'];
  const at = (id: string): number => ids.indexOf(id);
  const [loop, under] = [at('loop'), at('under')];
  const [house, ground, roof] = [at('house'), at('ground'), at('roof')];
  const plants = covered ? at('canopy') : house;
  const roots = rootIds.map(at);
  const rootsDown = roots.toReversed();
  const floorNodes = floorIds.map(at);

  // Areas and lengths that no temperature changes.
  const pipeLength = loopLength(bench);
  const cableLength = bench.cable.length;
  const arriving = powerArriving(situation);
  const area = topArea(bench);
  const rim = perimeter(bench);
  const across = area / rim;
  const { height } = bench.frame;
  const potted = pottedArea(bench);
  const free = area - potted;
  const volume = mediumVolume(bench);
  const mediumArea = volume / bench.pots.height;
  const layer = bench.pots.height / rootLayers;
  const halfLayer = slabResistance(layer / 2, parameters.mediumConductivity);
  const frozenTimes = frozenConductivityRatio(media[bench.pots.medium], bench.pots.moisture);
  const exposedSide = potSideArea(bench) * parameters.sideShare;
  // From the mean of a round pot to its wall: diameter / (8 k) per area of the wall (uniform source or sink).
  const wall = bench.pots.diameter / (8 * parameters.mediumConductivity);
  const closeBy = Math.min(1, parameters.closeBy);
  // Air on its way up between the pots, past the part of their sides that faces other pots.
  const innerSide = (potSideArea(bench) - exposedSide) / rootLayers;
  const passage = (4 * free * bench.pots.height) / potSideArea(bench);
  const closed = skirtClosed(bench);
  const coverHeight = bench.cover.height;
  const coverLayers = bench.cover.kind === 'none' ? [] : coverSheets[bench.cover.kind];
  const paired = exchangeEmissivity(surfaceEmissivity, surfaceEmissivity);
  // Under a cover the tops see the cover alone; without one they see the roof, which sends nothing back.
  const seen = covered ? plants : roof;
  const topEmissivity = covered ? paired : exchangeEmissivity(surfaceEmissivity, surfaceEmissivity, 0);
  const floorPair = exchangeEmissivity(floor.emissivity, surfaceEmissivity);

  // Openings for air [m²]. What the skirt leaves open at the sides is half low, half high.
  const openSide = sideArea(bench) * (1 - closed);
  const openTop = free * top.openShare;
  const porous = coverLayers.length > 0 ? Math.min(...coverLayers.map((sheet) => sheet.porosity)) : 0;
  const coverOpen = rim * parameters.coverGap + coverArea(bench) * porous;
  // With a cover, air that rises past the pots must find its way out through the gaps of the cover as well.
  const pastPots = covered ? openingsInSeries(openTop, coverOpen / 2) : openTop;
  const low = closed * rim * parameters.bottomGap + openSide / 2;
  const high = closed * rim * parameters.topGap + openSide / 2 + pastPots;
  const leak = openingsInSeries(low, high);
  const leakPastPots = high > 0 ? pastPots / high : 0;
  const coverLeak = openingsInSeries(coverOpen / 2, coverOpen / 2);

  const skirt: SheetStack | null =
    bench.skirt.material === 'none'
      ? null
      : {
          sheets: Array.from(
            { length: bench.skirt.layers },
            () => sheets[bench.skirt.material as keyof typeof sheets],
          ),
          wet,
          longwave: parameters.longwave,
          place: 'side',
          size: height,
        };
  const coverSide: SheetStack = {
    sheets: coverLayers,
    wet,
    longwave: parameters.longwave,
    place: 'side',
    size: coverHeight,
  };
  const coverTop: SheetStack = { ...coverSide, place: 'top', size: across };
  const betweenPots: SheetStack = {
    sheets: [
      {
        label: top.label,
        resistance: top.resistance,
        longwaveDry: 0,
        longwaveWet: 0,
        emissivity: surfaceEmissivity,
        porosity: 0,
        cites: top.cites,
      },
    ],
    wet: false,
    longwave: 0,
    place: 'top',
    size: across,
  };

  const bareShare = Math.max(
    0,
    1 - (cableLength * bench.cable.diameter) / (Math.PI * pipe.outsideDiameter * pipeLength),
  );
  const pipeArea = Math.PI * pipe.outsideDiameter * pipeLength * bareShare;
  const taped = bench.cable.contact === 'taped';
  // Foil covers more of the pipe than the cable under it, and hardly radiates.
  const foiled = taped
    ? Math.min(1, (cableLength * Math.max(0, tapeWidth - bench.cable.diameter)) / Math.max(pipeArea, 1e-9))
    : 0;
  const outsideEmissivity = foiled * foilEmissivity + (1 - foiled) * pipeEmissivity;
  const onPipe = {
    pipe,
    cableDiameter: bench.cable.diameter,
    contact: parameters.contact,
    spreading: parameters.spreading,
    insideFilm: parameters.insideFilm,
    emissivity: taped ? foilEmissivity : sheathEmissivity,
  };
  const pipeBehind =
    1 / (parameters.insideFilm * Math.PI * inside * pipeLength) +
    tubeResistance(pipe.outsideDiameter, inside, pipe.conductivity, pipeLength);

  const conductivityBelow = parameters.soilConductivity;
  const aboveSoil =
    slabResistance(bench.frame.floorInsulation, foamConductivity) +
    slabResistance(floor.slab, floor.slabConductivity) +
    slabResistance(soilLayers[0] / 2, conductivityBelow);
  const edge = rim * rimConductance(bench.frame.width, edgeStrip, conductivityBelow);

  const curves = [
    loopHolds(bench),
    underHolds(bench),
    ...roots.map(() => rootsHold(bench, rootLayers)),
    ...(covered ? [canopyHolds(bench)] : []),
    ...soilLayers.map((thickness) => soilHolds(bench, thickness)),
  ];

  // Where each face keeps its temperature between calls.
  let faceSlots = 0;
  const slots = (count: number): number => (faceSlots += count) - count;
  const sheathFace = slots(1);
  const pipeFace = slots(1);
  const skirtFaces = slots(skirt ? faceCount(skirt) : 0);
  const rootFaces = slots(2 + rootLayers);
  const betweenFaces = slots(faceCount(betweenPots));
  const coverFaces = slots(2 * faceCount(coverTop));
  const floorFace = slots(1);

  /** Air that changes places through the open bench top where it is warmer below [W/K]. */
  const exchangedAir = (below: number, above: number): number => {
    const mean = (below + above) / 2;
    const drive = Math.max(0, below - above);
    return flowConductance(
      counterflow * openTop * Math.sqrt((gravity * openingWidth * drive) / kelvin(mean)),
      mean,
    );
  };

  const sides = sideArea(bench);
  const topsOfPots = potTopArea(bench);
  const basesOfPots = potBaseArea(bench);
  const foot = potBase + top.resistance * (1 - top.openShare);
  const bottomRoots = roots[0] ?? under;
  const upperRoots = roots[rootLayers - 1] ?? under;
  const surface = floorNodes[0] ?? ground;
  const intoSoil = soilLayers.map((thickness, index) => {
    const resistance = slabResistance((thickness + (soilLayers[index + 1] ?? 0)) / 2, conductivityBelow);
    return area / resistance;
  });

  // What each face exchanges with the air on it, by convection and by what it sees through that air [W/(m²·K)].
  const pipeFilm = (face: number, air: number): number =>
    cylinderFilm(pipe.outsideDiameter, face, air) + radiantFilm(outsideEmissivity, face, air);
  const footFilm = (face: number, air: number): number =>
    horizontalFilm(across, face, air, 'down') + radiantFilm(paired, face, air);
  const topFilm = (face: number, air: number): number => horizontalFilm(across, face, air, 'up');
  const topSight = (face: number, there: number): number => radiantFilm(topEmissivity, face, there);
  const potSideFilm = (face: number, air: number): number =>
    verticalFilm(bench.pots.height, face, air) + radiantFilm(paired, face, air);
  const floorFilm = (face: number, air: number): number =>
    horizontalFilm(across, face, air, 'up') + radiantFilm(floorPair, face, air);

  const as = new Float64Array(rootLayers);
  const conducts = new Float64Array(rootLayers);

  const now = (temperatures: ArrayLike<number>, faces: Float64Array): BodyNow => {
    const t = (node: number): number => temperatures[node] ?? 0;
    const list: BodyLink[] = [];
    const link = (from: number, to: number, conductance: number, path: HeatPath): void => {
      if (conductance > 0) list.push({ from, to, conductance, path });
    };
    const draws: BodyLink[] = [];
    const draw = (from: number, to: number, conductance: number): void => {
      if (conductance > 0 && to < nodeIds.length) draws.push({ from, to, conductance, path: 'leakage' });
    };
    const tUnder = t(under);
    const tHouse = t(house);
    const tPlants = t(plants);
    const passing = passage / (passageNusselt * airConductivity((tUnder + tPlants) / 2)) + wall;
    /**
     * Air from one place up or down past the pots to another: what of it passes close by comes nearer to each layer in
     * turn, on this share of the sides between pots.
     */
    const passPots = (
      flow: number,
      share: number,
      from: number,
      past: readonly number[],
      to: number,
    ): void => {
      if (!(flow > 0)) return;
      const close = flow * closeBy;
      draw(from, to, flow - close);
      const grasp = 1 - Math.exp((-innerSide * share) / passing / close);
      // What of the air is as warm as it came, and what as each layer that it has passed.
      let fresh = close;
      for (let index = 0; index < past.length; index++) {
        const node = past[index]!;
        draw(from, node, grasp * fresh);
        for (let earlier = 0; earlier < index; earlier++) draw(past[earlier]!, node, grasp * as[earlier]!);
        fresh *= 1 - grasp;
        for (let earlier = 0; earlier < index; earlier++) as[earlier]! *= 1 - grasp;
        as[index] = close * grasp;
      }
      draw(from, to, fresh);
      for (let index = 0; index < past.length; index++) draw(past[index]!, to, as[index]!);
    };

    // The massless sheath joins loop and air: in series through it, G_cl G_ca / (G_cl + G_ca).
    const sheath = sheathTemperature(
      bench.cable,
      { ...onPipe, fluid: t(loop), air: tUnder },
      faces[sheathFace] ?? NaN,
    );
    faces[sheathFace] = sheath.sheath;
    link(loop, under, cableLength * sheath.fluidShare * sheath.toAir, 'cable');

    const pipeResistance = faced(tUnder, t(loop), pipeBehind * pipeArea, faces, pipeFace, pipeFilm);
    link(loop, under, pipeArea / pipeResistance, 'pipe');

    if (skirt) {
      link(
        under,
        house,
        sides * closed * stackTransmittance(skirt, tUnder, tHouse, faces, skirtFaces),
        'skirt',
      );
    }
    // Where no skirt hangs, heat radiation passes freely between what is under the bench and the house.
    link(under, house, openSide * radiantFilm(paired, tUnder, tHouse), 'skirt');
    const apart = atLeast(unrest, tUnder - tHouse);
    const middle = (tUnder + tHouse) / 2;
    const leaking = flowConductance(
      buoyantFlow(leak, height, middle + apart / 2, middle - apart / 2),
      middle,
    );
    // Water that evaporates under the bench takes its heat from pots and floor and is lost with the air. The bases of the
    // pots and the floor are taken as wet all over, and the air over them as stirred at least as by its unrest and never
    // layered (assumptions, to the safe side): a film that comes to nothing at equal temperatures would stop no evaporation.
    const ofPots = atLeast(unrest, t(bottomRoots) - tUnder);
    const ofFloor = atLeast(unrest, t(surface) - tUnder);
    const drying = evaporation(leaking / airHeatCapacity, tHouse, [
      {
        film: horizontalFilm(across, tUnder - ofPots, tUnder, 'down'),
        area: basesOfPots,
        t: t(bottomRoots),
      },
      { film: horizontalFilm(across, tUnder + ofFloor, tUnder, 'up'), area, t: t(surface) },
    ]);
    link(bottomRoots, house, drying[0]!, 'leakage');
    link(surface, house, drying[1]!, 'leakage');
    // Air that is warmer than the house rises through the bench, colder air sinks; near to neither, it does both.
    const rising = (leaking * (1 + (tUnder - tHouse) / apart)) / 2;
    const sinking = leaking - rising;
    // And as much comes down through some gaps between the pots as goes up through others.
    const exchanged = openTop === 0 ? 0 : exchangedAir(tUnder, tPlants);
    draw(house, under, rising + sinking * (1 - leakPastPots));
    draw(house, plants, sinking * leakPastPots);
    const up = rising * leakPastPots + exchanged;
    const down = sinking * leakPastPots + exchanged;
    passPots(up, up / (up + down), under, roots, plants);
    passPots(down, down / (up + down), plants, rootsDown, under);

    // Frozen, a moist medium conducts better: ice carries four times the heat of water.
    for (let index = 0; index < rootLayers; index++) {
      const frozen = frozenShare(t(roots[index]!));
      conducts[index] = frozen === 0 ? 1 : frozenTimes ** frozen;
    }
    const half = (index: number): number => halfLayer / conducts[index]!;
    const intoPots = faced(tUnder, t(bottomRoots), foot + half(0), faces, rootFaces, footFilm);
    link(under, bottomRoots, basesOfPots / intoPots, 'pots');
    for (let index = 1; index < rootLayers; index++) {
      link(roots[index - 1]!, roots[index]!, mediumArea / (half(index - 1) + half(index)), 'pots');
    }
    const outOfPots = facedTwice(
      tPlants,
      t(seen),
      t(upperRoots),
      half(rootLayers - 1),
      faces,
      rootFaces + 1,
      topFilm,
      topSight,
    );
    link(upperRoots, plants, topsOfPots * outOfPots.toAir, 'tops');
    link(upperRoots, seen, topsOfPots * outOfPots.toSeen, 'tops');
    for (let index = 0; index < rootLayers; index++) {
      const node = roots[index]!;
      const behind = wall / conducts[index]!;
      const resistance = faced(tPlants, t(node), behind, faces, rootFaces + 2 + index, potSideFilm);
      link(node, plants, exposedSide / rootLayers / resistance, 'sides');
    }

    const closedBetween = free * (1 - top.openShare);
    if (closedBetween > 0) {
      link(
        under,
        plants,
        closedBetween * stackTransmittance(betweenPots, tUnder, tPlants, faces, betweenFaces),
        'between',
      );
    }
    link(under, plants, openTop * radiantFilm(paired, tUnder, tPlants), 'between');

    if (covered) {
      const top = stackTransmittances(coverTop, tPlants, tHouse, t(roof), faces, coverFaces);
      const side = stackTransmittance(coverSide, tPlants, tHouse, faces, coverFaces + faceCount(coverTop));
      link(plants, house, area * top.toAir + rim * coverHeight * side, 'cover');
      link(plants, roof, area * top.toBeyond, 'cover');
      const flow = buoyantFlow(coverLeak, coverHeight / 2, tPlants, tHouse);
      link(plants, house, flowConductance(flow, (tPlants + tHouse) / 2), 'cover');
    }

    const intoFloor = faced(tUnder, t(surface), aboveSoil, faces, floorFace, floorFilm);
    link(under, surface, area / intoFloor, 'floor');
    for (let index = 0; index < intoSoil.length; index++) {
      link(floorNodes[index]!, floorNodes[index + 1] ?? ground, intoSoil[index]!, 'floor');
    }
    link(surface, house, edge, 'edge');
    return {
      links: list,
      draws,
      heat: [
        { node: loop, share: sheath.fluidShare },
        { node: under, share: 1 - sheath.fluidShare },
      ],
      fullPower: sheath.powerPerLength * cableLength * parameters.cableOutput * arriving,
    };
  };

  return {
    ids,
    nodeCount: nodeIds.length,
    curves,
    roots,
    loop,
    under,
    plants,
    house,
    ground,
    roof,
    faceCount: faceSlots,
    at: now,
  };
}
