import { cite } from '../cite.ts';
import { burstShareFor } from '../properties/burst.ts';
import {
  freezingPointMelinder,
  massShareOf,
  mixConductivity,
  mixDensity,
  mixHeatCapacity,
  mixViscosity,
  volumeShareFor,
  volumeShareOf,
  freezingPoint,
  type Glycol,
} from '../properties/glycol.ts';
import { toBase } from '../quantities/quantity.ts';
import type { Check, Common, Tolerance } from './check.ts';

type PropertyRow = readonly [
  glycol: Glycol,
  share: number,
  t: number,
  first: string,
  second: string,
  third: string,
  fourth: string,
];

const melinderTests: Common = {
  kind: 'program check',
  from: cite('melinder2010', 'equations by mass'),
  via: cite('open-libraries', 'SecondaryCoolantProps, tests'),
  standing: 'seen',
};

/** Share by mass, °C; viscosity [Pa·s], density [kg/m³], heat capacity [J/(kg·K)], conductivity [W/(m·K)]. */
const byMass: readonly PropertyRow[] = [
  ['propylene', 0, 5, '1.5364e-3', '1000.3', '4204.8', '0.57124'],
  ['propylene', 0, 20, '1.0072e-3', '998.52', '4186.6', '0.59913'],
  ['propylene', 0, 40, '6.5033e-4', '992.53', '4178.3', '0.63007'],
  ['propylene', 0.2, 5, '3.4941e-3', '1019.1', '3945.9', '0.47647'],
  ['propylene', 0.2, 20, '2.0301e-3', '1014.8', '3976.8', '0.49221'],
  ['propylene', 0.2, 40, '1.1693e-3', '1006.4', '4019.0', '0.51228'],
  ['propylene', 0.4, 5, '8.9817e-3', '1040.1', '3658.0', '0.39089'],
  ['propylene', 0.4, 20, '4.3838e-3', '1032.3', '3706.7', '0.40026'],
  ['propylene', 0.4, 40, '2.1408e-3', '1020.1', '3770.8', '0.41321'],
  ['ethylene', 0, 5, '1.5186e-3', '999.15', '4202.7', '0.57137'],
  ['ethylene', 0, 20, '1.0078e-3', '997.35', '4186.2', '0.59913'],
  ['ethylene', 0, 40, '6.5721e-4', '991.81', '4178.5', '0.62983'],
  ['ethylene', 0.2, 5, '2.6594e-3', '1028.1', '3869.5', '0.49022'],
  ['ethylene', 0.2, 20, '1.6624e-3', '1024.1', '3896.2', '0.50766'],
  ['ethylene', 0.2, 40, '1.0133e-3', '1016.4', '3932.8', '0.52908'],
  ['ethylene', 0.4, 5, '4.7569e-3', '1058.5', '3455.9', '0.41376'],
  ['ethylene', 0.4, 20, '2.8191e-3', '1051.9', '3519.0', '0.4253'],
  ['ethylene', 0.4, 40, '1.6351e-3', '1041.4', '3597.8', '0.4405'],
];

const melinder = byMass.flatMap(([glycol, x, t, viscosity, density, heatCapacity, conductivity]): Check[] => {
  const given = `${x * 100} % ${glycol} glycol by mass, ${t} °C`;
  return [
    {
      ...melinderTests,
      what: 'viscosity of the mix',
      given,
      printed: viscosity,
      unit: 'Pa·s',
      computed: () => mixViscosity(glycol, x, t),
    },
    {
      ...melinderTests,
      what: 'density of the mix',
      given,
      printed: density,
      unit: 'kg/m³',
      computed: () => mixDensity(glycol, x, t),
    },
    {
      ...melinderTests,
      what: 'heat capacity of the mix',
      given,
      printed: heatCapacity,
      unit: 'J/(kg·K)',
      computed: () => mixHeatCapacity(glycol, x, t),
    },
    {
      ...melinderTests,
      what: 'conductivity of the mix',
      given,
      printed: conductivity,
      unit: 'W/(m·K)',
      computed: () => mixConductivity(glycol, x, t),
    },
  ];
});

const freezing = (
  [
    ['propylene', 0.1, '-2.867'],
    ['propylene', 0.2, '-7.173'],
    ['propylene', 0.3, '-12.789'],
    ['propylene', 0.4, '-20.568'],
    ['propylene', 0.5, '-32.193'],
    ['propylene', 0.6, '-50.003'],
    ['ethylene', 0.1, '-3.357'],
    ['ethylene', 0.2, '-7.949'],
    ['ethylene', 0.3, '-14.576'],
    ['ethylene', 0.4, '-23.813'],
    ['ethylene', 0.5, '-35.994'],
    ['ethylene', 0.6, '-51.201'],
  ] as const
).map(([glycol, x, printed]): Check => ({
  ...melinderTests,
  what: 'freezing point of the mix, Melinder’s equation',
  given: `${x * 100} % ${glycol} glycol by mass`,
  printed,
  unit: '°C',
  computed: () => freezingPointMelinder(glycol, x),
}));

