import { headlinesOf, howSure, sureFigures, sureNames, type HowSure } from '../calculators/bench/how-sure.ts';
import { toTheEnd } from '../calculators/bench/ensemble.ts';
import { kept } from './build/kept.ts';
import { answers, situation } from './guide.ts';
import type { Column } from './widgets/text.ts';

/** How sure the figures of the example are: worked out once for all pages, by what the reader's browser runs. */

let known: HowSure | undefined;

export function sureOfExample(): HowSure {
  if (known) return known;
  const headlines = headlinesOf(answers.night.figures, answers.watts.figures);
  if (!headlines) throw new Error('the example bench has no headline figures');
  return (known = kept('how-sure', situation, () => toTheEnd(howSure(situation, headlines))));
}

/** The tables as pages show them. */
export const sureTables: readonly {
  readonly name: keyof HowSure['tables'];
  readonly label: string;
  readonly explain: string;
  readonly columns: readonly (Column & { readonly label: string })[];
}[] = [
  {
    name: 'ranges',
    label: 'Low, expected, high',
    explain: 'Four of five benches like this one lie inside each range.',
    columns: [
      { key: 'figure', label: 'Figure' },
      { key: 'expected', label: 'Expected' },
      { key: 'allAtOnce', label: 'All inputs at once' },
      { key: 'inputByInput', label: 'One by one' },
    ],
  },
  {
    name: 'measure',
    label: 'Worth measuring first',
    explain:
      'How much of the spread of each figure goes with each uncertain input. The top line is the one to measure first. Small shares are partly chance.',
    columns: [
      { key: 'input', label: 'Input' },
      ...sureNames.map((name) => ({
        key: name,
        label: sureFigures[name].label,
        quantity: 'share' as const,
      })),
      { key: 'how', label: 'How to measure it' },
    ],
  },
];
