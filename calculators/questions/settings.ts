import { changed } from '../bench/changed.ts';
import { loopLength, pipeOf } from '../bench/geometry.ts';
import { loopAboveAir as liftOf } from '../bench/loop-above-air.ts';
import { loopHeatCapacity } from '../bench/loop-mix.ts';
import { advisedPlace, warmestLoop, type WarmestWhen } from '../bench/loop-warmest.ts';
import { designOutside } from '../bench/place.ts';
import { expectedParameters, type Parameters, type PriorId } from '../bench/priors.ts';
import { between, rangedAll, spreadAbout, weightyOf, type Span } from '../bench/range.ts';
import { designRanges } from '../bench/rest-ranges.ts';
import { restOn, type Rest } from '../bench/steady.ts';
import { commonOnLoop, inHand, placesOn, sensorError, setPoints } from '../bench/set-points.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  stop,
  type Figure,
  type Sentence,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { ratedPower } from '../electric/cable.ts';
import { cite } from '../sources.ts';
import loop from './loop.ts';
import mix from './mix.ts';
import sheath from './sheath.ts';

/** Differential of common practice [K]: 1 to 2. */
const commonDifferential = 1;

/** Least time from one switching on to the next [s] (assumption: contacts that switch six times an hour last for winters). */
const leastCycle = 600;

/** Months with nights as cold as this on average are those in which a bench may be heated [°C] (assumption). */
const heatedMonth = 5;

/** By how much a warm day of a month is warmer than its mean high [K] (assumption: about one day in ten). */
const warmDay = 6;

/** A setting that misses its figure by less than a dial can show [K] has met it. */
const dial = 0.25;

const figure = (value: number): Figure => ({ value });
const figureOrNone = (value: number | null | undefined): Figure | null =>
  value === null || value === undefined ? null : figure(value);

/** What the loop may come to before something comes to harm or spills. */
interface LoopLimits {
  /** The lowest of the limits, each at the safe end of its range [°C]; null where no limit saves the cable. */
  readonly safe: number | null;
  /** The same with what is expected of cable and pipe [°C]. */
  readonly expected: number | null;
  /** Whether the stand-pipe or the air space is full before cable and pipe come to their limits. */
  readonly byRoom: boolean;
  /** Share of the cable's heat that reaches the fluid [1]. */
  readonly waterShare: number;
}

/** From what the sheath, the pipe and the room for expansion bear. */
function limitsOf(situation: Situation): LoopLimits {
  const { limitThermostat, waterShare } = sheath.compute(situation).figures;
  const fullAt = loop.compute(situation).figures.fullAt!.value;
  const share = waterShare!.value;
  if (!limitThermostat) return { safe: null, expected: null, byRoom: false, waterShare: share };
  const { highestService } = pipeOf(situation.bench);
  const { value, low = value } = limitThermostat;
  const others = Math.min(fullAt, highestService);
  return {
    safe: Math.min(low, others),
    expected: Math.min(value, others),
    byRoom: fullAt < Math.min(low, highestService),
    waterShare: share,
  };
}

/**
 * Power by its label on each length of pipe [W/m] that would lift the loop by no more than `allowed` [K] above the air, where
 * the present power lifts it by `lift` [K]. Null where nothing is allowed. The air is taken to stay as it is: with less power
 * it is no warmer.
 */
function powerThatLifts(
  situation: Situation,
  waterShare: number,
  air: number,
  lift: number,
  allowed: number,
): number | null {
  if (allowed <= 0) return null;
  const { bench } = situation;
  const present = ratedPower(bench.cable) / loopLength(bench);
  const { insideFilm } = expectedParameters(situation);
  const liftBy = (power: number): number => liftOf(pipeOf(bench), insideFilm, power * waterShare, air);
  const wanted = (allowed / lift) * liftBy(present);
  let [low, high] = [0, present];
  // More power never lifts less, so halving the interval closes in: to a thousandth in ten rounds.
  for (let round = 0; round < 12; round++) {
    const middle = (low + high) / 2;
    if (liftBy(middle) > wanted) high = middle;
    else low = middle;
  }
  return low;
}

