import { loopLength, perimeter, pipeOf } from '../../calculators/bench/geometry.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { cautions } from '../../calculators/cautions.ts';
import type { CautionId } from '../../calculators/calculator.ts';
import type { BenchDrawing } from '../drawing/input.ts';

import { planDrawing } from '../drawing/plan.ts';
import { sectionDrawing } from '../drawing/section.ts';
import { windingDrawing } from '../drawing/winding.ts';
import type { Block, LabelledValue } from './blocks.ts';
import type { Band, Side } from './compose.ts';
import { field, figureOf, labelled, shown, value, warningsOf, type Facts } from './facts.ts';
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

/** Warnings that this side says by a figure in its settings or beside the winding. */
const saidByFigures: readonly string[] = [
  'limit-thermostat',
  'crossing-over-limit',
  'loose-over-limit',
  'empty-over-limit',
];

/** Warnings that ask for care, beside the figures that they are about. */
const care = (facts: Facts, ...ids: string[]): Block[] =>
  warningsOf(facts, 'care', ids, saidByFigures).map((text) => ({
    kind: 'paragraph',
    mark: '⚠',
    runs: [run(text)],
  }));

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

function head(facts: Facts, names: Names): Band[] {
  const left: Block[] = [
    { kind: 'title', text: names.bench },
    paragraph(run([names.house, names.region, names.station].filter((name) => name !== '').join(' · '))),
    ...notes(names),
  ];
  const night = field(facts, 'place.designNight');
  const right: Block[] = [
    {
      kind: 'numbers',
      cells: [
        {
          label: `outside: ${night.charAt(0).toLowerCase()}${night.slice(1)}`,
          value: value(facts, designOutside(facts.situation), 'temperature'),
        },
      ],
    },
  ];
  return [
    {
      columns: [
        { share: 0.6, blocks: left },
        { share: 0.4, blocks: right },
      ],
    },
  ];
}

function stopBanner(facts: Facts): Band[] {
  const reasons = warningsOf(facts, 'stop');
  if (reasons.length === 0) return [];
  const block: Block = {
    kind: 'banner',
    title: 'Not to be built as it stands',
    entries: [
      ...reasons,
      'Put this right in the guide and print again. Until then there is no list of what to buy, and no filling.',
    ].map((text) => [run(text)]),
  };
  return [{ columns: [{ share: 1, blocks: [block] }] }];
}

/** What the grower noted, and what of it cannot be printed. */
function notes({ notes: text, incomplete }: Names): Block[] {
  const blocks: Block[] = [];
  if (text !== '') blocks.push(paragraph(bold('Notes: '), run(text)));
  if (incomplete)
    blocks.push({
      kind: 'paragraph',
      small: true,
      runs: [run('□ stands for a letter that this sheet cannot print. The guide has the text in full.')],
    });
  return blocks;
}

/** Corners of the loop, each a 90° bend. */
const bends = { u: 2, ring: 4, straight: 0 } as const;
/** Ends of the loop to close or to carry on into a stand-pipe. */
const ends = { u: 2, ring: 0, straight: 2 } as const;

