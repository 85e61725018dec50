import { cite } from '../cite.ts';
import { air, standardPressure } from '../properties/air.ts';
import {
  dewPoint,
  humidityRatio,
  moistConductivity,
  moistDensity,
  moistHeatCapacity,
  moistPrandtl,
  moistViscosity,
  saturationHumidity,
  saturationPressure,
} from '../properties/moist-air.ts';
import { fromCompanion } from './books.ts';
import type { Check, Common, Tolerance } from './check.ts';

const tablesDiffer = (share: number): Tolerance => ({
  share,
  because:
    'printed tables of air differ among themselves by as much (conductivity 2.5 %, Prandtl number 3 %)',
});
const idealGas: Tolerance = { share: 0.002, because: 'ideal gas against rounded table' };

const cengel = {
  kind: 'table',
  from: cite('cengel-a15', 'air at 1 atm'),
  standing: 'seen',
} as const satisfies Common;

/** °C; density, heat capacity, conductivity, dynamic and kinematic viscosity in SI, Prandtl number. */
const cengelTable = [
  [-50, '1.582', '999', '0.01979', '1.474e-5', '9.319e-6', '0.744'],
  [-40, '1.514', '1002', '0.02057', '1.527e-5', '1.008e-5', '0.7436'],
  [-30, '1.451', '1004', '0.02134', '1.579e-5', '1.087e-5', '0.7425'],
  [-20, '1.394', '1005', '0.02211', '1.630e-5', '1.169e-5', '0.7408'],
  [-10, '1.341', '1006', '0.02288', '1.680e-5', '1.252e-5', '0.7387'],
  [0, '1.292', '1006', '0.02364', '1.729e-5', '1.338e-5', '0.7362'],
  [5, '1.269', '1006', '0.02401', '1.754e-5', '1.382e-5', '0.735'],
  [10, '1.246', '1006', '0.02439', '1.778e-5', '1.426e-5', '0.7336'],
  [15, '1.225', '1007', '0.02476', '1.802e-5', '1.470e-5', '0.7323'],
  [20, '1.204', '1007', '0.02514', '1.825e-5', '1.516e-5', '0.7309'],
  [25, '1.184', '1007', '0.02551', '1.849e-5', '1.562e-5', '0.7296'],
  [30, '1.164', '1007', '0.02588', '1.872e-5', '1.608e-5', '0.7282'],
  [35, '1.145', '1007', '0.02625', '1.895e-5', '1.655e-5', '0.7268'],
  [40, '1.127', '1007', '0.02662', '1.918e-5', '1.702e-5', '0.7255'],
  [45, '1.109', '1007', '0.02699', '1.941e-5', '1.750e-5', '0.7241'],
  [50, '1.092', '1007', '0.02735', '1.963e-5', '1.798e-5', '0.7228'],
  [60, '1.059', '1007', '0.02808', '2.008e-5', '1.896e-5', '0.7202'],
] as const;

const cengelRows = cengelTable.flatMap(
  ([t, density, heatCapacity, conductivity, viscosity, kinematic, prandtl]): Check[] => {
    const given = `${t} °C`;
    return [
      {
        ...cengel,
        what: 'density of air',
        given,
        printed: density,
        unit: 'kg/m³',
        computed: () => air(t).density,
        tolerance: idealGas,
      },
      {
        ...cengel,
        what: 'heat capacity of air',
        given,
        printed: heatCapacity,
        unit: 'J/(kg·K)',
        computed: () => air(t).heatCapacity,
        tolerance: { share: 0.008, because: 'one value for all temperatures; 0.7 % at −50 °C' },
      },
      {
        ...cengel,
        what: 'conductivity of air',
        given,
        printed: conductivity,
        unit: 'W/(m·K)',
        computed: () => air(t).conductivity,
        tolerance: tablesDiffer(0.03),
      },
      {
        ...cengel,
        what: 'viscosity of air',
        given,
        printed: viscosity,
        unit: 'Pa·s',
        computed: () => air(t).viscosity,
        tolerance: tablesDiffer(0.012),
      },
      {
        ...cengel,
        what: 'kinematic viscosity of air',
        given,
        printed: kinematic,
        unit: 'm²/s',
        computed: () => air(t).kinematicViscosity,
        tolerance: tablesDiffer(0.014),
      },
      {
        ...cengel,
        what: 'Prandtl number of air',
        given,
        printed: prandtl,
        unit: '',
        computed: () => air(t).prandtl,
        tolerance: tablesDiffer(0.035),
      },
    ];
  },
);

