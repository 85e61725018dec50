import { loopLength, perimeter, pipeOf } from '../../calculators/bench/geometry.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { cautions } from '../../calculators/cautions.ts';
import type { CautionId } from '../../calculators/calculator.ts';
import { ruleSets } from '../../calculators/tables/rule-sets.ts';
import type { BenchDrawing } from '../drawing/input.ts';

import { planDrawing } from '../drawing/plan.ts';
import { sectionDrawing } from '../drawing/section.ts';
import { windingDrawing } from '../drawing/winding.ts';
import { codeSide, type Block, type LabelledValue, type TableRow } from './blocks.ts';
import type { Band, Side } from './compose.ts';
import type { LeftOut } from './left-out.ts';
import { field, figureOf, hintsToRead, reasonsAgainst, shown, value, type Facts } from './facts.ts';
import { bold, run, type Run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });
const paragraph = (...runs: Run[]): Block => ({ kind: 'paragraph', runs });
const rows = (entries: readonly LabelledValue[]): Block[] =>
  entries.length > 0 ? [{ kind: 'rows', rows: entries }] : [];

/** A caution beside the figures that it is about, in its first sentence; the other side has all of it. */
const signs = (...ids: CautionId[]): Block[] => [
  {
    kind: 'paragraph',
    mark: '⚠',
    runs: [bold(ids.map((id) => signWords[id] ?? `${cautions[id].title}.`).join(' '))],
  },
];

/** Of cautions whose title alone does not say what to do or to fear. */
const signWords: Partial<Record<CautionId, string>> = {
  'mains-and-water': 'Mains and water kill: unplug first.',
  'antifreeze-poison': 'Antifreeze can poison people and animals.',
};

/** Cautions of which this side says all that matters. */
export const saidBeside = [
  'crossing',
  'open-loop',
  'heat-and-plastic',
] as const satisfies readonly CautionId[];

/** Why turns never cross and never hang loose, with the temperatures that the sheath comes to. */
function windingSign(facts: Facts): Block {
  const allowed = facts.situation.bench.cable.highestSheath;
  const hot = (name: string): string | null => {
    const found = figureOf(facts, name);
    return found && found.figure.value > allowed ? value(facts, found.figure.value, found.quantity) : null;
  };
  const [crossed, loose] = [hot('sheath.atCrossing'), hot('sheath.inFreeAir')];
  const places = [
    ...(crossed ? [`crossed it may come to ${crossed}`] : []),
    ...(loose ? [`loose to ${loose}`] : []),
  ];
  const words =
    places.length > 0
      ? ` The sheath is allowed ${value(facts, allowed, 'temperature')}; ${places.join(', ')}.`
      : '';
  return { kind: 'paragraph', mark: '⚠', runs: [bold(`${cautions.crossing.title}.`), run(words)] };
}

/** Why the loop is filled before the cable is switched on, with the temperature that the empty pipe comes to. */
function heatSign(facts: Facts): Block {
  const { highestService } = pipeOf(facts.situation.bench);
  const found = figureOf(facts, 'sheath.pipeWhenEmpty');
  const most = found ? (found.figure.high ?? found.figure.value) : 0;
  const why =
    found && most > highestService
      ? ` Empty, the pipe may come to ${value(facts, most, found.quantity)}; ${value(facts, highestService, found.quantity)} is allowed.`
      : '';
  return {
    kind: 'paragraph',
    mark: '⚠',
    runs: [bold('Water in before the power is on. No foam or film over the cable.'), run(why)],
  };
}

/** Words of the grower and of the region, fit for paper. */
export interface Names {
  readonly bench: string;
  readonly house: string;
  readonly notes: string;
  readonly region: string;
  readonly station: string;
  /** Whether any of them has a letter that the sheet cannot print. */
  readonly incomplete: boolean;
}

/** The code that opens this bench in the guide. */
type Code = Extract<Block, { kind: 'code' }>;

/** Where the hints and the cautions in full stand, in words; null where the reader left that side out. */
export type NotesPlace = string | null;

