import type { FieldPath } from '../../calculators/bench/fields.ts';
import { calculators } from '../../calculators/index.ts';
import { cautions, type Caution } from '../../calculators/cautions.ts';
import { sources, type Citation } from '../../calculators/sources.ts';
import type { Calculator } from '../../calculators/calculator.ts';
import { fieldAt } from '../report.ts';
import type { Block, LabelledValue } from './blocks.ts';
import type { Band, Side } from './compose.ts';
import type { Names } from './build-side.ts';
import { field, figureOf, labelled, value, warningsOf, type Facts } from './facts.ts';
import { bold, run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });
const paragraph = (text: string): Block => ({ kind: 'paragraph', runs: [run(text)] });

/** Words of the region that the sheet prints, fit for paper. */
export interface Office {
  readonly name: string;
  readonly contacts: readonly { readonly who: string; readonly how: string }[];
  readonly cautions: readonly string[];
  readonly codeReferences: readonly string[];
}

/** Fewer watts saved than this are not worth a line on the wall [W]. */
const leastSaving = 10;
/** Changes that are named, largest first. */
const mostSavings = 3;

const withTemperature = (facts: Facts): LabelledValue[] => [
  ...labelled(facts, ['watts.required', 'watts.installed', 'roots.withoutHeat', 'roots.withHeat']),
];

/** The night that the bench is built for, in four numbers and a sentence. */
function night(facts: Facts): Band[] {
  const cells = withTemperature(facts);
  if (cells.length === 0) return [];
  const limit = field(facts, 'plants.lowestRootTemperature');
  const blocks: Block[] = [
    heading('If the night it is built for never ended'),
    { kind: 'numbers', cells },
    paragraph(
      `Lowest root temperature you accept: ${limit}. A frost of a few hours is milder than these figures: wet pots give up heat of their own.`,
    ),
    ...warningsOf(facts, 'care', ['watts', 'roots', 'heat']).map((text): Block => ({
      kind: 'paragraph',
      mark: '⚠',
      runs: [run(text)],
    })),
  ];
  return [{ columns: [{ share: 1, blocks }] }];
}

/** What saves most of the power needed, largest first. */
function changes(facts: Facts): Block[] {
  const heat = calculators.find(({ id }) => id === 'heat') as Calculator | undefined;
  const savings = Object.keys(heat?.figures ?? {})
    .filter((name) => name.startsWith('save'))
    .flatMap((name) => {
      const found = figureOf(facts, `heat.${name}`);
      return found && found.figure.value >= leastSaving ? [found] : [];
    })
    .toSorted((a, b) => b.figure.value - a.figure.value)
    .slice(0, mostSavings);
  if (savings.length === 0) return [];
  return [
    heading('Change first'),
    {
      kind: 'rows',
      rows: savings.map(({ label, figure }) => ({ label, value: value(facts, figure.value, 'power') })),
    },
  ];
}

/** What anyone can do, whatever the bench: common practice, no figures. */
const powerCut: readonly string[] = [
  'Write down the time and the root temperature.',
  'Keep skirt and cover shut: do not lift them to look.',
  'Lay fleece, blankets or more film over the cover and weigh the edges down.',
  'Ring for help from the list below.',
  'No flame, no fuel heater, no generator in the house.',
  'When power returns, look at breaker, protection and cable before you walk away.',
];

const powerCutBlocks: readonly Block[] = [
  heading('When the power fails'),
  { kind: 'list', numbered: true, entries: powerCut.map((text) => [run(text)]) },
  paragraph(
    'How many hours the bench holds over is not worked out in this edition. Do not count on the loop for long.',
  ),
];

const caution = ({ title, text }: Caution): Block => ({
  kind: 'paragraph',
  mark: '⚠',
  runs: [bold(`${title}. `), run(text)],
});

/** Every caution that a calculator names, each once, and those of the region. */
function cautionBlocks(office: Office): Block[] {
  const named = new Set(calculators.flatMap((one: Calculator) => one.cautions));
  const ours = Object.entries(cautions).filter(([id]) => (named as ReadonlySet<string>).has(id));
  return [
    ...ours.map(([, one]) => caution(one)),
    ...office.cautions.map((text): Block => ({ kind: 'paragraph', mark: '⚠', runs: [run(text)] })),
    ...(office.codeReferences.length > 0
      ? [{ kind: 'paragraph', runs: [bold('Code: '), run(office.codeReferences.join('; ') + '.')] } as const]
      : []),
  ];
}

