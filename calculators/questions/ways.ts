import { messages } from '../say.ts';
import { heatedBench, powerBy, waysOfHeating, type WayOfHeating } from '../bench/heaters.ts';
import { between } from '../bench/range.ts';
import { designRanges } from '../bench/rest-ranges.ts';
import { warmestUnder } from '../bench/steady.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import {
  amount,
  calculator,
  care,
  figureAmount,
  sentence,
  type Cell,
  type Figure,
  type Sentence,
  type Warning,
} from '../calculator.ts';
import { cite } from '../sources.ts';

const named: Readonly<Record<WayOfHeating, string>> = messages({
  loop: 'Cable on a water-filled loop',
  cable: 'Bare cable in the air under the bench',
  mat: 'Heating mat under the pots',
  lamps: 'Heat lamps over the plants',
  tank: 'Immersion heater in the loop or a tank',
});

const risks: Readonly<Record<WayOfHeating, string>> = messages({
  loop: 'Mains beside water; a leak, or a loop that froze and burst. The water holds a few hours of heat at most.',
  cable:
    'Hot where it touches film, wood or leaves that fell on it. Only a cable that is made to hang in air.',
  mat: 'Mains under wet pots. Bottoms warm first, and a folded mat burns. It must cover the whole bench.',
  lamps:
    'Fire. Tops are warmed and woken while the roots stay cold, and what is not under the lamp gets nothing.',
  tank: 'Burns through when it runs dry. Only with its own limit, in a fluid that its sheet allows, where water can circulate.',
});

/** Roots whose layers differ by more than this are woken at one end while they freeze at the other [K] (assumption). */
const uneven = 5;

/** A way that needs more than this share more than the loop is worth a word [1]. */
const worthAWord = 0.25;

export default calculator({
  id: 'ways',
  question: 'Which way of heating?',
  summary:
    'The same bench on its design night with the heat brought in by five ways: what each needs, how even it is, what it holds.',
  reads: reading(
    'plants.lowestRootTemperature',
    'cover.kind',
    'frame.top',
    ...designNightFields.slice(0, 2),
    ...thermalFields.filter((path) => !path.startsWith('control.')),
  ),
  figures: {
    loop: {
      label: 'Power with the loop',
      quantity: 'power',
      explain:
        'Holds the coldest roots at your limit on the design night, if it lasted. Empty where the water would have to be hotter than the pipe bears.',
    },
    cable: {
      label: 'Power with a bare cable under the bench',
      quantity: 'power',
      explain:
        'The same, with the cable in the air. Next to no difference: all heat of a loop ends there too.',
    },
    mat: {
      label: 'Power with a mat under the pots',
      quantity: 'power',
      explain: 'Part of its heat goes straight into the pots, the rest through the bench top.',
    },
    lamps: {
      label: 'Power with lamps over the plants',
      quantity: 'power',
      explain:
        'Two fifths of their heat are taken to reach the tops of the pots. Empty where no power does it.',
    },
    tank: {
      label: 'Power with an immersion heater',
      quantity: 'power',
      explain:
        'All heat enters the water and leaves through the pipe. Empty where the water would be too hot.',
    },
  },
  tables: {
    ways: {
      label: 'Five ways, side by side',
      explain:
        'Power to hold your limit on the design night, empty where water or air would have to be hotter than 60 °C (140 °F). Then, with as much power as your cable has: the coldest layer of the roots, how much warmer the warmest is, the heat that its water gives before it freezes, and the hottest face. In a power cut that begins in ordinary weather the time to your limit hangs on the water in the pots, hardly on the way of heating.',
      columns: {
        way: { label: 'Way' },
        power: { label: 'Power needed', quantity: 'power' },
        coldest: { label: 'Coldest roots', quantity: 'temperature' },
        uneven: { label: 'Uneven by', quantity: 'temperatureDifference' },
        stored: { label: 'Heat held by its water', quantity: 'energy' },
        surface: { label: 'Hottest face', quantity: 'temperature' },
        risk: { label: 'What can go wrong' },
      },
    },
  },
  formulas: [
    {
      tex: String.raw`\sum_j G_{ij}\,(T_i - T_j) = s_i\,P`,
      words:
        'The bench at rest, with the share s of the power P that each way brings to each part: the loop’s fluid, the air under the bench, the bottom or the top of the pots.',
      cites: [cite('incropera', 'heat balance of the parts of the bench')],
    },
  ],
  cites: [
    cite(
      'assumption',
      'a lamp: two fifths into the tops of the pots, three tenths into the air at the plants, the rest past the bench',
    ),
    cite('assumption', 'a mat: up through base and medium, down through the top and a film of 6 W/(m²·K)'),
  ],
  cautions: ['lamp', 'no-flame', 'mains-and-water', 'cable-instructions', 'heat-and-plastic'],
  compute(situation) {
    const benches = waysOfHeating.map((way) => heatedBench(way, situation));
    const { ends } = designRanges(situation).required;
    const figure = (way: WayOfHeating): Figure<'power'> | null => {
      const power = benches.find((one) => one.way === way)?.power ?? null;
      // Whatever makes the air under the bench need more makes each of the others need more.
      return power === null ? null : between(power, ends, (at) => powerBy(way, situation, at));
    };
    const figures = {
      loop: figure('loop'),
      cable: figure('cable'),
      mat: figure('mat'),
      lamps: figure('lamps'),
      tank: figure('tank'),
    };
    const warnings: Warning[] = [];
    const failing = benches.filter(({ power }) => power === null);
    if (failing.length > 0) {
      const [first = [], ...more] = failing.map(({ way }): Sentence => [named[way]]);
      const names = more.reduce((all, one) => sentence`${all}; ${one}`, first);
      const text = sentence`No power holds the roots with: ${names}. Water or air would have to be hotter than ${amount(warmestUnder, 'temperature')}, and the tops of the pots would still lose more than comes in below. Cover the plants first.`;
      warnings.push(care('no-power-does-it', text));
    }
    const [least] = benches
      .filter(({ power, way }) => power !== null && way !== 'lamps')
      .sort((a, b) => (a.power ?? 0) - (b.power ?? 0));
    if (
      least &&
      figures.loop &&
      least.power !== null &&
      least.power * (1 + worthAWord) < figures.loop.value
    ) {
      const text = sentence`${named[least.way]} would hold the roots with ${figureAmount(figures[least.way] ?? { value: least.power }, 'power')}, and the loop needs ${figureAmount(figures.loop, 'power')}: heat that enters at the pots has less on its way to lose.`;
      const but =
        least.uneven > uneven
          ? sentence` But with as much power as your cable has its roots differ by ${amount(least.uneven, 'temperatureDifference')}: the bottoms wake while the tops freeze. Cover the plants first, then compare again.`
          : [];
      warnings.push(care('needs-less', sentence`${text}${but}`));
    }
    return {
      figures,
      tables: {
        ways: {
          rows: benches.map(({ way, power, coldest, uneven, stored, surface }): Record<string, Cell> => ({
            way: [named[way]],
            power,
            coldest,
            uneven,
            stored,
            surface,
            risk: [risks[way]],
          })),
        },
      },
      warnings,
    };
  },
});
