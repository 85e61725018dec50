import { pipeOf } from '../../calculators/bench/geometry.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { cautions } from '../../calculators/cautions.ts';
import type { CautionId } from '../../calculators/calculator.ts';
import { shoppingList } from '../../calculators/shopping.ts';
import { ruleSets } from '../../calculators/tables/rule-sets.ts';
import type { BenchDrawing } from '../drawing/input.ts';
import { planDrawing } from '../drawing/plan.ts';
import { sectionDrawing } from '../drawing/section.ts';
import { windingDrawing } from '../drawing/winding.ts';
import { sentenceText } from '../widgets/text.ts';
import { codeSide, type Block, type LabelledValue, type TableRow } from './blocks.ts';
import type { Band, Column, Side } from './compose.ts';
import type { LeftOut } from './left-out.ts';
import { field, figureOf, given, hintsToRead, reasonsAgainst, shown, value, type Facts } from './facts.ts';
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
    return found && found.figure.value > allowed
      ? given(value(facts, found.figure.value, found.quantity))
      : null;
  };
  const [crossed, loose] = [hot('sheath.atCrossing'), hot('sheath.inFreeAir')];
  const places = [...(crossed ? [`crossed ${crossed}`] : []), ...(loose ? [`loose ${loose}`] : [])];
  const words =
    places.length > 0 ? ` Limit ${given(value(facts, allowed, 'temperature'))}; ${places.join(', ')}.` : '';
  return { kind: 'paragraph', mark: '⚠', runs: [bold(`${cautions.crossing.title}.`), run(words)] };
}

