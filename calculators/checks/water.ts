import { cite } from '../cite.ts';
import * as release from '../properties/liquid-water-release.ts';
import {
  freezingExpansion,
  waterConductivity,
  waterDensity,
  waterExpansion,
  waterFusionHeat,
  waterHeatCapacity,
  waterViscosity,
} from '../properties/water.ts';
import type { Check, Common, Tolerance } from './check.ts';

const release8 = {
  kind: 'program check',
  from: cite('iapws-sr6', 'table 8'),
  via: cite('open-libraries', 'iapws, tests'),
  standing: 'seen',
} as const satisfies Common;

/** Every equation of the release at its three check temperatures. */
const checkTable = (
  [
    [260, '4300.17472', '997.068360', '-3.86550941e-7', '3058.36075', '0.515628010'],
    [298.15, '4181.44618', '997.047013', '2.58054178e-7', '889.996774', '0.606502308'],
    [375, '4217.74697', '957.009710', '7.94706623e-7', '276.207245', '0.677913788'],
  ] as const
).flatMap(([kelvin, heatCapacity, density, slope, viscosity, conductivity]): Check[] => {
  const t = kelvin - 273.15;
  const given = `${kelvin} K, 0.1 MPa`;
  const rows: Check[] = [
    {
      ...release8,
      what: 'heat capacity of water',
      given,
      printed: heatCapacity,
      unit: 'J/(kg·K)',
      computed: () => release.heatCapacity(t),
    },
    {
      ...release8,
      what: 'density of water',
      given,
      printed: density,
      unit: 'kg/m³',
      computed: () => 1 / release.specificVolume(t),
    },
    {
      ...release8,
      what: 'slope of the specific volume of water',
      given,
      printed: slope,
      unit: 'm³/(kg·K)',
      computed: () => release.specificVolumeSlope(t),
    },
    {
      ...release8,
      what: 'viscosity of water',
      given,
      printed: viscosity,
      unit: 'µPa·s',
      computed: () => 1e6 * release.viscosity(t),
    },
  ];
  // Below 0 °C the release gives a check value of the program but not a range: the guide refuses it there.
  if (t < 0) return rows;
  return [
    ...rows,
    {
      ...release8,
      what: 'conductivity of water',
      given,
      printed: conductivity,
      unit: 'W/(m·K)',
      computed: () => release.conductivity(t),
    },
  ];
});

const otherFormula: Tolerance = {
  plusMinus: 0.005,
  because: 'another formula for the same water: they differ by up to 0.003 kg/m³',
};

const tanaka = (
  [
    [0, '999.8428'],
    [10, '999.7027'],
    [15, '999.1026'],
    [20, '998.2067'],
    [30, '995.6488'],
  ] as const
).map(([t, printed]): Check => ({
  what: 'density of water',
  given: `${t} °C`,
  printed,
  unit: 'kg/m³',
  computed: () => waterDensity(t),
  tolerance: otherFormula,
  kind: 'table',
  from: cite('tanaka2001', 'density from 0 to 30 °C'),
  via: cite('open-libraries', 'preMetabolizer, reference'),
  standing: 'seen',
}));

const kell = (
  [
    [25, '997.0448954179155'],
    [50, '988.0362916114763'],
  ] as const
).map(([t, printed]): Check => ({
  what: 'density of water',
  given: `${t} °C`,
  printed,
  unit: 'kg/m³',
  computed: () => waterDensity(t),
  tolerance: otherFormula,
  kind: 'program check',
  from: cite('kell1975', 'equation for the density at 1 atm'),
  via: cite('open-libraries', 'docstring of open code'),
  standing: 'seen',
}));

const anotherPressure = (share: number): Tolerance => ({
  share,
  because: '998 kg/m³ at 25 °C is water at about 2 MPa, not 0.1 MPa',
});

