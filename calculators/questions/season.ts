import { changed, type Changes } from '../bench/changed.ts';
import { improvements } from '../bench/improvements.ts';
import { expectedParameters } from '../bench/priors.ts';
import {
  priceAt,
  quickSeason,
  savingRange,
  seasonRange,
  throughSeason,
  type Season,
} from '../bench/season.ts';
import { between } from '../bench/range.ts';
import { designRanges } from '../bench/rest-ranges.ts';
import { setPoints, triedSetPoint } from '../bench/set-points.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  type Cell,
  type Sentence,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { cite } from '../sources.ts';

/** Hardening is lost after about a day of warmth: less than that in a whole winter is no matter [s]. */
const warmSpell = 24 * 3600;

/** How far a house with open vents stays above outside at midday [K] (assumption). */
const openVents = 1;

/** December, January and February [s]. */
const midwinter = 90 * 24 * 3600;

/** A season's energy below which nothing is worth changing for money: one kilowatt-hour [J]. */
const nothing = 3.6e6;

/** Colder by less than this nobody can read off a thermometer [K]. */
const readable = 0.1;

/** By how much a lower set point is tried [K]. */
const lowerBy = 1;

interface Change {
  readonly label: Sentence;
  /** What the guide advises against, however much it saves: such a change is told, and never called the best. */
  readonly against?: boolean;
  readonly changes: Changes;
}

/** What this bench could be changed in: the improvements that it does not have, the place of the sensor, and a lower set point. */
function changesFor(situation: Situation): Change[] {
  const { bench } = situation;
  const { sensor: place, setPoint } = bench.control;
  const built = Object.values(improvements).filter(({ present }) => !present(bench));
  const inPot = triedSetPoint(situation, 'pot');
  const sensor: Change = {
    label: sentence`The sensor in a pot, at ${amount(inPot, 'temperature')}`,
    changes: { control: { sensor: 'pot', setPoint: inPot } },
  };
  // A thermostat on the loop does not keep the roots, and one below what they ask for does not either.
  const { pot, air } = setPoints(situation);
  const least = place === 'pot' ? pot : place === 'air' ? air : null;
  const against = least === null || setPoint - lowerBy < least;
  const degrees = amount(lowerBy, 'temperatureDifference');
  const lower: Change = {
    label: against
      ? sentence`The set point lower by ${degrees} (against the advice of this guide)`
      : sentence`The set point lower by ${degrees}`,
    changes: { control: { setPoint: setPoint - lowerBy } },
    against,
  };
  return [
    ...built.map(({ label, changes }) => ({ label, changes })),
    ...(place === 'pot' ? [] : [sensor]),
    lower,
  ];
}

/** Set points that growers ask about, in the degrees of the reader [°C]: 2 to 6 °C, or 36 to 42 °F. */
const askedSetPoints = {
  metric: [2, 3, 4, 5, 6],
  us: [36, 38, 40, 42].map((level) => ((level - 32) * 5) / 9),
} as const;

/** The season in longer steps, so that many can be compared. */
const quick = (situation: Situation): Season => quickSeason(situation, expectedParameters(situation));

