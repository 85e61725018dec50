import { cite, type Citation } from '../sources.ts';

/** A soil as its conductivity depends on it. */
export interface Soil {
  readonly label: string;
  /** Dry mass per volume in place [kg/m³]. */
  readonly dryDensity: number;
  /** Quartz as a share of the grains [1]: it conducts four times as well as other minerals. */
  readonly quartz: number;
  /** Decides how quickly water bridges the grains. */
  readonly grain: 'coarse' | 'fine';
  readonly cites: readonly Citation[];
}

const quartzCite = cite('johansen1975', 'quartz by texture, from memory');

export const soils = {
  sand: {
    label: 'Sand',
    dryDensity: 1700,
    quartz: 0.8,
    grain: 'coarse',
    cites: [quartzCite, cite('en12524', 'sand and gravel, 1700 to 2200 kg/m³')],
  },
  loam: {
    label: 'Loam',
    dryDensity: 1500,
    quartz: 0.4,
    grain: 'fine',
    cites: [quartzCite, cite('assumption', 'dry density of loam under a house')],
  },
  clay: {
    label: 'Clay or silt',
    dryDensity: 1500,
    quartz: 0.25,
    grain: 'fine',
    cites: [quartzCite, cite('en12524', 'clay or silt, 1200 to 1800 kg/m³')],
  },
} as const satisfies Record<string, Soil>;
