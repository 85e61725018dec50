import { loopVolume } from '../bench/geometry.ts';
import { fluidVolumeHeatCapacity, loopMix, loopReference } from '../bench/loop-mix.ts';
import { designOutside, houseAir } from '../bench/place.ts';
import { amount, calculator, care, sentence, stop, type Figure, type Warning } from '../calculator.ts';
import { freezingPoint, highestVolumeShare, volumeShareFor } from '../properties/glycol.ts';
import { waterRange } from '../properties/water.ts';
import { cite } from '../sources.ts';

/** Below this share by volume the inhibitor and the protection against slime are too weak [1] (from memory). */
const weakestInhibitor = 0.25;

/** How far below the coldest air that is expected the mix should stay liquid [K] (design rule of this guide). */
const inHand = 5;

/** A share or a temperature that misses its limit by less than a reader is shown has met it. */
const readable = { share: 5e-4, temperature: 0.1 };

const figure = (value: number): Figure => ({ value });

export default calculator({
  id: 'mix',
  question: 'How much antifreeze?',
  summary: 'What to pour in, how cold the mix may get before it freezes, and what it costs in stored heat.',
  reads: [
    'mix.antifreeze',
    'mix.share',
    'mix.protectTo',
    'loop.pipe',
    'loop.length',
    'loop.run',
    'loop.inset',
    'frame.length',
    'frame.width',
    'place.station',
    'place.designNight',
    'place.ownLowest',
    'place.houseKind',
    'place.houseOffset',
    'place.houseMinimum',
  ],
  figures: {
    concentrateVolume: {
      label: 'Concentrate',
      quantity: 'volume',
      symbol: 'V_g',
      explain:
        'Antifreeze as it is sold undiluted. Mix before filling; mixing shrinks the two by one or two per cent, so make a little more and keep it for topping up.',
    },
    waterVolume: {
      label: 'Water',
      quantity: 'volume',
      symbol: 'V_w',
      explain: 'Soft or distilled water keeps scale out of the loop.',
    },
    freezingPoint: {
      label: 'First ice at',
      quantity: 'temperature',
      symbol: 'T_f',
      explain:
        'The warmer of two published figures. Below it the mix turns to slush, which hardly carries heat; it breaks the pipe only when the slush sets hard, some way further down.',
    },
    shareNeeded: {
      label: 'Share needed',
      quantity: 'share',
      explain: 'By volume, to stay liquid down to the temperature that you ask for.',
    },
    massShare: {
      label: 'Share by mass',
      quantity: 'share',
      symbol: 'x',
      explain: 'What printed tables often mean. It differs from the share by volume by up to a few per cent.',
    },
    heatCapacityLoss: {
      label: 'Stored heat lost against water',
      quantity: 'share',
      explain: 'How much less heat the same volume holds for each degree than plain water does.',
    },
  },
  formulas: [
    {
      tex: String.raw`V_g = \varphi\,V,\qquad V_w = (1 - \varphi)\,V`,
      words: 'Concentrate is the share by volume of all that the loop holds; the rest is water.',
      cites: [cite('ashrae2001-glycol', 'shares by volume and by mass')],
    },
    {
      tex: String.raw`T_f = \max\bigl(T_{f,1}(\varphi),\;T_{f,2}(x)\bigr)`,
      words: 'The freezing point is the warmer of the two published ones, by volume and by mass.',
      cites: [
        cite('ashrae2001-glycol', 'freezing point by volume'),
        cite('melinder2010', 'freezing point by mass'),
      ],
    },
  ],
  cites: [
    cite('assumption', 'design rule: 5 K below the lowest air temperature expected'),
    cite('common-practice', 'below 25 % the inhibitor is too weak, from memory'),
    cite('common-practice', 'antifreeze is a safety net for the day that the heat fails'),
  ],
  cautions: ['antifreeze-poison', 'open-loop'],
  compute(situation) {
    const { bench } = situation;
    const { antifreeze, share, protectTo } = bench.mix;
    const volume = loopVolume(bench);
    if (antifreeze === 'none') {
      const text = sentence`Plain water freezes at ${amount(waterRange.from, 'temperature')} and bursts the pipe on the first hard night without power. Fill with a mix, or be ready to drain the loop.`;
      return {
        figures: {
          concentrateVolume: null,
          waterVolume: figure(volume),
          freezingPoint: figure(waterRange.from),
          shareNeeded: null,
          massShare: null,
          heatCapacityLoss: null,
        },
        warnings: [care('no-antifreeze', text)],
      };
    }
    const fluid = loopMix(bench);
    const highest = highestVolumeShare(antifreeze);
    const freezes = freezingPoint(antifreeze, Math.min(share, highest));
    const needed = volumeShareFor(antifreeze, protectTo);
    const coldestAir = houseAir(situation, designOutside(situation), bench.place.houseOffset);
    const warnings: Warning[] = [];
    if (fluid.beyondPublished) {
      const text = sentence`The share of ${amount(share, 'share')} is more than the ${amount(highest, 'share')} that published figures reach. The figures here are those of the highest published share: take no more than that.`;
      warnings.push(stop('mix-beyond-published', text));
    }
    if (freezes > protectTo + readable.temperature) {
      const text = sentence`The mix freezes at ${amount(freezes, 'temperature')} and you ask for ${amount(protectTo, 'temperature')}. It takes a share of ${amount(needed, 'share')}.`;
      warnings.push(stop('mix-freezes', text));
    } else if (freezes > coldestAir - inHand) {
      const text = sentence`With the heat off, the house comes to ${amount(coldestAir, 'temperature')} on the night you build for, and the mix freezes at ${amount(freezes, 'temperature')}. Keep ${amount(inHand, 'temperatureDifference')} in hand: ask for protection down to ${amount(coldestAir - inHand, 'temperature')}.`;
      warnings.push(care('mix-little-in-hand', text));
    }
    if (share < weakestInhibitor - readable.share) {
      const text = sentence`A share of ${amount(share, 'share')} is too weak for its inhibitor: below ${amount(weakestInhibitor, 'share')} a mix grows slime and no longer guards metal. Take more, or none and drain the loop.`;
      warnings.push(care('mix-weak-inhibitor', text));
    }
    if (antifreeze === 'ethylene') {
      const text = sentence`Ethylene glycol tastes sweet and kills people and animals in small amounts. Use propylene glycol on a bench.`;
      warnings.push(care('antifreeze-poison', text));
    }
    const water = fluidVolumeHeatCapacity({ ...fluid, antifreeze: 'none' }, loopReference);
    return {
      figures: {
        concentrateVolume: figure(share * volume),
        waterVolume: figure((1 - share) * volume),
        freezingPoint: figure(freezes),
        shareNeeded: figure(needed),
        massShare: figure(fluid.massShare),
        heatCapacityLoss: figure(1 - fluidVolumeHeatCapacity(fluid, loopReference) / water),
      },
      warnings,
    };
  },
});
