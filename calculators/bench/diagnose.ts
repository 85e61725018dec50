import { messages } from '../say.ts';
import { amount, care, sentence, stop, type Sentence, type Situation, type Warning } from '../calculator.ts';
import { sheets } from '../tables/films.ts';
import { parametersAt } from './belief.ts';
import { calibrate, rootsFreezing, type Calibration, type ReadingId } from './calibrate.ts';
import { changed } from './changed.ts';
import { chiSquareTail } from './chi-square.ts';
import { priorsOf, type PriorId } from './priors.ts';
import { rootsReadApart, unseen } from './reading-errors.ts';
import { ninetieth } from './spread.ts';

/** What the readings say is wrong with the bench, or with the readings, in words. */

/** A reading that lies further off than this from what all else says is one in 370 [standard deviations]. */
const standsOut = 3;
/** Two of which neither stands out clearly beyond the other could both be to blame [standard deviations]. */
const clearly = 0.5;
/** Agreement that one sound bench in a hundred has is not taken for chance [1]. */
const chance = 0.01;
/** Less agreement than this no fit is worth showing for [1]. */
const hopeless = 1e-6;
/** Fall of the misfit that decides between a dry and a wet film: odds of e² to 1. */
const decisive = 4;
/** Output of a cable over its label below which part of it is dead, and above which it is fed too much [1] (assumption). */
const weak = 0.7;
const strong = 1.25;
/** How far below its set point a sensor must be for its thermostat to be calling for sure [K]: thermostats are good to 1 K. */
const surelyCalling = 2;
/** House colder than outside by more than two thermometers differ [K]. */
const colder = 1;
/** Change of the roots between their readings beyond what calm nights do [K]. */
const usualChange = unseen.drift.expected * rootsReadApart;
const unusual = 2.5 * unseen.drift.spread * rootsReadApart;

const temperature = 'temperature';

/** The share of sound benches whose readings lie further from the model than these. */
export const agreementOf = ({ misfit, count }: Calibration): number => chiSquareTail(misfit, count);

/** What a reading is called inside a sentence. */
export function nameOf(id: ReadingId, { bench }: Situation): string {
  switch (id) {
    case 'under':
      return messages('temperature under the bench');
    case 'loop':
      return messages('loop temperature');
    case 'roots':
      return messages('root temperature');
    case 'house':
      return messages('house temperature');
    case 'surroundings':
      return messages(bench.readings.house === null ? 'outside temperature' : 'house temperature');
    case 'power':
      return messages('power');
    case 'offset':
      return messages('difference between house and outside');
    case 'drift':
      return messages('change of the roots in two hours');
  }
}

/** Where a thermometer should hang, or what else to look at when a reading is wrong. */
const advice: Readonly<Record<ReadingId, string>> = messages({
  under: 'Hang the thermometer in the air, an arm’s length from the pipe.',
  loop: 'Press the sensor to the bare pipe between two turns, under a pad.',
  roots: 'Put the sensor halfway down in the coldest pot.',
  house: 'Hang the thermometer at bench height, away from the bench.',
  surroundings: 'Hang the thermometer away from benches and walls.',
  power: 'Look for another load on the meter, and divide by the right number of hours.',
  offset: 'Hang both thermometers side by side for an hour.',
  drift: 'Leave the sensor in its pot between the two readings.',
});

/** Names of what is missing, as a list in a sentence. */
const missingWords = messages({
  power: 'the mean power, from an energy meter',
  surroundings: 'the temperature in the house, or outside',
  bench: 'one under the bench, on the loop or in a pot',
});

/** "one, two and three". */
function listed(names: readonly string[]): Sentence {
  const [first = '', ...more] = names;
  return more.reduce<Sentence>(
    (all, name, index) =>
      index === more.length - 1 ? sentence`${all} and ${name}` : sentence`${all}, ${name}`,
    [first],
  );
}

/** What is left to chance once one suspect that lies `off` is let go. */
const withoutOne = ({ misfit, count }: Calibration, off: number): number =>
  count < 2 ? 1 : chiSquareTail(misfit - off ** 2, count - 1);

