import { messages } from '../say.ts';
import { mediumConductivity } from '../properties/medium.ts';
import type { QuantityName } from '../quantities/quantity.ts';
import { cite, type Citation } from '../sources.ts';
import { media } from '../tables/media.ts';
import type { Situation } from '../calculator.ts';

/**
 * What nobody knows exactly of a bench: how well the cable touches the pipe, how much air slips under the skirt. Each
 * is an expected value and a range in which four of five benches lie (10th to 90th percentile).
 */
export interface Prior {
  readonly label: string;
  readonly quantity: QuantityName | null;
  readonly expected: number;
  readonly low: number;
  readonly high: number;
  /** What a grower would measure to narrow it. */
  readonly measure: string;
  readonly cites: readonly Citation[];
}

const assumed = (at: string): readonly Citation[] => [cite('assumption', at)];

/** A gap: as measured with a ruler to a fifth of it, or as benches commonly have it. */
function gap(label: string, measured: number | null, expected: number, low: number, high: number): Prior {
  const known = measured !== null;
  return {
    label,
    quantity: 'size',
    expected: measured ?? expected,
    low: known ? measured * 0.8 : low,
    high: known ? measured * 1.2 : high,
    measure: 'the average gap, with a ruler',
    cites: assumed(known ? 'a ruler reads an average gap to a fifth' : 'gaps of hung film'),
  };
}

/** The uncertain inputs of this bench, with its own measurements in place of the common values where it has them. */
export function priorsOf({ bench, station }: Situation) {
  const taped = bench.cable.contact === 'taped';
  const medium = media[bench.pots.medium];
  const moist = mediumConductivity(medium, bench.pots.moisture);
  const tight = bench.pots.spacing === 'tight';
  const ground = bench.place.groundTemperature ?? station.ground;
  return {
    /** Contact conductance between cable and pipe [W/(m²·K)]. */
    contact: {
      label: 'contact of the cable with the pipe',
      quantity: null,
      expected: taped ? 150 : 60,
      low: taped ? 70 : 25,
      high: taped ? 300 : 150,
      measure: 'how fast the loop warms with the heat on',
      cites: assumed('contact conductance of cable on plastic pipe'),
    },
    /** How many contact widths wide the heat spreads in the pipe wall [1]. */
    spreading: {
      label: 'spreading of the heat in the pipe wall',
      quantity: null,
      expected: 3,
      low: 2,
      high: 5,
      measure: 'how fast the loop warms with the heat on',
      cites: assumed('spreading factor in a plastic wall'),
    },
    /** Film between the fluid and the wall of the loop [W/(m²·K)]. */
    insideFilm: {
      label: 'film inside the pipe',
      quantity: null,
      expected: 100,
      low: 60,
      high: 200,
      measure: 'how fast the loop warms with the heat on',
      cites: assumed('natural convection of the fluid, 60 to 200 W/(m²·K)'),
    },
    bottomGap: gap(messages('gap between skirt and floor'), bench.skirt.bottomGap, 0.005, 0.002, 0.015),
    topGap: gap(messages('gap between skirt and bench'), bench.skirt.topGap, 0.002, 0.0005, 0.008),
    coverGap: gap(messages('gap at the edge of the cover'), bench.cover.gap, 0.005, 0.002, 0.015),
    /** Added to the long-wave transmittance of every film [1]. */
    longwave: {
      label: 'heat radiation through the film',
      quantity: null,
      expected: 0,
      low: -0.1,
      high: 0.1,
      measure: 'whether the film is wet inside on a cold night',
      cites: [cite('hanson1963', 'long-wave protection index of polyethylene'), ...assumed('± 0.1')],
    },
    /** Conductivity of the medium as it is [W/(m·K)]. */
    mediumConductivity: {
      label: 'conductivity of the medium',
      quantity: null,
      expected: moist,
      low: moist * 0.67,
      high: moist * 1.33,
      measure: 'root temperatures near the base and near the top of one pot',
      cites: [cite('heiskanen2000', '0.05 dry to 0.5 W/(m·K) wet'), ...assumed('± a third')],
    },
    /** Share of the sides of the pots that loses heat to the air around the plants [1]. */
    sideShare: {
      label: 'exposed share of the sides of the pots',
      quantity: 'share',
      expected: tight ? 0.2 : 0.7,
      low: tight ? 0.05 : 0.55,
      high: tight ? 0.35 : 0.85,
      measure: 'how the pots stand',
      cites: assumed('0.2 for pots set tight, 0.7 apart, ± 0.15'),
    },
    /** Share of the air rising through the bench top that passes close by pots [1]; the rest finds wider ways. */
    closeBy: {
      label: 'rising air that passes close by pots',
      quantity: null,
      expected: 0.5,
      low: 0.2,
      high: 0.8,
      measure: 'root temperatures near the base and near the top of one pot',
      cites: assumed('half of the air, from a fifth to four fifths'),
    },
    /** House air above outside air at night [K]. */
    houseOffset: {
      label: 'house above outside at night',
      quantity: 'temperatureDifference',
      expected: bench.place.houseOffset,
      low: bench.place.houseOffset - 2,
      high: bench.place.houseOffset + 2,
      measure: 'two minimum thermometers, one in the house and one outside',
      cites: assumed('+2 K, from 0 to +4 K, in an unheated house on a hard night'),
    },
    /** How much of what a clear sky draws out of the roof is drawn on the cold night [1]. */
    clearness: {
      label: 'clearness of the sky on the cold night',
      quantity: null,
      expected: 0.8,
      low: 0.3,
      high: 1,
      measure: 'a thermometer that lies face up on the bench, beside one under a board',
      cites: assumed('hard nights are mostly clear: 0.8, from 0.3 to 1'),
    },
    /** Temperature of the ground below the floor [°C]. */
    ground: {
      label: 'temperature of the ground',
      quantity: 'temperature',
      expected: ground,
      low: ground - 2,
      high: ground + 2,
      measure: 'a thermometer at the bottom of a hole half a metre deep',
      cites: assumed('the station’s estimate, ± 2 K'),
    },
    /** [W/(m·K)] */
    soilConductivity: {
      label: 'conductivity of the soil',
      quantity: null,
      expected: 1.2,
      low: 0.7,
      high: 2,
      measure: 'whether the soil is dry sand or wet clay',
      cites: [
        cite('en12524', 'clay or silt 1.5, sand and gravel 2.0 W/(m·K)'),
        ...assumed('drier under a house'),
      ],
    },
    /** Output of the cable against its label [1]. */
    cableOutput: {
      label: 'output of the cable against its label',
      quantity: 'share',
      expected: 1,
      low: 0.92,
      high: 1.08,
      measure: 'a power meter at the plug',
      cites: [cite('common-practice', 'labels are good to about 8 %, from memory')],
    },
    /** Error of sensor and set point together [K]. */
    sensorError: {
      label: 'error of sensor and set point',
      quantity: 'temperatureDifference',
      expected: 0,
      low: -1,
      high: 1,
      measure: 'the sensor in a cup of melting ice',
      cites: [cite('common-practice', 'thermostats are good to about 1 K')],
    },
  } as const satisfies Record<string, Prior>;
}

export type PriorId = keyof ReturnType<typeof priorsOf>;

/** One value for each uncertain input. */
export type Parameters = { readonly [P in PriorId]: number };

/** The expected value of each uncertain input of this bench. */
export const expectedParameters = (situation: Situation): Parameters =>
  Object.fromEntries(
    Object.entries(priorsOf(situation)).map(([id, prior]) => [id, prior.expected]),
  ) as Parameters;
