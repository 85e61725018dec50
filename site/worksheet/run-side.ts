import type { FieldPath } from '../../calculators/bench/fields.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { calculators } from '../../calculators/index.ts';
import { cautions, type Caution } from '../../calculators/cautions.ts';
import { sources, type Citation } from '../../calculators/sources.ts';
import type { Calculator } from '../../calculators/calculator.ts';
import { fieldAt } from '../report.ts';
import { codeSide, type Block, type LabelledValue } from './blocks.ts';
import type { Band, Side } from './compose.ts';
import { saidBeside } from './build-side.ts';
import { field, figureOf, labelled, runCalculators, shown, value, warningsOf, type Facts } from './facts.ts';
import { bold, run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });

/** Words of the region that the sheet prints, fit for paper. */
export interface Office {
  readonly name: string;
  readonly contacts: readonly { readonly who: string; readonly how: string }[];
  readonly cautions: readonly string[];
  readonly codeReferences: readonly string[];
}

/** Fewer watts saved than this are not worth a line on the wall [W]. */
const leastSaving = 10;
/** The hints of care that stand on the sheet; the guide shows them all, each beside its figure. */
const mostCares = 1;
/** Changes that are named, largest first. */
const mostSavings = 2;

/** The same under a label short enough for a narrow cell. */
const renamed = (cells: readonly LabelledValue[], label: string): LabelledValue[] =>
  cells.map((cell) => ({ ...cell, label }));

/** What a snap of some hours comes to, which is milder than a frost without end: wet pots give up heat. */
function inTheSnap(facts: Facts): string {
  const lowest = figureOf(facts, 'night.lowestRootTemperature');
  if (!lowest) return '';
  const at = (one: number): string => value(facts, one, lowest.quantity);
  const { value: expected, low = expected, high = expected } = lowest.figure;
  const below = figureOf(facts, 'night.belowLimit');
  const time = below && below.figure.value > 0 ? `, ${shown(facts, 'night.belowLimit')} below it` : '';
  return `If it passes in ${field(facts, 'place.coldHours')} they come to ${at(expected)} (likely ${at(low)} to ${at(high)})${time}.`;
}

/** The night that the bench is built for: four numbers, what they mean, what to change first. */
function night(facts: Facts): Band[] {
  const cells = [
    ...labelled(facts, ['watts.required', 'watts.installed']),
    ...renamed(labelled(facts, ['roots.withoutHeat']), 'Roots without heat'),
    ...renamed(labelled(facts, ['roots.withHeat']), 'Roots with heat'),
  ];
  if (cells.length === 0) return [];
  const outside = value(facts, designOutside(facts.situation), 'temperature');
  const limit = field(facts, 'plants.lowestRootTemperature');
  const [required, installed] = [figureOf(facts, 'watts.required'), figureOf(facts, 'watts.installed')];
  const short = required && installed && required.figure.value > installed.figure.value;
  const first = changes(facts);
  const cares = warningsOf(facts, 'care', runCalculators, shownInNumbers);
  const more = cares.length - mostCares;
  const blocks: Block[] = [
    heading(`If ${outside} outside lasted`),
    { kind: 'numbers', cells },
    {
      kind: 'paragraph',
      runs: [
        ...(short ? [bold('The cable falls short of such a night. ')] : []),
        run(`You accept roots at ${limit}. ${inTheSnap(facts)}`),
      ],
    },
    ...(first === '' ? [] : [{ kind: 'paragraph', runs: [bold('Change first: '), run(first)] } as const]),
    ...cares.slice(0, mostCares).map((text): Block => ({ kind: 'paragraph', mark: '⚠', runs: [run(text)] })),
    ...(more > 0
      ? [
          {
            kind: 'paragraph',
            runs: [run(`${more} more such ${more === 1 ? 'hint' : 'hints'} in the guide.`)],
          } as const,
        ]
      : []),
  ];
  return [{ columns: [{ share: 1, blocks }] }];
}

/** Warnings that say in words what the four numbers and their sentence say. */
const shownInNumbers: readonly string[] = [
  'short-of-heat',
  'roots-below-limit',
  'roots-below-limit-in-snap',
  'roots-may-fall-below-limit',
];

/** What saves most of the power needed, largest first. */
function changes(facts: Facts): string {
  const heat = calculators.find(({ id }) => id === 'heat') as Calculator | undefined;
  const savings = Object.keys(heat?.figures ?? {})
    .filter((name) => name.startsWith('save'))
    .flatMap((name) => {
      const found = figureOf(facts, `heat.${name}`);
      return found && found.figure.value >= leastSaving ? [found] : [];
    })
    .toSorted((a, b) => b.figure.value - a.figure.value)
    .slice(0, mostSavings)
    .map(({ label, figure }) => `${label} ${value(facts, figure.value, 'power')}`);
  return savings.length === 0 ? '' : `${savings.join('. ')}.`;
}

