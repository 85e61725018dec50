import type { Calculator } from '../../calculators/calculator.ts';
import { cautions } from '../../calculators/cautions.ts';
import { calculators } from '../../calculators/index.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import type { Block } from './blocks.ts';
import { saidBeside } from './build-side.ts';
import { cautionRuns } from './caution-runs.ts';
import { saidInLog } from './log-side.ts';
import { saidAtNight } from './run-side.ts';

/** The cautions of the guide that no other side says in full. `logged` where the side with the log is printed. */
export function cautionsLeft(logged: boolean, manner: Manner): Block {
  const named = new Set<string>(calculators.flatMap((one: Calculator) => one.cautions));
  const said: readonly string[] = [...saidBeside, ...saidAtNight, ...(logged ? [saidInLog] : [])];
  return {
    kind: 'cautions',
    entries: Object.entries(cautions)
      .filter(([id]) => named.has(id) && !said.includes(id))
      .map(([, one]) => cautionRuns(one, manner)),
  };
}