/** Why the loop is filled before the cable is switched on, with the temperature that the empty pipe comes to. */
function heatSign(facts: Facts): Block {
  const { highestService } = pipeOf(facts.situation.bench);
  const found = figureOf(facts, 'sheath.pipeWhenEmpty');
  const most = found ? (found.figure.high ?? found.figure.value) : 0;
  const show = (amount: number): string => given(value(facts, amount, 'temperature'));
  const why = most > highestService ? ` (${show(most)}; limit ${show(highestService)})` : '';
  return {
    kind: 'paragraph',
    mark: '⚠',
    runs: [bold('Never heat the pipe empty'), run(why), bold('. No foam or film over the cable.')],
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

/**
 * Mixing, filling and winding in the order of the guide's chapter on the loop. A figure that is not there is left out of its
 * step. A self-regulating cable has no fixed resistance: there the insulation alone is compared.
 */
function filling(facts: Facts): (readonly Run[])[] {
  const { bench } = facts.situation;
  const { loop, mix, cable } = bench;
  const mixed = mix.antifreeze !== 'none';
  const steps: (readonly Run[])[] = [];
  const concentrate = shown(facts, 'mix.concentrateVolume');
  const water = shown(facts, 'mix.waterVolume');
  const liquidTo = shown(facts, 'mix.liquidTo');
  const volume = shown(facts, 'loop.volume');
  if (mixed && concentrate && water)
    steps.push([
      run('Stir '),
      bold(concentrate),
      run(' of concentrate into '),
      bold(water),
      run(` of water: ${given(field(facts, 'mix.share'))}`),
      ...(liquidTo ? [run(', surely liquid to '), bold(liquidTo)] : []),
      run('.'),
    ]);
  steps.push([
    run(`Fill slowly at about ${given(field(facts, 'loop.fillTemperature'))}`),
    ...(volume ? [run(': '), bold(volume)] : []),
    run('. Look for drips. Let the air out.'),
  ]);
  const level = shown(facts, 'loop.fillLevel');
  const rise = shown(facts, 'loop.likelyRise');
  const headspace = shown(facts, 'loop.headspace');
  if (loop.expansion === 'standpipe')
    steps.push([
      run('Stand-pipe, open: leave '),
      ...(level ? [bold(level), run(' in it, ')] : []),
      bold(value(facts, loop.standpipeHeight, 'size')),
      run(' free'),
      ...(rise ? [run('. It rises '), bold(rise), run(` by ${given(field(facts, 'loop.hottest'))}`)] : []),
      run('.'),
    ]);
  else
    steps.push([
      run('Leave '),
      ...(headspace ? [bold(headspace), run(' of ')] : []),
      run('air at the highest point, under an open vent.'),
    ]);
  const freezing = shown(facts, 'mix.freezingPoint');
  if (mixed && freezing) steps.push([run('Test the mix: it should read '), bold(freezing), run('.')]);
  steps.push(
    [run(`Wind. Same ${cable.kind === 'constant' ? 'ohms' : 'insulation reading'} as before?`)],
    [run('Electrician tests the ground-fault device.')],
    [run(`${mixed ? 'Label the loop' : 'Label it: plain water, freezes'}. Filled? Then switch on.`)],
  );
  return steps;
}

/** A setting that misses what is advised by less than a dial can show [K] is as advised. */
const apart = 0.25;

/** What the guide advises, as the note of a setting from which it differs. */
function advice(facts: Facts, set: number, name: string, place = ''): { readonly note?: string } {
  const found = figureOf(facts, name);
  if (!found || (place === '' && Math.abs(found.figure.value - set) < apart)) return {};
  return { note: `advised${place}: ${value(facts, found.figure.value, found.quantity)}` };
}

/** The set point that is advised: for the sensor where it is, or in a pot where no set point serves it there. */
function advisedSetPoint(facts: Facts): { readonly note?: string } {
  const { sensor, setPoint } = facts.situation.bench.control;
  if (sensor === 'air' && figureOf(facts, 'settings.setInAir'))
    return advice(facts, setPoint, 'settings.setInAir');
  return advice(facts, setPoint, 'settings.setInPot', sensor === 'pot' ? '' : ' in pot');
}

/** What is set by hand, to be read from across the shed, and what the guide advises where that is something else. */
function settings(facts: Facts): LabelledValue[] {
  const { alarmLow, alarmHigh } = facts.situation.bench.control;
  return [
    { label: 'set point', value: field(facts, 'control.setPoint'), ...advisedSetPoint(facts) },
    { label: 'limit thermostat', value: `≤\u2009${limitThermostat(facts)}` },
    {
      label: 'low alarm, in pot',
      value: field(facts, 'control.alarmLow'),
      ...advice(facts, alarmLow, 'settings.alarmLow'),
    },
    {
      label: 'high alarm, on loop',
      value: field(facts, 'control.alarmHigh'),
      ...advice(facts, alarmHigh, 'settings.alarmHigh'),
    },
  ];
}

/**
 * Where a second thermostat must cut the power, whatever the first one does; where the guide finds no temperature that saves
 * the cable, the pipe's limit in service, and never above where the stand-pipe or the air space is full.
 */
function limitThermostat(facts: Facts): string {
  const { highestService } = pipeOf(facts.situation.bench);
  const most =
    figureOf(facts, 'settings.limitThermostat')?.figure.value ??
    Math.min(figureOf(facts, 'loop.fullAt')?.figure.value ?? highestService, highestService);
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
      value: both(
        given(value(facts, bench.supply.feederLength, 'length')),
        shown(facts, 'circuit.longestFeeder'),
      ),
    },
    {
      label: 'Voltage lost; most',
      value: both(shown(facts, 'circuit.voltageDrop'), value(facts, atMost, 'share')),
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

/** What to buy, with room for the price of each, in two columns. It may hang elsewhere: it is needed once. */
function buying(facts: Facts): Band {
  const list = shoppingList(facts.situation, facts.answers).map(({ group, name, quantity }, index) => {
    const label = sentenceText(name, facts.manner);
    const row: TableRow = {
      cells: [
        label,
        given(sentenceText(quantity, facts.manner)),
        { name: `price_${index + 1}`, hint: `Price: ${label}` },
      ],
    };
    return { group, row };
  });
  const sum: TableRow = { cells: ['In all', '', { name: 'price_sum', hint: 'Price: in all' }] };
  const column = (title: string, rows: readonly TableRow[]): Column => ({
    share: 0.5,
    blocks: [
      heading(title),
      {
        kind: 'table',
        columns: [
          { head: 'Part', share: 5.8 },
          { head: 'Amount', share: 1.95 },
          { head: 'Price', share: 1.35 },
        ],
        rows,
      },
    ],
  });
  const isLoop = (group: string): boolean => group === 'loop' || group === 'heat';
  const rowsOf = (first: boolean): TableRow[] =>
    list.filter(({ group }) => isLoop(group) === first).map(({ row }) => row);
  return {
    movable: true,
    columns: [
      column('What to buy: loop and cable', rowsOf(true)),
      column('To enclose, switch and watch', [...rowsOf(false), sum]),
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
                    bold(given(field(facts, 'control.differential'))),
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