/** The book's density is that at 1 bar, 1.3 % below 1 atm, and so are its kinematic viscosity and diffusivity above. */
const atOneBar: Tolerance = {
  share: 0.02,
  because: 'the table is for 1 bar, 1.3 % below 1 atm, and is rounded',
};

const incropera = (
  [
    [250, 11.44, 15.9, '0.0223', '0.720', 'seen'],
    [300, 15.89, 22.5, '0.0263', '0.707', 'seen'],
    [350, 20.92, 29.9, '0.0300', '0.700', 'seen'],
  ] as const
).flatMap(([kelvin, kinematic, diffusivity, conductivity, prandtl, standing]): Check[] => {
  const common = {
    given: `${kelvin} K`,
    kind: 'table',
    from: cite('incropera', 'table A.4'),
    via: cite('open-libraries', 'open code that names the table'),
    standing,
  } as const;
  const at = () => air(kelvin - 273.15);
  return [
    {
      ...common,
      what: 'kinematic viscosity of air',
      printed: `${kinematic}e-6`,
      unit: 'm²/s',
      computed: () => at().kinematicViscosity,
      tolerance: atOneBar,
    },
    {
      ...common,
      what: 'thermal diffusivity of air',
      printed: `${diffusivity}e-6`,
      unit: 'm²/s',
      computed: () => at().conductivity / (at().density * at().heatCapacity),
      tolerance: atOneBar,
    },
    {
      ...common,
      what: 'conductivity of air',
      printed: conductivity,
      unit: 'W/(m·K)',
      computed: () => at().conductivity,
      tolerance: tablesDiffer(0.01),
    },
    {
      ...common,
      what: 'Prandtl number of air',
      printed: prandtl,
      unit: '',
      computed: () => at().prandtl,
      tolerance: tablesDiffer(0.015),
    },
  ];
});

/** Geopotential temperature of the standard atmosphere 5 km up [°C]: 288.15 K − 6.5 K per km of 4996.07 m. */
const fiveKilometres = 288.15 - 0.0065 * ((6_356_766 * 5000) / (6_356_766 + 5000)) - 273.15;

const standardAtmosphere = {
  given: '5 km altitude, 255.68 K',
  kind: 'program check',
  from: cite('us-standard-atmosphere', 'viscosity and conductivity'),
  via: cite('open-libraries', 'fluids, example'),
  standing: 'seen',
  tolerance: { share: 1e-9, because: 'sixteen digits of a program that evaluates the same formula' },
} as const satisfies Partial<Check>;

const single: readonly Check[] = [
  {
    ...standardAtmosphere,
    what: 'viscosity of air',
    printed: '1.628248135362207e-5',
    unit: 'Pa·s',
    computed: () => air(fiveKilometres).viscosity,
  },
  {
    ...standardAtmosphere,
    what: 'conductivity of air',
    printed: '0.02273190295142526',
    unit: 'W/(m·K)',
    computed: () => air(fiveKilometres).conductivity,
  },
  {
    what: 'viscosity of air',
    given: '300 K, thin gas',
    printed: '18.5230',
    unit: 'µPa·s',
    computed: () => 1e6 * air(26.85).viscosity,
    tolerance: tablesDiffer(0.01),
    kind: 'program check',
    from: cite('lemmon-jacobsen2004', 'air as a thin gas'),
    via: cite('open-libraries', 'CoolProp, tests'),
    standing: 'seen',
  },
  {
    what: 'conductivity of air',
    given: '300 K, thin gas',
    printed: '26.3529',
    unit: 'mW/(m·K)',
    computed: () => 1000 * air(26.85).conductivity,
    tolerance: tablesDiffer(0.01),
    kind: 'program check',
    from: cite('lemmon-jacobsen2004', 'air as a thin gas'),
    via: cite('open-libraries', 'CoolProp, tests'),
    standing: 'seen',
  },
  {
    what: 'standard pressure',
    given: 'sea level',
    printed: '101325',
    unit: 'Pa',
    computed: () => standardPressure,
    kind: 'table',
    from: cite('ashrae-fundamentals', '2017, chapter 1, table 1'),
    via: cite('open-libraries', 'psychrolib, tests'),
    standing: 'seen',
  },
];

