import type { Bench } from '../../calculators/bench/fields.ts';
import { pipeOf, skirtClosed } from '../../calculators/bench/geometry.ts';
import { priorsOf } from '../../calculators/bench/priors.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { benchTops, floors } from '../../calculators/tables/benches.ts';
import { sheets } from '../../calculators/tables/films.ts';
import type { Point } from './drawing.ts';
import { drawnGap, pipeLevel, potRow, sensorPlace, type Scale } from './section-parts.ts';

/** Something in the section that has a name. */
export interface Named {
  readonly at: Point;
  readonly text: string;
  /** The same in a word or two, for the worksheet. */
  readonly short: string;
}

const coverWords = {
  none: '',
  fleece: 'Cover of fleece',
  film: 'Cover of film',
  'film-infrared': 'Cover of film that holds back heat radiation',
  both: 'Cover of fleece (dashed) with film over it',
} as const satisfies Record<Bench['cover']['kind'], string>;

const sensorWords = {
  loop: 'Sensor on the loop pipe',
  air: 'Sensor in the air under the bench',
  pot: 'Sensor in a pot, at the roots',
} as const satisfies Record<Bench['control']['sensor'], string>;

const gapWords = (what: string, expected: number, measured: number | null, manner: Manner): string => {
  if (measured === 0) return `${what}: none`;
  const size = showQuantity(expected, 'size', manner);
  return measured === null ? `${what}: not measured, about ${size} taken` : `${what}: ${size}`;
};

const sheetWords = ({ skirt }: Bench): string => {
  if (skirt.material === 'none') return 'No skirt: the sides are open';
  const layers = Math.round(skirt.layers);
  return `Skirt: ${sheets[skirt.material].label.toLowerCase()}${layers > 1 ? `, ${layers} layers` : ''}`;
};

/** What places and words the names are made from. */
interface Naming {
  readonly situation: Situation;
  readonly manner: Manner;
  readonly scale: Scale;
  /** Middles of the pipes across the bench [m]. */
  readonly middles: readonly number[];
}

type Priors = ReturnType<typeof priorsOf>;

function coverNames({ situation: { bench }, manner, scale }: Naming, { coverGap }: Priors): Named[] {
  const { frame, cover } = bench;
  const { x, y, perMetre } = scale;
  if (cover.kind === 'none') return [];
  return [
    {
      at: [x(frame.width * 0.62), y(frame.height + cover.height)],
      text: coverWords[cover.kind],
      short: 'cover',
    },
    {
      at: [x(frame.width), y(frame.height) - drawnGap(coverGap.expected, perMetre) / 2],
      text: gapWords('Gap at the edge of the cover', coverGap.expected, cover.gap, manner),
      short: `gap ${showQuantity(coverGap.expected, 'size', manner)}`,
    },
  ];
}

function topNames({ situation: { bench }, manner, scale: { x, y } }: Naming): Named[] {
  const { frame, pots } = bench;
  const size = (metres: number) => showQuantity(metres, 'size', manner);
  return [
    {
      at: [x(potRow(bench).at(-1) ?? frame.width / 2), y(frame.height + pots.height * 0.6)],
      text: `Pots: ${size(pots.diameter)} across, ${size(pots.height)} of medium`,
      short: 'pots',
    },
    {
      at: [x(frame.width * 0.8), y(frame.height) + 0.4],
      text: `Bench top: ${benchTops[frame.top].label.toLowerCase()}`,
      short: 'bench top',
    },
  ];
}

function skirtNames({ situation: { bench }, manner, scale }: Naming, priors: Priors): Named[] {
  const { frame, skirt } = bench;
  const { x, y, perMetre } = scale;
  const edge = x(frame.width);
  const side = y(frame.height * 0.62);
  if (skirtClosed(bench) === 0) return [{ at: [edge, side], text: sheetWords(bench), short: 'no skirt' }];
  const short = (metres: number) => `gap ${showQuantity(metres, 'size', manner)}`;
  const { topGap, bottomGap } = priors;
  const closed =
    skirt.closed < 1 ? `; it closes ${showQuantity(skirt.closed, 'share', manner)} of the sides` : '';
  return [
    {
      at: [edge + 0.3, y(frame.height) + 0.8 + drawnGap(topGap.expected, perMetre) / 2],
      text: gapWords('Gap at the bench edge', topGap.expected, skirt.topGap, manner),
      short: short(topGap.expected),
    },
    { at: [edge + 0.5, side], text: sheetWords(bench) + closed, short: 'skirt' },
    {
      at: [edge + 0.5, y(0) - drawnGap(bottomGap.expected, perMetre) / 2],
      text: gapWords('Gap at the floor', bottomGap.expected, skirt.bottomGap, manner),
      short: short(bottomGap.expected),
    },
  ];
}

function loopNames({ situation: { bench }, manner, scale, middles }: Naming): Named[] {
  const { x, y } = scale;
  const pipe = pipeOf(bench);
  const offset = (pipe.outsideDiameter / 2) * 0.7;
  const inset = showQuantity(Math.min(bench.loop.inset, bench.frame.width / 2), 'size', manner);
  const lies =
    bench.loop.run === 'straight' ? 'under the middle of the bench' : `middle ${inset} from the edge`;
  return [
    {
      at: [x(Math.max(...middles) + offset), y(pipeLevel(bench) + offset)],
      text: `Loop: ${pipe.label}, cable wound round it; ${lies}`,
      short: 'loop',
    },
    {
      at: sensorPlace(bench, scale, middles),
      text: sensorWords[bench.control.sensor],
      short: 'sensor',
    },
  ];
}

function floorNames({ situation: { bench }, manner, scale: { x, y } }: Naming): Named[] {
  const { width, floor, floorInsulation } = bench.frame;
  const surface: Named = {
    at: [x(width * 0.9), y(0) + 1.2],
    text: `Floor: ${floors[floor].label.toLowerCase()}`,
    short: 'floor',
  };
  if (floorInsulation === 0) return [surface];
  const text = `Foam board on the floor: ${showQuantity(floorInsulation, 'size', manner)}`;
  return [{ at: [x(width * 0.8), y(floorInsulation / 2)], text, short: 'foam board' }, surface];
}

/** Everything in the section that has a name, from top to bottom. */
export function namesOf(naming: Naming): Named[] {
  const priors = priorsOf(naming.situation);
  return [
    ...coverNames(naming, priors),
    ...topNames(naming),
    ...skirtNames(naming, priors),
    ...loopNames(naming),
    ...floorNames(naming),
  ].toSorted((a, b) => a.at[1] - b.at[1]);
}