const coldAndThick: Check = {
  what: 'viscosity of the mix',
  given: '60 % propylene glycol by mass, −20 °C',
  printed: '0.13907391053938878',
  unit: 'Pa·s',
  computed: () => mixViscosity('propylene', 0.6, -20),
  tolerance: { share: 1e-9, because: 'seventeen digits of a program that evaluates the same polynomial' },
  kind: 'program check',
  from: cite('melinder2010', 'viscosity of propylene glycol'),
  via: cite('open-libraries', 'CoolProp, example of its Python wrapper'),
  standing: 'seen',
};

/** Another fit to the same measurements: the two fits differ by up to 3.4 % at these shares. */
const otherFit = (
  [
    [0.42, 10, '0.007421231823'],
    [0.52, 10, '0.01137598557'],
    [0.57, 10, '0.01443949841'],
    [0.42, 30, '0.0032647355'],
    [0.52, 30, '0.004569447475'],
  ] as const
).map(([x, t, printed]): Check => ({
  what: 'viscosity of the mix',
  given: `${x * 100} % propylene glycol by mass, ${t} °C`,
  printed,
  unit: 'Pa·s',
  computed: () => mixViscosity('propylene', x, t),
  tolerance: {
    share: 0.05,
    because: 'measured data; fits of the viscosity of glycols are good to about 5 %',
  },
  kind: 'program check',
  from: cite('melinder2010', 'data of the viscosity of propylene glycol'),
  via: cite('open-libraries', 'CoolProp, test 1374'),
  standing: 'seen',
}));

/** Measured freezing points behind Melinder's equation, ethylene glycol: the equation was fitted to them. */
const freezingData = (
  [
    [0.1, '-3.401'],
    [0.15, '-5.446'],
    [0.2, '-7.932'],
    [0.25, '-10.960'],
    [0.3, '-14.597'],
    [0.35, '-18.891'],
    [0.4, '-23.874'],
    [0.45, '-29.575'],
    [0.5, '-36.028'],
  ] as const
).map(([x, printed]): Check => ({
  what: 'freezing point of the mix, Melinder’s data',
  given: `${x * 100} % ethylene glycol by mass`,
  printed,
  unit: '°C',
  computed: () => freezingPointMelinder('ethylene', x),
  tolerance: {
    plusMinus: 0.1,
    because: 'a polynomial through the data, which a thermometer reads to a tenth',
  },
  kind: 'table',
  from: cite('melinder2010', 'freezing points that the equation was fitted to'),
  via: cite('open-libraries', 'CoolProp, data'),
  standing: 'seen',
}));

