import { heatedBench } from '../bench/heaters.ts';
import { likely } from '../bench/range.ts';
import { designRanges } from '../bench/rest-ranges.ts';
import { designRest, warmestAir } from '../bench/steady.ts';
import {
  amount,
  calculator,
  figureAmount,
  sentence,
  type Amount,
  type Sentence,
  type Warning,
} from '../calculator.ts';
import { cite } from '../sources.ts';

export default calculator({
  id: 'watts',
  question: 'How many watts?',
  summary:
    'The power that would keep the coldest roots at the lowest temperature you accept, on the night you build for, if that night never ended.',
  reads: [
    'place.designNight',
    'plants.lowestRootTemperature',
    'cover.kind',
    'skirt.material',
    'skirt.layers',
    'skirt.bottomGap',
    'skirt.closed',
    'skirt.wet',
    'frame.length',
    'frame.width',
    'frame.height',
    'frame.top',
    'frame.potShare',
    'place.station',
    'place.ownLowest',
    'place.houseKind',
    'place.houseCovering',
    'place.houseOffset',
    'place.houseMinimum',
    'place.groundTemperature',
    'frame.floor',
    'frame.floorInsulation',
    'skirt.topGap',
    'cover.height',
    'cover.gap',
    'pots.count',
    'pots.diameter',
    'pots.height',
    'pots.medium',
    'pots.moisture',
    'pots.spacing',
    'cable.kind',
    'cable.powerPerLength',
    'cable.length',
    'control.sensor',
    'control.setPoint',
    'supply.voltage',
    'supply.feederLength',
    'supply.conductor',
    'supply.otherLoad',
  ],
  figures: {
    required: {
      label: 'Power needed',
      quantity: 'power',
      symbol: 'P_{\\text{need}}',
      explain:
        'Holds the coldest layer of the roots at your limit on the design night, without end. Empty where no heat from below can, as the air under the bench would have to be hotter than 30 °C (86 °F); the upper end of the range stops there too. A short frost asks for less, as the wet pots give up heat of their own.',
    },
    headline: {
      label: 'Power needed, if the coldest night lasted',
      quantity: 'power',
      explain:
        'The same in words, with its range; and whether heat from below, and this loop, can bring it at all. A loop cannot where its water would have to be hotter than 60 °C (140 °F).',
    },
    installed: {
      label: 'Power installed',
      quantity: 'power',
      symbol: 'P',
      explain: 'What the cable gives at full output, with the loop as cold as that night leaves it.',
    },
    settled: {
      label: 'Mean power with the thermostat as set',
      quantity: 'power',
      explain:
        'What the cable draws on average that night, with the sensor where it is and the set point as it is.',
    },
    duty: {
      label: 'Share of the time that the cable is on',
      quantity: 'share',
      explain: 'Mean power over full power. At 100 % the cable has nothing left to give.',
    },
    outside: {
      label: 'Outside temperature that night',
      quantity: 'temperature',
      symbol: 'T_{\\text{out}}',
      explain: 'The night that the bench is built for.',
    },
  },
  formulas: [
    {
      tex: String.raw`\sum_j G_{ij}\,(T_i - T_j) = P_i \quad\text{for every part } i \text{ of the bench}`,
      words:
        'At rest, the heat that each part of the bench gives to its neighbours is the heat that the cable brings to it. The conductances are worked out from the laws of convection, radiation, conduction and leakage at the temperatures that come of it.',
      cites: [
        cite('churchill-chu1975', 'horizontal cylinder and vertical plate'),
        cite('mcadams1954', 'horizontal plates'),
        cite('incropera', 'radiation between surfaces, conduction'),
      ],
    },
  ],
  cites: [
    cite('ashrae-fundamentals', 'design temperatures, films and coverings'),
    cite('assumption', 'uncertain inputs and their ranges'),
  ],
  cautions: ['mains-and-water', 'no-flame'],
  compute(situation) {
    const { bench } = situation;
    const ranges = designRanges(situation);
    const { value, low, high } = ranges.required;
    const rest = designRest(situation, 'thermostat');
    const held = designRest(situation, 'hold-roots');
    const { lowestRootTemperature: limit } = bench.plants;
    const installed = rest.fullPower;
    const duty = installed === 0 ? 1 : rest.power / installed;
    const warnings: Warning[] = [];
    const fails = held.coldestRoots < limit - 0.01;
    // All three are rounded as the figure is: its width says how much is known.
    const said = (power: number): Amount => figureAmount({ value: power, low, high }, 'power');
    const needed = sentence`${said(value)} (${said(low)} to ${said(high)})`;
    const headline: Sentence = fails
      ? sentence`not from below: cover the plants`
      : heatedBench('loop', situation).power === null
        ? sentence`${needed}, not by this loop`
        : needed;
    if (fails) {
      warnings.push({
        code: 'heat-from-below-fails',
        level: 'care',
        text: sentence`Even with the air under the bench at ${amount(warmestAir, 'temperature')} the coldest roots would be at ${amount(held.coldestRoots, 'temperature')}. No heat from below holds them: cover the plants and water the pots first.`,
      });
    } else if (value > installed) {
      warnings.push({
        code: 'short-of-heat',
        level: 'care',
        text: sentence`On a night at ${amount(rest.outside, 'temperature')} that lasted, the roots would need ${figureAmount({ value, low, high }, 'power')} and the cable gives ${amount(installed, 'power')}. Close the bench in first: see where the heat goes. A short frost is milder than this figure.`,
      });
    }
    if (rest.coldestRoots < limit && duty < 0.95 && bench.control.sensor === 'loop') {
      warnings.push({
        code: 'sensor-rests-too-early',
        level: 'care',
        text: sentence`With the sensor and the set point as they are, the cable rests ${amount(1 - duty, 'share')} of that night while the roots are at ${amount(rest.coldestRoots, 'temperature')}. A sensor in a pot, or in the air under the bench, makes it work for the roots.`,
      });
    }
    return {
      figures: {
        required: fails ? null : likely(ranges.required),
        headline: { value, words: headline },
        // The label's tolerance, common practice: 8 % either way.
        installed: { value: installed, low: installed * 0.92, high: installed * 1.08 },
        settled: likely(ranges.settled),
        duty: likely(ranges.duty),
        outside: { value: rest.outside },
      },
      warnings,
    };
  },
});
