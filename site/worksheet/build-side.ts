import { pipeOf } from '../../calculators/bench/geometry.ts';
import { designOutside } from '../../calculators/bench/place.ts';
import { cautions } from '../../calculators/cautions.ts';
import type { CautionId } from '../../calculators/calculator.ts';
import { shoppingList } from '../../calculators/shopping.ts';
import { ruleSets } from '../../calculators/tables/rule-sets.ts';
import type { BenchDrawing } from '../drawing/input.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import { planDrawing } from '../drawing/plan.ts';
import { sectionDrawing } from '../drawing/section.ts';
import { windingDrawing } from '../drawing/winding.ts';
import { sentenceText } from '../widgets/text.ts';
import { codeSide, type Block, type LabelledValue, type TableRow } from './blocks.ts';
import type { Band, Column, Side } from './compose.ts';
import type { LeftOut } from './left-out.ts';
import { field, figureOf, given, hintsToRead, reasonsAgainst, shown, value, type Facts } from './facts.ts';
import { messages, say } from '../../calculators/say.ts';
import { bold, run, runsOf, type Run } from './text.ts';

const heading = (text: string): Block => ({ kind: 'heading', text });
const paragraph = (...runs: Run[]): Block => ({ kind: 'paragraph', runs });
const rows = (entries: readonly LabelledValue[]): Block[] =>
  entries.length > 0 ? [{ kind: 'rows', rows: entries }] : [];

/** A caution beside the figures that it is about, in its first sentence; the other side has all of it. */
const signs = ({ manner }: Facts, ...ids: CautionId[]): Block[] => [
  {
    kind: 'paragraph',
    mark: '⚠',
    runs: [bold(ids.map((id) => signOf(id, manner)).join(' '))],
  },
];

/** Of cautions whose title alone does not say what to do or to fear. */
const signWords: Partial<Record<CautionId, string>> = messages({
  'mains-and-water': 'Mains and water kill: unplug first.',
  'antifreeze-poison': 'Antifreeze can poison people and animals.',
});

function signOf(id: CautionId, manner: Manner): string {
  const words = signWords[id];
  return words === undefined ? `${say(manner, cautions[id].title)}.` : say(manner, words);
}

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
  const { manner } = facts;
  const limit = given(value(facts, allowed, 'temperature'));
  const words =
    crossed && loose
      ? say(manner, 'Limit {limit}; crossed {crossed}, loose {loose}.', { limit, crossed, loose })
      : crossed
        ? say(manner, 'Limit {limit}; crossed {crossed}.', { limit, crossed })
        : loose
          ? say(manner, 'Limit {limit}; loose {loose}.', { limit, loose })
          : '';
  return {
    kind: 'paragraph',
    mark: '⚠',
    runs: [bold(`${say(manner, cautions.crossing.title)}.`), run(words && ` ${words}`)],
  };
}

