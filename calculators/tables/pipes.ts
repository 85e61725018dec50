import { messages } from '../say.ts';
import { cite, type Citation } from '../sources.ts';

/** A plastic pipe that a loop can be built of. Lengths in m, SI throughout, temperatures in °C. */
export interface Pipe {
  readonly label: string;
  readonly outsideDiameter: number;
  readonly wall: number;
  /** Thermal conductivity of the wall [W/(m·K)]. */
  readonly conductivity: number;
  /** Density of the wall [kg/m³]. */
  readonly density: number;
  /** Specific heat capacity of the wall [J/(kg·K)]. */
  readonly heatCapacity: number;
  /** Linear thermal expansion of the wall [1/K]. */
  readonly expansion: number;
  /** Highest temperature that the wall may have in service, without pressure [°C]. */
  readonly highestService: number;
  readonly cites: readonly Citation[];
}

const inch = 0.0254;

/** EN 12524 (conductivity, density, heat capacity); expansion and service limit from supplier pages. */
const pvc = {
  conductivity: 0.17,
  density: 1390,
  heatCapacity: 900,
  expansion: 5.3e-5,
  highestService: 60,
} as const;

const pvcCites = [
  cite('en12524', 'PVC: 0.17 W/(m·K), 1390 kg/m³, 900 J/(kg·K)'),
  cite('pvc-supplier', 'expansion 5.2 to 5.4e-5 per K, 60 °C in service'),
];

const pipe = (label: string, outsideDiameter: number, wall: number, ...cites: Citation[]): Pipe => ({
  label,
  outsideDiameter,
  wall,
  ...pvc,
  cites: [...cites, ...pvcCites],
});

export const pipes = {
  'drain-75': pipe(messages('75 mm drain, PVC-U (EN 1329)'), 0.075, 0.003, cite('en1329', '75 × 3.0')),
  'drain-110': pipe(messages('110 mm drain, PVC-U (EN 1401)'), 0.11, 0.0032, cite('en1401', '110 × 3.2')),
  'drain-125': pipe(messages('125 mm drain, PVC-U (EN 1401)'), 0.125, 0.0032, cite('en1401', '125 × 3.2')),
  'drain-160': pipe(messages('160 mm drain, PVC-U (EN 1401)'), 0.16, 0.004, cite('en1401', '160 × 4.0')),
  'thin-wall-3in': pipe(
    messages('3 in thin-wall drain, PVC (ASTM D2729)'),
    3.25 * inch,
    0.07 * inch,
    cite('astm-d2729', '3 in'),
  ),
  'thin-wall-4in': pipe(
    messages('4 in thin-wall drain, PVC (ASTM D2729)'),
    4.215 * inch,
    0.075 * inch,
    cite('astm-d2729', '4 in'),
  ),
  'sdr35-4in': pipe(
    messages('4 in sewer, PVC SDR 35 (ASTM D3034)'),
    4.215 * inch,
    0.12 * inch,
    cite('astm-d3034', '4 in'),
  ),
  'schedule40-2in': pipe(
    messages('2 in PVC Schedule 40 (ASTM D1785)'),
    2.375 * inch,
    0.154 * inch,
    cite('astm-d1785', '2 in'),
  ),
  'schedule40-3in': pipe(
    messages('3 in PVC Schedule 40 (ASTM D1785)'),
    3.5 * inch,
    0.216 * inch,
    cite('astm-d1785', '3 in'),
  ),
  'schedule40-4in': pipe(
    messages('4 in PVC Schedule 40 (ASTM D1785)'),
    4.5 * inch,
    0.237 * inch,
    cite('astm-d1785', '4 in'),
  ),
} as const satisfies Record<string, Pipe>;
