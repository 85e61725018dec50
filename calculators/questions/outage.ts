import { messages } from '../say.ts';
import { changed } from '../bench/changed.ts';
import { loopFreezes } from '../bench/heat-held.ts';
import { ladder } from '../bench/ladder.ts';
import { designSnap, nightOf, summaryOf } from '../bench/night.ts';
import {
  holdOver,
  holdOverRange,
  inputsOfOutage,
  ordinaryCold,
  outageHorizon,
  outageLimits,
  timeLeftRange,
  type OutageLimit,
} from '../bench/outage.ts';
import { designOutside } from '../bench/place.ts';
import { expectedParameters, type Parameters } from '../bench/priors.ts';
import { between, type Span } from '../bench/range.ts';
import { sharedWith } from '../bench/rest-ranges.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import { restOn } from '../bench/steady.ts';
import { coldestRoots, firstAt } from '../bench/through.ts';
import {
  amount,
  calculator,
  care,
  figureAmount,
  sentence,
  type Cell,
  type Figure,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { mediumFreezes } from '../properties/medium.ts';
import { cite } from '../sources.ts';
import { clockWords } from '../weather/clock.ts';
import { hoursToLowest } from '../weather/cold-snap.ts';

const hour = 3600;

/** Water in pots that were watered the day before, as a share of what they hold (assumption). */
const watered = 0.95;

/** Failures through the snap, from the first hour at the lowest outside [h]: before, at the beginning, later. */
const failures = [-4, 0, 4, 8] as const;

/** The design snap with the power gone for as long as the bench says, failing at each of these hours. */
function byHour(situation: Situation): Record<string, Cell>[] {
  const { outageHours } = situation.bench.outlook;
  const limit = situation.bench.plants.lowestRootTemperature;
  const arrives = hoursToLowest(designSnap(situation)) * hour;
  return failures.map((later) => {
    const fails = arrives + later * hour;
    const powered = (time: number): boolean => time < fails || time >= fails + outageHours;
    const night = nightOf(situation, expectedParameters(situation), { powered });
    const from = night.course.times.findIndex((time) => time >= fails);
    const since = night.course.times.subarray(from);
    const reached = firstAt(since, coldestRoots(night).subarray(from), limit, 'falling');
    return {
      fails: clockWords(night.weather.outside.clock + fails),
      lowest: summaryOf(situation, night).lowestRoots,
      toLimit: reached === null ? null : reached === 0 ? 0 : reached - fails,
    };
  });
}

/** What a cell says of a limit that is not reached within the horizon. */
const notReached = messages('not within ten days');

/** A range that ends this many times further out than its middle [1] is two answers, and a time this short is none [s]. */
const cliff = 4;
const soon = 0.5 * hour;

/** A time until something happens, or null where that is beyond the horizon, told with its range. */
function timeFigure(value: number | null, { low: from, high: to }: Span): Figure {
  const low = Math.max(0, Math.min(outageHorizon, from));
  const high = Math.min(outageHorizon, to);
  if (value === null) {
    const never = { value: outageHorizon, beyond: 'above' } as const;
    return low < outageHorizon
      ? {
          ...never,
          low,
          high,
          words: sentence`not within ten days, but perhaps after ${amount(low, 'duration')}`,
        }
      : { ...never, words: [notReached] };
  }
  if (high === 0) return { value, words: sentence`none: they are there before it fails` };
  // Where it hangs on one thing, such as pots that are frozen or not, a number between the two is neither.
  return value === high || high < cliff * Math.max(value, soon)
    ? { value, low, high }
    : {
        value,
        low,
        high,
        words: sentence`between ${amount(low, 'duration')} and ${amount(high, 'duration')}`,
      };
}

export default calculator({
  id: 'outage',
  question: 'The power is out: how long have I got?',
  summary:
    'Time from the failure until the roots and the loop reach their limits, by outside temperature, from a bench that its heat had kept in ordinary weather.',
  reads: reading(
    'outlook.outsideNow',
    'outlook.timeWithout',
    'outlook.potNow',
    'outlook.outageHours',
    'plants.lowestRootTemperature',
    'pots.moisture',
    'cover.kind',
    ...designNightFields,
    ...thermalFields,
  ),
  figures: {
    hoursToRootLimit: {
      label: 'Time until the roots are at your limit',
      quantity: 'duration',
      explain:
        'The coldest layer, with outside as cold as on the night you build for from the moment of failure. Beyond ten days nobody looks. The outermost pots of the bench are there sooner.',
    },
    hoursToRootsFrozen: {
      label: 'Time until a layer of the roots is frozen through',
      quantity: 'duration',
      explain: 'All water of the coldest layer is ice. From then on it cools fast.',
    },
    hoursToLoopFreezing: {
      label: 'Time until the loop turns to slush',
      quantity: 'duration',
      explain: 'The first ice forms at the freezing point of the mix.',
    },
    hoursToLoopSolid: {
      label: 'Time until the slush is stiff',
      quantity: 'duration',
      explain: 'A third of the fluid is ice: about here it no longer gives way and breaks pipes.',
    },
    latentShare: {
      label: 'Share of that time owed to water that freezes',
      quantity: 'share',
      explain:
        'Of the time until the roots are at your limit: what would be gone if the water in the pots gave up no heat.',
    },
    hoursWhenWatered: {
      label: 'The same with the pots watered well',
      quantity: 'duration',
      explain: 'Time until the roots are at your limit with nearly all the water that the medium holds.',
    },
    hoursLeft: {
      label: 'Time left until the roots are at your limit',
      quantity: 'duration',
      explain:
        'From now, by what you fill in of a power cut that is on: outside, the hours since it failed, a pot. Without these it has just failed on the night that you build for.',
    },
    hoursLeftLoop: {
      label: 'Time left until the loop turns to slush',
      quantity: 'duration',
      explain: 'From now, by the same.',
    },
    outside: {
      label: 'Outside temperature',
      quantity: 'temperature',
      explain: 'Of the night that the bench is built for, from the failure on.',
    },
  },
  tables: {
    ladder: {
      label: 'Time to each limit, by outside temperature',
      explain: 'With outside as cold as the row says from the failure on.',
      columns: {
        outside: { label: 'Outside', quantity: 'temperature' },
        roots: { label: 'Roots at your limit', quantity: 'duration', empty: notReached },
        rootsFrozen: { label: 'A layer frozen through', quantity: 'duration', empty: notReached },
        loopFreezing: { label: 'Loop turns to slush', quantity: 'duration', empty: notReached },
        loopSolid: { label: 'Slush is stiff', quantity: 'duration', empty: notReached },
      },
    },
    byHour: {
      label: 'The cold snap with a power cut in it',
      explain: 'The power is gone for as long as you look at, from different hours of the snap.',
      columns: {
        fails: { label: 'Power fails' },
        lowest: { label: 'Lowest at the roots', quantity: 'temperature' },
        toLimit: { label: 'From the failure to your limit', quantity: 'duration', empty: 'not in this snap' },
      },
    },
  },
  formulas: [
    {
      tex: String.raw`t \approx \frac{C}{G}\,\ln\frac{T_0 - T_{\text{out}}}{T - T_{\text{out}}} + \frac{m_w\,L}{G\,(0 - T_{\text{out}})}`,
      words:
        'For a single lump: the time to cool by its heat capacity C through a conductance G, and the time for its water, of mass m and latent heat L, to freeze at 0 °C. The guide follows all parts of the bench instead of one lump.',
      cites: [cite('incropera', 'lumped capacity'), cite('iapws-sr6', 'latent heat of freezing')],
    },
  ],
  cites: [
    cite('assumption', 'the start: heat as set, ordinary weather of the coldest month; no sun'),
    cite(
      'common-practice',
      'a third of ice makes a slush stiff: freeze and burst protection tables, from memory',
    ),
  ],
  cautions: ['generator', 'no-flame', 'alarm'],
  compute(situation) {
    const { bench } = situation;
    const outside = designOutside(situation);
    const parameters = expectedParameters(situation);
    const ask = (where: Situation, limits: readonly OutageLimit[], more: { latent?: boolean } = {}) =>
      holdOver({ situation: where, parameters: expectedParameters(where), outside, limits, ...more });
    const now = holdOver({ situation, parameters, outside });
    const inputs = inputsOfOutage(situation, outside);
    const range = holdOverRange(situation, outside, inputs);
    const figure = (limit: 'roots' | 'loopFreezing'): Figure => timeFigure(now[limit], range[limit]);
    /** A time that hangs on the same inputs as one of which the range is known. */
    const alike = (
      value: number | null,
      limit: 'roots' | 'loopFreezing',
      of: (at: Parameters) => number | null,
    ) =>
      timeFigure(
        value,
        between(value ?? outageHorizon, range[limit].ends, (at) => of(at) ?? outageHorizon),
      );
    const later = (limit: OutageLimit) => (at: Parameters) =>
      holdOver({ situation, parameters: at, outside, limits: [limit] })[limit];
    const dry = now.roots ? (ask(situation, ['roots'], { latent: false }).roots ?? 0) : 0;
    const wateredBench = changed(situation, { pots: { moisture: Math.max(bench.pots.moisture, watered) } });
    const wet = ask(wateredBench, ['roots']);
    const sharedWet = sharedWith(situation, wateredBench);
    const { outsideNow, timeWithout, potNow } = bench.outlook;
    const left = timeLeftRange(
      situation,
      { outside: outsideNow ?? outside, since: timeWithout, pot: potNow },
      inputs,
    );
    const reached = (limit: 'roots' | 'loopFreezing'): Figure =>
      left[limit].high === 0
        ? { value: 0, words: sentence`none: they are there` }
        : timeFigure(left[limit].value >= outageHorizon ? null : left[limit].value, left[limit]);
    const figures = {
      hoursToRootLimit: figure('roots'),
      hoursToRootsFrozen: alike(now.rootsFrozen, 'roots', later('rootsFrozen')),
      hoursToLoopFreezing: figure('loopFreezing'),
      hoursToLoopSolid: alike(now.loopSolid, 'loopFreezing', later('loopSolid')),
      latentShare: now.roots ? { value: Math.max(0, 1 - dry / now.roots) } : null,
      hoursWhenWatered: alike(
        wet.roots,
        'roots',
        (at) =>
          holdOver({ situation: wateredBench, parameters: sharedWet(at), outside, limits: ['roots'] }).roots,
      ),
      hoursLeft: reached('roots'),
      hoursLeftLoop: reached('loopFreezing'),
      outside: { value: outside },
    };
    const { outageHours } = bench.outlook;
    const warnings: Warning[] = [];
    if (now.roots !== null && now.roots < outageHours) {
      const text = sentence`At ${amount(outside, 'temperature')} outside the roots are at your limit ${figureAmount(figures.hoursToRootLimit, 'duration')} after the failure, before the ${amount(outageHours, 'duration')} that you look at are over. Cover the plants and close the gaps at once.`;
      warnings.push(care('roots-before-power', text));
    }
    const start = restOn(situation, 'thermostat', parameters, ordinaryCold(situation));
    if (now.roots !== null && now.roots < soon && start.coldestRoots < mediumFreezes.from) {
      const until = amount(range.roots.high, 'duration');
      const text = sentence`In the mean weather of the coldest month, ${amount(start.outside, 'temperature')} outside, the coldest layer of the pots already stands at ${amount(start.coldestRoots, 'temperature')}: frozen pots have nothing in hand.`;
      const thawed =
        range.roots.high > soon ? sentence` Thawed when the power fails they last up to ${until}.` : [];
      warnings.push(care('frozen-before-the-cut', sentence`${text}${thawed}`));
    }
    if (now.loopFreezing !== null && now.loopFreezing < outageHours) {
      const text = sentence`The loop turns to slush at ${amount(loopFreezes(bench), 'temperature')}, ${figureAmount(figures.hoursToLoopFreezing, 'duration')} after the failure. Look for leaks before you switch the heat on again.`;
      warnings.push(care('loop-before-power', text));
    }
    return {
      figures,
      tables: {
        ladder: {
          rows: ladder(situation.region).map((level) => ({
            outside: level,
            ...holdOver({ situation, parameters, outside: level, limits: outageLimits }),
          })),
        },
        byHour: { rows: byHour(situation) },
      },
      warnings,
    };
  },
});