/** How many hints there are for this bench, and where they stand. */
function readFirst(facts: Facts, place: NotesPlace): Block[] {
  const { length } = hintsToRead(facts);
  if (length === 0) return [];
  const count = `${length} ${length === 1 ? 'hint' : 'hints'} for this bench`;
  return [paragraph(bold(`Read first: ${count}, ${place ? `on ${place}` : 'in the guide'}.`))];
}

function head(facts: Facts, names: Names, code: Code, place: NotesPlace): Band[] {
  const night = field(facts, 'place.designNight');
  const blocks: Block[] = [
    { kind: 'title', text: names.bench },
    paragraph(
      run(
        `${[names.house, names.station, names.region].filter((name) => name !== '').join(' · ')} · built for `,
      ),
      bold(value(facts, designOutside(facts.situation), 'temperature')),
      run(` outside, ${night.charAt(0).toLowerCase()}${night.slice(1)}`),
    ),
    ...notes(names),
    // Reasons against building it come before anything else to read.
    ...(reasonsAgainst(facts).length > 0 ? [] : readFirst(facts, place)),
  ];
  const wide = codeSide(code.modules.length);
  return [
    {
      columns: [
        { share: 1, blocks },
        { share: 0, fixed: wide, blocks: [code] },
      ],
    },
  ];
}

/** The frame that stands first on both sides of a bench that must not be built. */
export function stopBanner(facts: Facts, title: string, after: string): Band[] {
  const reasons = reasonsAgainst(facts);
  if (reasons.length === 0) return [];
  const block: Block = {
    kind: 'banner',
    title,
    entries: [...reasons, after].map((text) => [run(text)]),
  };
  return [{ columns: [{ share: 1, blocks: [block] }] }];
}

/** What the grower noted, and what of it cannot be printed. */
function notes({ notes: text, incomplete }: Names): Block[] {
  const blocks: Block[] = [];
  if (text !== '') blocks.push(paragraph(bold('Notes: '), run(text)));
  if (incomplete)
    blocks.push(
      paragraph(run('□ stands for a letter that this sheet cannot print. The guide has the text in full.')),
    );
  return blocks;
}

/** Corners of the loop, each a 90° bend. */
const bends = { u: 2, ring: 4, straight: 0 } as const;
/** Ends of the loop to close or to carry on into a stand-pipe. */
const ends = { u: 2, ring: 0, straight: 2 } as const;

function shopping(facts: Facts): { readonly label: string; readonly value: string }[] {
  const { bench } = facts.situation;
  const { loop, cable, mix, skirt, frame } = bench;
  const list: { label: string; value: string }[] = [
    { label: pipeOf(bench).label, value: value(facts, loopLength(bench), 'length') },
  ];
  if (bends[loop.run] > 0) list.push({ label: 'Bends of 90° for it', value: String(bends[loop.run]) });
  if (ends[loop.run] > 0)
    list.push({ label: 'End caps, or pieces for the stand-pipe', value: String(ends[loop.run]) });
  if (loop.expansion === 'standpipe')
    list.push({
      label: `Stand-pipe, ${value(facts, loop.standpipeDiameter, 'size')} inside, free`,
      value: value(facts, loop.standpipeHeight, 'size'),
    });
  list.push({
    label: `Cable, ${cable.kind}, ${field(facts, 'cable.powerPerLength')}`,
    value: value(facts, cable.length, 'length'),
  });
  const concentrate = shown(facts, 'mix.concentrateVolume');
  const water = shown(facts, 'mix.waterVolume');
  if (mix.antifreeze !== 'none' && concentrate)
    list.push({ label: `${field(facts, 'mix.antifreeze')}, concentrate`, value: concentrate });
  if (water) list.push({ label: 'Water', value: water });
  if (skirt.material !== 'none') {
    const layers = skirt.layers > 1 ? `, ${skirt.layers} layers` : '';
    list.push({
      label: `${field(facts, 'skirt.material')}, ${value(facts, frame.height, 'length')} high${layers}`,
      value: value(facts, perimeter(bench) * skirt.closed, 'length'),
    });
  }
  return list;
}