function shopping(facts: Facts): LabelledValue[] {
  const { bench } = facts.situation;
  const { loop, cable, mix, skirt, frame } = bench;
  const list: LabelledValue[] = [
    { label: pipeOf(bench).label, value: value(facts, loopLength(bench), 'length') },
  ];
  if (bends[loop.run] + ends[loop.run] > 0)
    list.push({ label: 'Bends of 90° and end caps', value: `${bends[loop.run]} and ${ends[loop.run]}` });
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
  if (mix.antifreeze !== 'none' && concentrate && water)
    list.push({ label: `${field(facts, 'mix.antifreeze')} and water`, value: `${concentrate}, ${water}` });
  else if (water) list.push({ label: 'Water', value: water });
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

const settings = (facts: Facts): LabelledValue[] => [
  { label: 'Sensor', value: field(facts, 'control.sensor') },
  {
    label: 'Set point, differential',
    value: `${field(facts, 'control.setPoint')}, ${field(facts, 'control.differential')}`,
  },
  {
    label: 'Alarms, low and high',
    value: `${field(facts, 'control.alarmLow')}, ${field(facts, 'control.alarmHigh')}`,
  },
  limitThermostat(facts),
];

/**
 * Where a second thermostat must cut the power, whatever the first one does: the low end of the range in which sheath and
 * pipe stay within their limits, or else the pipe's limit in service; and never above where the stand-pipe or the air space
 * is full.
 */
function limitThermostat(facts: Facts): LabelledValue {
  const { highestService } = pipeOf(facts.situation.bench);
  const found = figureOf(facts, 'sheath.limitThermostat');
  const full = figureOf(facts, 'loop.fullAt');
  const most = Math.min(
    found?.figure.low ?? found?.figure.value ?? highestService,
    full?.figure.value ?? highestService,
    highestService,
  );
  return { label: 'Limit thermostat, at most', value: value(facts, most, 'temperature') };
}

const circuit = (facts: Facts): LabelledValue[] => [
  ...labelled(facts, ['circuit.current']),
  {
    label: 'Breaker: smallest, present',
    value: [shown(facts, 'circuit.smallestBreaker') ?? 'none', field(facts, 'supply.breaker')].join(', '),
  },
  ...labelled(facts, ['circuit.voltageDrop']),
  {
    label: 'Feeder',
    value: `${field(facts, 'supply.feederLength')}, ${field(facts, 'supply.conductor')}`,
  },
  // Without the names that the trade has for it in brackets, so that it stays on its line.
  {
    label: 'Protection',
    value: field(facts, 'supply.protection').replace(/ \(.*\)$/u, ''),
  },
];

/** Most that each drawing may take of the page's height [mm]. */
const heights = { plan: 62, section: 66, winding: 54 } as const;

/** The side that hangs beside the work: drawings, what to buy, how to fill, circuit and settings. */
export function buildSide(facts: Facts, names: Names): Side {
  const drawing = (title: string, height: number, draw: BenchDrawing): Block => ({
    kind: 'drawing',
    title,
    height,
    draw: (width, high) => draw({ ...facts, width, sheet: { height: high } }),
  });
  const { antifreeze } = facts.situation.bench.mix;
  const stopped = warningsOf(facts, 'stop').length > 0;
  const numbers: LabelledValue[] = [
    { label: 'turn to turn', value: shown(facts, 'winding.pitch') },
    { label: 'clear gap', value: shown(facts, 'winding.gap') },
    { label: 'turns', value: shown(facts, 'winding.turns') },
  ].flatMap((cell) => (cell.value === null ? [] : [{ ...cell, value: cell.value }]));
  return {
    bands: [
      ...head(facts, names),
      ...stopBanner(facts),
      { columns: [{ share: 1, blocks: [drawing('Plan', heights.plan, planDrawing)] }] },
      {
        heads: [
          [drawing('Section', heights.section, sectionDrawing)],
          [
            drawing('Winding the cable', heights.winding, windingDrawing),
            ...(numbers.length > 0 ? [{ kind: 'numbers', cells: numbers } as const] : []),
            ...care(facts, 'winding', 'sheath'),
            windingSign(facts),
          ],
        ],
        groups: [
          // Nothing to buy and nothing to fill for a bench that is not to be built.
          ...(stopped ? [] : [[heading('What to buy'), ...rows(shopping(facts))]]),
          [
            heading(stopped ? 'Loop and mix' : 'Fill and mix'),
            ...(stopped ? [] : [{ kind: 'list', numbered: true, entries: filling(facts) } as const]),
            ...care(facts, 'loop', 'mix'),
            ...signs('open-loop', ...(antifreeze === 'none' ? [] : (['antifreeze-poison'] as const))),
          ],
          [
            heading('Circuit'),
            ...rows(circuit(facts)),
            ...care(facts, 'circuit'),
            ...signs('mains-and-water'),
          ],
          [heading('Settings'), ...rows(settings(facts)), heatSign(facts)],
        ],
      },
    ],
  };
}
