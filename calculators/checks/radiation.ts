import { cite } from '../cite.ts';
import { pipeToPlaneShape, slabResistance, tubeResistance } from '../laws/conduction.ts';
import { flowConductance } from '../laws/leakage.ts';
import { clearSkyTemperature } from '../laws/clear-sky.ts';
import { exchangeEmissivity, radiantFlux } from '../laws/radiation.ts';
import { icePoint } from '../properties/temperature.ts';
import { toBase } from '../quantities/quantity.ts';
import { fromCompanion, sameFormula, shortKelvin } from './books.ts';
import type { Check, Common, Tolerance } from './check.ts';

const library = {
  kind: 'program check',
  from: cite('open-libraries', 'ht, examples and tests'),
  standing: 'seen',
} as const satisfies Common;

const olderConstant: Tolerance = {
  share: 1.4e-6,
  because: 'the library has the Stefan–Boltzmann constant of CODATA 2014, 5.670367e-8',
};

const absoluteZero = -icePoint;

const radiation: readonly Check[] = [
  {
    ...library,
    what: 'heat radiated to nothing',
    given: 'black, 400 K',
    printed: '1451.613952',
    unit: 'W/m²',
    computed: () => radiantFlux(1, 400 - icePoint, absoluteZero),
    tolerance: olderConstant,
  },
  {
    ...library,
    what: 'heat radiated',
    given: 'emissivity 0.85, 400 K to 305 K',
    printed: '816.7821722650002',
    unit: 'W/m²',
    computed: () => radiantFlux(0.85, 400 - icePoint, 305 - icePoint),
    tolerance: olderConstant,
  },
  {
    ...fromCompanion(cite('incropera', 'example 1.2')),
    what: 'heat that a pipe radiates',
    given: '200 °C, emissivity 0.8',
    printed: '2273',
    unit: 'W/m²',
    computed: () => radiantFlux(0.8, 200, absoluteZero),
    tolerance: shortKelvin,
  },
  {
    ...fromCompanion(cite('incropera', 'example 1.2')),
    what: 'heat that falls on a pipe from the walls of a room',
    given: '25 °C',
    printed: '448.05',
    unit: 'W/m²',
    computed: () => radiantFlux(1, 25, absoluteZero),
    tolerance: shortKelvin,
  },
  {
    ...fromCompanion(cite('incropera', 'example 1.2')),
    what: 'heat given off by a pipe, convection and radiation',
    given: 'pipe 70 mm, 200 °C in 25 °C, film 15 W/(m²·K), emissivity 0.8',
    printed: '998.4',
    unit: 'W/m',
    computed: () => Math.PI * 0.07 * (15 * 175 + radiantFlux(0.8, 200, 25)),
    tolerance: shortKelvin,
  },
  {
    ...fromCompanion(cite('incropera', 'example 13.5')),
    what: 'heat radiated from an inner to an outer tube',
    given: 'tubes 20 mm and 50 mm, 77 K and 300 K, emissivities 0.02 and 0.05',
    printed: '-0.50',
    unit: 'W/m',
    computed: () =>
      Math.PI * 0.02 * radiantFlux(exchangeEmissivity(0.02, 0.05, 0.4), 77 - icePoint, 300 - icePoint),
  },
  {
    ...fromCompanion(cite('holman', 'example 8.10')),
    what: 'emissivity of a pair of parallel planes',
    given: 'emissivities 0.3 and 0.8',
    printed: '0.279',
    unit: '',
    computed: () => exchangeEmissivity(0.3, 0.8),
  },
  {
    ...fromCompanion(cite('holman', 'example 7.8')),
    what: 'heat radiated across a gap',
    given: '0.5 m square, faces at 100 °C and 40 °C, emissivity 0.2',
    printed: '15.37',
    unit: 'W',
    computed: () => radiantFlux(exchangeEmissivity(0.2, 0.2), 100, 40) * 0.25,
    tolerance: shortKelvin,
  },
  {
    ...fromCompanion(cite('sukhatme', 'example 3.12')),
    what: 'heat that a black disc radiates',
    given: '20 mm, 1000 °C in 27 °C',
    printed: '46.61',
    unit: 'W',
    computed: () => radiantFlux(1, 1000, 27) * Math.PI * 0.01 ** 2,
    tolerance: shortKelvin,
  },
  {
    ...fromCompanion(cite('cengel', 'example 12-1')),
    what: 'heat that a black body radiates',
    given: '800 K',
    printed: '23.22',
    unit: 'kW/m²',
    computed: () => radiantFlux(1, 800 - icePoint, absoluteZero) / 1000,
    tolerance: shortKelvin,
  },
];

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

