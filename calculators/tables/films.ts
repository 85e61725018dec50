import { cite, type Citation } from '../sources.ts';

/** A sheet that hangs as skirt or lies as cover. */
export interface Sheet {
  readonly label: string;
  /** Heat resistance of one layer of the sheet itself, without air films [m²K/W]. */
  readonly resistance: number;
  /** Share of long-wave radiation that one dry layer lets through [1]. */
  readonly longwaveDry: number;
  /** The same with a film of condensation on it [1]. */
  readonly longwaveWet: number;
  /** Long-wave emissivity of its faces [1]. */
  readonly emissivity: number;
  /** Air that the sheet itself lets through, as open area per area [1]; only cloth has any. */
  readonly porosity: number;
  readonly cites: readonly Citation[];
}

const filmCites = [
  cite('hanson1963', 'polyethylene lets most long-wave radiation through'),
  cite('ashrae-fundamentals', 'long-wave transmittance of films, from memory'),
];

export const sheets = {
  'film-plain': {
    label: 'Plain polyethylene film',
    resistance: 0.00015 / 0.33,
    longwaveDry: 0.75,
    longwaveWet: 0.05,
    emissivity: 0.9,
    porosity: 0,
    cites: [cite('en12524', 'LDPE 0.33 W/(m·K), 0.15 mm'), ...filmCites],
  },
  'film-infrared': {
    label: 'Polyethylene film that holds back heat radiation',
    resistance: 0.00015 / 0.33,
    longwaveDry: 0.3,
    longwaveWet: 0.05,
    emissivity: 0.9,
    porosity: 0,
    cites: [cite('en12524', 'LDPE 0.33 W/(m·K), 0.15 mm'), ...filmCites],
  },
  'twin-wall': {
    label: 'Twin-wall polycarbonate, 6 mm',
    // Published 0.65 Btu/(h·ft²·°F) = 3.69 W/(m²K) with air films of about 0.12 + 0.04 m²K/W taken off.
    resistance: 1 / 3.69 - 0.16,
    longwaveDry: 0,
    longwaveWet: 0,
    emissivity: 0.9,
    porosity: 0,
    cites: [
      cite('r-value-blog', 'twin wall 6 mm: R 1.54 h·ft²·°F/Btu with films'),
      cite('iso6946', 'films of 0.12 and 0.04 m²·K/W, from memory'),
    ],
  },
  'foam-board': {
    label: 'Rigid foam board, 25 mm',
    resistance: 0.025 / 0.0355,
    longwaveDry: 0,
    longwaveWet: 0,
    emissivity: 0.9,
    porosity: 0,
    cites: [
      cite(
        'open-libraries',
        'ht: polystyrene of beads, 20 kg/m³, 0.0355 W/(m·K), after a handbook of ASHRAE',
      ),
    ],
  },
  fleece: {
    label: 'Frost fleece, about 30 g/m²',
    resistance: 0.0003 / 0.05,
    longwaveDry: 0.4,
    longwaveWet: 0.1,
    emissivity: 0.9,
    porosity: 0.01,
    cites: [cite('assumption', 'thickness, porosity and long-wave transmittance of fleece')],
  },
} as const satisfies Record<string, Sheet>;
