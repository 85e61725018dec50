import { loopVolume } from '../bench/geometry.ts';
import { fluidVolumeHeatCapacity, loopMix, loopReference } from '../bench/loop-mix.ts';
import { coldestWithoutPower } from '../bench/place.ts';
import { amount, calculator, care, sentence, stop, type Figure, type Warning } from '../calculator.ts';
import { burstPoint, holdsBeyondTable } from '../properties/burst.ts';
import {
  coldestFreezingPoint,
  freezingPoint,
  highestVolumeShare,
  volumeShareFor,
  weakestConcentrate,
  type Glycol,
} from '../properties/glycol.ts';
import { addOnTop, drainAndReplace, shareThatFreezesAt } from '../properties/mix-correction.ts';
import { waterRange } from '../properties/water.ts';
import { cite } from '../sources.ts';

/** Below this share by volume the inhibitor and the protection against slime are too weak [1] (from memory). */
const weakestInhibitor = 0.25;

/** How far below the coldest air that is expected the mix should stay liquid [K] (design rule of this guide). */
const inHand = 5;

/** A share or a temperature that misses its limit by less than a reader is shown has met it. */
const readable = { share: 5e-4, temperature: 0.1 };

const figure = (value: number): Figure => ({ value });
const figureOrNone = (value: number | null): Figure | null => (value === null ? null : figure(value));

/** What the mix that is in the loop now is short of, where its freezing point was measured. */
interface Correction {
  readonly presentShare: Figure | null;
  readonly drainAndReplace: Figure | null;
  readonly addConcentrate: Figure | null;
}

/** By the least share that the reading can mean, so that a wrong guess makes the mix stronger, not weaker. */
function correction(glycol: Glycol, measured: number | null, wanted: number, volume: number): Correction {
  if (measured === null) return { presentShare: null, drainAndReplace: null, addConcentrate: null };
  const { least, most } = shareThatFreezesAt(glycol, measured);
  return {
    presentShare: { value: least, low: least, high: most },
    drainAndReplace: figureOrNone(drainAndReplace(volume, least, wanted)),
    addConcentrate: figureOrNone(addOnTop(volume, least, wanted)),
  };
}

