import { cautions } from '../../calculators/cautions.ts';
import type { Side } from './compose.ts';
import { field, type Facts } from './facts.ts';
import { say } from '../../calculators/say.ts';
import { cautionRuns } from './caution-runs.ts';
import { runsOf } from './text.ts';

/** The caution of which this side says all. */
export const saidInLog = 'alarm';

/** The side that is filled in by hand, a row a week, for a whole winter. */
export function logSide(facts: Facts): Side {
  const { manner } = facts;
  const unit = facts.manner.system === 'us' ? '°F' : '°C';
  return {
    bands: [
      {
        columns: [
          {
            share: 1,
            blocks: [
              {
                kind: 'heading',
                text: say(manner, 'Weekly log: lowest of the week, {unit}; meter in kWh', { unit }),
              },
              {
                kind: 'paragraph',
                runs: runsOf(
                  manner,
                  '*Each week: *roots at *{limit}* or above? As far above the house as last week? Has the meter moved? *Each month: *press the test button of the ground-fault device, and try the alarm.',
                  { limit: field(facts, 'plants.lowestRootTemperature') },
                ),
              },
              {
                kind: 'paragraph',
                mark: '⚠',
                runs: cautionRuns(cautions[saidInLog], manner),
              },
              {
                kind: 'log',
                rows: 0,
                hint: (row, head) => say(manner, 'Row {row}: {head}', { row: String(row), head }),
                columns: [
                  { name: 'date', head: say(manner, 'Date'), share: 1.1 },
                  { name: 'outside', head: say(manner, 'Outside'), share: 1 },
                  { name: 'house', head: say(manner, 'House'), share: 1 },
                  { name: 'under', head: say(manner, 'Bench air'), share: 1 },
                  { name: 'roots', head: say(manner, 'Roots'), share: 1 },
                  { name: 'loop', head: say(manner, 'Loop'), share: 1 },
                  { name: 'meter', head: say(manner, 'Meter'), share: 1.1 },
                  { name: 'who', head: say(manner, 'Who'), share: 0.9 },
                ],
              },
            ],
          },
        ],
      },
    ],
  };
}
