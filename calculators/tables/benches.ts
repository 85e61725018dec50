import { cite, type Citation } from '../sources.ts';

/** What the pots stand on. */
export interface BenchTop {
  readonly label: string;
  /** Share of the uncovered top through which air can pass [1]. */
  readonly openShare: number;
  /** Heat resistance where it is closed [m²K/W]. */
  readonly resistance: number;
  readonly cites: readonly Citation[];
}

export const benchTops = {
  mesh: {
    label: 'Wire mesh',
    openShare: 0.8,
    resistance: 0,
    cites: [cite('assumption', 'welded mesh is about four fifths open')],
  },
  slats: {
    label: 'Wooden slats with gaps',
    openShare: 0.3,
    resistance: 0.018 / 0.13,
    cites: [
      cite('en12524', 'softwood and plywood 0.13 W/(m·K), 18 mm'),
      cite('assumption', 'three tenths open'),
    ],
  },
  film: {
    label: 'Mesh or slats with film laid under the pots',
    openShare: 0,
    resistance: 0.00015 / 0.33,
    cites: [cite('en12524', 'LDPE 0.33 W/(m·K), 0.15 mm')],
  },
  board: {
    label: 'Solid board, 12 mm plywood',
    openShare: 0,
    resistance: 0.012 / 0.13,
    cites: [cite('en12524', 'plywood 0.13 W/(m·K)')],
  },
} as const satisfies Record<string, BenchTop>;

/** The ground under the bench. */
export interface Floor {
  readonly label: string;
  /** The layer that lies on the soil [m], 0 for none. */
  readonly slab: number;
  readonly slabConductivity: number;
  readonly emissivity: number;
  readonly cites: readonly Citation[];
}

export const floors = {
  soil: {
    label: 'Bare soil',
    slab: 0,
    slabConductivity: 1.2,
    emissivity: 0.92,
    cites: [cite('emissivities', 'soil, dry: 0.92')],
  },
  gravel: {
    label: 'Gravel on soil',
    slab: 0.08,
    slabConductivity: 0.7,
    emissivity: 0.9,
    cites: [cite('emissivities', 'sand: 0.90'), cite('assumption', 'loose dry gravel 0.7 W/(m·K), 80 mm')],
  },
  concrete: {
    label: 'Concrete slab',
    slab: 0.1,
    slabConductivity: 1.6,
    emissivity: 0.92,
    cites: [
      cite('emissivities', 'concrete: 0.92'),
      cite('ashrae-fundamentals', 'concrete 1.6 W/(m·K), from memory'),
    ],
  },
} as const satisfies Record<string, Floor>;

/** The covering of the house. U-values include both air films. */
export interface HouseCovering {
  readonly label: string;
  readonly transmittance: number;
  readonly cites: readonly Citation[];
}

export const houseCoverings = {
  'single-film': {
    label: 'Single plastic film',
    transmittance: 6.2,
    cites: [
      cite('ep406', 'single polyethylene 6.2 W/(m²K)'),
      cite('extension-coverings', '5.7 to 6.8 W/(m²K)'),
    ],
  },
  'double-film': {
    label: 'Double plastic film, blown up',
    transmittance: 4.0,
    cites: [
      cite('ep406', 'double polyethylene 4.0 W/(m²K)'),
      cite('extension-coverings', '3.4 to 4.0 W/(m²K)'),
    ],
  },
  glass: {
    label: 'Single glass',
    transmittance: 6.2,
    cites: [cite('ep406', 'single glass 6.2 W/(m²K)')],
  },
  'twin-wall': {
    label: 'Twin-wall polycarbonate',
    transmittance: 3.6,
    cites: [cite('ep406', 'twin wall 3.2 to 3.6 W/(m²K)')],
  },
} as const satisfies Record<string, HouseCovering>;