const isContradicted = (calibration: Calibration): boolean =>
  agreementOf(calibration) <= chance || calibration.compared.some(({ off }) => Math.abs(off) > standsOut);

/** The reading that by itself is to blame for a contradiction, if one clearly is. */
function culprit(calibration: Calibration): ReadingId | undefined {
  const [first, second] = [...calibration.compared].sort(
    (one, other) => Math.abs(other.off) - Math.abs(one.off),
  );
  if (!first || !second || calibration.count < 2) return undefined;
  const clear = Math.abs(first.off) > Math.max(standsOut, Math.abs(second.off) + clearly);
  return clear && withoutOne(calibration, first.off) > chance ? first.id : undefined;
}

/** The same situation without one of its readings; those that the fit starts from cannot be left out. */
function without(situation: Situation, id: ReadingId): Situation | undefined {
  switch (id) {
    case 'under':
    case 'loop':
      return changed(situation, { readings: { [id]: null } });
    case 'roots':
      return changed(situation, { readings: { roots: null, rootsEarlier: null } });
    case 'drift':
      return changed(situation, { readings: { rootsEarlier: null } });
    case 'offset':
      return changed(situation, { readings: { outside: null } });
    default:
      return undefined;
  }
}

const contradiction = (calibration: Calibration): Warning =>
  care(
    'readings-contradict',
    sentence`The readings contradict each other or the bench: ${amount(1 - agreementOf(calibration), 'share')} of sound benches come closer to the model. Put all thermometers side by side for an hour, check the fields of the bench, and read again.`,
  );

const filmWords: Readonly<Record<'wet' | 'dry', Sentence>> = {
  wet: sentence`The readings fit film that is wet inside and holds heat radiation back. Say so in the field of the skirt; on a dry night more gets through.`,
  dry: sentence`The readings fit film that is dry inside and lets heat radiation through. Say so in the field of the skirt.`,
};

/** Dry or wet film, where that would matter. */
function filmLooks(situation: Situation, { misfit, belief }: Calibration): 'wet' | 'dry' | undefined {
  const { skirt, cover } = situation.bench;
  const hung = skirt.material === 'none' ? [] : [sheets[skirt.material]];
  const films = hung.filter(({ longwaveDry, longwaveWet }) => longwaveDry > longwaveWet).length;
  if (films === 0 && cover.kind === 'none') return undefined;
  const other = skirt.wet === 'wet' ? 'dry' : 'wet';
  if (other === 'wet' && belief.middle[belief.ids.indexOf('longwave')]! <= -ninetieth) return other;
  if (misfit <= decisive) return undefined;
  const again = calibrate(changed(situation, { skirt: { wet: other } }));
  if (again.kind !== 'fitted' || agreementOf(again.calibration) <= chance) return undefined;
  return again.calibration.misfit < misfit - decisive ? other : undefined;
}

/** Gaps that lie together at or beyond their 90th percentile. */
function leaks(situation: Situation, { belief }: Calibration): Warning[] {
  if (situation.bench.skirt.material === 'none') return [];
  const z = (id: PriorId): number => Math.max(0, belief.middle[belief.ids.indexOf(id)]!);
  if (Math.hypot(z('bottomGap'), z('topGap')) < ninetieth) return [];
  const { bottomGap, topGap } = parametersAt(priorsOf(situation), belief.ids, belief.middle);
  const text = sentence`The skirt leaks: the readings fit a gap of ${amount(bottomGap, 'size')} at the floor and ${amount(topGap, 'size')} at the bench edge. Weigh it down, clip it to the bench, and read again.`;
  return [care('skirt-leaks', text)];
}

