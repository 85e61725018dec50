import type { Bench } from '../bench/fields.ts';
import { loopVolume, loopWallMass, pipeInside } from '../bench/geometry.ts';
import { startBench } from '../bench/start.ts';
import { cite } from '../cite.ts';
import { pipes } from '../tables/pipes.ts';
import type { Check, Tolerance } from './check.ts';

const foot = 0.3048;
const pound = 0.45359237;
const inch = 0.0254;

type PipeId = keyof typeof pipes;

/** A bench whose loop is one metre of this pipe. */
const metreOf = (pipe: PipeId): Bench => {
  const bench = startBench();
  return { ...bench, loop: { ...bench.loop, pipe, length: 1 } };
};

/** Least wall of the standard against the mean wall that is made. */
const meanWall: Tolerance = {
  share: 0.01,
  because: 'the printed bore is for a mean wall, 3 % above the least one, which the guide takes',
};

const volumes = (
  [
    ['thin-wall-4in', '8.3729', cite('astm-d2729', '4.215 in and 4.065 in')],
    ['thin-wall-3in', '4.9009', cite('astm-d2729', '3.25 in and 3.11 in')],
    ['sdr35-4in', '8.0063', cite('astm-d3034', '4.215 in and 0.120 in')],
    ['drain-110', '8.4296', cite('en1401', '110 mm × 3.2 mm')],
    ['drain-75', '3.7393', cite('en1329', '75 mm × 3.0 mm')],
  ] as const
).map(([id, printed, from]): Check => ({
  what: 'volume of a pipe, worked out apart from this code',
  given: pipes[id].label,
  printed,
  unit: 'L/m',
  computed: () => 1000 * loopVolume(metreOf(id)),
  kind: 'program check',
  from,
  standing: from.source === 'en1329' ? 'memory' : 'seen',
}));

const schedule40 = (
  [
    ['schedule40-2in', '2.058', '0.68'],
    ['schedule40-3in', '3.055', '1.41'],
    ['schedule40-4in', '4.012', '2.01'],
  ] as const
).flatMap(([id, diameter, weight]): Check[] => [
  {
    what: 'bore of a pipe',
    given: pipes[id].label,
    printed: diameter,
    unit: 'in',
    computed: () => pipeInside(pipes[id]) / inch,
    tolerance: meanWall,
    kind: 'table',
    from: cite('astm-d1785', 'mean bore'),
    via: cite('open-libraries', 'table of pipes of an institute of pump makers'),
    standing: 'seen',
  },
  {
    what: 'weight of a pipe',
    given: pipes[id].label,
    printed: weight,
    unit: 'lb/ft',
    computed: () => (loopWallMass(metreOf(id)) * foot) / pound,
    tolerance: {
      share: 0.06,
      because: 'mean wall 3 % above the least one, and 2 to 3 % between densities of PVC',
    },
    kind: 'table',
    from: cite('astm-d1785', 'weights of the trade'),
    standing: 'memory',
  },
]);

const growth: readonly Check[] = [
  {
    what: 'growth of a PVC pipe',
    given: '100 ft, 10 °F',
    printed: '0.36',
    unit: 'in',
    computed: () => (pipes['schedule40-4in'].expansion * (10 / 1.8) * 100 * foot) / inch,
    kind: 'table',
    from: cite('pvc-supplier', 'a rule of the trade'),
    standing: 'memory',
    tolerance: { share: 0.07, because: 'coefficients of PVC from 5.0 to 5.4e-5 per K are in use' },
  },
  {
    what: 'growth of a PVC pipe',
    given: '6 m, 25 K',
    printed: '8',
    unit: 'mm',
    computed: () => 1000 * pipes['drain-110'].expansion * 25 * 6,
    kind: 'program check',
    from: cite('pvc-supplier', 'expansion 5.2 to 5.4e-5 per K, worked out apart from this code'),
    standing: 'seen',
  },
];

export const pipeChecks: readonly Check[] = [...volumes, ...schedule40, ...growth];