/** When a loop that is in order is at its warmest, as it stands behind “the loop comes to 20 °C”. */
const whenWarmest: Readonly<Record<WarmestWhen, Sentence>> = {
  'hard-night': sentence`on a hard night`,
  snap: sentence`while pots thaw after the frost`,
  winter: sentence`while pots thaw in an ordinary winter`,
  'warm-up': sentence`on the way back from a power cut`,
  'each-time': sentence`each time that the heat is on`,
  'at-set-point': sentence`at its set point`,
};

/** A warm day with sun in the warmest of the months in which the bench may be heated [°C]; null where there is none. */
function warmHeatedDay({ station }: Situation): number | null {
  const heated = station.months.filter(({ meanLow }) => meanLow <= heatedMonth);
  return heated.length === 0 ? null : Math.max(...heated.map(({ meanHigh }) => meanHigh)) + warmDay;
}

/** The bench at rest at an outside temperature [°C] with its thermostat on the loop, at a set point [°C]. */
function withSensorOnLoop(
  situation: Situation,
  setPoint: number,
  outside: number,
  parameters: Parameters = expectedParameters(situation),
): Rest {
  const one = changed(situation, { control: { sensor: 'loop', setPoint } });
  return restOn(one, 'thermostat', parameters, outside);
}

/** Air under the bench [°C]. */
const airOf = ({ temperatures, body }: Rest): number => temperatures[body.under]!;

const temperature = 'temperature';

