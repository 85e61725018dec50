import { cite, type Citation } from '../sources.ts';

/** A copper conductor of a feeder. */
export interface Conductor {
  readonly label: string;
  /** Direct-current resistance per length of one conductor [Ω/m] at `at` [°C]. */
  readonly resistance: number;
  readonly at: number;
  readonly cites: readonly Citation[];
}

/** Ω per 1000 ft at 75 °C, stranded, uncoated. */
const awg = (size: number, ohms: number): Conductor => ({
  label: `${size} AWG copper`,
  resistance: ohms / (1000 * 0.3048),
  at: 75,
  cites: [cite('nec-chapter9', `table 8, ${size} AWG stranded, uncoated copper`)],
});

/** Ω per km at 20 °C, class 1 or 2. */
const metric = (area: string, ohms: number): Conductor => ({
  label: `${area} mm² copper`,
  resistance: ohms / 1000,
  at: 20,
  cites: [cite('iec60228', `${area} mm², class 1 or 2, 20 °C`)],
});

export const conductors = {
  'awg-14': awg(14, 3.14),
  'awg-12': awg(12, 1.98),
  'awg-10': awg(10, 1.24),
  'awg-8': awg(8, 0.778),
  'awg-6': awg(6, 0.491),
  'mm2-1.5': metric('1.5', 12.1),
  'mm2-2.5': metric('2.5', 7.41),
  'mm2-4': metric('4', 4.61),
  'mm2-6': metric('6', 3.08),
  'mm2-10': metric('10', 1.83),
} as const satisfies Record<string, Conductor>;