export default calculator({
  id: 'season',
  question: 'What does a winter cost?',
  summary:
    'Energy and money from October to April in an ordinary winter of your station, and what one change would save.',
  reads: reading(
    'money.tariff',
    'control.sensor',
    'control.setPoint',
    'place.houseOffset',
    'place.dayOffset',
    'cover.kind',
    'plants.growthTemperature',
    'money.nightTariff',
    'money.nightFrom',
    'money.nightUntil',
    'plants.lowestRootTemperature',
    ...designNightFields.slice(0, 2),
    ...thermalFields,
  ),
  figures: {
    energy: {
      label: 'Energy of a winter',
      quantity: 'energy',
      explain: 'What the cable takes from October to April. A hard winter takes more.',
    },
    cost: {
      label: 'Cost of a winter',
      quantity: 'money',
      explain: 'That energy at your price of power, in the currency of the region.',
    },
    largestSaving: {
      label: 'The best single change saves',
      quantity: 'money',
      explain:
        'In one winter, without making the roots colder than they may be, and without what this guide advises against. The table says which.',
    },
    lowestRoots: {
      label: 'Coldest roots of the winter',
      quantity: 'temperature',
      explain: 'The coldest layer at any hour, with the heat as it is.',
    },
    tooWarm: {
      label: 'Hours too warm from December to February',
      quantity: 'duration',
      explain:
        'The middle of the root zone is above the temperature at which plants wake up, in a house that stands shut as you describe it: warmer than outside by one offset at night and another at noon, without venting. Where winters are mild that is most of the time, with heat or without. Ventilate and shade on such days, and set the heat no higher.',
    },
    tooWarmVented: {
      label: 'Hours too warm with the vents open by day',
      quantity: 'duration',
      explain:
        'The same from December to February with the house no more than 1 K (2 °F) above outside at midday. What is left is the weather’s, or your heat’s.',
    },
  },
  tables: {
    months: {
      label: 'Month by month',
      explain: 'An ordinary winter, made from the station’s monthly lows and highs.',
      columns: {
        month: { label: 'Month' },
        outside: { label: 'Mean outside', quantity: 'temperature' },
        energy: { label: 'Energy', quantity: 'energy' },
        cost: { label: 'Cost', quantity: 'money' },
        lowest: { label: 'Coldest roots', quantity: 'temperature' },
        warm: { label: 'Too warm', quantity: 'duration' },
      },
    },
    savings: {
      label: 'One change at a time, largest saving first',
      explain:
        'Less than zero: it costs more. Look at the roots too: a change that takes more power may be the one that saves them.',
      columns: {
        change: { label: 'Change' },
        saves: { label: 'Saves', quantity: 'energy' },
        money: { label: 'Saves in money', quantity: 'money' },
        lowest: { label: 'Coldest roots', quantity: 'temperature' },
      },
    },
    setPoints: {
      label: 'The same winter at other set points',
      explain:
        'With the sensor where it is now. A sensor on the pipe, in the air and in a pot read quite different things: compare rows, not places.',
      columns: {
        setPoint: { label: 'Set point', quantity: 'temperature' },
        energy: { label: 'Energy', quantity: 'energy' },
        cost: { label: 'Cost', quantity: 'money' },
        lowest: { label: 'Coldest roots', quantity: 'temperature' },
      },
    },
  },
  formulas: [
    {
      tex: String.raw`E = \int P\,dt,\qquad \text{cost} = \int p(t)\,P\,dt`,
      words:
        'The power of the cable, hour by hour from the thermostat and the bench through the winter, added up; each hour at its own price p.',
      cites: [cite('incropera', 'heat balance of the parts of the bench')],
    },
  ],
  cites: [
    cite(
      'assumption',
      'an ordinary winter: the station’s months with four waves of weather, as wide as its usual lowest asks',
    ),
    cite('ashrae-fundamentals', 'fractions of the daily range between low and high, from copies'),
    cite('assumption', 'the sun warms the house from eight to four, most at noon'),
    cite('kusuda1965', 'yearly wave of the ground'),
    cite('rutgers-fs528', 'plants harden in weeks below 40 °F'),
    cite('common-practice', 'roots not above 7 °C in midwinter'),
  ],
  cautions: ['no-flame'],
  compute(situation) {
    const { bench } = situation;
    const season = throughSeason(situation);
    const { low, high } = seasonRange(situation, season.energy);
    // The cost of an uncertain joule is that of the others.
    const each = season.energy > 0 ? season.cost / season.energy : priceAt(situation)(0);
    const asIs = quick(situation);
    const dayOffset = Math.min(bench.place.dayOffset, Math.max(openVents, bench.place.houseOffset));
    const vented = quick(changed(situation, { place: { dayOffset } }));
    const savings = changesFor(situation)
      .map(({ label, changes, against = false }) => {
        const after = quick(changed(situation, changes));
        return {
          against,
          changes,
          change: label,
          saves: asIs.energy - after.energy,
          money: asIs.cost - after.cost,
          lowest: after.lowestRoots,
        };
      })
      .sort((a, b) => b.money - a.money || b.saves - a.saves);
    // What leaves the roots colder, and below the limit, is no saving.
    const { lowestRootTemperature: limit } = bench.plants;
    const best = savings.find(
      ({ lowest, against }) => !against && lowest >= Math.min(limit, asIs.lowestRoots - readable),
    );
    const warnings: Warning[] = [];
    if (season.tooWarm > warmSpell) {
      const text = sentence`From December to February, ${amount(midwinter, 'duration')} in all, the roots are above ${amount(bench.plants.growthTemperature, 'temperature')} for ${amount(season.tooWarm, 'duration')}, if the house is ${amount(bench.place.dayOffset, 'temperatureDifference')} above outside at midday; with the vents open on such days for ${amount(vented.tooWarm, 'duration')}. Measure that difference, ventilate and shade, or the plants lose their hardiness.`;
      warnings.push(care('too-warm', text));
    }
    if (season.lowestRoots < bench.plants.lowestRootTemperature) {
      const text = sentence`In an ordinary winter the roots come to ${amount(season.lowestRoots, 'temperature')}, below your limit. Save money elsewhere first.`;
      warnings.push(care('winter-below-limit', text));
    }
    if (season.energy < nothing) {
      warnings.push(
        care(
          'hardly-heats',
          sentence`With the thermostat as it is the cable hardly ever comes on in an ordinary winter. See what the coldest night does before you call that a saving.`,
        ),
      );
    }
    return {
      figures: {
        energy: { value: season.energy, low, high },
        cost: { value: season.cost, low: low * each, high: high * each },
        largestSaving:
          best && best.money > 0 ? savingRange(situation, changed(situation, best.changes)) : null,
        lowestRoots: between(
          season.lowestRoots,
          designRanges(situation).withHeat.ends,
          (at) => quickSeason(situation, at).lowestRoots,
        ),
        tooWarm: { value: season.tooWarm },
        tooWarmVented: { value: Math.min(season.tooWarm, vented.tooWarm) },
      },
      tables: {
        months: {
          rows: season.months.map(
            ({ name, outside, energy, cost, lowestRoots, tooWarm }): Record<string, Cell> => ({
              month: [name],
              outside,
              energy,
              cost,
              lowest: lowestRoots,
              warm: tooWarm,
            }),
          ),
        },
        savings: {
          rows: savings.map(({ change, saves, money, lowest }) => ({ change, saves, money, lowest })),
        },
        setPoints: {
          rows: askedSetPoints[situation.region.units].map((setPoint) => {
            const { energy, cost, lowestRoots } = quick(changed(situation, { control: { setPoint } }));
            return { setPoint, energy, cost, lowest: lowestRoots };
          }),
        },
      },
      warnings,
    };
  },
});