/** Why the loop is filled before the cable is switched on, with the temperature that the empty pipe comes to. */
function heatSign(facts: Facts): Block {
  const { highestService } = pipeOf(facts.situation.bench);
  const found = figureOf(facts, 'sheath.pipeWhenEmpty');
  const most = found ? (found.figure.high ?? found.figure.value) : 0;
  const show = (amount: number): string => given(value(facts, amount, 'temperature'));
  return {
    kind: 'paragraph',
    mark: '⚠',
    runs:
      most > highestService
        ? runsOf(
            facts.manner,
            '*Never heat the pipe empty* ({most}; limit {limit})*. No foam or film over the cable.*',
            { most: show(most), limit: show(highestService) },
          )
        : runsOf(facts.manner, '*Never heat the pipe empty**. No foam or film over the cable.*'),
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
  const parts = { count: String(length), place: place ?? '' };
  const { manner } = facts;
  if (!place)
    return [
      paragraph(
        bold(
          length === 1
            ? say(manner, 'Read first: 1 hint for this bench, in the guide.')
            : say(manner, 'Read first: {count} hints for this bench, in the guide.', parts),
        ),
      ),
    ];
  return [
    paragraph(
      bold(
        length === 1
          ? say(manner, 'Read first: 1 hint for this bench, on {place}.', parts)
          : say(manner, 'Read first: {count} hints for this bench, on {place}.', parts),
      ),
    ),
  ];
}

function head(facts: Facts, names: Names, code: Code, place: NotesPlace): Band[] {
  const blocks: Block[] = [
    { kind: 'title', text: names.bench },
    paragraph(
      ...runsOf(facts.manner, '{place} · built for *{outside}* outside, {night}', {
        place: [names.house, names.station, names.region].filter((name) => name !== '').join(' · '),
        outside: value(facts, designOutside(facts.situation), 'temperature'),
        night: lowerFirst(field(facts, 'place.designNight')),
      }),
    ),
    ...notes(names, facts.manner),
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
function notes({ notes: text, incomplete }: Names, manner: Manner): Block[] {
  const blocks: Block[] = [];
  if (text !== '') blocks.push(paragraph(...runsOf(manner, '*Notes: *{text}', { text })));
  if (incomplete)
    blocks.push(
      paragraph(
        run(
          say(manner, '□ stands for a letter that this sheet cannot print. The guide has the text in full.'),
        ),
      ),
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
  const { manner } = facts;
  const mixed = mix.antifreeze !== 'none';
  const steps: (readonly Run[])[] = [];
  const concentrate = shown(facts, 'mix.concentrateVolume');
  const water = shown(facts, 'mix.waterVolume');
  const liquidTo = shown(facts, 'mix.liquidTo');
  const volume = shown(facts, 'loop.volume');
  if (mixed && concentrate && water)
    steps.push(
      runsOf(
        manner,
        liquidTo
          ? 'Stir *{concentrate}* of concentrate into *{water}* of water: {share}, surely liquid to *{liquidTo}*.'
          : 'Stir *{concentrate}* of concentrate into *{water}* of water: {share}.',
        { concentrate, water, share: given(field(facts, 'mix.share')), liquidTo: liquidTo ?? '' },
      ),
    );
  const warm = given(field(facts, 'loop.fillTemperature'));
  steps.push(
    volume
      ? runsOf(manner, 'Fill slowly at about {warm}: *{volume}*. Look for drips. Let the air out.', {
          warm,
          volume,
        })
      : runsOf(manner, 'Fill slowly at about {warm}. Look for drips. Let the air out.', { warm }),
  );
  const level = shown(facts, 'loop.fillLevel');
  const rise = shown(facts, 'loop.likelyRise');
  const headspace = shown(facts, 'loop.headspace');
  if (loop.expansion === 'standpipe') {
    const parts = {
      free: value(facts, loop.standpipeHeight, 'size'),
      level: level ?? '',
      rise: rise ?? '',
      hottest: given(field(facts, 'loop.hottest')),
    };
    const message = messages(
      level
        ? rise
          ? 'Stand-pipe, open: leave *{level}* in it, *{free}* free. It rises *{rise}* by {hottest}.'
          : 'Stand-pipe, open: leave *{level}* in it, *{free}* free.'
        : rise
          ? 'Stand-pipe, open: leave *{free}* free. It rises *{rise}* by {hottest}.'
          : 'Stand-pipe, open: leave *{free}* free.',
    );
    steps.push(runsOf(manner, message, parts));
  } else
    steps.push(
      headspace
        ? runsOf(manner, 'Leave *{space}* of air at the highest point, under an open vent.', {
            space: headspace,
          })
        : runsOf(manner, 'Leave air at the highest point, under an open vent.'),
    );
  const freezing = shown(facts, 'mix.freezingPoint');
  // A sound mix of a concentrate that holds other things too reads warmer than one of glycol alone.
  if (mixed && freezing && liquidTo)
    steps.push(
      runsOf(manner, 'Test the mix: *{sure}* to *{freezing}* is sound.', {
        sure: liquidTo,
        freezing,
      }),
    );
  steps.push(
    runsOf(
      manner,
      cable.kind === 'constant' ? 'Wind. Same ohms as before?' : 'Wind. Same insulation reading as before?',
    ),
    runsOf(manner, 'Electrician tests the ground-fault device.'),
    runsOf(
      manner,
      mixed
        ? 'Label the loop. Filled? Then switch on.'
        : 'Label it: plain water, freezes. Filled? Then switch on.',
    ),
  );
  return steps;
}

/** A setting that misses what is advised by less than a dial can show [K] is as advised. */
const apart = 0.25;

/** What the guide advises, as the note of a setting from which it differs. */
function advice(facts: Facts, set: number, name: string, inPot = false): { readonly note?: string } {
  const found = figureOf(facts, name);
  if (!found || (!inPot && Math.abs(found.figure.value - set) < apart)) return {};
  const advised = { value: value(facts, found.figure.value, found.quantity) };
  return {
    note: inPot
      ? say(facts.manner, 'advised in pot: {value}', advised)
      : say(facts.manner, 'advised: {value}', advised),
  };
}

/** The set point that is advised: for the sensor where it is, or in a pot where no set point serves it there. */
function advisedSetPoint(facts: Facts): { readonly note?: string } {
  const { sensor, setPoint } = facts.situation.bench.control;
  if (sensor === 'air' && figureOf(facts, 'settings.setInAir'))
    return advice(facts, setPoint, 'settings.setInAir');
  return advice(facts, setPoint, 'settings.setInPot', sensor !== 'pot');
}

/** What is set by hand, to be read from across the shed, and what the guide advises where that is something else. */
function settings(facts: Facts): LabelledValue[] {
  const { alarmLow, alarmHigh } = facts.situation.bench.control;
  const { manner } = facts;
  const pause = shown(facts, 'settings.loopPause');
  return [
    { label: say(manner, 'set point'), value: field(facts, 'control.setPoint'), ...advisedSetPoint(facts) },
    {
      label: say(manner, 'limit thermostat'),
      value: `≤\u2009${limitThermostat(facts)}`,
      // One more thermostat, which comes on again by itself, where the loop would trip the limit while pots thaw.
      ...(pause ? { note: say(manner, 'pause: {value}', { value: pause }) } : {}),
    },
    {
      label: say(manner, 'low alarm, in pot'),
      value: field(facts, 'control.alarmLow'),
      ...advice(facts, alarmLow, 'settings.alarmLow'),
    },
    {
      label: say(manner, 'high alarm, on loop'),
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
  const { manner } = facts;
  const { bench, region } = facts.situation;
  const atMost = ruleSets[region.mains.rules].voltageDrop.value;
  // The length at which the voltage lost is the most that the rules advise; what trips in time may ask for less.
  const longest = shown(facts, 'circuit.longestFeeder');
  const both = (...parts: (string | null)[]): string => parts.filter((one) => one !== null).join('; ');
  return [
    {
      label: say(manner, 'Current'),
      value: shown(facts, 'circuit.current') ?? say(manner, 'none'),
    },
    {
      label: say(manner, 'Breaker; smallest'),
      value: both(field(facts, 'supply.breaker'), shown(facts, 'circuit.smallestBreaker')),
    },
    {
      label: say(manner, 'Feeder'),
      value: both(field(facts, 'supply.conductor'), given(value(facts, bench.supply.feederLength, 'length'))),
    },
    {
      label: say(manner, 'Voltage lost; most'),
      value: both(
        shown(facts, 'circuit.voltageDrop'),
        longest === null
          ? value(facts, atMost, 'share')
          : say(manner, '{share} at {length}', { share: value(facts, atMost, 'share'), length: longest }),
      ),
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
  const { manner } = facts;
  const list = shoppingList(facts.situation, facts.answers).map(({ group, name, quantity }, index) => {
    const label = sentenceText(name, facts.manner);
    const row: TableRow = {
      cells: [
        label,
        given(sentenceText(quantity, facts.manner)),
        { name: `price_${index + 1}`, hint: say(manner, 'Price: {part}', { part: label }) },
      ],
    };
    return { group, row };
  });
  const sum: TableRow = {
    cells: [say(manner, 'In all'), '', { name: 'price_sum', hint: say(manner, 'Price: in all') }],
  };
  const column = (title: string, rows: readonly TableRow[]): Column => ({
    share: 0.5,
    blocks: [
      heading(title),
      {
        kind: 'table',
        columns: [
          { head: say(manner, 'Part'), share: 5.8 },
          { head: say(manner, 'Amount'), share: 1.95 },
          { head: say(manner, 'Price'), share: 1.35 },
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
      column(say(manner, 'What to buy: loop and cable'), rowsOf(true)),
      column(say(manner, 'To enclose, switch and watch'), [...rowsOf(false), sum]),
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
  const { manner } = facts;
  const stopped = reasonsAgainst(facts).length > 0;
  const drawn = !leaveOut.includes('drawings');
  const half = (title: string, height: number, draw: BenchDrawing): Block[] =>
    drawn ? [drawingBlock(facts, title, height, enlarged.half, draw)] : [];
  const numbers: LabelledValue[] = [
    { label: say(manner, 'turn to turn'), value: shown(facts, 'winding.pitch') },
    { label: say(manner, 'clear gap'), value: shown(facts, 'winding.gap') },
    { label: say(manner, 'turns'), value: shown(facts, 'winding.turns') },
  ].flatMap((cell) => (cell.value === null ? [] : [{ ...cell, value: cell.value }]));
  const plan = drawingBlock(facts, say(manner, 'Plan'), heights.plan, enlarged.whole, planDrawing);
  return {
    bands: [
      ...head(facts, names, code, place),
      ...stopBanner(
        facts,
        say(manner, 'Not to be built as it stands'),
        say(
          manner,
          'Put this right in the guide and print again. Until then there is no list of what to buy, and no filling.',
        ),
      ),
      ...(drawn ? [{ columns: [{ share: 1, blocks: [plan] }] }] : []),
      {
        heads: [
          half(say(manner, 'Section'), heights.section, sectionDrawing),
          [
            ...half(say(manner, 'Winding the cable'), heights.winding, windingDrawing),
            ...(drawn ? [] : [heading(say(manner, 'Winding the cable'))]),
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
                  heading(say(manner, 'Fill and mix')),
                  { kind: 'list', numbered: true, entries: filling(facts) } as const,
                  ...signs(
                    facts,
                    'open-loop',
                    ...(antifreeze === 'none' ? [] : (['antifreeze-poison'] as const)),
                  ),
                ],
                [
                  heading(say(manner, 'Settings')),
                  { kind: 'numbers', cells: settings(facts) } as const,
                  paragraph(
                    ...runsOf(manner, 'Sensor *{place}*. Differential *{kelvin}*.', {
                      place: lowerFirst(field(facts, 'control.sensor')),
                      kelvin: given(field(facts, 'control.differential')),
                    }),
                  ),
                ],
              ]),
          [heading(say(manner, 'Circuit')), ...rows(circuit(facts)), ...signs(facts, 'mains-and-water')],
          [heatSign(facts)],
        ],
      },
      ...(stopped || leaveOut.includes('buying') ? [] : [buying(facts)]),
    ],
  };
}

const lowerFirst = (text: string): string => `${text.charAt(0).toLowerCase()}${text.slice(1)}`;