const singlePane = {
  given: 'glass 8 mm, 0.8 m × 1.5 m, films 10 and 40 W/(m²·K), 20 °C and −10 °C',
  ...fromCompanion(cite('cengel', 'example 3-2')),
};
const doublePane = {
  given: 'two panes of 4 mm, 10 mm of still air, otherwise the same',
  ...fromCompanion(cite('cengel', 'example 3-3')),
};
/** Resistances [m²·K/W] of glass, 0.78 W/(m·K), and of still air, 0.026 W/(m·K). */
const pane = (thickness: number): number => slabResistance(thickness, 0.78);
const singleFlux = (): number => 30 / (1 / 10 + pane(0.008) + 1 / 40);
const doubleFlux = (): number => 30 / (1 / 10 + 2 * pane(0.004) + slabResistance(0.01, 0.026) + 1 / 40);

const steamPipe = {
  given: 'cast iron 50 mm / 55 mm, 30 mm of glass wool, 320 °C inside, 5 °C outside',
  ...fromCompanion(cite('cengel', 'example 3-8')),
};
const glassWool = (): number => tubeResistance(0.115, 0.055, 0.05, 1);
const steamFlow = (): number =>
  315 /
  (1 / (60 * Math.PI * 0.05) + tubeResistance(0.055, 0.05, 80, 1) + glassWool() + 1 / (18 * Math.PI * 0.115));