/** Share by volume, °C; density [kg/m³], heat capacity [J/(kg·K)], conductivity [mW/(m·K)], viscosity [mPa·s]. */
const byVolume: readonly PropertyRow[] = [
  ['propylene', 0.3, -10, '1039.42', '3765', '410', '11.87'],
  ['propylene', 0.4, -10, '1048.79', '3603', '375', '23.27'],
  ['propylene', 0.5, -10, '1056.85', '3416', '342', '34.78'],
  ['propylene', 0.1, 0, '1013.85', '4042', '510', '2.68'],
  ['propylene', 0.2, 0, '1025.84', '3929', '464', '4.05'],
  ['propylene', 0.3, 0, '1036.24', '3793', '423', '7.08'],
  ['propylene', 0.4, 0, '1045.12', '3636', '385', '12.37'],
  ['propylene', 0.5, 0, '1052.71', '3455', '349', '18.40'],
  ['propylene', 0.1, 10, '1011.24', '4058', '527', '1.89'],
  ['propylene', 0.2, 10, '1022.68', '3951', '479', '2.79'],
  ['propylene', 0.3, 10, '1032.55', '3820', '434', '4.52'],
  ['propylene', 0.4, 10, '1040.94', '3669', '394', '7.22'],
  ['propylene', 0.5, 10, '1048.04', '3493', '356', '10.65'],
  ['propylene', 0.1, 20, '1008.13', '4075', '543', '1.42'],
  ['propylene', 0.2, 20, '1019.01', '3973', '492', '2.02'],
  ['propylene', 0.3, 20, '1028.35', '3848', '445', '3.06'],
  ['propylene', 0.4, 20, '1036.24', '3702', '402', '4.57'],
  ['propylene', 0.5, 20, '1042.87', '3532', '362', '6.65'],
  ['propylene', 0.1, 40, '1000.46', '4107', '569', '0.89'],
  ['propylene', 0.2, 40, '1010.16', '4016', '513', '1.18'],
  ['propylene', 0.3, 40, '1018.42', '3903', '462', '1.63'],
  ['propylene', 0.4, 40, '1025.3', '3768', '415', '2.21'],
  ['propylene', 0.5, 40, '1030.98', '3609', '372', '3.11'],
  ['ethylene', 0.3, -10, '1054.31', '3560', '415', '6.19'],
  ['ethylene', 0.4, -10, '1069.63', '3367', '383', '9.06'],
  ['ethylene', 0.5, -10, '1084.22', '3165', '354', '12.74'],
  ['ethylene', 0.1, 0, '1018.73', '3937', '511', '2.08'],
  ['ethylene', 0.2, 0, '1035.67', '3769', '468', '3.02'],
  ['ethylene', 0.3, 0, '1051.78', '3589', '429', '4.15'],
  ['ethylene', 0.4, 0, '1066.8', '3401', '395', '5.83'],
  ['ethylene', 0.5, 0, '1081.08', '3203', '364', '8.09'],
  ['ethylene', 0.1, 10, '1016.28', '3954', '528', '1.56'],
  ['ethylene', 0.2, 10, '1032.94', '3792', '483', '2.18'],
  ['ethylene', 0.3, 10, '1048.76', '3617', '442', '2.95'],
  ['ethylene', 0.4, 10, '1063.49', '3435', '405', '4.04'],
  ['ethylene', 0.5, 10, '1077.46', '3242', '373', '5.50'],
  ['ethylene', 0.1, 20, '1013.34', '3972', '545', '1.21'],
  ['ethylene', 0.2, 20, '1029.72', '3815', '497', '1.65'],
  ['ethylene', 0.3, 20, '1045.25', '3645', '453', '2.20'],
  ['ethylene', 0.4, 20, '1059.68', '3468', '415', '2.96'],
  ['ethylene', 0.5, 20, '1073.35', '3281', '380', '3.94'],
  ['ethylene', 0.1, 40, '1006.01', '4007', '572', '0.80'],
  ['ethylene', 0.2, 40, '1021.83', '3861', '520', '1.06'],
  ['ethylene', 0.3, 40, '1036.78', '3702', '473', '1.34'],
  ['ethylene', 0.4, 40, '1050.62', '3535', '431', '1.77'],
  ['ethylene', 0.5, 40, '1063.66', '3358', '394', '2.26'],
];

const ashraeTables = {
  kind: 'table',
  from: cite('ashrae2001-glycol', 'properties by volume'),
  via: cite('open-libraries', 'CoolProp, data'),
  standing: 'seen',
} as const;

/**
 * ASHRAE prints commercial, inhibited fluids, Melinder pure mixtures, and the guide computes by Melinder. So what is
 * checked is whether it matters which of the two one believes: against what each property decides in a bench.
 */
const needed = (share: number, decides: string): Tolerance => ({
  share,
  because: `inhibited fluids against pure mixtures; ${decides}`,
});
const massNeed = needed(0.01, 'one per cent of the mass of the loop is nothing that anyone can weigh');
const heatNeed = needed(0.03, 'three per cent of the heat capacity are minutes in a night');
const filmNeed = needed(0.05, 'five per cent of the conductivity move the film inside the pipe by four');
const flowNeed = needed(0.2, 'a fifth of the viscosity moves the film inside the pipe by five per cent');

const ashrae = byVolume.flatMap(([glycol, v, t, density, heatCapacity, conductivity, viscosity]): Check[] => {
  const x = massShareOf(glycol, v);
  const given = `${v * 100} % ${glycol} glycol by volume, ${t} °C`;
  return [
    {
      ...ashraeTables,
      what: 'density of the mix',
      given,
      printed: density,
      unit: 'kg/m³',
      computed: () => mixDensity(glycol, x, t),
      tolerance: massNeed,
    },
    {
      ...ashraeTables,
      what: 'heat capacity of the mix',
      given,
      printed: heatCapacity,
      unit: 'J/(kg·K)',
      computed: () => mixHeatCapacity(glycol, x, t),
      tolerance: heatNeed,
    },
    {
      ...ashraeTables,
      what: 'conductivity of the mix',
      given,
      printed: conductivity,
      unit: 'mW/(m·K)',
      computed: () => 1000 * mixConductivity(glycol, x, t),
      tolerance: filmNeed,
    },
    {
      ...ashraeTables,
      what: 'viscosity of the mix',
      given,
      printed: viscosity,
      unit: 'mPa·s',
      computed: () => 1000 * mixViscosity(glycol, x, t),
      tolerance: flowNeed,
    },
  ];
});