export default calculator({
  id: 'mix',
  question: 'How much antifreeze?',
  summary: 'What to pour in, how cold the mix may get before it freezes, and what it costs in stored heat.',
  reads: [
    'mix.antifreeze',
    'mix.share',
    'mix.protectTo',
    'mix.measuredFreezing',
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
        'The warmer of two published figures, as if the concentrate were glycol alone; the range goes from the colder figure to a concentrate of which 7 parts in a hundred are other things. Below it the mix turns to slush, which hardly carries heat; it breaks the pipe only when the slush sets hard, some way further down.',
    },
    liquidTo: {
      label: 'Liquid for sure down to',
      quantity: 'temperature',
      explain:
        'First ice of the same mix where 7 parts in a hundred of the concentrate are inhibitor and water, the most that is common. Write this on the loop.',
    },
    burstPoint: {
      label: 'Does not burst the pipe down to',
      quantity: 'temperature',
      symbol: 'T_b',
      explain:
        'By a table of the heating trade. Between this and the first ice the mix is slush: the pipe is safe, the bench is not, as slush does not carry heat.',
    },
    shareNeeded: {
      label: 'Share needed',
      quantity: 'share',
      explain:
        'Of glycol by volume, to stay liquid down to the temperature that you ask for. The high end of the range is the share of a concentrate of which 7 parts in a hundred are other things.',
    },
    shareToPour: {
      label: 'Share of concentrate to be sure',
      quantity: 'share',
      explain:
        'The share needed, of a concentrate of which 7 parts in a hundred are inhibitor and water. The label of yours may say that it holds less of them.',
    },
    concentrateToPour: {
      label: 'Concentrate for what you ask for',
      quantity: 'volume',
      explain: 'That share of all that the loop holds; the rest is water.',
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
    presentShare: {
      label: 'Share in the loop now, once measured',
      quantity: 'share',
      symbol: '\\varphi_p',
      explain:
        'From the freezing point that you measured; the lower of two published figures. Empty where it was not measured.',
    },
    drainAndReplace: {
      label: 'To drain and replace by concentrate, once measured',
      quantity: 'volume',
      symbol: 'V_d',
      explain:
        'Brings a full loop to the share that you chose, or where that is too little to the share of concentrate that is needed for what you ask for. Keep what you drain, marked, for topping up. Empty where the mix is strong enough or was not measured.',
    },
    addConcentrate: {
      label: 'Or concentrate to add on top, once measured',
      quantity: 'volume',
      symbol: 'V_a',
      explain:
        'Does the same without draining, if there is room for it above the present level. Let it mix for a day with the heat on, then measure again.',
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
    {
      tex: String.raw`V_d = V\,\frac{\varphi - \varphi_p}{1 - \varphi_p},\qquad V_a = V\,\frac{\varphi - \varphi_p}{1 - \varphi}`,
      words:
        'What is drained takes antifreeze out with it, so more of it is replaced than is missing. On top, the loop must hold the old mix and the new concentrate.',
      cites: [cite('ashrae2001-glycol', 'shares by volume, which are taken to add up')],
    },
  ],
  cites: [
    cite('assumption', 'design rule: 5 K below the lowest air temperature expected'),
    cite('hvacr-math2018', 'shares against freezing and against bursting'),
    cite('common-practice', 'below 25 % the inhibitor is too weak, from memory'),
    cite('common-practice', 'concentrates hold 4 to 7 % of inhibitor and water, from memory'),
    cite('common-practice', 'antifreeze is a safety net for the day that the heat fails'),
  ],
  cautions: ['antifreeze-poison', 'open-loop'],
  compute(situation) {
    const { bench } = situation;
    const { antifreeze, share, protectTo, measuredFreezing } = bench.mix;
    const volume = loopVolume(bench);
    if (antifreeze === 'none') {
      const text = sentence`Plain water freezes at ${amount(waterRange.from, 'temperature')} and bursts the pipe on the first hard night without power. Fill with a mix, or be ready to drain the loop.`;
      return {
        figures: {
          concentrateVolume: null,
          waterVolume: figure(volume),
          freezingPoint: figure(waterRange.from),
          liquidTo: figure(waterRange.from),
          burstPoint: figure(waterRange.from),
          shareNeeded: null,
          shareToPour: null,
          concentrateToPour: null,
          massShare: null,
          heatCapacityLoss: null,
          presentShare: null,
          drainAndReplace: null,
          addConcentrate: null,
        },
        warnings: [care('no-antifreeze', text)],
      };
    }
    const fluid = loopMix(bench);
    const highest = highestVolumeShare(antifreeze);
    const published = Math.min(share, highest);
    const freezes = freezingPoint(antifreeze, published);
    const liquidTo = freezingPoint(antifreeze, published * weakestConcentrate);
    const needed = volumeShareFor(antifreeze, protectTo);
    const shareToPour = needed / weakestConcentrate;
    const toPour = amount(shareToPour * volume, 'volume');
    const coldestAir = coldestWithoutPower(situation);
    const warnings: Warning[] = [];
    if (fluid.beyondPublished) {
      const text = sentence`The share of ${amount(share, 'share')} is more than the ${amount(highest, 'share')} that published figures reach. The figures here are those of the highest published share: take no more than that.`;
      warnings.push(stop('mix-beyond-published', text));
    }
    if (freezes > protectTo + readable.temperature) {
      const text = sentence`This mix is too weak for what you ask: it freezes at ${amount(freezes, 'temperature')} and is to stay liquid down to ${amount(protectTo, 'temperature')}. That takes a share of ${amount(needed, 'share')} of glycol. As a concentrate is not glycol alone, pour ${amount(shareToPour, 'share')} of it: ${toPour} for this loop.`;
      warnings.push(stop('mix-freezes', text));
    } else if (liquidTo > protectTo + readable.temperature) {
      const text = sentence`A concentrate holds other things beside glycol. With the most that is common this mix freezes at ${amount(liquidTo, 'temperature')} and is to stay liquid down to ${amount(protectTo, 'temperature')}. To be sure, pour a share of ${amount(shareToPour, 'share')}: ${toPour} for this loop.`;
      warnings.push(care('mix-concentrate-weak', text));
    } else if (freezes > coldestAir - inHand) {
      const text = sentence`Without power the house may come to ${amount(coldestAir, 'temperature')} in the hardest weather on record, and the mix freezes at ${amount(freezes, 'temperature')}. Keep ${amount(inHand, 'temperatureDifference')} in hand: ask for protection down to ${amount(coldestAir - inHand, 'temperature')}.`;
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
    // A share that is not enough is no aim: the loop would be as weak again.
    const aim = published < needed - readable.share ? shareToPour : published;
    const present = correction(antifreeze, measuredFreezing, aim, volume);
    const { drainAndReplace: drain, addConcentrate: add } = present;
    if (measuredFreezing !== null && measuredFreezing > protectTo + readable.temperature && drain && add) {
      const text = sentence`The mix in the loop was measured to freeze at ${amount(measuredFreezing, 'temperature')}, and you ask for ${amount(protectTo, 'temperature')}. Drain ${amount(drain.value, 'volume')} and replace it by concentrate, or add ${amount(add.value, 'volume')} on top: that makes a share of ${amount(aim, 'share')}. Let it mix for a day with the heat on, and measure again.`;
      warnings.push(care('mix-measured-weak', text));
    }
    const water = fluidVolumeHeatCapacity({ ...fluid, antifreeze: 'none' }, loopReference);
    return {
      figures: {
        concentrateVolume: figure(share * volume),
        waterVolume: figure((1 - share) * volume),
        freezingPoint: {
          value: freezes,
          low: coldestFreezingPoint(antifreeze, published),
          high: Math.max(freezes, liquidTo),
        },
        liquidTo: figure(liquidTo),
        burstPoint: {
          value: burstPoint(antifreeze, share),
          ...(holdsBeyondTable(antifreeze, share) ? { beyond: 'below' as const } : {}),
        },
        shareNeeded: {
          value: needed,
          low: Math.min(needed, shareThatFreezesAt(antifreeze, protectTo).least),
          high: shareToPour,
        },
        shareToPour: figure(shareToPour),
        concentrateToPour: figure(toPour.value),
        massShare: figure(fluid.massShare),
        heatCapacityLoss: figure(1 - fluidVolumeHeatCapacity(fluid, loopReference) / water),
        ...present,
      },
      warnings,
    };
  },
});
