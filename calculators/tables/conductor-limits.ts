import { cite, type Citation } from '../sources.ts';
import type { conductors } from './conductors.ts';

/** The largest breaker that protects a copper conductor in a wall, a tube or a cable. */
export interface ConductorLimit {
  /** [A] */
  readonly largestBreaker: number;
  readonly cites: readonly Citation[];
}

const us = (largestBreaker: number, at: string): ConductorLimit => ({
  largestBreaker,
  cites: [cite('nec', `${at}, from memory`)],
});

/**
 * The largest standard breaker not above what two loaded PVC-insulated copper conductors carry at 30 °C around, laid
 * in the worst usual way (a cable in a tube in an insulated wall, method A2).
 */
const iec = (largestBreaker: number, carries: number): ConductorLimit => ({
  largestBreaker,
  cites: [cite('iec60364-5-52', `table B.52.2, method A2: ${carries} A, from memory`)],
});

/**
 * What the guide can say of the conductor without knowing how it is laid: on the safe side, and all of it from memory.
 * A larger breaker on the same conductor is a question for an electrician, who may know that it lies better.
 */
export const conductorLimits = {
  'awg-14': us(15, '240.4(D)'),
  'awg-12': us(20, '240.4(D)'),
  'awg-10': us(30, '240.4(D)'),
  'awg-8': us(40, 'table 310.16, column for 60 °C: 40 A'),
  'awg-6': us(50, 'table 310.16, column for 60 °C: 55 A'),
  'mm2-1.5': iec(13, 14),
  'mm2-2.5': iec(16, 18.5),
  'mm2-4': iec(25, 25),
  'mm2-6': iec(32, 32),
  'mm2-10': iec(40, 43),
} as const satisfies Record<keyof typeof conductors, ConductorLimit>;