function cableSays({ bench }: Situation, { output, atSensor }: Calibration): Warning[] {
  const { running, power } = bench.readings;
  const { setPoint, differential } = bench.control;
  if (!Number.isFinite(output) || power === null) return [];
  const share = amount(output, 'share');
  if (output > strong) {
    const text = sentence`The meter shows ${share} of what the cable’s label allows. Unplug it: it may be on too high a voltage or shortened, and burns. If there are other loads on the meter, leave them out.`;
    return [stop('cable-above-label', text)];
  }
  if (output >= weak) return [];
  if (running === 'on') {
    const text = sentence`The cable was on all the time and gave ${share} of its label: part of it is dead, or its voltage is low. Half the voltage gives a quarter of the heat. Have it measured by an electrician.`;
    return [care('cable-weak', text)];
  }
  const calling = atSensor < setPoint - differential / 2 - surelyCalling;
  if (running === 'switching' || !calling) return [];
  const text = sentence`The cable gave ${share} of its label, and its sensor at ${amount(atSensor, temperature)} stood well below the set point of ${amount(setPoint, temperature)}. If the set point was that high, part of the cable is dead or its voltage is low. Watch whether it is on all the time.`;
  return [care('cable-weak', text)];
}

/** What can be said of readings before any model is asked. */
export function lookAtReadings({ bench }: Situation): Warning[] {
  const { house, outside, roots, rootsEarlier } = bench.readings;
  const warnings: Warning[] = [];
  if (house !== null && outside !== null && house < outside - colder) {
    const text = sentence`The house reads ${amount(outside - house, 'temperatureDifference')} colder than outside. On a clear night an unheated house may be a little colder; else one of the two thermometers is wrong. Put them side by side.`;
    warnings.push(care('house-colder-than-outside', text));
  }
  const change = roots !== null && rootsEarlier !== null ? roots - rootsEarlier : null;
  if (change !== null && Math.abs(change - usualChange) > unusual) {
    const text = sentence`The roots changed by ${amount(change, 'temperatureDifference')} in two hours: the bench is not yet at rest. Read again late in a calm night.`;
    warnings.push(care('not-at-rest', text));
  }
  if (rootsFreezing(roots)) {
    const text = sentence`At ${amount(roots ?? 0, temperature)} the water in the pots freezes or thaws and hides how much heat they lose. Read again on a milder night.`;
    warnings.push(care('roots-freezing', text));
  }
  return warnings;
}

/** What is missing, for someone who has begun to read. */
export const stillMissing = (missing: readonly (keyof typeof missingWords)[]): Warning =>
  care('readings-missing', sentence`Still to be read: ${listed(missing.map((one) => missingWords[one]))}.`);

export const outOfReach = (): Warning =>
  care(
    'readings-out-of-reach',
    sentence`No such bench could give these readings. Check their units, and that the power is a mean in watts.`,
  );

/** What a fitted bench says of itself, and the fit to go on with. */
export interface Judged {
  /** Without the reading that is to blame, where one is; null where no bench could give such readings. */
  readonly calibration: Calibration | null;
  readonly warnings: readonly Warning[];
}

/** Where one reading, a leak or the film explains what does not agree, that is said; else that it does not. */
export function judge(situation: Situation, all: Calibration): Judged {
  const cable = cableSays(situation, all);
  const blamed = isContradicted(all) ? culprit(all) : undefined;
  const less = blamed && without(situation, blamed);
  const again = less && calibrate(less);
  const calibration = again?.kind === 'fitted' ? again.calibration : all;
  const left = messages(
    calibration === all ? 'Read it again before you trust the rest.' : 'It was left out.',
  );
  const named = blamed
    ? [
        care(
          'reading-stands-out',
          sentence`The ${nameOf(blamed, situation)} does not fit the other readings. ${left} ${advice[blamed]}`,
        ),
      ]
    : [];
  if (agreementOf(calibration) < hopeless) return { calibration: null, warnings: [...cable, outOfReach()] };

  const leaking = leaks(situation, calibration);
  const film = filmLooks(less ?? situation, calibration);
  const looks = film ? [care(`film-looks-${film}`, filmWords[film])] : [];
  const surprise = Math.max(calibration.surprise.bottomGap, calibration.surprise.topGap);
  const explained = looks.length > 0 || (leaking.length > 0 && withoutOne(calibration, surprise) > chance);
  const contradicted = named.length === 0 && isContradicted(calibration) && !explained;
  return {
    calibration,
    warnings: [
      ...cable,
      ...named,
      ...(contradicted ? [contradiction(calibration)] : []),
      ...leaking,
      ...looks,
    ],
  };
}