/** Filling, step by step. A figure that is not there is left out of its step. */
function filling(facts: Facts): (readonly Run[])[] {
  const { bench } = facts.situation;
  const { loop, mix } = bench;
  const steps: (readonly Run[])[] = [[run('Fill with plain water, look for drips, drain.')]];
  const concentrate = shown(facts, 'mix.concentrateVolume');
  const water = shown(facts, 'mix.waterVolume');
  const freezing = shown(facts, 'mix.freezingPoint');
  const volume = shown(facts, 'loop.volume');
  if (mix.antifreeze !== 'none' && concentrate && water)
    steps.push([
      run('Stir '),
      bold(concentrate),
      run(' of concentrate into '),
      bold(water),
      run(` of water: ${field(facts, 'mix.share')}`),
      ...(freezing ? [run(', liquid down to '), bold(freezing)] : []),
      run('.'),
    ]);
  steps.push([
    run(`Fill slowly at about ${field(facts, 'loop.fillTemperature')}, let the air out`),
    ...(volume ? [run('; the loop holds '), bold(volume)] : []),
    run('.'),
  ]);
  const rise = shown(facts, 'loop.rise');
  const headspace = shown(facts, 'loop.headspace');
  if (loop.expansion === 'standpipe')
    steps.push([
      run('Stop with '),
      bold(value(facts, loop.standpipeHeight, 'size')),
      run(' free in the stand-pipe'),
      ...(rise ? [run(': it rises '), bold(rise), run(` by ${field(facts, 'loop.hottest')}`)] : []),
      run('. Leave it open.'),
    ]);
  else
    steps.push([
      run('Leave '),
      ...(headspace ? [bold(headspace), run(' of ')] : []),
      run('air at the highest point, under an open vent.'),
    ]);
  steps.push([
    run(
      mix.antifreeze === 'none'
        ? 'Label the loop: plain water, freezes. Then switch on.'
        : 'Label the loop, then switch on.',
    ),
  ]);
  return steps;
}

/** What is set by hand, to be read from across the shed. */
const settings = (facts: Facts): LabelledValue[] => [
  { label: 'set point', value: field(facts, 'control.setPoint') },
  { label: 'limit thermostat', value: `≤\u2009${limitThermostat(facts)}` },
  { label: 'low alarm, in pot', value: field(facts, 'control.alarmLow') },
  { label: 'high alarm, on loop', value: field(facts, 'control.alarmHigh') },
];

/**
 * Where a second thermostat must cut the power, whatever the first one does: the low end of the range in which sheath and
 * pipe stay within their limits, or else the pipe's limit in service; and never above where the stand-pipe or the air space
 * is full.
 */
export function limitThermostat(facts: Facts): string {
  const { highestService } = pipeOf(facts.situation.bench);
  const found = figureOf(facts, 'sheath.limitThermostat');
  const full = figureOf(facts, 'loop.fullAt');
  const most = Math.min(
    found?.figure.low ?? found?.figure.value ?? highestService,
    full?.figure.value ?? highestService,
    highestService,
  );
  return value(facts, most, 'temperature');
}

/** What is there beside what it must be. */
const circuit = (facts: Facts): LabelledValue[] => {
  const { bench, region } = facts.situation;
  const atMost = ruleSets[region.mains.rules].voltageDrop.value;
  const both = (...parts: (string | null)[]): string => parts.filter((one) => one !== null).join('; ');
  return [
    {
      label: 'Current',
      value: shown(facts, 'circuit.current') ?? 'none',
    },
    {
      label: 'Breaker; smallest',
      value: both(field(facts, 'supply.breaker'), shown(facts, 'circuit.smallestBreaker')),
    },
    { label: 'Wire', value: field(facts, 'supply.conductor') },
    {
      label: 'Feeder; longest',
      value: both(value(facts, bench.supply.feederLength, 'length'), shown(facts, 'circuit.longestFeeder')),
    },
    {
      label: 'Voltage lost; most',
      value: both(shown(facts, 'circuit.voltageDrop'), value(facts, atMost, 'share')),
    },
    // Without the names that the trade has for it in brackets, so that it stays on its line.
    {
      label: 'Protection',
      value: field(facts, 'supply.protection').replace(/ \(.*\)$/u, ''),
    },
  ];
};

/** Most that each drawing may take of the page's height [mm]. */
const heights = { plan: 62, section: 66, winding: 54 } as const;

