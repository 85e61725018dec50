import { cite } from '../cite.ts';
import {
  dampingDepth,
  edgeInsulationSaves,
  floorTransmittance,
  groundTemperature,
  type GroundFloor,
} from '../laws/ground.ts';
import { soilConductivity, soilHeatCapacity } from '../properties/soil.ts';
import { soils, type Soil } from '../tables/soils.ts';
import type { Check, Tolerance } from './check.ts';

const clayFloor = { wall: 0.3, resistance: 0.21, conductivity: 1.5 } as const;
const perArea = (perimeter: number): GroundFloor => ({ ...clayFloor, area: 1, perimeter });

const byPerimeter = [
  ...(
    [
      [0.2, '0.37'],
      [0.5, '0.70'],
      [1, '1.05'],
    ] as const
  ).map(([perimeter, printed]) => ({
    perimeter,
    printed,
    from: cite('approved-document-l', 'solid floors on clay, no insulation'),
    standing: 'memory' as const,
  })),
  {
    perimeter: 0.12,
    printed: '0.25',
    from: cite('scotland-6c', 'worked example, P/A 0.12'),
    standing: 'seen' as const,
  },
].map(({ perimeter, ...row }): Check => ({
  ...row,
  what: 'transmittance of a solid floor on clay',
  given: `${perimeter} m of edge per m², wall 0.3 m, films 0.21 m²·K/W, clay 1.5 W/(m·K)`,
  unit: 'W/(m²·K)',
  computed: () => floorTransmittance(perArea(perimeter)),
  kind: row.standing === 'seen' ? 'worked example' : 'table',
}));

/** The older method leaves out the films above and outside. */
const withoutFilms = (length: number, width: number): number => {
  const conductivity = 1.4;
  const floor = { ...clayFloor, conductivity, area: length * width, perimeter: 2 * (length + width) };
  return 1 / (1 / floorTransmittance(floor) - clayFloor.resistance);
};

const byRectangle = (
  [
    [150, 60, '0.11'],
    [60, 60, '0.15'],
    [60, 30, '0.21'],
    [30, 30, '0.26'],
    [30, 15, '0.36'],
    [15, 15, '0.45'],
    [15, 7.5, '0.62'],
    [7.5, 7.5, '0.76'],
    [3, 3, '1.47'],
  ] as const
).map(([length, width, printed]): Check => ({
  what: 'transmittance of a solid floor, its films taken off',
  given: `${length} m × ${width} m, four edges, wall 0.3 m, 1.4 W/(m·K)`,
  printed,
  unit: 'W/(m²·K)',
  computed: () => withoutFilms(length, width),
  tolerance: {
    share: 0.08,
    because: 'an older formula, which squeezes a rectangle into a strip by another rule; two digits',
  },
  kind: 'table',
  from: cite('ihve-a3', 'solid floor, four exposed edges'),
  standing: 'seen',
}));

const program: Check = {
  what: 'transmittance of a solid floor',
  given: '20 m × 10 m, wall 0.3 m, films 0.21 m²·K/W, 1.4 W/(m·K)',
  printed: '0.482',
  unit: 'W/(m²·K)',
  computed: () => floorTransmittance({ ...clayFloor, conductivity: 1.4, area: 200, perimeter: 60 }),
  tolerance: { share: 0.08, because: 'the program follows another method (CIBSE)' },
  kind: 'program check',
  from: cite('floor-program', 'output for 20 m × 10 m'),
  standing: 'seen',
};

/** A house of 28 ft × 40 ft, which nothing is said of in the code: any small house gives the same within a few per cent. */
const house: GroundFloor = {
  ...clayFloor,
  area: 8.534 * 12.192,
  perimeter: 2 * (8.534 + 12.192),
};
const imperial = { factor: 1.730735, resistance: 0.17611, foot: 0.3048 } as const;
const unknownSoil: Tolerance = {
  share: 0.25,
  because: 'the soil of the table is not given; the conductivity of soils is known to a quarter',
};

const perEdge = [
  {
    printed: '0.73',
    from: cite('wac-51-11c', 'unheated slab, no insulation'),
    standing: 'seen' as const,
  },
  {
    printed: '0.8',
    from: cite('ep406', 'perimeter, no insulation'),
    standing: 'memory' as const,
  },
].map((row): Check => ({
  ...row,
  what: 'heat loss of a floor per length of edge',
  given: '28 ft × 40 ft on clay, no insulation',
  unit: 'Btu/(h·ft·°F)',
  computed: () => (floorTransmittance(house) * house.area) / house.perimeter / imperial.factor,
  tolerance: unknownSoil,
  kind: 'table',
}));

