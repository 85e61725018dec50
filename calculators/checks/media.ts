import { cite } from '../cite.ts';
import {
  frozenConductivity,
  frozenConductivityRatio,
  mediumEnthalpy,
  mediumFreezes,
  mediumFusionHeat,
  mediumHeatCapacity,
} from '../properties/medium.ts';
import { dryMatterHeatCapacity, media } from '../tables/media.ts';
import type { Check, Tolerance } from './check.ts';

const pot = 7.6e-3;

const dryMatter: Tolerance = {
  share: 0.002,
  because: 'the reckoning takes the heat capacity of dry matter at 2 °C, the guide at 0 °C',
};

const worked = {
  kind: 'program check',
  from: cite('agronomy978528', 'table 1, worked out apart from this code'),
  standing: 'seen',
} as const;

const pots = (
  [
    ['pine bark, drained', 'bark', 1, '2.229', '160.0', '16.94', '1216.0'],
    ['pine bark, half of that water', 'bark', 0.5, '1.223', '80.0', '9.30', '608.0'],
    ['peat, drained', 'peat', 1, '3.778', '290.1', '28.72', '2204.0'],
  ] as const
).flatMap(([given, name, moisture, capacity, fusion, potCapacity, potFusion]): Check[] => {
  const medium = media[name];
  return [
    {
      ...worked,
      what: 'heat capacity of a medium',
      given,
      printed: capacity,
      unit: 'MJ/(m³·K)',
      computed: () => mediumHeatCapacity(medium, moisture) / 1e6,
      tolerance: dryMatter,
    },
    {
      ...worked,
      what: 'heat that the water of a medium gives up as it freezes',
      given,
      printed: fusion,
      unit: 'MJ/m³',
      computed: () => mediumFusionHeat(medium, moisture) / 1e6,
    },
    {
      ...worked,
      what: 'heat capacity of a pot of 7.6 L',
      given,
      printed: potCapacity,
      unit: 'kJ/K',
      computed: () => (pot * mediumHeatCapacity(medium, moisture)) / 1000,
      tolerance: dryMatter,
    },
    {
      ...worked,
      what: 'heat that the water of a pot of 7.6 L gives up as it freezes',
      given,
      printed: potFusion,
      unit: 'kJ',
      computed: () => (pot * mediumFusionHeat(medium, moisture)) / 1000,
      tolerance: { share: 5e-4, because: 'four digits of intermediate values' },
    },
  ];
});

const cooling: Check = {
  ...worked,
  what: 'degrees that a wet pot cools by as much heat as its freezing gives',
  given: 'pine bark, drained',
  printed: '72',
  unit: 'K',
  computed: () => mediumFusionHeat(media.bark, 1) / mediumHeatCapacity(media.bark, 1),
};

/** The whole of what lies between thawed and frozen, sensible heat of half a degree and all. */
const throughFreezing: Check = {
  ...worked,
  what: 'heat between a medium at 0 °C and the same frozen through',
  given: 'pine bark, drained, per volume',
  printed: '160.0',
  unit: 'MJ/m³',
  computed: () =>
    (mediumEnthalpy(media.bark, 1, mediumFreezes.from) - mediumEnthalpy(media.bark, 1, mediumFreezes.to)) /
    1e6,
  tolerance: { share: 0.01, because: 'half a degree of sensible heat comes with it, 0.5 %' },
};

const oke: Check = {
  what: 'heat capacity of soaked peat',
  given: 'peat soil, 80 % pores, soaked',
  printed: '4.02',
  unit: 'MJ/(m³·K)',
  computed: () => mediumHeatCapacity(media.peat, 1) / 1e6,
  tolerance: { share: 0.1, because: 'potting peat holds 87 % of water by volume when it has drained' },
  kind: 'table',
  from: cite('oke1987', 'table 2.1'),
  standing: 'memory',
};

const kujala = { kind: 'table', from: cite('kujala2008', 'abstract'), standing: 'seen' } as const;

/** Peat at the middle of what they measured thawed [W/(m·K)], brought to its frozen state by the guide's factor. */
const frozenPeat: readonly Check[] = [
  {
    ...kujala,
    what: 'conductivity of frozen peat',
    given: 'saturated, 0.41 to 0.50 W/(m·K) thawed; of the guide, peat that has drained',
    printed: '1.48 to 1.49',
    unit: 'W/(m·K)',
    computed: () => 0.455 * frozenConductivityRatio(media.peat, 1),
    tolerance: { share: 0.1, because: 'the thawed values lie 10 % to either side of their middle' },
  },
  {
    ...kujala,
    what: 'conductivity of frozen peat',
    given: 'natural moisture, 0.23 to 0.28 W/(m·K) thawed; of the guide, peat that conducts as much thawed',
    printed: '0.43 to 0.67',
    unit: 'W/(m·K)',
    computed: () => frozenConductivity(media.peat, (0.255 - 0.05) / (0.5 - 0.05)),
  },
];

const dryPeat: Check = {
  what: 'heat capacity of dry matter',
  given: 'drained peat, 0 °C, mean of 18 layers',
  printed: '1.202',
  unit: 'J/(g·K)',
  computed: () => dryMatterHeatCapacity / 1000,
  kind: 'table',
  from: cite('gnatowski2022', 'abstract'),
  standing: 'seen',
};

export const mediaChecks: readonly Check[] = [...pots, cooling, throughFreezing, oke, dryPeat, ...frozenPeat];