/** By how much drawings are printed larger than drawn, for their letters: those beside others have less room. */
const enlarged = { whole: 1.18, half: 1.08 } as const;

/** A drawing of the bench as a block of the sheet. */
export const drawingBlock = (
  facts: Facts,
  title: string,
  height: number,
  larger: number,
  draw: BenchDrawing,
): Block => ({
  kind: 'drawing',
  title,
  height,
  enlarged: larger,
  draw: (width, high) => draw({ ...facts, width, sheet: { height: high, enlarged: larger } }),
});

/** What to buy, with room for the price of each. It may hang elsewhere: it is needed once. */
function buying(facts: Facts): Band {
  const list = shopping(facts);
  const priced = (label: string, amount: string, name: string): TableRow => ({
    cells: [label, amount, { name, hint: `Price: ${label}` }],
  });
  return {
    movable: true,
    columns: [
      {
        share: 1,
        blocks: [
          heading('What to buy'),
          {
            kind: 'table',
            columns: [
              { head: 'Part', share: 5 },
              { head: 'How much', share: 2 },
              { head: 'Price', share: 2 },
            ],
            rows: [
              ...list.map(({ label, value: much }, index) => priced(label, much, `price_${index + 1}`)),
              priced('In all', '', 'price_sum'),
            ],
          },
        ],
      },
    ],
  };
}

/** The side that hangs beside the work: drawings, how to wind, fill and feed it, settings, and what to buy. */
export function buildSide(
  facts: Facts,
  names: Names,
  code: Code,
  place: NotesPlace,
  leaveOut: readonly LeftOut[] = [],
): Side {
  const { antifreeze } = facts.situation.bench.mix;
  const stopped = reasonsAgainst(facts).length > 0;
  const drawn = !leaveOut.includes('drawings');
  const half = (title: string, height: number, draw: BenchDrawing): Block[] =>
    drawn ? [drawingBlock(facts, title, height, enlarged.half, draw)] : [];
  const numbers: LabelledValue[] = [
    { label: 'turn to turn', value: shown(facts, 'winding.pitch') },
    { label: 'clear gap', value: shown(facts, 'winding.gap') },
    { label: 'turns', value: shown(facts, 'winding.turns') },
  ].flatMap((cell) => (cell.value === null ? [] : [{ ...cell, value: cell.value }]));
  const plan = drawingBlock(facts, 'Plan', heights.plan, enlarged.whole, planDrawing);
  return {
    bands: [
      ...head(facts, names, code, place),
      ...stopBanner(
        facts,
        'Not to be built as it stands',
        'Put this right in the guide and print again. Until then there is no list of what to buy, and no filling.',
      ),
      ...(drawn ? [{ columns: [{ share: 1, blocks: [plan] }] }] : []),
      {
        heads: [
          half('Section', heights.section, sectionDrawing),
          [
            ...half('Winding the cable', heights.winding, windingDrawing),
            ...(drawn ? [] : [heading('Winding the cable')]),
            ...(numbers.length > 0 ? [{ kind: 'numbers', cells: numbers } as const] : []),
            windingSign(facts),
          ],
        ],
        groups: [
          // Nothing to fill and nothing to set on a bench that is not to be built.
          ...(stopped
            ? []
            : [
                [
                  heading('Fill and mix'),
                  { kind: 'list', numbered: true, entries: filling(facts) } as const,
                  ...signs('open-loop', ...(antifreeze === 'none' ? [] : (['antifreeze-poison'] as const))),
                ],
                [
                  heading('Settings'),
                  { kind: 'numbers', cells: settings(facts) } as const,
                  paragraph(
                    run('Sensor '),
                    bold(lowerFirst(field(facts, 'control.sensor'))),
                    run('. Differential '),
                    bold(field(facts, 'control.differential')),
                    run('.'),
                  ),
                ],
              ]),
          [heading('Circuit'), ...rows(circuit(facts)), ...signs('mains-and-water')],
          [heatSign(facts)],
        ],
      },
      ...(stopped || leaveOut.includes('buying') ? [] : [buying(facts)]),
    ],
  };
}

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
