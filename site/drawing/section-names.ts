import type { Bench } from '../../calculators/bench/fields.ts';
import { pipeOf, skirtClosed } from '../../calculators/bench/geometry.ts';
import { priorsOf } from '../../calculators/bench/priors.ts';
import type { Situation } from '../../calculators/calculator.ts';
import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { messages, say } from '../../calculators/say.ts';
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

const coverWords = messages({
  none: '',
  fleece: 'Cover of fleece',
  film: 'Cover of film',
  'film-infrared': 'Cover of film that holds back heat radiation',
  both: 'Cover of fleece (dashed) with film over it',
} satisfies Record<Bench['cover']['kind'], string>);

const sensorWords = messages({
  loop: 'Sensor on the loop pipe',
  air: 'Sensor in the air under the bench',
  pot: 'Sensor in a pot, at the roots',
} satisfies Record<Bench['control']['sensor'], string>);

const gapWords = (what: string, expected: number, measured: number | null, manner: Manner): string => {
  const gap = say(manner, what);
  if (measured === 0) return say(manner, '{gap}: none', { gap });
  const size = showQuantity(expected, 'size', manner);
  return measured === null
    ? say(manner, '{gap}: not measured, about {size} taken', { gap, size })
    : `${gap}: ${size}`;
};

const sheetWords = ({ skirt }: Bench, manner: Manner): string => {
  if (skirt.material === 'none') return say(manner, 'No skirt: the sides are open');
  const layers = Math.round(skirt.layers);
  const material = say(manner, sheets[skirt.material].label).toLowerCase();
  return layers > 1
    ? say(manner, 'Skirt: {material}, {layers} layers', { material, layers: String(layers) })
    : say(manner, 'Skirt: {material}', { material });
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
      text: say(manner, coverWords[cover.kind]),
      short: say(manner, 'cover'),
    },
    {
      at: [x(frame.width), y(frame.height) - drawnGap(coverGap.expected, perMetre) / 2],
      text: gapWords(messages('Gap at the edge of the cover'), coverGap.expected, cover.gap, manner),
      short: say(manner, 'gap {size}', { size: showQuantity(coverGap.expected, 'size', manner) }),
    },
  ];
}

function topNames({ situation: { bench }, manner, scale: { x, y } }: Naming): Named[] {
  const { frame, pots } = bench;
  const size = (metres: number) => showQuantity(metres, 'size', manner);
  return [
    {
      at: [x(potRow(bench).at(-1) ?? frame.width / 2), y(frame.height + pots.height * 0.6)],
      text: say(manner, 'Pots: {across} across, {high} of medium', {
        across: size(pots.diameter),
        high: size(pots.height),
      }),
      short: say(manner, 'pots'),
    },
    {
      at: [x(frame.width * 0.8), y(frame.height) + 0.4],
      text: say(manner, 'Bench top: {top}', { top: say(manner, benchTops[frame.top].label).toLowerCase() }),
      short: say(manner, 'bench top'),
    },
  ];
}

function skirtNames({ situation: { bench }, manner, scale }: Naming, priors: Priors): Named[] {
  const { frame, skirt } = bench;
  const { x, y, perMetre } = scale;
  const edge = x(frame.width);
  const side = y(frame.height * 0.62);
  if (skirtClosed(bench) === 0)
    return [{ at: [edge, side], text: sheetWords(bench, manner), short: say(manner, 'no skirt') }];
  const short = (metres: number) => say(manner, 'gap {size}', { size: showQuantity(metres, 'size', manner) });
  const { topGap, bottomGap } = priors;
  const closed =
    skirt.closed < 1
      ? say(manner, '; it closes {share} of the sides', {
          share: showQuantity(skirt.closed, 'share', manner),
        })
      : '';
  return [
    {
      at: [edge + 0.3, y(frame.height) + 0.8 + drawnGap(topGap.expected, perMetre) / 2],
      text: gapWords(messages('Gap at the bench edge'), topGap.expected, skirt.topGap, manner),
      short: short(topGap.expected),
    },
    { at: [edge + 0.5, side], text: sheetWords(bench, manner) + closed, short: say(manner, 'skirt') },
    {
      at: [edge + 0.5, y(0) - drawnGap(bottomGap.expected, perMetre) / 2],
      text: gapWords(messages('Gap at the floor'), bottomGap.expected, skirt.bottomGap, manner),
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
    bench.loop.run === 'straight'
      ? say(manner, 'under the middle of the bench')
      : say(manner, 'middle {inset} from the edge', { inset });
  return [
    {
      at: [x(Math.max(...middles) + offset), y(pipeLevel(bench) + offset)],
      text: say(manner, 'Loop: {pipe}, cable wound round it; {place}', {
        pipe: say(manner, pipe.label),
        place: lies,
      }),
      short: say(manner, 'loop'),
    },
    {
      at: sensorPlace(bench, scale, middles),
      text: say(manner, sensorWords[bench.control.sensor]),
      short: say(manner, 'sensor'),
    },
  ];
}

function floorNames({ situation: { bench }, manner, scale: { x, y } }: Naming): Named[] {
  const { width, floor, floorInsulation } = bench.frame;
  const surface: Named = {
    at: [x(width * 0.9), y(0) + 1.2],
    text: say(manner, 'Floor: {floor}', { floor: say(manner, floors[floor].label).toLowerCase() }),
    short: say(manner, 'floor'),
  };
  if (floorInsulation === 0) return [surface];
  const text = say(manner, 'Foam board on the floor: {size}', {
    size: showQuantity(floorInsulation, 'size', manner),
  });
  return [{ at: [x(width * 0.8), y(floorInsulation / 2)], text, short: say(manner, 'foam board') }, surface];
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
