import { messages } from '../say.ts';
import { cite, type Citation } from '../sources.ts';

/** A copper conductor of a feeder. */
export interface Conductor {
  readonly label: string;
  /** Direct-current resistance per length of one conductor [Ω/m] at `at` [°C]. */
  readonly resistance: number;
  readonly at: number;
  /** Highest breaker that may protect it [A]. */
  readonly highestBreaker: number;
  /** Whether that holds however the wire is laid, or only for a common way of laying it. */
  readonly breakerHolds: 'always' | 'as-laid';
  readonly cites: readonly Citation[];
}

/** The label of each conductor, by its size in AWG or its area in mm². */
const copper: Readonly<Record<string, string>> = messages({
  14: '14 AWG copper',
  12: '12 AWG copper',
  10: '10 AWG copper',
  8: '8 AWG copper',
  6: '6 AWG copper',
  '1.5 mm²': '1.5 mm² copper',
  '2.5 mm²': '2.5 mm² copper',
  '4 mm²': '4 mm² copper',
  '6 mm²': '6 mm² copper',
  '10 mm²': '10 mm² copper',
});

/**
 * Ω per 1000 ft at 75 °C, stranded, uncoated. Breakers: 240.4(D) of the code for 14, 12 and 10 AWG; for 8 and 6 AWG the
 * standard size at or below the 60 °C column of table 310.16 (40 and 55 A).
 */
const awg = (size: number, ohms: number, highestBreaker: number): Conductor => ({
  label: copper[size]!,
  resistance: ohms / (1000 * 0.3048),
  at: 75,
  highestBreaker,
  breakerHolds: size >= 10 ? 'always' : 'as-laid',
  cites: [
    cite('nec-chapter9', `table 8, ${size} AWG stranded, uncoated copper`),
    size >= 10
      ? cite('nec', `240.4(D), small conductors: ${highestBreaker} A for ${size} AWG copper`)
      : cite('nec', `table 310.16, ${size} AWG copper, 60 °C, from memory`),
  ],
});

/**
 * Ω per km at 20 °C, class 1 or 2. Breakers: the standard size at or below what two loaded conductors with PVC insulation
 * carry in the worst usual way, a cable in a tube in an insulated wall (method A2), at 30 °C: 14, 18.5, 25, 32 and 43 A,
 * from memory. A wire that lies better may carry more; national rules differ.
 */
const metric = (area: string, ohms: number, highestBreaker: number): Conductor => ({
  label: copper[`${area} mm²`]!,
  resistance: ohms / 1000,
  at: 20,
  highestBreaker,
  breakerHolds: 'as-laid',
  cites: [
    cite('iec60228', `${area} mm², class 1 or 2, 20 °C`),
    cite('iec60364-5-52', `table B.52.2, method A2, ${area} mm² copper, PVC, from memory`),
  ],
});

export const conductors = {
  'awg-14': awg(14, 3.14, 15),
  'awg-12': awg(12, 1.98, 20),
  'awg-10': awg(10, 1.24, 30),
  'awg-8': awg(8, 0.778, 40),
  'awg-6': awg(6, 0.491, 50),
  'mm2-1.5': metric('1.5', 12.1, 13),
  'mm2-2.5': metric('2.5', 7.41, 16),
  'mm2-4': metric('4', 4.61, 25),
  'mm2-6': metric('6', 3.08, 32),
  'mm2-10': metric('10', 1.83, 40),
} as const satisfies Record<string, Conductor>;
