import { pipeToPlaneShape, tubeResistance } from '../../calculators/laws/conduction.ts';
import { flowConductance } from '../../calculators/laws/leakage.ts';
import {
  cylinderFilm,
  cylinderNusselt,
  horizontalFilm,
  plateNusselt,
  rayleigh,
  verticalFilm,
  verticalPlateNusselt,
} from '../../calculators/laws/natural-convection.ts';
import { radiantFlux } from '../../calculators/laws/radiation.ts';
import type { Common, Published, Tolerance } from './published.ts';

const library = { source: 'example of the open library ht', standing: 'seen' } as const satisfies Common;
const sameFormula: Tolerance = {
  share: 1e-9,
  because: 'sixteen digits of a program that evaluates the same formula',
};

const nusselt: readonly Published[] = [
  {
    ...library,
    what: 'Nusselt number of a horizontal cylinder, Churchill and Chu',
    given: 'Pr 0.69, Gr 2.63e9',
    printed: '139.13493970073597',
    unit: '',
    computed: () => cylinderNusselt(0.69 * 2.63e9, 0.69),
    tolerance: sameFormula,
  },
  {
    ...library,
    what: 'Nusselt number of a vertical plate, Churchill and Chu',
    given: 'Pr 0.69, Gr 2.63e9',
    printed: '147.16185223770603',
    unit: '',
    computed: () => verticalPlateNusselt(0.69 * 2.63e9, 0.69),
    tolerance: sameFormula,
  },
  ...(
    [
      [5.54, 'unstable', '181.73121274384457'],
      [5.54, 'stable', '55.44564799362829'],
      [0.01, 'unstable', '22.857041558492334'],
      [0.01, 'stable', '11.428520779246167'],
    ] as const
  ).map(([prandtl, layering, printed]): Published => ({
    ...library,
    what: `Nusselt number of a horizontal plate, McAdams, ${layering}`,
    given: `Pr ${prandtl}, Gr 3.21e8`,
    printed,
    unit: '',
    computed: () => plateNusselt(prandtl * 3.21e8, layering),
    tolerance: sameFormula,
  })),
];

/** Çengel's worked examples, from the air of his own table A-15. */
const airTables = (share: number): Tolerance => ({
  share,
  because: 'the book takes its air from table A-15, whose conductivity is 2.3 % lower than that of the guide',
});
/** Ra goes with ρ² cp / (μ k), so it carries the whole difference of the conductivities and twice that of the densities. */
const rayleighInTables: Tolerance = {
  share: 0.03,
  because: 'the book’s conductivity is 2.4 % below that of the guide, its viscosity 0.6 % above',
};
const rayleighAtOneBar: Tolerance = {
  share: 0.04,
  because: 'table A.4 is for 1 bar: its squared density is 2.6 % lower; the rest is rounding',
};
const shortKelvin: Tolerance = {
  share: 0.004,
  because: 'the book takes 273 K for 0 °C, 0.12 %, and prints three digits',
};
const bookRounds: Tolerance = { share: 0.003, because: 'the book rounds on the way' };

const pipe = {
  given: 'pipe 0.08 m × 6 m, 70 °C in 20 °C',
  source: 'Çengel, example 9-1',
  standing: 'seen',
} as const;
const plate = {
  given: 'plate 0.24 m × 0.20 m, 50 °C in 20 °C',
  source: 'Çengel, problem 9-41',
  standing: 'seen',
} as const;
const pane = {
  given: 'plate 2 ft high, 130 °F in 75 °F',
  source: 'Çengel, problem 9-19E',
  standing: 'seen',
} as const;
const paneInAir = { length: 0.6096, warm: 54.444, cold: 23.889 };