const ashrae = {
  kind: 'table',
  from: cite('ashrae-fundamentals', '2017, chapter 1, tables 2 and 3'),
  via: cite('open-libraries', 'psychrolib, tests'),
  standing: 'seen',
} as const;

const moist = (
  [
    [-20, '103.24', '0.0006373', 0.01],
    [-5, '401.74', '0.0024863', 0.005],
    [5, '872.6', '0.005425', 0.005],
    [25, '3169.7', '0.020173', 0.005],
    [50, '12351.3', '0.086863', 0.01],
  ] as const
).flatMap(([t, pressure, humidity, share]): Check[] => [
  {
    ...ashrae,
    what: 'saturation pressure of water vapour',
    given: `${t} °C`,
    printed: pressure,
    unit: 'Pa',
    computed: () => saturationPressure(t),
    tolerance: {
      share: 3e-4,
      because: 'the handbook’s table comes from another formula than it prints: 300 ppm',
    },
  },
  {
    ...ashrae,
    what: 'humidity of saturated air',
    given: `${t} °C, 101325 Pa`,
    printed: humidity,
    unit: 'kg/kg',
    computed: () => saturationHumidity(t),
    tolerance: { share, because: 'the table is for real air, the formula for ideal gases' },
  },
]);

const fogTables: Tolerance = { share: 0.01, because: 'the book reads pressures of vapour off its own table' };

const nag = {
  given: '32 °C, 61.4 % of saturation, 1 atm',
  ...fromCompanion(cite('nag', 'example 15.1')),
};
const singh = { given: '30 °C, 60 % of saturation, 1 atm', ...fromCompanion(cite('singh', 'air of 60 %')) };
const hundy = fromCompanion(cite('hundy', 'chapter 24'));

const moistExamples: readonly Check[] = [
  {
    ...nag,
    what: 'density of moist air',
    printed: '1.1448',
    unit: 'kg/m³',
    computed: () => moistDensity(32, 0.6137),
    tolerance: fogTables,
  },
  {
    ...nag,
    what: 'humidity of air',
    printed: '0.018624',
    unit: 'kg/kg',
    computed: () => humidityRatio(32, 0.6137),
    tolerance: fogTables,
  },
  { ...singh, what: 'dew point', printed: '21.4', unit: '°C', computed: () => dewPoint(30, 0.6) },
  {
    ...singh,
    what: 'humidity of air',
    printed: '0.01606',
    unit: 'kg/kg',
    computed: () => humidityRatio(30, 0.6),
    tolerance: fogTables,
  },
  {
    what: 'dew point',
    given: '20 °C, 75 % of saturation',
    printed: '15.4',
    unit: '°C',
    computed: () => dewPoint(20, 0.75),
    kind: 'worked example',
    from: cite('cengel', 'Thermodynamics, dew on a window'),
    standing: 'memory',
  },
  {
    ...hundy,
    what: 'volume of moist air per mass of dry air',
    given: '20 °C, 60 % of saturation',
    printed: '0.8419',
    unit: 'm³/kg',
    computed: () => (1 + humidityRatio(20, 0.6)) / moistDensity(20, 0.6),
    tolerance: fogTables,
  },
  {
    ...hundy,
    what: 'density of dry air in the mountains',
    given: '−10 °C, 575 mbar',
    printed: '0.76',
    unit: 'kg/m³',
    computed: () => moistDensity(-10, 0, 57_500),
  },
];

const program = {
  kind: 'program check',
  from: cite('open-libraries', 'CoolProp 8.0, humid air'),
  standing: 'seen',
} as const satisfies Common;

const realGas: Tolerance = { share: 0.003, because: 'the program takes real gases, the guide ideal ones' };
const asDryAir: Tolerance = { share: 0.013, because: 'tables of dry air differ among themselves by as much' };
const warmVapour: Tolerance = {
  share: 0.015,
  because: 'saturated vapour of 60 °C has 6 % more than the handbook’s 1860 J/(kg·K) and a fifth of the heat',
};

