import { designOutside } from '../../calculators/bench/place.ts';
import type { CautionId } from '../../calculators/calculator.ts';
import { cautions } from '../../calculators/cautions.ts';
import { messages, say } from '../../calculators/say.ts';
import { courseDrawing } from '../drawing/course.ts';
import { figureText } from '../widgets/text.ts';
import type { Block, LabelledValue } from './blocks.ts';
import { drawingBlock, stopBanner } from './build-side.ts';
import type { Band, Side } from './compose.ts';
import { field, figureOf, labelled, reasonsAgainst, value, type Facts } from './facts.ts';
import type { LeftOut } from './left-out.ts';
import { ladderBlock } from './rungs.ts';
import { stepBlocks, stepsOf } from './steps.ts';
import { cautionRuns } from './caution-runs.ts';
import { bold, run, runsOf } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });

/** Words of the region that the sheet prints, fit for paper. */
export interface Office {
  readonly name: string;
  readonly contacts: readonly { readonly who: string; readonly how: string }[];
  readonly cautions: readonly string[];
  readonly codeReferences: readonly string[];
}

/** The same under a label short enough for a narrow cell. */
const renamed = (cells: readonly LabelledValue[], label: string): LabelledValue[] =>
  cells.map((cell) => ({ ...cell, label }));

/** Most that the drawing of the night may take of the page's height [mm], and by how much it is enlarged. */
const night = { height: 66, enlarged: 1.12 } as const;
/** What the drawing of the night leaves to the numbers beside it. */
const shares = { drawing: 0.66, numbers: 0.34 } as const;

/** The lowest that roots come to: in the night that the bench is built for, or in an ordinary winter where that is lower. */
function coldestRoots(facts: Facts): LabelledValue[] {
  const inNight = renamed(
    labelled(facts, ['night.lowestRootTemperature']),
    say(facts.manner, 'Coldest roots'),
  );
  const winter = figureOf(facts, 'night.coldestOfWinter');
  const one = figureOf(facts, 'night.lowestRootTemperature');
  if (!winter || !one) return inNight;
  const lowest = value(facts, winter.figure.value, winter.quantity);
  if (winter.figure.value >= one.figure.value || inNight.some((cell) => cell.value === lowest))
    return inNight;
  return inNight.map(({ label, value: that, note }) => ({
    label,
    value: lowest,
    note: note
      ? say(facts.manner, 'in an ordinary winter; that night {figure}, {range}', {
          figure: that,
          range: note,
        })
      : say(facts.manner, 'in an ordinary winter; that night {figure}', { figure: that }),
  }));
}

/** The night that the bench is built for: drawn, and what it comes to in numbers. */
function nightBand(facts: Facts, drawn: boolean): Band {
  const { manner } = facts;
  const outside = value(facts, designOutside(facts.situation), 'temperature');
  const lowest = coldestRoots(facts);
  const hold = renamed(labelled(facts, ['outage.hoursToRootLimit']), say(manner, 'Without power'));
  // Its range is that of the wire's own resistance and of the mains: of no use at night.
  const power = labelled(facts, ['watts.installed']).map((cell) => ({
    label: say(manner, 'Cable gives'),
    value: cell.value,
  }));
  const required = figureOf(facts, 'watts.required');
  const short = required && required.figure.value > (figureOf(facts, 'watts.installed')?.figure.value ?? 0);
  const numbers: Block[] = [
    heading(say(manner, 'At {outside}', { outside })),
    { kind: 'rows', large: true, rows: [...lowest, ...hold, ...power] },
    {
      kind: 'paragraph',
      runs: runsOf(
        manner,
        required
          ? short
            ? 'Your limit *{limit}*. If it lasted, *{power}* needed: short.'
            : 'Your limit *{limit}*. If it lasted, *{power}* needed.'
          : 'Your limit *{limit}*. If it lasted, no heat known.',
        {
          limit: field(facts, 'plants.lowestRootTemperature'),
          power: figureText(required?.figure ?? null, 'power', manner),
        },
      ),
    },
  ];
  if (!drawn) return { columns: [{ share: 1, blocks: numbers }] };
  const title = say(manner, 'The night you build for, {hours} of cold', {
    hours: field(facts, 'place.coldHours'),
  });
  return {
    columns: [
      {
        share: shares.drawing,
        blocks: [drawingBlock(facts, title, night.height, night.enlarged, courseDrawing)],
      },
      { share: shares.numbers, blocks: numbers },
    ],
  };
}

