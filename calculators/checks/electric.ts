import { cite } from '../cite.ts';
import { ratedPower } from '../electric/cable.ts';
import {
  circuitCurrent,
  conductorResistance,
  currentOf,
  smallestBreaker,
  startUpRatio,
  threeWireDrop,
  voltageDrop,
  type Wire,
} from '../electric/circuit.ts';
import { cablePerPipeAt, pitchFor } from '../electric/winding.ts';
import { toBase } from '../quantities/quantity.ts';
import { conductors } from '../tables/conductors.ts';
import { ruleSets } from '../tables/rule-sets.ts';
import { fromCompanion } from './books.ts';
import type { Check } from './check.ts';

const feet = (length: number): number => toBase('length', length, 'ft');
const wattsPerFoot = (power: number): number => toBase('powerPerLength', power, 'W/ft');

const usBreaker = (power: number, voltage: number): number =>
  smallestBreaker(ruleSets.us, currentOf(power, voltage), 0) ?? Number.NaN;

/** What a printed number of a rule, a size or a count must be exactly. */
const exact = { plusMinus: 1e-9, because: 'a rule gives a whole number' } as const;

const rules: readonly Check[] = [
  {
    what: 'current that conductors and breaker must be good for',
    given: '16 A that flow for hours, US rules',
    printed: '20',
    unit: 'A',
    computed: () => circuitCurrent(ruleSets.us, 16, 0),
    tolerance: exact,
    kind: 'worked example',
    from: cite('nec', '210.19(A)(1)'),
    via: cite('exam-pages', '16 A that flow for hours'),
    standing: 'seen',
  },
  ...(
    [
      [1200, 120, '15'],
      [400, 120, '15'],
      [1920, 120, '20'],
      [2400, 240, '15'],
    ] as const
  ).map(([power, voltage, printed]): Check => ({
    what: 'smallest breaker',
    given: `${power} W at ${voltage} V for hours, US rules`,
    printed,
    unit: 'A',
    computed: () => usBreaker(power, voltage),
    tolerance: exact,
    kind: 'program check',
    from: cite('nec', '210.20(A) and 240.6(A), worked out by hand'),
    standing: 'memory',
  })),
  ...(
    [
      [50, '300', '2.5'],
      [100, '600', '5.0'],
    ] as const
  ).flatMap(([length, power, current]): Check[] => {
    const common = {
      given: `${length} ft of 6 W/ft cable at 120 V`,
      kind: 'worked example',
      from: cite('engineer-fix', 'heat tape of 6 W/ft'),
      standing: 'seen',
    } as const;
    const watts = () => ratedPower({ powerPerLength: wattsPerFoot(6), length: feet(length) });
    return [
      { ...common, what: 'power of the cable', printed: power, unit: 'W', computed: watts },
      {
        ...common,
        what: 'current of the cable',
        printed: current,
        unit: 'A',
        computed: () => currentOf(watts(), 120),
      },
    ];
  }),
  {
    what: 'power of soil-warming cable',
    given: '60 ft of 6.67 W/ft',
    printed: '400',
    unit: 'W',
    computed: () => ratedPower({ powerPerLength: wattsPerFoot(6.67), length: feet(60) }),
    kind: 'worked example',
    from: cite('usu-extension', 'cable of 400 W, 60 ft long'),
    standing: 'seen',
  },
];

const drops = (
  [
    ['awg-12', '7.9', '6.6'],
    ['awg-8', '3.1', '2.6'],
  ] as const
).flatMap(([conductor, volts, percent]): Check[] => {
  const common = {
    given: `20 A through 100 ft of ${conductors[conductor].label}, 120 V`,
    kind: 'worked example',
    from: cite('exam-pages', 'K = 12.9 and circular mils'),
    standing: 'seen',
  } as const;
  const drop = () => voltageDrop(conductors[conductor], feet(100), 20);
  return [
    { ...common, what: 'voltage drop', printed: volts, unit: 'V', computed: drop },
    {
      ...common,
      what: 'voltage drop as a share',
      printed: percent,
      unit: '%',
      computed: () => (100 * drop()) / 120,
    },
  ];
});

/** A wire whose resistance a book gives as it is in use: said to be at 70 °C, so that the guide leaves it as it is. */
const asGiven = (ohmPerMetre: number): Wire => ({ resistance: ohmPerMetre, at: 70 });

/** A two-wire feeder from 250 V in three sections: length [m] and current [A] of each, and the voltage at its end. */
const sections = [
  { end: 'B', length: 75, current: 47, printed: '245.35' },
  { end: 'C', length: 100, current: 35, printed: '240.73' },
  { end: 'D', length: 50, current: 20, printed: '239.41' },
] as const;
const feederWire = asGiven(0.066 / 100);

/** Three wires of 0.05 Ω each from 250 V on either side of the neutral to 3 Ω and 4 Ω: voltages at the loads. */
const loads = [
  { ohm: 3, printed: '244.9' },
  { ohm: 4, printed: '247.9' },
] as const;

const feeders: readonly Check[] = [
  ...sections.map(({ end, printed }, index): Check => ({
    ...fromCompanion(cite('mehta', 'example 13.4')),
    what: `voltage at tapping ${end} of a feeder`,
    given: '250 V; 75 m of 47 A, 100 m of 35 A, 50 m of 20 A; 0.066 Ω per 100 m of one core',
    printed,
    unit: 'V',
    computed: () =>
      sections
        .slice(0, index + 1)
        .reduce((volts, { length, current }) => volts - voltageDrop(feederWire, length, current), 250),
  })),
  ...loads.map(({ ohm, printed }, index): Check => {
    const [own, other] = [loads[index]!, loads[1 - index]!];
    return {
      ...fromCompanion(cite('thareja', 'example 40.20')),
      what: 'voltage at a load between one leg and the neutral',
      given: `${ohm} Ω on this leg, ${other.ohm} Ω on the other, 250 V on each, three wires of 0.05 Ω`,
      printed,
      unit: 'V',
      computed: () =>
        250 -
        threeWireDrop(asGiven(0.05), 1, Number(own.printed) / own.ohm, Number(other.printed) / other.ohm),
    };
  }),
];