/** °C, relative humidity; density and heat capacity in SI, Prandtl number. */
const humidAir = (
  [
    [-40, 0.5, '1.51599', '1005.7', '0.7179'],
    [-20, 1, '1.39514', '1006.1', '0.7143'],
    [0, 1, '1.29016', '1009.0', '0.7119'],
    [10, 1, '1.24158', '1012.5', '0.7116'],
    [20, 0.5, '1.19936', '1012.5', '0.7102'],
    [20, 1, '1.19413', '1019.1', '0.7125'],
    [40, 1, '1.09661', '1049.7', '0.7214'],
    [60, 1, '0.981592', '1134.2', '0.7514'],
  ] as const
).flatMap(([t, humidity, density, heatCapacity, prandtl]): Check[] => {
  const common = { ...program, given: `${t} °C, ${100 * humidity} % of saturation, 1 atm` };
  return [
    {
      ...common,
      what: 'density of moist air',
      printed: density,
      unit: 'kg/m³',
      computed: () => moistDensity(t, humidity),
      tolerance: realGas,
    },
    {
      ...common,
      what: 'heat capacity of moist air',
      printed: heatCapacity,
      unit: 'J/(kg·K)',
      computed: () => moistHeatCapacity(t, humidity),
      tolerance: warmVapour,
    },
    {
      ...common,
      what: 'Prandtl number of moist air',
      printed: prandtl,
      unit: '',
      computed: () => moistPrandtl(t, humidity),
      tolerance: tablesDiffer(0.03),
    },
  ];
});

/** °C, relative humidity; viscosity and conductivity in SI. Above 20 °C the program is one side of a disagreement. */
const humidTransport = (
  [
    [-40, 0.5, '1.51516e-5', '0.0212251'],
    [-20, 1, '1.61979e-5', '0.0228140'],
    [0, 1, '1.71923e-5', '0.0243653'],
    [10, 1, '1.76566e-5', '0.0251223'],
    [20, 0.5, '1.81432e-5', '0.0258661'],
    [20, 1, '1.80805e-5', '0.0258583'],
  ] as const
).map((row) => [...row, program] as const);

/** Wilke's rule on the program's own dry air and saturated vapour, worked out with its real saturated air. */
const byWilke = {
  kind: 'program check',
  from: cite(
    'open-libraries',
    'CoolProp 8.0, dry air and vapour, mixed by Wilke’s rule apart from this code',
  ),
  standing: 'seen',
} as const satisfies Common;
const wilkeTransport = (
  [
    [0.01, 1, '1.71646e-5', '0.0243117'],
    [20, 1, '1.79898e-5', '0.0256814'],
    [40, 1, '1.84670e-5', '0.0267509'],
    [60, 1, '1.81882e-5', '0.0272198'],
  ] as const
).map((row) => [...row, byWilke] as const);

const transport = [...humidTransport, ...wilkeTransport].flatMap(
  ([t, humidity, viscosity, conductivity, common]): Check[] => {
    const given = `${t} °C, ${100 * humidity} % of saturation, 1 atm${common === byWilke ? ', by Wilke’s rule' : ''}`;
    return [
      {
        ...common,
        what: 'viscosity of moist air',
        given,
        printed: viscosity,
        unit: 'Pa·s',
        computed: () => moistViscosity(t, humidity),
        tolerance: asDryAir,
      },
      {
        ...common,
        what: 'conductivity of moist air',
        given,
        printed: conductivity,
        unit: 'W/(m·K)',
        computed: () => moistConductivity(t, humidity),
        tolerance: tablesDiffer(0.025),
      },
    ];
  },
);

/** °C, viscosity of saturated air: the paper's polynomial of the fourth degree. */
const tsilingiris = (
  [
    [0, '1.7157e-5'],
    [10, '1.7594e-5'],
    [20, '1.7957e-5'],
    [30, '1.8230e-5'],
    [40, '1.8374e-5'],
    [60, '1.8034e-5'],
  ] as const
).map(([t, viscosity]): Check => ({
  kind: 'table',
  from: cite('tsilingiris2008', 'viscosity of saturated air'),
  via: cite('open-libraries', 'several programs that carry its polynomial and agree'),
  standing: 'seen',
  what: 'viscosity of moist air',
  given: `${t} °C, saturated`,
  printed: viscosity,
  unit: 'Pa·s',
  computed: () => moistViscosity(t, 1),
  tolerance: asDryAir,
}));

export const airChecks: readonly Check[] = [
  ...cengelRows,
  ...incropera,
  ...single,
  ...moist,
  ...moistExamples,
  ...humidAir,
  ...transport,
  ...tsilingiris,
];
