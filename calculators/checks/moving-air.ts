import { cite } from '../cite.ts';
import {
  cylinderFlowFilm,
  cylinderFlowNusselt,
  mixedFilm,
  plateFlowFilm,
  plateFlowNusselt,
} from '../laws/forced-convection.ts';
import { cylinderFilm } from '../laws/natural-convection.ts';
import { radiantFlux } from '../laws/radiation.ts';
import { airOfBook, bookRounds, fromCompanion, fromStudyPage, sameFormula, shortKelvin } from './books.ts';
import type { Check, Tolerance } from './check.ts';

/** The book finds its air at the mean temperature to three digits and the Reynolds number from that. */
const airAndViscosity: Tolerance = {
  share: 0.025,
  because: 'conductivity and viscosity of the book’s own table, at most 2.5 % and 1.3 % away',
};

const crossFlow: readonly Check[] = [
  {
    what: 'Nusselt number of a cylinder across the flow, Churchill and Bernstein',
    given: 'Re 6071, Pr 0.7',
    printed: '40.63708594124974',
    unit: '',
    computed: () => cylinderFlowNusselt(6071, 0.7),
    tolerance: sameFormula,
    kind: 'program check',
    from: cite('churchill-bernstein1977', 'the whole correlation'),
    via: cite('open-libraries', 'ht, example'),
    standing: 'seen',
  },
  {
    ...fromCompanion(cite('cengel', 'example 7-5')),
    what: 'Nusselt number of a pipe in wind',
    given: 'pipe 0.1 m, 8 m/s, ν 1.896e-5 m²/s, Pr 0.7202',
    printed: '124',
    unit: '',
    computed: () => cylinderFlowNusselt((8 * 0.1) / 1.896e-5, 0.7202),
  },
  {
    ...fromCompanion(cite('cengel', 'example 7-5')),
    what: 'heat given off by a pipe in wind',
    given: 'pipe 0.1 m, 8 m/s, 110 °C in 10 °C',
    printed: '1098',
    unit: 'W/m',
    computed: () => cylinderFlowFilm(0.1, 8, 110, 10) * Math.PI * 0.1 * 100,
    tolerance: airAndViscosity,
  },
  {
    ...fromStudyPage('problem 7-53'),
    what: 'Nusselt number of a cylinder across the flow',
    given: 'Re 1.632e4, Pr 0.7255',
    printed: '71.19',
    unit: '',
    computed: () => cylinderFlowNusselt(1.632e4, 0.7255),
  },
  {
    ...fromStudyPage('problem 7-100'),
    what: 'Nusselt number of a cylinder across the flow',
    given: 'Re 3.254e4, Pr 0.7336',
    printed: '107.0',
    unit: '',
    computed: () => cylinderFlowNusselt(3.254e4, 0.7336),
  },
  {
    kind: 'worked example',
    from: cite('incropera', 'example 7.4, measured'),
    standing: 'memory',
    what: 'air film of a cylinder, measured in a wind tunnel',
    given: 'cylinder 12.7 mm, 10 m/s, 128.4 °C in 26.2 °C',
    printed: '102',
    unit: 'W/(m²·K)',
    computed: () => cylinderFlowFilm(0.0127, 10, 128.4, 26.2),
    tolerance: { share: 0.1, because: 'a measurement, which the book itself takes to be good to 10 %' },
  },
  {
    ...fromCompanion(cite('sukhatme', 'example 5.6')),
    what: 'heat given off by a cylinder in a draught',
    given: 'cylinder 0.075 m, 1.2 m/s, 100 °C in 20 °C',
    printed: '258.9',
    unit: 'W/m',
    computed: () => cylinderFlowFilm(0.075, 1.2, 100, 20) * Math.PI * 0.075 * 80,
    tolerance: airAndViscosity,
  },
  {
    ...fromCompanion(cite('sukhatme', 'example 6.6')),
    what: 'air film of a cylinder in a draught, natural and forced at once',
    given: 'cylinder 0.04 m, 0.3 m/s across, 70 °C in 30 °C',
    printed: '10.83',
    unit: 'W/(m²·K)',
    computed: () => mixedFilm(cylinderFilm(0.04, 70, 30), cylinderFlowFilm(0.04, 0.3, 70, 30), 4),
    tolerance: { share: 0.2, because: 'rules for mixed convection are good to 20 %, as their authors say' },
  },
];