/** A trade table of inhibited fluids as a textbook prints it: how much antifreeze for which temperature. */
const tradeTable = (
  [
    ['propylene', 20, '18'],
    ['propylene', 10, '29'],
    ['propylene', 0, '36'],
    ['propylene', -10, '42'],
    ['propylene', -20, '46'],
    ['propylene', -30, '50'],
    ['propylene', -40, '55'],
    ['propylene', -50, '57'],
    ['ethylene', 20, '17'],
    ['ethylene', 10, '26'],
    ['ethylene', 0, '35'],
    ['ethylene', -10, '41'],
    ['ethylene', -20, '46'],
    ['ethylene', -30, '50'],
    ['ethylene', -40, '54'],
  ] as const
).map(([glycol, fahrenheit, printed]): Check => ({
  what: 'share by volume that keeps the mix liquid',
  given: `${glycol} glycol, ${fahrenheit} °F`,
  printed,
  unit: '%',
  computed: () => 100 * volumeShareFor(glycol, toBase('temperature', fahrenheit, '°F')),
  tolerance: {
    plusMinus: 0.07 * Number(printed) + 0.5,
    because: 'the concentrate of the trade holds 4 to 7 % beside its glycol, and whole per cent are printed',
  },
  kind: 'table',
  from: cite('hvacr-math2018', 'exercise 5-4, freeze protection'),
  standing: 'seen',
}));

/** Burst protection in another table of the trade, which is known from memory: it has tenths where the textbook rounds. */
const burst = (
  [
    ['propylene', 20, '12'],
    ['propylene', 10, '20'],
    ['propylene', 0, '24'],
    ['propylene', -10, '28'],
    ['propylene', -20, '30'],
    ['propylene', -30, '33'],
    ['propylene', -40, '35'],
    ['ethylene', 20, '11.5'],
    ['ethylene', 10, '17.8'],
    ['ethylene', 0, '23.1'],
    ['ethylene', -10, '27.3'],
    ['ethylene', -20, '31.4'],
    ['ethylene', -30, '31.4'],
  ] as const
).map(([glycol, fahrenheit, printed]): Check => ({
  what: 'share by volume that keeps a pipe from bursting',
  given: `${glycol} glycol, ${fahrenheit} °F`,
  printed,
  unit: '%',
  computed: () => 100 * burstShareFor(glycol, toBase('temperature', fahrenheit, '°F')),
  tolerance: { plusMinus: 1.5, because: 'two makers of fluid, one of whom rounds to whole per cent' },
  kind: 'table',
  from: cite('trade-glycol-table', 'burst protection'),
  standing: 'memory',
}));

/** 1000 gal of a mix with 30 % by weight, as a glossary of the trade works it out. */
const byWeight: Check = {
  what: 'concentrate for 1000 gal of a mix',
  given: '30 % ethylene glycol by weight',
  printed: '277.6',
  unit: 'gal',
  computed: () => 1000 * volumeShareOf('ethylene', 0.3),
  tolerance: { share: 0.005, because: 'the glossary takes 9.31 and 8.32 lb/gal and lets volumes add up' },
  kind: 'worked example',
  from: cite('glycol-glossary', 'mix of 30 % by weight'),
  standing: 'seen',
};

/** The design rule of the guide: 30 % by volume and 30 % by mass must not be mixed up. */
const byVolumeOrMass: readonly Check[] = [
  {
    what: 'freezing point of the mix',
    given: '30 % propylene glycol by volume',
    printed: '-13.1',
    unit: '°C',
    computed: () => freezingPoint('propylene', 0.3),
    kind: 'table',
    from: cite('ashrae2001-glycol', 'between the rows for 29.4 and 30.4 % by volume'),
    via: cite('open-libraries', 'CoolProp, data'),
    standing: 'seen',
  },
  {
    what: 'freezing point of the mix',
    given: '30 % ethylene glycol by volume',
    printed: '-15.7',
    unit: '°C',
    computed: () => freezingPoint('ethylene', 0.3),
    kind: 'table',
    from: cite('ashrae2001-glycol', 'between the rows for 29.6 and 30.6 % by volume'),
    via: cite('open-libraries', 'CoolProp, data'),
    standing: 'seen',
  },
];

export const glycolChecks: readonly Check[] = [
  ...melinder,
  ...freezing,
  coldAndThick,
  ...otherFit,
  ...freezingData,
  ...ashrae,
  ...tradeTable,
  ...burst,
  byWeight,
  ...byVolumeOrMass,
];