const cengel: readonly Published[] = [
  {
    ...pipe,
    what: 'Rayleigh number',
    printed: '1.869e6',
    unit: '',
    computed: () => rayleigh(0.08, 70, 20),
    tolerance: rayleighInTables,
  },
  {
    ...pipe,
    what: 'Nusselt number',
    printed: '17.40',
    unit: '',
    computed: () => cylinderNusselt(1.869e6, 0.7241),
    tolerance: bookRounds,
  },
  {
    ...pipe,
    what: 'film',
    printed: '5.869',
    unit: 'W/(m²·K)',
    computed: () => cylinderFilm(0.08, 70, 20),
    tolerance: airTables(0.025),
  },
  {
    ...pipe,
    what: 'heat given off by convection',
    printed: '443',
    unit: 'W',
    computed: () => cylinderFilm(0.08, 70, 20) * Math.PI * 0.08 * 6 * 50,
    tolerance: airTables(0.025),
  },
  {
    ...plate,
    what: 'Rayleigh number',
    printed: '411500',
    unit: '',
    computed: () => rayleigh(0.05455, 50, 20),
    tolerance: rayleighInTables,
  },
  {
    ...plate,
    what: 'Nusselt number, hot face up',
    printed: '13.68',
    unit: '',
    computed: () => plateNusselt(411_500, 'unstable'),
  },
  {
    ...plate,
    what: 'Nusselt number, hot face down',
    printed: '6.838',
    unit: '',
    computed: () => plateNusselt(411_500, 'stable'),
  },
  {
    ...plate,
    what: 'film, hot face up',
    printed: '6.581',
    unit: 'W/(m²·K)',
    computed: () => horizontalFilm(0.05455, 50, 20, 'up'),
    tolerance: airTables(0.025),
  },
  {
    ...plate,
    what: 'film, hot face down',
    printed: '3.291',
    unit: 'W/(m²·K)',
    computed: () => horizontalFilm(0.05455, 50, 20, 'down'),
    tolerance: airTables(0.025),
  },
  {
    ...pane,
    what: 'Rayleigh number',
    printed: '5.503e8',
    unit: '',
    computed: () => rayleigh(paneInAir.length, paneInAir.warm, paneInAir.cold),
    tolerance: rayleighInTables,
  },
  {
    ...pane,
    what: 'Nusselt number',
    printed: '102.6',
    unit: '',
    computed: () => verticalPlateNusselt(5.503e8, 0.7256),
    tolerance: bookRounds,
  },
];

/** The table that is closest to the pipe of a bench: size, temperatures and all ways of heat together. */
const barePipes = (
  [
    [42.4, '50', 0.08],
    [60.3, '68', 0.08],
    [76.1, '83', 0.08],
    [88.9, '95', 0.035],
    [101.6, '107', 0.035],
    [114.3, '119', 0.035],
    [139.7, '142', 0.035],
    [168.3, '167', 0.035],
  ] as const
).map(([millimetres, printed, share]): Published => {
  const diameter = millimetres / 1000;
  return {
    what: 'heat given off by a bare horizontal pipe',
    given: `${millimetres} mm, 50 °C in still air of 20 °C, emissivity 0.9`,
    printed,
    unit: 'W/m',
    computed: () => Math.PI * diameter * (cylinderFilm(diameter, 50, 20) * 30 + radiantFlux(0.9, 50, 20)),
    tolerance: {
      share,
      because: 'an older correlation, which gives more from thin pipes: 6 % at 42 mm, 1 % at 168 mm',
    },
    source: 'RoyMech, table of heat loss from bare horizontal pipes',
    standing: 'seen',
  };
});

const incropera92 = {
  given: 'glass 0.71 m × 1.02 m, 232 °C in 23 °C',
  source: 'Incropera, example 9.2',
  standing: 'memory',
} as const;
const incropera94 = {
  given: 'pipe 0.1 m, 165 °C in 23 °C, emissivity 0.85',
  source: 'Incropera, example 9.4',
  standing: 'memory',
} as const;
const cengel92 = {
  given: 'plate 0.6 m × 0.6 m, 90 °C in 30 °C',
  source: 'Çengel, example 9-2',
  standing: 'memory',
} as const;

const remembered: readonly Published[] = [
  {
    ...incropera92,
    what: 'Nusselt number',
    printed: '147',
    unit: '',
    computed: () => verticalPlateNusselt(1.813e9, 0.69),
  },
  {
    ...incropera92,
    what: 'heat given off by convection',
    printed: '1060',
    unit: 'W',
    computed: () => verticalFilm(0.71, 232, 23) * 0.71 * 1.02 * 209,
    tolerance: airTables(0.02),
  },
  {
    ...incropera94,
    what: 'Rayleigh number',
    printed: '5.073e6',
    unit: '',
    computed: () => rayleigh(0.1, 165, 23),
    tolerance: rayleighAtOneBar,
  },
  {
    ...incropera94,
    what: 'heat given off by convection',
    printed: '325',
    unit: 'W/m',
    computed: () => Math.PI * 0.1 * cylinderFilm(0.1, 165, 23) * 142,
    tolerance: airTables(0.02),
  },
  {
    ...incropera94,
    what: 'heat given off by radiation',
    printed: '441',
    unit: 'W/m',
    computed: () => Math.PI * 0.1 * radiantFlux(0.85, 165, 23),
    tolerance: shortKelvin,
  },
  {
    ...cengel92,
    what: 'heat given off, upright',
    printed: '115',
    unit: 'W',
    computed: () => verticalFilm(0.6, 90, 30) * 0.36 * 60,
    tolerance: airTables(0.025),
  },
  {
    ...cengel92,
    what: 'heat given off, hot face up',
    printed: '128',
    unit: 'W',
    computed: () => horizontalFilm(0.15, 90, 30, 'up') * 0.36 * 60,
    tolerance: {
      share: 0.05,
      because: 'Ra is 1.2e7, where the book stays on the quarter-power law and others have left it',
    },
  },
  {
    ...cengel92,
    what: 'heat given off, hot face down',
    printed: '64.2',
    unit: 'W',
    computed: () => horizontalFilm(0.15, 90, 30, 'down') * 0.36 * 60,
    tolerance: airTables(0.025),
  },
  {
    ...cengel92,
    what: 'heat radiated by a black face',
    printed: '182',
    unit: 'W',
    computed: () => radiantFlux(1, 90, 30) * 0.36,
    tolerance: shortKelvin,
  },
];