/** Heated strips of 50 mm, one behind the other, in a wind of 60 m/s, 230 °C in 25 °C, 1 m wide. */
const strips = fromCompanion(cite('incropera', 'example 7.2'));
const stripReynolds = (60 * 0.05) / 26.41e-6;
const firstStrips = (count: number): number => 0.0338 * 205 * plateFlowNusselt(count * stripReynolds, 0.69);

const alongPlates: readonly Check[] = [
  {
    ...fromCompanion(cite('incropera', 'example 7.1')),
    what: 'heat given off by a plate in a gentle flow',
    given: 'Re 9600, Pr 0.687, 0.0364 W/(m·K), 273 K between plate and air',
    printed: '570',
    unit: 'W/m',
    computed: () => plateFlowNusselt(9600, 0.687) * 0.0364 * 273,
  },
  ...(
    [
      [1, '1370'],
      [5, '1017'],
      [6, '1427'],
    ] as const
  ).map(([strip, printed]): Check => ({
    ...strips,
    what: `heat given off by strip ${strip} of a plate along the flow`,
    given: 'strips of 50 mm, 60 m/s, ν 26.41e-6 m²/s, Pr 0.69, 0.0338 W/(m·K), 205 K',
    printed,
    unit: 'W/m',
    computed: () => firstStrips(strip) - (strip === 1 ? 0 : firstStrips(strip - 1)),
    tolerance: bookRounds,
  })),
  ...(
    [
      ['6 m side', '2687', 1.884e6],
      ['1.5 m side', '408', (8 * 1.5 * 0.823) / 2.097e-5],
    ] as const
  ).map(([side, printed, reynolds]): Check => ({
    kind: 'worked example',
    from: cite('cengel', 'example 7-2'),
    standing: 'memory',
    what: 'Nusselt number of a plate along the flow',
    given: `along its ${side}, Re ${reynolds.toPrecision(4)}, Pr 0.7154`,
    printed,
    unit: '',
    computed: () => plateFlowNusselt(reynolds, 0.7154),
    tolerance: bookRounds,
  })),
  {
    ...fromCompanion(cite('cengel', 'example 7-3')),
    what: 'heat radiated by a plate',
    given: 'plate 1.2 m × 1.2 m, 95 °C in 25 °C, emissivity 0.9',
    printed: '768',
    unit: 'W',
    computed: () => radiantFlux(0.9, 95, 25) * 1.44,
    tolerance: shortKelvin,
  },
  ...(
    [
      [0.2, '81.2'],
      [0.4, '114.8'],
    ] as const
  ).map(([length, printed]): Check => ({
    ...fromCompanion(cite('holman', 'example 5.4')),
    what: 'heat given off by a plate along the flow',
    given: `first ${length} m, 2 m/s, 60 °C in 27 °C`,
    printed,
    unit: 'W/m',
    computed: () => plateFlowFilm(length, 2, 60, 27) * length * 33,
    tolerance: airOfBook(0.025),
  })),
  {
    ...fromCompanion(cite('sukhatme', 'example 5.5')),
    what: 'heat given off by both sides of a plate along the flow',
    given: 'plate 0.2 m square, 15 m/s, 60 °C in 20 °C',
    printed: '109.4',
    unit: 'W',
    computed: () => plateFlowFilm(0.2, 15, 60, 20) * 2 * 0.04 * 40,
    tolerance: airAndViscosity,
  },
];

export const movingAirChecks: readonly Check[] = [...crossFlow, ...alongPlates];
