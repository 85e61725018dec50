import type { RuleSetId } from '../region.ts';
import { cite, type Citation } from '../sources.ts';

/** A figure that a rule gives, with where it gives it. */
interface Rule<T> {
  readonly value: T;
  readonly cites: readonly Citation[];
}

/** What a set of wiring rules asks of the circuit that feeds a heating cable. Currents in A. */
export interface RuleSet {
  readonly label: string;
  /** A load that runs for three hours or more counts this many times [1]. A heating cable is such a load. */
  readonly continuousLoad: Rule<number>;
  /** Rated currents in which breakers are made, rising. */
  readonly breakers: Rule<readonly number[]>;
  /** Recommended highest voltage drop, as a share of the voltage [1]. */
  readonly voltageDrop: Rule<number>;
  /** Kinds of ground-fault protection that the rules accept for a heating cable on a bench. */
  readonly groundFault: Rule<readonly ('people' | 'equipment')[]> & {
    /** What the rules ask for, in a sentence. */
    readonly words: string;
    /** The device that protects people, as its box and an electrician call it. */
    readonly device: string;
  };
  /** Currents to earth at which protection of people, and of equipment, must have tripped [A]. */
  readonly tripsAt: Rule<{ readonly people: number; readonly equipment: number }>;
  /** What the guide does not know and an electrician does, in a sentence. */
  readonly ask: string;
}

export const ruleSets = {
  us: {
    label: 'US rules (National Electrical Code)',
    continuousLoad: {
      value: 1.25,
      cites: [
        cite('nec', '427.4 and 210.19(A)(1), 210.20(A): 125 % of a continuous load'),
        cite('nec', '426.4 for outdoor de-icing, the same'),
      ],
    },
    breakers: {
      value: [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125],
      cites: [cite('nec', '240.6(A), from memory; the 10 A size of newer editions is left out')],
    },
    voltageDrop: {
      value: 0.03,
      cites: [cite('nec', '210.19(A), informational note: 3 % on a branch circuit')],
    },
    groundFault: {
      value: ['people'],
      words:
        'Ground-fault protection of the cable as equipment (30 mA) is the least; a receptacle in a damp place of a farm building needs protection for people (GFCI), so that is what is asked here.',
      device: 'GFCI of class A',
      cites: [
        cite('nec', '427.22'),
        cite('nec', '547.5(G)'),
        cite('nec', '210.8, personnel protection in damp and outdoor places, from memory'),
        cite('ul943', 'class A: 4 to 6 mA'),
      ],
    },
    tripsAt: {
      value: { people: 0.006, equipment: 0.03 },
      cites: [
        cite('nec', 'ground-fault circuit interrupter of class A: 4 to 6 mA; equipment: 30 to 50 mA'),
        cite('ul943', 'class A: 4 to 6 mA'),
        cite('ul1053', 'protection of equipment, such as 30 mA'),
      ],
    },
    ask: 'Conductor sizes must carry 125 % of the heating load; have a licensed electrician choose them for the way they are laid.',
  },
  iec: {
    label: 'IEC rules (60364 and national standards made from it)',
    continuousLoad: {
      value: 1,
      cites: [
        cite('iec60364-4-43', '433.1: rated current not below the design current, from memory'),
        cite('common-practice', 'some countries ask for a margin on loads that run for hours'),
      ],
    },
    breakers: {
      value: [6, 10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125],
      cites: [cite('iec60898', '5.3.2, preferred rated currents, from memory')],
    },
    voltageDrop: {
      value: 0.05,
      cites: [cite('iec60364-5-52', 'table G.52.1: 5 % for other uses than lighting, 3 % lighting')],
    },
    groundFault: {
      value: ['people'],
      words: 'Heating cables need a residual current device of 30 mA or less and an earthed metal covering.',
      device: 'RCD',
      cites: [
        cite('iec60364-7-753', 'residual current device of 30 mA or less, from memory'),
        cite('iec60364-7-705', '30 mA or less for socket outlets up to 32 A, from memory'),
      ],
    },
    tripsAt: {
      value: { people: 0.03, equipment: 0.3 },
      cites: [cite('iec60364-7-705', '30 mA for people, 300 mA against fire, from memory')],
    },
    ask: 'What current a conductor may carry depends on the way it is laid and on national rules; have a licensed electrician choose it.',
  },
} as const satisfies Record<RuleSetId, RuleSet>;
