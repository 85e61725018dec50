import { cite, type Citation } from '../sources.ts';

/** A potting medium. */
export interface Medium {
  readonly label: string;
  /** Water by volume after it has been soaked and has drained [1]. */
  readonly containerCapacity: number;
  /** Dry mass per volume in the pot [kg/m³]. */
  readonly bulkDensity: number;
  /** Conductivity dry and at container capacity [W/(m·K)]; moist media lie between in proportion to their water. */
  readonly conductivityDry: number;
  readonly conductivityWet: number;
  readonly cites: readonly Citation[];
}

/**
 * Specific heat capacity of dry organic matter [J/(kg·K)]: mean of 18 layers of drained peat at 0 °C, 1.202 J/(g·K), rising
 * by 0.0043 for each degree from −20 to 30 °C (Gnatowski and others 2022). Bark is taken to be like it.
 */
export const dryMatterHeatCapacity = 1202;

const conductivity = {
  conductivityDry: 0.05,
  conductivityWet: 0.5,
} as const;
/** What all media rest on. */
const common = [
  cite('heiskanen2000', 'peat 0.5 W/(m·K) wet to 0.05 dry'),
  cite('peat-transport', 'conductivity rises in a straight line with the water'),
  cite('gnatowski2022', 'dry matter of peat 1.202 J/(g·K) at 0 °C'),
];

export const media = {
  bark: {
    label: 'Pine bark',
    containerCapacity: 0.48,
    bulkDensity: 180,
    ...conductivity,
    cites: [cite('agronomy978528', 'table 1, pine bark'), ...common],
  },
  peat: {
    label: 'Peat',
    containerCapacity: 0.87,
    bulkDensity: 110,
    ...conductivity,
    cites: [cite('agronomy978528', 'table 1, peat'), ...common],
  },
  'peat-bark': {
    label: 'Peat and bark, half and half',
    containerCapacity: (0.48 + 0.87) / 2,
    bulkDensity: (180 + 110) / 2,
    ...conductivity,
    cites: [cite('agronomy978528', 'mean of the rows for pine bark and peat'), ...common],
  },
} as const satisfies Record<string, Medium>;