const olderConstant: Tolerance = {
  share: 1.4e-6,
  because: 'the library has the Stefan–Boltzmann constant of CODATA 2014, 5.670367e-8',
};

/** Heat flow per length [W/m] of an insulated pipe: wall and insulation in series with the outer film. */
function insulatedPipe(): number {
  const [bore, wall, insulation] = [0.0779272, 0.0054864, 0.05];
  const pipeOutside = bore + 2 * wall;
  const outside = pipeOutside + 2 * insulation;
  const resistance =
    tubeResistance(pipeOutside, bore, 56.045, 1) +
    tubeResistance(outside, pipeOutside, 0.0598535265, 1) +
    1 / (22.697193 * Math.PI * outside);
  return (453.15 - 301.15) / resistance;
}

const radiationAndConduction: readonly Published[] = [
  {
    ...library,
    what: 'heat radiated to nothing',
    given: 'black, 400 K',
    printed: '1451.613952',
    unit: 'W/m²',
    computed: () => radiantFlux(1, 400 - 273.15, -273.15),
    tolerance: olderConstant,
  },
  {
    ...library,
    what: 'heat radiated',
    given: 'emissivity 0.85, 400 K to 305 K',
    printed: '816.7821722650002',
    unit: 'W/m²',
    computed: () => radiantFlux(0.85, 400 - 273.15, 305 - 273.15),
    tolerance: olderConstant,
  },
  {
    ...library,
    what: 'resistance of a tube wall',
    given: '0.9 m in 1.0 m, 20 W/(m·K), 10 m',
    printed: '8.38432343682705e-5',
    unit: 'K/W',
    computed: () => tubeResistance(1, 0.9, 20, 10),
    tolerance: sameFormula,
  },
  {
    ...library,
    what: 'shape factor of a buried pipe',
    given: '1 m wide, 100 m deep, 3 m long',
    printed: '3.146071454894645',
    unit: 'm',
    computed: () => pipeToPlaneShape(1, 100, 3),
    tolerance: sameFormula,
  },
  {
    ...library,
    what: 'heat loss of an insulated pipe',
    given: '180 °C in 28 °C, 50 mm insulation',
    printed: '73.12000884069367',
    unit: 'W/m',
    computed: insulatedPipe,
    tolerance: { share: 1e-9, because: 'the library adds an inside film of 1e12 W/(m²·K)' },
  },
];

const cubicFoot = 0.3048 ** 3;
const infiltration: readonly Published[] = [
  {
    what: 'heat that a cubic foot of air carries',
    given: 'standard air',
    printed: '0.018',
    unit: 'Btu/(ft³·°F)',
    computed: () => (flowConductance(cubicFoot, 20) * (5 / 9)) / 1055.05585262,
    source: 'ASHRAE, 0.075 lb/ft³ × 0.24 Btu/(lb·°F)',
    standing: 'memory',
  },
  {
    what: 'heat that a cubic metre of air carries',
    given: '20 °C',
    printed: '0.335',
    unit: 'Wh/(m³·K)',
    computed: () => flowConductance(1, 20) / 3600,
    tolerance: {
      plusMinus: 0.008,
      because: 'the factor is printed as 0.33 to 0.34 according to the temperature',
    },
    source: '1.2 kg/m³ × 1006 J/(kg·K); 0.33 in stored open code',
    standing: 'seen',
  },
];

export const heatRows: readonly Published[] = [
  ...nusselt,
  ...cengel,
  ...barePipes,
  ...remembered,
  ...radiationAndConduction,
  ...infiltration,
];