function contacts(office: Office): Block[] {
  return [
    heading('Who to call'),
    ...(office.contacts.length > 0
      ? [
          {
            kind: 'rows',
            rows: office.contacts.map(({ who, how }) => ({ label: who, value: how })),
          } as const,
        ]
      : []),
    {
      kind: 'blanks',
      blanks: [
        { name: 'electrician', label: 'Electrician', hint: 'Name and number of the licensed electrician' },
        { name: 'helper', label: 'Helper at night', hint: 'Name and number of whoever helps at night' },
      ],
    },
  ];
}

/** Start values that are named; the rest are counted. */
const mostAssumed = 6;

function assumedWords(facts: Facts, assumed: readonly FieldPath[]): string {
  if (assumed.length === 0) return 'Every value of this bench was given: none was assumed.';
  const named = assumed.slice(0, mostAssumed).map((path) => {
    const { label } = fieldAt(path);
    return `${label.charAt(0).toLowerCase()}${label.slice(1)} ${field(facts, path)}`;
  });
  const more = assumed.length - named.length;
  return `Start values stand in for ${assumed.length === 1 ? 'the value' : `the ${assumed.length} values`} that the file left out: ${named.join('; ')}${more > 0 ? `; and ${more} more, shown in the guide` : ''}.`;
}

/** On what the figures rest, counted from the citations of every calculator. */
export function standing(all: readonly Calculator[]): string {
  const cited: Citation[] = all.flatMap(({ cites, formulas }) => [
    ...cites,
    ...formulas.flatMap((formula) => formula.cites),
  ]);
  const ids = [...new Set(cited.map(({ source }) => source))];
  const count = (kind: (typeof sources)[keyof typeof sources]['standing']) =>
    ids.filter((id) => sources[id].standing === kind).length;
  const published = count('seen') + count('memory');
  const parts = [
    `${published} published ${published === 1 ? 'source' : 'sources'}`,
    ...(count('memory') > 0 ? [`${count('memory')} of them cited from memory`] : []),
    ...(count('practice') > 0 ? ['common practice of the trade'] : []),
    ...(count('assumption') > 0 ? ['assumptions of the guide'] : []),
  ];
  const last = parts.pop() ?? '';
  return `The figures rest on ${parts.length > 0 ? `${parts.join(', ')} and ` : ''}${last}; the guide names each beside its formula.`;
}

/** The side that is read through the winter: the design night, what to do, cautions, numbers to call, the log. */
export function runSide(
  facts: Facts,
  names: Names,
  office: Office,
  code: Extract<Block, { kind: 'code' }>,
  assumed: readonly FieldPath[],
): Side {
  const unit = facts.manner.system === 'us' ? '°F' : '°C';
  return {
    bands: [
      {
        columns: [
          { share: 0.5, blocks: [{ kind: 'paragraph', runs: [bold('Side two: run')] }] },
          { share: 0.5, blocks: [{ kind: 'paragraph', runs: [run(names.bench)] }] },
        ],
      },
      ...night(facts),
      {
        columns: [
          { share: 0.5, blocks: [...changes(facts), ...contacts(office)] },
          { share: 0.5, blocks: powerCutBlocks },
        ],
      },
      {
        heading: heading(
          'Cautions: the cable’s sheet, the local code and a licensed electrician come before this page',
        ),
        balanced: cautionBlocks(office),
      },
      {
        columns: [
          {
            share: 0.68,
            blocks: [
              heading('This bench in the guide'),
              { kind: 'paragraph', small: true, runs: [run(assumedWords(facts, assumed))] },
              { kind: 'paragraph', small: true, runs: [run(standing(calculators))] },
            ],
          },
          { share: 0.32, blocks: [code] },
        ],
      },
      {
        columns: [
          {
            share: 1,
            blocks: [
              heading('Weekly log'),
              {
                kind: 'log',
                rows: 0,
                columns: [
                  { name: 'date', head: 'Date', share: 1.1 },
                  { name: 'outside', head: `Outside low, ${unit}`, share: 1 },
                  { name: 'house', head: `House low, ${unit}`, share: 1 },
                  { name: 'under', head: `Under bench, ${unit}`, share: 1 },
                  { name: 'roots', head: `Roots, ${unit}`, share: 1 },
                  { name: 'loop', head: `Loop, ${unit}`, share: 1 },
                  { name: 'meter', head: 'Meter, kWh', share: 1 },
                  { name: 'who', head: 'Who', share: 1 },
                ],
              },
            ],
          },
        ],
      },
    ],
  };
}