/** Cautions of the one who runs a bench, in a breath each; the last side has them in full. */
const breaths = messages({
  'mains-and-water': 'Unplug before you touch cable or pipe.',
  'cable-instructions': 'Cable’s sheet, local code, licensed electrician come first.',
} satisfies Partial<Record<CautionId, string>>);

/** Cautions for the night that the power fails: this side says all of them. */
export const saidAtNight = ['no-flame', 'generator'] as const satisfies readonly CautionId[];

function cautionBand({ manner }: Facts): Band {
  return {
    columns: [
      {
        share: 1,
        blocks: [
          {
            kind: 'cautions',
            entries: [
              ...Object.values(breaths).map((text) => [bold(say(manner, text))]),
              ...saidAtNight.map((id) => cautionRuns(cautions[id], manner)),
            ],
          },
        ],
      },
    ],
  };
}

/** What the region warns of. */
function regionBand({ cautions: local }: Office, region: string, { manner }: Facts): Band[] {
  if (local.length === 0) return [];
  const blocks: Block[] = [
    heading(say(manner, 'In {region}', { region })),
    { kind: 'list', numbered: false, entries: local.map((text) => [run(text)]) },
  ];
  return [{ movable: true, columns: [{ share: 1, blocks }] }];
}

/** Whom to call, in numbers that are read by the light of a torch, and room for one more. */
const callBand = (office: Office, { manner }: Facts): Band => ({
  columns: [
    {
      share: 0.66,
      blocks: [
        heading(say(manner, 'Who to call: {office}', { office: office.name })),
        ...(office.contacts.length > 0
          ? [
              {
                kind: 'rows',
                large: true,
                rows: office.contacts.map(({ who, how }) => ({ label: who, value: how })),
              } as const,
            ]
          : []),
      ],
    },
    {
      share: 0.34,
      blocks: [
        heading(say(manner, 'Helper at night')),
        {
          kind: 'blanks',
          blanks: [
            {
              name: 'helper',
              label: say(manner, 'Name'),
              hint: say(manner, 'Name of whoever helps at night'),
            },
            {
              name: 'helper_number',
              label: say(manner, 'Call'),
              hint: say(manner, 'Telephone number of whoever helps at night'),
            },
          ],
        },
      ],
    },
  ],
});

/** The side that is read through the winter: the night, what to expect and do, whom to call. */
export function runSide(
  facts: Facts,
  office: Office,
  region: string,
  leaveOut: readonly LeftOut[] = [],
): Side {
  const drawn = !leaveOut.includes('drawings');
  // Whoever has built it already must know that it stays off; how it would run is of no use.
  if (reasonsAgainst(facts).length > 0)
    return {
      bands: [
        ...stopBanner(
          facts,
          say(facts.manner, 'Not to be run as it stands'),
          say(facts.manner, 'Built already? Unplug it, and leave it off until this is put right.'),
        ),
        nightBand(facts, drawn),
        callBand(office, facts),
        cautionBand(facts),
        ...regionBand(office, region, facts),
      ],
    };
  return {
    bands: [
      nightBand(facts, drawn),
      {
        columns: [
          {
            share: 1,
            blocks: [
              heading(say(facts.manner, 'When it gets cold; in bold the night you build for')),
              ladderBlock(facts),
            ],
          },
        ],
      },
      { columns: stepsOf(facts).map((steps) => ({ share: 1, blocks: stepBlocks(steps) })) },
      callBand(office, facts),
      cautionBand(facts),
      ...regionBand(office, region, facts),
    ],
  };
}