export default calculator({
  id: 'settings',
  question: 'Where does the sensor go, and what do I set?',
  summary:
    'Set points for the three places of the sensor, worked out back from the limit of your roots, and the limits of the alarms.',
  reads: reading(
    'control.sensor',
    'control.setPoint',
    'plants.lowestRootTemperature',
    'control.differential',
    'control.alarmLow',
    'control.alarmHigh',
    'plants.growthTemperature',
    'place.dayOffset',
    'outlook.outageHours',
    'cable.highestSheath',
    'loop.hottest',
    'loop.expansion',
    'loop.standpipeDiameter',
    'loop.standpipeHeight',
    'loop.fillTemperature',
    'mix.protectTo',
    ...designNightFields,
    ...thermalFields,
  ),
  figures: {
    setInPot: {
      label: 'Set point with the sensor in a pot',
      quantity: temperature,
      symbol: 'T_{\\text{set}}',
      explain:
        'In the middle of a pot that stands in the coldest place. Your limit, plus what the coldest layer is colder than the sensor, plus what sensor and dial may be wrong, half the differential, and room for the alarm.',
    },
    setInAir: {
      label: 'Set point with the sensor in the air under the bench',
      quantity: temperature,
      explain:
        'Halfway up, out of sight of the pipe. On a milder night it heats more than the roots need. Empty where the roots need no heat, or no heat of this cable holds them.',
    },
    setOnLoop: {
      label: 'Set point that a sensor on the loop would need',
      quantity: temperature,
      explain:
        'Right for this one night alone; on every milder night it heats far too much. Not a place to put the thermostat that keeps the roots.',
    },
    loopAboveAir: {
      label: 'Loop above the air under the bench, cable on',
      quantity: 'temperatureDifference',
      symbol: '\\Delta T',
      explain:
        'At full power, at rest. The loop can give its heat to the air only by being that much warmer.',
    },
    airWhenLoopRests: {
      label: 'Air under the bench down to which a sensor on the loop rests',
      quantity: temperature,
      explain:
        'With the sensor on the loop at your set point, or at 4.5 °C (40 °F) where your sensor is elsewhere: down to this the cable pauses again and again while the air is colder than the thermostat says.',
    },
    airOnLoopSensor: {
      label: 'Air under the bench on a hard night, sensor on the loop',
      quantity: temperature,
      explain:
        'At rest on the night named below, with the sensor on the loop at your set point, or at 4.5 °C (40 °F) where your sensor is elsewhere.',
    },
    rootsOnLoopSensor: {
      label: 'Coldest roots then',
      quantity: temperature,
      explain: 'The same night and the same thermostat.',
    },
    loopAtLimit: {
      label: 'The loop reads, with the roots at your limit',
      quantity: temperature,
      explain: 'At rest on the night named below.',
    },
    airAtLimit: {
      label: 'The air under the bench reads then',
      quantity: temperature,
      explain: 'At rest on the same night.',
    },
    potAtLimit: {
      label: 'The middle of a pot reads then',
      quantity: temperature,
      explain: 'The coldest layer of the same pot is at your limit.',
    },
    outside: {
      label: 'Outside temperature of that night',
      quantity: temperature,
      explain:
        'The night that you build for, or the coldest on which the full cable holds the roots for good, where that is milder. A shorter frost may be colder.',
    },
    differential: {
      label: 'Differential to set',
      quantity: 'temperatureDifference',
      explain:
        'From switching off to switching on again: 1 K, or more where a strong cable on a small loop would switch too often. The set points above count the differential that you have now.',
    },
    shortestCycle: {
      label: 'Shortest time between switchings on',
      quantity: 'duration',
      symbol: 't',
      explain:
        'With your differential and the sensor on the loop, when the cable is on half of the time. In air and pot it takes longer, as these follow the loop.',
    },
    alarmLow: {
      label: 'Low alarm, in the coldest pot',
      quantity: temperature,
      explain:
        'Rings while the coldest layer is still at your limit, even with a sensor that reads too warm by as much as is common.',
    },
    alarmHigh: {
      label: 'High alarm, on the loop',
      quantity: temperature,
      explain:
        'Above the loop at its warmest with everything in order, or above the pausing thermostat where there is one, and below the limit thermostat: a thermostat that sticks goes past it.',
    },
    loopOnHardNight: {
      label: 'The loop on that night with everything in order',
      quantity: temperature,
      explain:
        'At full power at rest, on the night named above, without sun. Nothing that cuts or pauses the heat may stand below it.',
    },
    loopWarmest: {
      label: 'The loop at its warmest with everything in order',
      quantity: temperature,
      explain:
        'The warmest of four, without sun: that night, the cold snap that you build for with the days after it, the coldest months of an ordinary winter, and the way back from the power cut that you look at. With the sensor in the pot it is mostly the thaw: frozen pots call for heat while the air is mild already. The sensor is taken where you have it, or in a pot where you have it on the loop, at the set point above or yours if that is higher.',
    },
    loopPause: {
      label: 'Pausing thermostat on the loop: heat off above',
      quantity: temperature,
      explain:
        'One more thermostat, which comes on again by itself. It keeps the loop below the high alarm and the limit thermostat while pots thaw, and does not hold the heat back on the hard night. Empty where none is needed, or where no room is left for one.',
    },
    limitThermostat: {
      label: 'Limit thermostat on the loop',
      quantity: temperature,
      symbol: 'T_{\\text{cut}}',
      explain:
        'Cuts the power and stays off until someone resets it. The lowest of what the sheath, the pipe and the stand-pipe or air space bear, at the safe end of its range. Empty where no limit saves the cable.',
    },
    mostPipePower: {
      label: 'Power per length of pipe that would do',
      quantity: 'powerPerLength',
      explain:
        'By its label, so that the loop at its warmest stays 2 K below the limit thermostat and an alarm fits between. Empty where it does so now, or where the air under the bench alone is too warm for it.',
    },
    sunnyTrip: {
      label: 'A sunny day trips the limit thermostat from, outside',
      quantity: temperature,
      explain:
        'The outside temperature at which a house that is as much warmer at midday as you gave brings a loop to the limit with no heat on, if the dial is a degree off.',
    },
    stuckLoop: {
      label: 'The loop with the thermostat stuck on',
      quantity: temperature,
      explain:
        'At rest in ordinary weather of the coldest month, without sun. A high alarm below it rings then; one above it rings only on a milder day.',
    },
    loopFrost: {
      label: 'Second limit on the loop: heat on below',
      quantity: temperature,
      explain:
        'A second thermostat beside the first that switches the heat on before the loop freezes, even with a concentrate of which 7 parts in a hundred are other things. With a strong mix it never has to.',
    },
  },
  formulas: [
    {
      tex: String.raw`T_{\text{set}} = T_{\text{limit}} + (T_{\text{sensor}} - T_{\text{coldest}}) + e + \tfrac{\delta}{2} + r`,
      words:
        'The set point is the limit of the roots, plus the sensor’s place above the coldest layer, plus the error e of sensor and dial, half the differential δ, as the heat comes on only that far below the set point, and room r for the alarm.',
      cites: [
        cite('common-practice', 'thermostats are good to about 1 K'),
        cite('assumption', 'design rule: 1 K between set point and alarm'),
      ],
    },
    {
      tex: String.raw`t = \frac{C\,\delta}{P\,d} + \frac{C\,\delta}{P\,(1-d)} \;\ge\; \frac{4\,C\,\delta}{P}`,
      words:
        'Heating lifts the loop of heat capacity C through the differential with what the cable P gives more than is lost; cooling takes what is lost. Both are shares of the full power, and their sum is least when the cable is on half of the time.',
      cites: [cite('incropera', 'lumped heat capacity')],
    },
  ],
  cites: [
    cite('common-practice', 'sensors on the loop at 4 to 5 °C, in air or pot at 2 to 5 °C, from memory'),
    cite('common-practice', 'an alarm in the coldest pot and one on the loop'),
    cite(
      'common-practice',
      'a second sensor that pauses the heat at a highest temperature, as under heated floors',
    ),
    cite('common-practice', 'differentials of 1 to 2 K'),
    cite('assumption', 'a warm day is 6 K above the mean high of its month'),
    cite('assumption', 'a thermostat should not switch on more often than every ten minutes'),
    cite('assumption', 'places read at rest, as if the night never ended; the air under the bench is mixed'),
  ],
  cautions: ['alarm', 'heat-and-plastic'],
  compute(situation) {
    const { bench } = situation;
    const { control, plants } = bench;
    const {
      night,
      stuck,
      on,
      atLimit,
      alarmLow,
      pot: setInPot,
      air: setInAir,
      loop: setOnLoop,
    } = setPoints(situation);
    const half = control.differential / 2;
    const stuckLoop = stuck.settled.temperatures[stuck.body.loop]!;
    const [fullLoop, fullAir] = [on.body.loop, on.body.under].map((node) => on.settled.temperatures[node]!);
    const loopAboveAir = fullLoop! - fullAir!;
    const onLoop = control.sensor === 'loop';
    const pointOnLoop = onLoop ? control.setPoint : commonOnLoop;
    const airWhenLoopRests = pointOnLoop - loopAboveAir;
    const kept = night && withSensorOnLoop(situation, pointOnLoop, night.outside);
    const limits = limitsOf(situation);
    const { safe: cut } = limits;
    const placed = advisedPlace(situation);
    const warmest = warmestLoop(situation, placed);
    // Each of the two may be off by as much as is common: the alarm stands that far above what is usual, the limit above it.
    const below = (loopInOrder: number): boolean => cut === null || cut - loopInOrder >= 2 * sensorError;
    const heatsHardNights = below(fullLoop!);
    const inOrder = heatsHardNights && below(warmest.loop);
    // As far above the loop of the hard night as a dial may be off, where there is room for it.
    const loopPause =
      cut === null || inOrder || !heatsHardNights
        ? null
        : Math.min(fullLoop! + sensorError, cut - 2 * sensorError);
    const usual = inOrder ? warmest.loop : loopPause;
    const alarmHigh =
      usual === null
        ? cut! - sensorError
        : Math.min(usual + sensorError + inHand, cut === null ? Infinity : (usual + cut) / 2);
    const mostPipePower =
      inOrder || cut === null
        ? null
        : [{ loop: fullLoop!, air: fullAir! }, warmest]
            .map(({ loop: stands, air }) =>
              powerThatLifts(situation, limits.waterShare, air, stands - air, cut - 2 * sensorError - air),
            )
            .reduce((least, one) => (least === null || one === null ? null : Math.min(least, one)));
    const sunnyTrip = cut === null ? null : cut - sensorError - bench.place.dayOffset;
    const warmDayOutside = warmHeatedDay(situation);
    // By the weakest concentrate that is common, as nobody knows which was poured.
    const loopFrost = mix.compute(situation).figures.liquidTo!.value + sensorError + half + inHand;

    // How far the places read apart hangs on the cable's contact and film beside what the need hangs on.
    const nightOutside = night?.outside ?? designOutside(situation);
    const { required, withHeat } = designRanges(situation);
    const places = placesOn(situation, nightOutside);
    const ranges = rangedAll(
      situation,
      (parameters) => {
        const { atLimit: at, on: full } = places(parameters);
        return { ...at, fullLoop: full.loop, lift: full.loop - full.air };
      },
      [...new Set<PriorId>([...weightyOf([required]), 'contact', 'insideFilm', 'cableOutput'])],
    );
    /** What goes up and down with a place's reading. */
    const likelyWith = (value: number | null | undefined, range: Span): Figure | null =>
      value === null || value === undefined ? null : spreadAbout(value, range);
    const likelyKept = (of: (rest: Rest) => number): Figure | null =>
      kept &&
      between(of(kept), withHeat.ends, (at) =>
        of(withSensorOnLoop(situation, pointOnLoop, kept.outside, at)),
      );
    const warnings: Warning[] = [];
    const place = placed.sensor === 'pot' ? sentence`in a pot` : sentence`in the air`;
    const present = amount(ratedPower(bench.cable) / loopLength(bench), 'powerPerLength');
    if (!heatsHardNights) {
      const [stands, cuts] = [amount(fullLoop!, temperature), amount(cut!, temperature)];
      const found = sentence`On a hard night the loop stands at ${stands} with everything in order, and the limit thermostat must cut the power at ${cuts}: it would cut the heat when it is needed most. `;
      const remedy = limits.byRoom
        ? sentence`The stand-pipe or air space is full there: give it more room`
        : mostPipePower === null
          ? sentence`The air under the bench alone comes to ${amount(fullAir!, temperature)}. Close the bench in first, so that it needs less heat`
          : sentence`There is too much cable on this pipe: ${present} by its label. About ${amount(mostPipePower, 'powerPerLength')} on each length of pipe would do: lay a longer loop, or take less cable`;
      const warn = fullLoop! > limits.expected! ? stop : care;
      warnings.push(warn('limit-cuts-hard-nights', sentence`${found}${remedy}.`));
    } else if (loopPause !== null) {
      const [comesTo, cuts] = [amount(warmest.loop, temperature), amount(cut!, temperature)];
      const found = sentence`With everything in order and the sensor ${place} the loop comes to ${comesTo} ${whenWarmest[warmest.when]}, and the limit thermostat must cut the power at ${cuts}: no heat then in the next frost. `;
      const pause = sentence`Fit a pausing thermostat on the loop at ${amount(loopPause, temperature)}, which comes on again by itself`;
      // A sensor in the air holds the loop to the air and what the cable lifts it above.
      const inAir =
        setInAir !== null &&
        below(warmestLoop(situation, { sensor: 'air', setPoint: setInAir }).loop) &&
        placed.sensor === 'pot';
      const orAir = inAir
        ? sentence`, or put the sensor in the air under the bench and set ${amount(setInAir, temperature)}`
        : [];
      const orElse = limits.byRoom
        ? sentence`, or give the stand-pipe or air space more room, as it is full there`
        : mostPipePower === null
          ? []
          : sentence`, or lay less cable on the pipe: ${amount(mostPipePower, 'powerPerLength')} by its label, not ${present}`;
      warnings.push(care('limit-cuts-in-thaw', sentence`${found}${pause}${orAir}${orElse}.`));
    }
    const set = amount(control.setPoint, temperature);
    if (onLoop && kept && setOnLoop !== null && control.setPoint < setOnLoop - dial) {
      const text = sentence`A thermostat that holds the loop at ${set} keeps the loop, not the roots. On a night at ${amount(kept.outside, temperature)} that lasts it lets the cable rest while the air under the bench comes to ${amount(airOf(kept), temperature)} and the coldest roots to ${amount(kept.coldestRoots, temperature)}. Put the sensor in a pot and set ${amount(setInPot, temperature)}.`;
      warnings.push(care('loop-sensor-rests', text));
    }
    const wanted = control.sensor === 'pot' ? setInPot : control.sensor === 'air' ? setInAir : null;
    if (wanted !== null && control.setPoint < wanted - dial) {
      const text = sentence`The set point of ${set} is low for a sensor in this place: ${amount(wanted, temperature)} would keep the roots at your limit on the night worked with.`;
      warnings.push(care('set-point-low', text));
    }
    if (control.sensor === 'pot' && control.setPoint > plants.growthTemperature) {
      const text = sentence`Roots that are held at ${set} wake up in midwinter: you gave ${amount(plants.growthTemperature, temperature)} as the most. Set it lower.`;
      warnings.push(care('set-point-wakes', text));
    }
    if (control.alarmLow < alarmLow - dial) {
      const text = sentence`A low alarm at ${amount(control.alarmLow, temperature)} in a pot may ring too late: ${amount(alarmLow, temperature)} still leaves the coldest roots at your limit.`;
      warnings.push(care('low-alarm-late', text));
    }
    if (control.sensor === 'pot' && control.alarmLow > control.setPoint - half) {
      const text = sentence`A low alarm at ${amount(control.alarmLow, temperature)} rings each time that the thermostat switches on. Set it lower, or the set point higher.`;
      warnings.push(care('low-alarm-at-work', text));
    }
    if (control.alarmHigh > Math.max(stuckLoop, alarmHigh + dial)) {
      const text = sentence`With the thermostat stuck on the loop comes to ${amount(stuckLoop, temperature)} in ordinary weather of the coldest month. A high alarm at ${amount(control.alarmHigh, temperature)} on the loop would not ring.`;
      warnings.push(care('high-alarm-silent', text));
    } else if (usual !== null && control.alarmHigh < usual) {
      const rings = amount(control.alarmHigh, temperature);
      const better = amount(alarmHigh, temperature);
      const text =
        loopPause === null
          ? sentence`With everything in order and the sensor ${place} the loop comes to ${amount(usual, temperature)} ${whenWarmest[warmest.when]}. A high alarm at ${rings} on the loop would ring: set it to ${better}.`
          : sentence`The heat pauses only with the loop at ${amount(loopPause, temperature)}. A high alarm at ${rings} on the loop would ring with everything in order: set it to ${better}.`;
      warnings.push(care('high-alarm-at-work', text));
    } else if (cut !== null && control.alarmHigh > cut - dial) {
      const text = sentence`The limit thermostat must cut the power at ${amount(cut, temperature)}. A high alarm at ${amount(control.alarmHigh, temperature)} on the loop rings only after that, or never: set it to ${amount(alarmHigh, temperature)}.`;
      warnings.push(care('high-alarm-behind-limit', text));
    }
    if (onLoop && control.setPoint < loopFrost - dial) {
      const text = sentence`A thermostat on the loop at ${set} may let the loop freeze. Set at least ${amount(loopFrost, temperature)}.`;
      warnings.push(care('loop-may-freeze', text));
    }
    if (heatsHardNights && sunnyTrip !== null && warmDayOutside !== null && sunnyTrip < warmDayOutside) {
      const text = sentence`A sunny day of ${amount(sunnyTrip, temperature)} outside may warm the loop to the limit thermostat’s ${amount(cut!, temperature)} with no heat on, and it then stays off. Open the vents on such days, look at it every evening, or have it ring the alarm when it trips.`;
      warnings.push(care('limit-trips-in-sun', text));
    }
    const { fullPower } = on.settled;
    const heldPerDegree = 4 * loopHeatCapacity(bench);
    return {
      figures: {
        setInPot: atLimit ? likelyWith(setInPot, ranges.pot) : figure(setInPot),
        setInAir: likelyWith(setInAir, ranges.air),
        setOnLoop: likelyWith(setOnLoop, ranges.loop),
        loopAboveAir: likelyWith(loopAboveAir, ranges.lift),
        airWhenLoopRests: {
          value: airWhenLoopRests,
          low: pointOnLoop - ranges.lift.high,
          high: pointOnLoop - ranges.lift.low,
        },
        airOnLoopSensor: likelyKept(airOf),
        rootsOnLoopSensor: likelyKept(({ coldestRoots }) => coldestRoots),
        loopAtLimit: likelyWith(atLimit?.loop, ranges.loop),
        airAtLimit: likelyWith(atLimit?.air, ranges.air),
        potAtLimit: likelyWith(atLimit?.pot, ranges.pot),
        outside: figureOrNone(night?.outside),
        differential: figure(Math.max(commonDifferential, (leastCycle * fullPower) / heldPerDegree)),
        shortestCycle: fullPower > 0 ? figure((heldPerDegree * control.differential) / fullPower) : null,
        alarmLow: figure(alarmLow),
        alarmHigh: figure(alarmHigh),
        loopOnHardNight: night ? likelyWith(fullLoop, ranges.fullLoop) : figure(fullLoop!),
        loopWarmest: figure(warmest.loop),
        loopPause: figureOrNone(loopPause),
        limitThermostat: figureOrNone(cut),
        mostPipePower: figureOrNone(mostPipePower),
        sunnyTrip: figureOrNone(sunnyTrip),
        stuckLoop: figure(stuckLoop),
        loopFrost: figure(loopFrost),
      },
      warnings,
    };
  },
});