/** Factor that takes a resistance measured at t to 20 °C. */
const corrections = (
  [
    [5, '1.064'],
    [30, '0.962'],
    [50, '0.893'],
    [70, '0.833'],
    [75, '0.820'],
  ] as const
).map(([t, printed]): Check => ({
  what: 'resistance of copper at 20 °C over that at the temperature',
  given: `${t} °C`,
  printed,
  unit: '',
  computed: () =>
    conductorResistance(conductors['mm2-2.5'], 20) / conductorResistance(conductors['mm2-2.5'], t),
  tolerance: {
    share: 0.004,
    because: 'the standard rounds the coefficient of copper, 0.00393 per K, up to 0.004',
  },
  kind: 'table',
  from: cite('iec60228', 'temperature correction factors'),
  standing: 'seen',
}));

/** NEC table 8 (at 75 °C) against IEC 60228 (at 20 °C), two tables of one metal: 10 AWG is 5.26 mm². */
const twoTables: Check = {
  what: 'resistance of 10 AWG stranded copper',
  given: '20 °C, from IEC 60228, 6 mm², by area',
  printed: '3.51',
  unit: 'Ω/km',
  computed: () => 1000 * conductorResistance(conductors['awg-10'], 20),
  tolerance: { share: 0.05, because: 'maximum values of two standards, with strands laid differently' },
  kind: 'table',
  from: cite('iec60228', '6 mm², 3.08 Ω/km, × 6 / 5.26'),
  standing: 'seen',
};

const helix = (
  [
    [107.061, 6, 50, '7.1739'],
    [107.061, 6, 100, '3.69'],
    [107.061, 6, 150, '2.5704'],
    [107.061, 6, 300, '1.5498'],
    [60.3, 6, 100, '2.3105'],
  ] as const
).flatMap(([pipe, cable, pitch, ratio]): Check[] => {
  const common = {
    given: `${pipe} mm pipe, ${cable} mm cable, ${pitch} mm from turn to turn`,
    kind: 'program check',
    from: cite('helix', 'worked out apart from this code'),
    standing: 'memory',
  } as const;
  const computed = () => cablePerPipeAt(pipe / 1000, cable / 1000, pitch / 1000);
  return [
    {
      ...common,
      what: 'cable per pipe',
      printed: ratio,
      unit: 'm/m',
      computed,
      tolerance: { plusMinus: 5e-5, because: 'worked out to four decimals, a last zero left out' },
    },
  ];
});

const power = (
  [
    [107.061, 50, '117.68'],
    [107.061, 100, '60.53'],
    [107.061, 150, '42.17'],
    [107.061, 300, '25.42'],
    [60.3, 100, '37.90'],
  ] as const
).map(([pipe, pitch, printed]): Check => ({
  what: 'power per pipe with 5 W/ft cable',
  given: `${pipe} mm pipe, 6 mm cable, ${pitch} mm from turn to turn`,
  printed,
  unit: 'W/m',
  computed: () => wattsPerFoot(5) * cablePerPipeAt(pipe / 1000, 0.006, pitch / 1000),
  kind: 'program check',
  from: cite('helix', 'worked out apart from this code'),
  standing: 'memory',
}));

const spiral: Check = {
  what: 'cable per pipe at the pitch that brings 8 W/ft cable to 12 W/ft',
  given: '4 in thin-wall pipe, 6 mm cable',
  printed: '1.5',
  unit: 'ft/ft',
  computed: () => cablePerPipeAt(0.107061, 0.006, pitchFor(0.107061, 0.006, 12 / 8) ?? Number.NaN),
  tolerance: { plusMinus: 1e-9, because: 'a ratio of two whole numbers' },
  kind: 'worked example',
  from: cite('spiral-manual', 'cable of 8 W/ft where 12 W/ft are needed'),
  standing: 'seen',
};

/**
 * Longest self-regulating cable on a 30 A breaker, from the same printed table as the start-up draw, which the guide takes
 * from the column for 15 A: class [W/ft], temperature at start-up [°F], length [ft].
 */
const longest = (
  [
    [3, -20, '415'],
    [3, 0, '460'],
    [3, 50, '655'],
    [5, -20, '270'],
    [5, 0, '310'],
    [5, 50, '450'],
    [8, -20, '175'],
    [8, 0, '195'],
    [8, 50, '290'],
    [10, -20, '145'],
    [10, 0, '155'],
    [10, 50, '230'],
  ] as const
).map(([kind, fahrenheit, printed]): Check => ({
  what: 'longest self-regulating cable on a 30 A breaker at 120 V',
  given: `class of ${kind} W/ft, switched on at ${fahrenheit} °F`,
  printed,
  unit: 'ft',
  computed: () =>
    (0.8 * 30 * 120) /
    (kind * startUpRatio(wattsPerFoot(kind), toBase('temperature', fahrenheit, '°F') + 1e-9)),
  tolerance: {
    share: 0.1,
    because: 'the maker rounds both columns to 5 ft, and the largest class down by a tenth more',
  },
  kind: 'table',
  from: cite('startup-table', 'column for breakers of 30 A'),
  standing: 'seen',
}));

export const electricChecks: readonly Check[] = [
  ...rules,
  ...drops,
  ...feeders,
  ...corrections,
  twoTables,
  ...helix,
  ...power,
  spiral,
  ...longest,
];
