import { cautions } from '../../calculators/cautions.ts';
import type { Side } from './compose.ts';
import { field, type Facts } from './facts.ts';
import { bold, run } from './text.ts';

/** The caution of which this side says all. */
export const saidInLog = 'alarm';

/** The side that is filled in by hand, a row a week, for a whole winter. */
export function logSide(facts: Facts): Side {
  const unit = facts.manner.system === 'us' ? '°F' : '°C';
  return {
    bands: [
      {
        columns: [
          {
            share: 1,
            blocks: [
              { kind: 'heading', text: `Weekly log: lowest of the week, ${unit}; meter in kWh` },
              {
                kind: 'paragraph',
                runs: [
                  bold('Each week: '),
                  run('roots at '),
                  bold(field(facts, 'plants.lowestRootTemperature')),
                  run(' or above? As far above the house as last week? Has the meter moved? '),
                  bold('Each month: '),
                  run('press the test button of the ground-fault device, and try the alarm.'),
                ],
              },
              {
                kind: 'paragraph',
                mark: '⚠',
                runs: [bold(`${cautions[saidInLog].title}. `), run(cautions[saidInLog].short)],
              },
              {
                kind: 'log',
                rows: 0,
                columns: [
                  { name: 'date', head: 'Date', share: 1.1 },
                  { name: 'outside', head: 'Outside', share: 1 },
                  { name: 'house', head: 'House', share: 1 },
                  { name: 'under', head: 'Bench air', share: 1 },
                  { name: 'roots', head: 'Roots', share: 1 },
                  { name: 'loop', head: 'Loop', share: 1 },
                  { name: 'meter', head: 'Meter', share: 1.1 },
                  { name: 'who', head: 'Who', share: 0.9 },
                ],
              },
            ],
          },
        ],
      },
    ],
  };
}