/** What anyone can do, whatever the bench: common practice, no figures. */
const powerCut: readonly string[] = [
  'Note time and root temperature.',
  'Keep skirt and cover shut.',
  'Add fleece, blankets, film on top.',
  'Ring for help.',
  'No flame, no generator inside.',
  'Then check breaker and cable.',
];

/** What to do, and how long the bench holds over on the night that it is built for. */
function powerCutBlocks(facts: Facts): Block[] {
  const loop = figureOf(facts, 'outage.hoursToLoopFreezing');
  const hours = labelled(facts, [
    'outage.hoursToRootLimit',
    // A loop that outlasts every power cut takes no line.
    ...(loop?.figure.beyond ? [] : ['outage.hoursToLoopFreezing' as const]),
  ]);
  return [
    heading('When the power fails'),
    { kind: 'list', numbered: true, entries: powerCut.map((text) => [run(text)]) },
    ...(hours.length > 0 ? [{ kind: 'rows', rows: hours } as const] : []),
  ];
}

/**
 * The cautions that calculators name and the first side does not say in full, in one breath each, and those of the region.
 */
function cautionBlocks(office: Office): Block[] {
  const named = new Set<string>(calculators.flatMap((one: Calculator) => one.cautions));
  const ours: readonly Caution[] = Object.entries(cautions)
    .filter(([id]) => named.has(id) && !(saidBeside as readonly string[]).includes(id))
    .map(([, one]) => one);
  const code: Block[] =
    office.codeReferences.length > 0
      ? [{ kind: 'paragraph', runs: [bold('Code. '), run(office.codeReferences.join(' '))] }]
      : [];
  return [
    heading('Cautions: cable’s sheet, local code and licensed electrician come first'),
    {
      kind: 'cautions',
      entries: [
        ...ours.map(({ title, short }) => [bold(`${title}. `), run(short)]),
        ...office.cautions.map((text) => [run(text)]),
      ],
    },
    ...code,
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
      blanks: [{ name: 'helper', label: 'Helper', hint: 'Name and number of whoever helps at night' }],
    },
  ];
}

/** Room for the list of start values that were taken [letters]; what is beyond it is counted. */
const assumedRoom = 150;

/** Whether a field that was left out has a value that somebody might have measured or chosen otherwise. */
function isAssumption(path: FieldPath): boolean {
  const field = fieldAt(path);
  if (field.shape === 'choice') return true;
  return field.shape === 'number' && (field.start !== null || (field.empty ?? '').startsWith('not measured'));
}

function assumedWords(facts: Facts, left: readonly FieldPath[]): string {
  const assumed = left.filter(isAssumption);
  if (assumed.length === 0) return 'No value was assumed.';
  const named: string[] = [];
  for (const path of assumed) {
    const { label } = fieldAt(path);
    const shown = field(facts, path);
    const words = `${label.charAt(0).toLowerCase()}${label.slice(1)} ${shown.charAt(0).toLowerCase()}${shown.slice(1)}`;
    if (named.length > 0 && [...named, words].join('; ').length > assumedRoom) break;
    named.push(words);
  }
  const more = assumed.length - named.length;
  return `Start values taken for ${named.join('; ')}${more > 0 ? `; ${more} more in the guide` : ''}.`;
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
  const memory = count('memory');
  const parts = [
    `${count('seen') + memory} published sources${memory > 0 ? ` (${memory} from memory)` : ''}`,
    ...(count('practice') > 0 ? ['common practice'] : []),
    ...(count('assumption') > 0 ? ['assumptions'] : []),
  ];
  return `Figures rest on ${parts.join(', ')}: the guide names each.`;
}

/** The words over and under the QR code need this much [pt]. */
const leastCodeColumn = 86;

const scanWords: Block = { kind: 'paragraph', small: true, runs: [run('Scan it to open this bench.')] };

/** The side that is read through the winter: the design night, what to do, cautions, numbers to call, the log. */
export function runSide(
  facts: Facts,
  office: Office,
  code: Extract<Block, { kind: 'code' }>,
  assumed: readonly FieldPath[],
): Side {
  const unit = facts.manner.system === 'us' ? '°F' : '°C';
  return {
    bands: [
      ...night(facts),
      {
        columns: [
          { share: 0.5, blocks: powerCutBlocks(facts) },
          { share: 0.5, blocks: contacts(office) },
          {
            share: 0,
            fixed: Math.max(leastCodeColumn, codeSide(code.modules.length)),
            blocks: [heading('In the guide'), code, scanWords],
          },
        ],
      },
      { columns: [{ share: 1, blocks: cautionBlocks(office) }] },
      {
        columns: [
          {
            share: 1,
            blocks: [
              heading(`Weekly log: lowest of the week, ${unit}; meter in kWh`),
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
                  { name: 'meter', head: 'Meter', share: 1 },
                  { name: 'who', head: 'Who', share: 1 },
                ],
              },
              {
                kind: 'paragraph',
                small: true,
                runs: [run(`${assumedWords(facts, assumed)} ${standing(calculators)}`)],
              },
            ],
          },
        ],
      },
    ],
  };
}
