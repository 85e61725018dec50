import { amount, sentence, type Sentence } from '../calculator.ts';
import type { Changes } from './changed.ts';
import type { Bench } from './fields.ts';

/** A change that a grower can make to a bench, and whether the bench has it already. */
export interface Improvement {
  /** What is done, as a noun phrase that begins a row. */
  readonly label: Sentence;
  readonly changes: Changes;
  readonly present: (bench: Bench) => boolean;
}

/** A gap that a careful grower can leave [m] (assumption). */
const closedGap = 0.001;

/** Foam board as it is sold for floors [m] (assumption). */
const boardThickness = 0.05;

const noSkirt = ({ skirt }: Bench): boolean => skirt.material === 'none';

export const improvements = {
  cover: {
    label: sentence`A film cover over the plants`,
    changes: { cover: { kind: 'film' } },
    present: ({ cover }) => cover.kind !== 'none',
  },
  gaps: {
    label: sentence`The gaps of the skirt closed`,
    changes: { skirt: { bottomGap: closedGap, topGap: closedGap, closed: 1 } },
    present: noSkirt,
  },
  secondLayer: {
    label: sentence`A second layer of skirt`,
    changes: { skirt: { layers: 2 } },
    present: (bench) => noSkirt(bench) || bench.skirt.layers > 1,
  },
  floor: {
    label: sentence`Foam board, ${amount(boardThickness, 'size')}, on the floor`,
    changes: { frame: { floorInsulation: boardThickness } },
    present: ({ frame }) => frame.floorInsulation >= boardThickness,
  },
} as const satisfies Record<string, Improvement>;