const edgeBoards = (
  [
    [2, 5, '0.15'],
    [2, 10, '0.19'],
    [4, 10, '0.25'],
  ] as const
).map(([depth, resistance, printed]): Check => ({
  what: 'what an upright board at the edge saves per length',
  given: `R-${resistance}, ${depth} ft deep, on clay`,
  printed,
  unit: 'Btu/(h·ft·°F)',
  computed: () =>
    edgeInsulationSaves(house, depth * imperial.foot, resistance * imperial.resistance) / imperial.factor,
  tolerance: unknownSoil,
  kind: 'table',
  from: cite('wac-51-11c', 'unheated slab, vertical insulation, difference of two F-factors'),
  standing: 'seen',
}));

const day = 86_400;
const waveOfTest = { mean: 15, amplitude: 5, coldest: day } as const;
const diffusivityOfTest = 0.5e-6;

const temperatures = (
  [
    [0, 0, '10.0'],
    [0, 15, '10.15'],
    [0, 165, '19.75'],
    [100, 165, '15.0'],
  ] as const
).map(([depth, dayOfYear, printed]): Check => ({
  what: 'temperature of undisturbed ground',
  given: `${depth} m deep, day ${dayOfYear}, mean 15 °C, swing 5 K, coldest on day 1`,
  printed,
  unit: '°C',
  computed: () => groundTemperature(waveOfTest, depth, dayOfYear * day, diffusivityOfTest),
  tolerance: { plusMinus: 0.05, because: 'the test itself allows a tenth of a degree' },
  kind: 'program check',
  from: cite('energyplus', 'Kusuda and Achenbach at the surface and deep down'),
  standing: 'seen',
}));

const penetration = (
  [
    ['clay or silt', 1.5, 3.0e6, '2.2'],
    ['sand or gravel', 2.0, 2.0e6, '3.2'],
    ['rock', 3.5, 2.0e6, '4.2'],
  ] as const
).map(([ground, conductivity, heatCapacity, printed]): Check => ({
  what: 'depth to which the yearly wave goes',
  given: `${ground}, ${conductivity} W/(m·K), ${heatCapacity / 1e6} MJ/(m³·K)`,
  printed,
  unit: 'm',
  computed: () => dampingDepth(conductivity / heatCapacity),
  kind: 'table',
  from: cite('iso13370', 'periodic penetration depths'),
  standing: 'memory',
}));

const johansenGood: Tolerance = {
  share: 0.25,
  because: 'Johansen’s relation is good to a quarter; so much a soil changes within a few metres',
};

/** Soils of Oke's table: 40 % pores. */
const pores40 = 2700 * 0.6;
const sandyOke: Soil = { ...soils.sand, dryDensity: pores40 };
const clayOke: Soil = { ...soils.clay, dryDensity: pores40 };

const soilChecks: readonly Check[] = [
  ...(
    [
      ['sandy soil', sandyOke, 0, '0.30', '1.28'],
      ['sandy soil', sandyOke, 1, '2.20', '2.96'],
      ['clay soil', clayOke, 0, '0.25', '1.42'],
      ['clay soil', clayOke, 1, '1.58', '3.10'],
    ] as const
  ).flatMap(([name, soil, moisture, conductivity, heatCapacity]): Check[] => {
    const common = {
      given: `${name}, 40 % pores, ${moisture === 0 ? 'dry' : 'soaked'}`,
      kind: 'table',
      from: cite('oke1987', 'table 2.1'),
      standing: 'memory',
    } as const;
    return [
      {
        ...common,
        what: 'conductivity of soil',
        printed: conductivity,
        unit: 'W/(m·K)',
        computed: () => soilConductivity(soil, moisture),
        tolerance: johansenGood,
      },
      {
        ...common,
        what: 'heat capacity of soil',
        printed: heatCapacity,
        unit: 'MJ/(m³·K)',
        computed: () => soilHeatCapacity(soil, moisture) / 1e6,
        tolerance: {
          share: 0.2,
          because: 'soils of the table are not all mineral; minerals differ by a fifth',
        },
      },
    ];
  }),
  ...(
    [
      ['sand and gravel', soils.sand, 0.5, '2.0'],
      ['clay or silt', soils.clay, 0.8, '1.5'],
    ] as const
  ).map(([name, soil, moisture, printed]): Check => ({
    what: 'conductivity of soil',
    given: `${name}, ${moisture} of the pores filled`,
    printed,
    unit: 'W/(m·K)',
    computed: () => soilConductivity(soil, moisture),
    tolerance: johansenGood,
    kind: 'table',
    from: cite('en12524', 'soils, design values'),
    via: cite('open-libraries', 'ht, table of insulation'),
    standing: 'seen',
  })),
];

export const groundChecks: readonly Check[] = [
  ...byPerimeter,
  ...byRectangle,
  program,
  ...perEdge,
  ...edgeBoards,
  ...temperatures,
  ...penetration,
  ...soilChecks,
];
