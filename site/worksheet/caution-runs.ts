import type { Caution } from '../../calculators/cautions.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import { say } from '../../calculators/say.ts';
import { bold, run, type Run } from './text.ts';

/** A caution in one breath: its title in bold, and what matters. */
export const cautionRuns = ({ title, short }: Caution, manner: Manner): Run[] => [
  bold(`${say(manner, title)}. `),
  run(say(manner, short)),
];