const conduction: readonly Check[] = [
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
  {
    ...fromCompanion(cite('incropera', 'example 1.1')),
    what: 'heat through the wall of a furnace',
    given: '0.15 m of brick, 0.6 m², 1.7 W/(m·K), 250 K',
    printed: '1700',
    unit: 'W',
    computed: () => (0.6 * 250) / slabResistance(0.15, 1.7),
  },
  {
    ...fromCompanion(cite('cengel', 'example 3-1')),
    what: 'heat through a wall',
    given: '0.3 m thick, 15 m², 0.9 W/(m·K), 16 °C and 2 °C',
    printed: '630',
    unit: 'W',
    computed: () => (15 * 14) / slabResistance(0.3, 0.9),
  },
  {
    ...singlePane,
    what: 'heat through a window',
    printed: '266',
    unit: 'W',
    computed: () => 1.2 * singleFlux(),
  },
  {
    ...singlePane,
    what: 'inner face of a window',
    printed: '-2.2',
    unit: '°C',
    computed: () => 20 - singleFlux() / 10,
  },
  {
    ...doublePane,
    what: 'heat through a window',
    printed: '69.2',
    unit: 'W',
    computed: () => 1.2 * doubleFlux(),
  },
  {
    ...doublePane,
    what: 'inner face of a window',
    printed: '14.2',
    unit: '°C',
    computed: () => 20 - doubleFlux() / 10,
  },
  {
    ...steamPipe,
    what: 'heat loss of an insulated pipe, films 60 and 18 W/(m²·K)',
    printed: '120.8',
    unit: 'W/m',
    computed: steamFlow,
  },
  {
    ...steamPipe,
    what: 'temperature drop across the insulation',
    printed: '283.6',
    unit: 'K',
    computed: () => steamFlow() * glassWool(),
  },
  {
    ...fromCompanion(cite('cengel', 'example 3-9')),
    what: 'temperature of an insulated wire',
    given: 'wire 3 mm, 2 mm of plastic 0.15 W/(m·K), 5 m, 80 W, film 12 W/(m²·K), 30 °C',
    printed: '105.0',
    unit: '°C',
    computed: () => 30 + 80 * (1 / (12 * Math.PI * 0.007 * 5) + tubeResistance(0.007, 0.003, 0.15, 5)),
  },
  {
    ...fromCompanion(cite('cengel', 'example 3-13')),
    what: 'shape factor of a buried pipe',
    given: 'pipe 0.1 m, its axis 0.5 m deep, 30 m',
    printed: '62.92',
    unit: 'm',
    computed: () => pipeToPlaneShape(0.1, 0.5, 30),
    tolerance: { share: 0.002, because: 'the book has ln(4 z / D) for acosh(2 z / D), 0.1 % more' },
  },
  {
    ...fromCompanion(cite('cengel', 'example 3-13')),
    what: 'heat loss of a buried pipe',
    given: 'pipe 0.1 m, its axis 0.5 m deep, 30 m, soil 0.9 W/(m·K), 80 °C and 10 °C',
    printed: '3964',
    unit: 'W',
    computed: () => pipeToPlaneShape(0.1, 0.5, 30) * 0.9 * 70,
    tolerance: { share: 0.002, because: 'the book has ln(4 z / D) for acosh(2 z / D), 0.1 % more' },
  },
  {
    ...fromCompanion(cite('cengel', 'example 3-15')),
    what: 'heat through a wall of R 2.3 m²·K/W and its films',
    given: '126 m², films 8.29 and 34 W/(m²·K), 18 K',
    printed: '925.7',
    unit: 'W',
    computed: () => (126 * 18) / (1 / 8.29 + 2.3 + 1 / 34),
  },
  {
    ...fromCompanion(cite('janna', 'example 3.2')),
    what: 'heat loss of a buried pipe',
    given: 'pipe 10.74 in, its axis 18 in deep, soil 0.072 Btu/(h·ft·°F), 75 °F',
    printed: '18.05',
    unit: 'Btu/(h·ft)',
    computed: () => pipeToPlaneShape(10.74 / 12, 1.5, 1) * 0.072 * 75,
  },
];

const sky: readonly Check[] = [
  {
    what: 'temperature of a clear sky',
    given: 'air at 273.15 K',
    printed: '249.2',
    unit: 'K',
    computed: () => clearSkyTemperature(0) + icePoint,
    kind: 'table',
    from: cite('swinbank1963', 'T = 0.0552 T_air^1.5'),
    standing: 'memory',
  },
];

const cubicFoot = toBase('length', 1, 'ft') ** 3;
const infiltration: readonly Check[] = [
  {
    what: 'heat that a cubic foot of air carries',
    given: 'standard air',
    printed: '0.018',
    unit: 'Btu/(ft³·°F)',
    computed: () => (flowConductance(cubicFoot, 20) * (5 / 9)) / 1055.05585262,
    kind: 'table',
    from: cite('ashrae-fundamentals', 'standard air, 0.075 lb/ft³ × 0.24 Btu/(lb·°F)'),
    standing: 'memory',
  },
  {
    what: 'heat that a cubic metre of air carries',
    given: '20 °C',
    printed: '0.33 to 0.34',
    unit: 'Wh/(m³·K)',
    computed: () => flowConductance(1, 20) / 3600,
    kind: 'table',
    from: cite('ashrae-fundamentals', 'air at 20 °C, 1.2 kg/m³ × 1006 J/(kg·K)'),
    via: cite('open-libraries', 'open code, 0.33'),
    standing: 'seen',
  },
];

export const radiationChecks: readonly Check[] = [...radiation, ...sky, ...conduction, ...infiltration];