const others: readonly Check[] = [
  {
    what: 'viscosity of water',
    given: '998 kg/m³, 298.15 K',
    printed: '889.735100',
    unit: 'µPa·s',
    computed: () => 1e6 * waterViscosity(25),
    tolerance: anotherPressure(0.001),
    kind: 'program check',
    from: cite('iapws-r12', 'table 4'),
    via: cite('open-libraries', 'iapws, tests'),
    standing: 'seen',
  },
  {
    what: 'conductivity of water',
    given: '998 kg/m³, 298.15 K',
    printed: '607.712868',
    unit: 'mW/(m·K)',
    computed: () => 1000 * waterConductivity(25),
    tolerance: anotherPressure(0.003),
    kind: 'program check',
    from: cite('iapws-r15', 'table 4'),
    via: cite('open-libraries', 'iapws, tests'),
    standing: 'seen',
  },
  {
    what: 'density of water',
    given: '300 K, saturated',
    printed: '996.5130274681278',
    unit: 'kg/m³',
    computed: () => waterDensity(26.85),
    tolerance: { plusMinus: 0.05, because: 'saturated water is at 3.5 kPa; 0.1 MPa press it by 0.04 kg/m³' },
    kind: 'program check',
    from: cite('iapws-95', 'saturated water at 300 K'),
    via: cite('open-libraries', 'chemicals, tests'),
    standing: 'seen',
  },
  {
    what: 'enthalpy of ice, as the heat of fusion',
    given: '273.1525 K, 1 atm',
    printed: '-333.354873637',
    unit: 'kJ/kg',
    computed: () => -waterFusionHeat / 1000,
    tolerance: { plusMinus: 0.1, because: 'the enthalpy of water at 0 °C is not zero but 0.06 kJ/kg' },
    kind: 'program check',
    from: cite('iapws-r10', 'table 6'),
    via: cite('open-libraries', 'iapws, tests'),
    standing: 'seen',
  },
  {
    what: 'swelling of water as it freezes',
    given: '0 °C',
    printed: '9',
    unit: '%',
    computed: () => 100 * freezingExpansion(),
    kind: 'table',
    from: cite('ashrae-fundamentals', 'every textbook of physics has it'),
    standing: 'memory',
  },
];

/** Values of an engineering library at whole degrees, with the digits that it prints. */
const engineering = {
  kind: 'program check',
  from: cite('open-libraries', 'SecondaryCoolantProps, tests of water'),
  standing: 'seen',
} as const;

const engineeringRows = (
  [
    [1, '999.9', '4216', '0.001731', '0.5582'],
    [5, '1000', '4205', '0.001518', '0.5678'],
    [10, '999.7', '4195', '0.001306', '0.5788'],
    [25, '997.0', '4181', '0.000890', '0.6065'],
    [50, '988.0', '4181', '0.0005465', '0.6406'],
  ] as const
).flatMap(([t, density, heatCapacity, viscosity, conductivity]): Check[] => {
  const given = `${t} °C`;
  return [
    {
      ...engineering,
      what: 'density of water',
      given,
      printed: density,
      unit: 'kg/m³',
      computed: () => waterDensity(t),
    },
    {
      ...engineering,
      what: 'heat capacity of water',
      given,
      printed: heatCapacity,
      unit: 'J/(kg·K)',
      computed: () => waterHeatCapacity(t),
    },
    {
      ...engineering,
      what: 'viscosity of water',
      given,
      printed: viscosity,
      unit: 'Pa·s',
      computed: () => waterViscosity(t),
    },
    {
      ...engineering,
      what: 'conductivity of water',
      given,
      printed: conductivity,
      unit: 'W/(m·K)',
      computed: () => waterConductivity(t),
    },
  ];
});

const expansion: Check = {
  what: 'volume expansion of water',
  given: '20 °C',
  printed: '0.000207',
  unit: '1/K',
  computed: () => waterExpansion(20),
  kind: 'table',
  from: cite('ashrae-fundamentals', 'common tables of physics'),
  standing: 'memory',
};

export const waterChecks: readonly Check[] = [
  ...checkTable,
  ...tanaka,
  ...kell,
  ...others,
  ...engineeringRows,
  expansion,
];
