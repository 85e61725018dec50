import { messages } from '../say.ts';
import { changed } from '../bench/changed.ts';
import { designSnap, inputsOfNight, nightSteps, snapWeather } from '../bench/night.ts';
import { expectedParameters, type Parameters } from '../bench/priors.ts';
import { ranged } from '../bench/range.ts';
import { actionAt, rootState } from '../bench/root-state.ts';
import { designNightFields, reading, thermalFields } from '../bench/thermal-fields.ts';
import { coldestRoots, throughWeather, timeBelow, type Through, type Weather } from '../bench/through.ts';
import { courseCurve, courseSeries } from '../bench/told.ts';
import {
  amount,
  calculator,
  care,
  sentence,
  type Cell,
  type Figure,
  type Situation,
  type Warning,
} from '../calculator.ts';
import { hoursOfDay } from '../climate/daily-profile.ts';
import { cite } from '../sources.ts';
import { clockWords } from '../weather/clock.ts';
import { coldestMonth } from '../weather/cold-snap.ts';
import { readForecast, type ForecastProblem } from '../weather/forecast.ts';
import type { Series } from '../weather/series.ts';

const hour = 3600;

/** Without a forecast the night that is built for is followed as far: this night and the next [s]. */
const furthest = 60 * hour;

/** Rows of the table are as far apart [h]; those of later nights further. */
const rowEvery = 3;
const laterEvery = 12;

/** The same weather, as far as two nights. */
const cut = ({ clock, every, values }: Series): Series => ({
  clock,
  every,
  values: Array.from(values).slice(0, Math.floor(furthest / every) + 1),
});

/**
 * The mean temperature outside of an ordinary day of the coldest month [°C], in which the bench had come to rest
 * (assumption). The forecast's own first hours tell nothing of the days before: taken for those, a cold afternoon would
 * have frozen the pots before the forecast begins, and a mild night would come out worse than a hard one.
 */
function meanBefore({ station }: Situation): number {
  const { meanLow, meanHigh } = coldestMonth(station);
  const day = hoursOfDay(meanLow, meanHigh);
  return day.reduce((sum, one) => sum + one, 0) / day.length;
}

/** What was typed; without a forecast the cold snap that the bench is built for, as everywhere in the guide. */
function outlookOf(situation: Situation): Weather | ForecastProblem {
  const { forecast } = situation.bench.outlook;
  if (forecast.trim() === '') {
    const snap = snapWeather(designSnap(situation));
    return { ...snap, outside: cut(snap.outside) };
  }
  const unit = situation.region.units === 'us' ? '°F' : '°C';
  const read = readForecast(forecast, unit, coldestMonth(situation.station).meanHigh);
  if (!read.ok) return read.problem;
  const outside = read.forecast.series;
  return { outside, sun: 'without-sun', before: meanBefore(situation) };
}

/** What there is to do in the hours before a cold night, in this order: the last can be done by lamp. */
const jobs: readonly string[] = messages([
  'Water pots that are dry: wet ones hold out longest. Try the alarm.',
  'Close vents, cover and every gap. Walk once around the skirt.',
  'Last round: read the coldest pot, see that the heat is on, write both down.',
]);

/** What to do in a row of the table, of those before the cold: the jobs stand in the last rows, all of them in few. */
function beforeCold(row: number, rows: number): string {
  const [early, job] = [Math.max(0, jobs.length - rows), row - Math.max(0, rows - jobs.length)];
  if (job < 0) return messages('Nothing to do yet.');
  return row === 0 ? jobs.slice(0, early + 1).join(' ') : jobs[early + job]!;
}

const through = (situation: Situation, parameters: Parameters, weather: Weather, every: number): Through =>
  throughWeather(situation, parameters, weather, { heat: true, every });

const lowestOf = (levels: ArrayLike<number>): number =>
  Array.from(levels).reduce((least, one) => Math.min(least, one), Infinity);

const temperature = 'temperature';

/** Warmest that a thermostat is turned to for a night [°C], and how closely it can be set [K] (common practice). */
const warmestSet = 15;
const dial = 0.5;

/**
 * The least that the thermostat must be set to so that the roots stay at the limit, with so much in hand [K]: told in
 * words, and null where nothing that a thermostat shows does it.
 */
function whatToSet(situation: Situation, weather: Weather, inHand: number): Figure<'temperature'> | null {
  const { control, plants } = situation.bench;
  const lowest = (heat: boolean, setPoint: number): number => {
    const other = changed(situation, { control: { setPoint } });
    const parameters = expectedParameters(other);
    const manner = { heat, every: nightSteps.coarse };
    return lowestOf(coldestRoots(throughWeather(other, parameters, weather, manner)));
  };
  const holds = (setPoint: number): boolean =>
    lowest(true, setPoint) >= plants.lowestRootTemperature + inHand;
  const { setPoint: now } = control;
  if (lowest(false, now) >= plants.lowestRootTemperature + inHand)
    return { value: now, words: sentence`no heat needed: leave it at ${amount(now, temperature)}` };
  if (holds(now)) return { value: now, words: sentence`leave it at ${amount(now, temperature)}` };
  if (now >= warmestSet || !holds(warmestSet)) return null;
  let [low, high] = [now, warmestSet];
  while (high - low > dial) {
    const middle = (low + high) / 2;
    if (holds(middle)) high = middle;
    else low = middle;
  }
  return { value: high, words: sentence`turn it up to ${amount(high, temperature)}` };
}

export default calculator({
  id: 'tonight',
  question: 'What do I do tonight?',
  summary: 'The roots hour by hour from the forecast that you type or paste, and what to do.',
  reads: reading(
    'outlook.forecast',
    'plants.lowestRootTemperature',
    'control.alarmLow',
    'cover.kind',
    ...designNightFields,
    ...thermalFields,
  ),
  figures: {
    lowestRootTemperature: {
      label: 'Lowest root temperature to expect',
      quantity: temperature,
      explain:
        'Of the coldest layer, to the end of the forecast, with the heat as it is, from pots as your heat keeps them in ordinary weather of the coldest month. Pots that are colder, or frozen already, fall sooner. Without a forecast: the night you build for.',
    },
    lowestAfter: {
      label: 'It is reached after',
      quantity: 'duration',
      explain:
        'From the beginning of the forecast: the afternoon’s high, the morning’s low, or the first hour.',
    },
    belowLimit: {
      label: 'Time below your limit',
      quantity: 'duration',
      explain: 'Of the coldest layer, to the end of the forecast.',
    },
    whatToSet: {
      label: 'What to set the thermostat to',
      quantity: temperature,
      explain:
        'The sensor where it is: no heat where none is needed, as it is where that keeps the roots at your limit even at the cold end of the range, else the least that does. Empty where no set point does.',
    },
    lowestWithCover: {
      label: 'Lowest with a film over the plants',
      quantity: temperature,
      explain: 'From the beginning of the forecast on. Empty where there is a cover already.',
    },
    lowestOutside: {
      label: 'Lowest outside',
      quantity: temperature,
      explain: 'Of the whole forecast.',
    },
  },
  tables: {
    hours: {
      label: 'Hour by hour',
      explain: 'Every three hours for two nights, then every twelve.',
      columns: {
        clock: { label: 'Day and hour' },
        outside: { label: 'Outside', quantity: temperature },
        under: { label: 'Under the bench', quantity: temperature },
        roots: { label: 'Coldest roots', quantity: temperature },
        action: { label: 'What to do' },
      },
    },
  },
  curves: {
    course: {
      label: 'The nights by the forecast',
      explain: 'Temperatures and power, every ten minutes.',
      series: courseSeries,
    },
  },
  formulas: [
    {
      tex: String.raw`T(h) = T_{\text{high}} - f(h)\,(T_{\text{high}} - T_{\text{low}})`,
      words:
        'Between a high at three in the afternoon and a low at five in the morning the air follows the course f of an ordinary day. The bench then follows the air, as on the coldest night.',
      cites: [cite('ashrae-fundamentals', 'fractions of the daily range of the older editions, from copies')],
    },
  ],
  cites: [
    cite('assumption', 'the days before were ordinary ones; no sun'),
    cite('assumption', 'within 1 K of the limit a grower should act'),
    cite('assumption', 'a low typed alone follows an ordinary afternoon of the coldest month'),
    cite('common-practice', 'water, close and look round before dusk'),
  ],
  cautions: ['no-flame', 'alarm'],
  compute(situation) {
    const outlook = outlookOf(situation);
    if (!('outside' in outlook)) return unreadable(outlook);
    const { bench } = situation;
    const weather = outlook;
    const { outside } = weather;
    const night = through(situation, expectedParameters(situation), weather, nightSteps.usual);
    const { times } = night.course;
    const roots = coldestRoots(night);
    const limit = bench.plants.lowestRootTemperature;
    const value = lowestOf(roots);
    const range = ranged(
      situation,
      (one) => lowestOf(coldestRoots(through(situation, one, weather, nightSteps.coarse))),
      inputsOfNight(situation),
    );
    const low = value + range.low - range.value;
    const covered = bench.cover.kind !== 'none';
    const withCover = covered
      ? null
      : lowestOf(
          coldestRoots(
            through(
              changed(situation, { cover: { kind: 'film' } }),
              expectedParameters(situation),
              weather,
              nightSteps.usual,
            ),
          ),
        );
    const stepsIn = (hours: number): number => Math.round((hours * hour) / nightSteps.usual);
    const curve = courseCurve(night, weather);
    // Work is for the hours before the roots begin to freeze or come near the limit.
    const cold = roots.findIndex((level) => rootState(level, limit) !== 'calm');
    const shown = curve.times.flatMap((time, index) =>
      index % stepsIn(time <= furthest ? rowEvery : laterEvery) === 0 ? [index] : [],
    );
    const early = shown.filter((index) => index < cold).length;
    const rows = shown.map((index, row): Record<string, Cell> => ({
      clock: clockWords(outside.clock + curve.times[index]!),
      outside: curve.series['outside']![index]!,
      under: curve.series['under']![index]!,
      roots: roots[index]!,
      action: index < cold ? [beforeCold(row, early)] : actionAt(roots[index]!, limit),
    }));
    const warnings: Warning[] = [];
    if (value < limit) {
      const text = sentence`By the forecast the roots come to ${amount(value, temperature)}, below your limit of ${amount(limit, temperature)}.`;
      const help =
        withCover !== null && withCover >= limit
          ? sentence` A film over the plants before dusk keeps them at ${amount(withCover, temperature)}.`
          : sentence` A cover alone does not save them: bring in more heat, or carry out what you cannot lose.`;
      warnings.push(care('tonight-below-limit', sentence`${text}${help}`));
    } else if (low < limit) {
      const text = sentence`The roots may come to ${amount(low, temperature)} tonight. Cover the plants and close the gaps before dusk, and look at the coldest pot at bedtime.`;
      warnings.push(care('tonight-may-fall-below-limit', text));
    }
    const lowestOutside = lowestOf(outside.values);
    const { meanHigh } = coldestMonth(situation.station);
    if (lowestOutside > meanHigh) {
      const text = sentence`The forecast comes no lower than ${amount(lowestOutside, temperature)}, warmer than an ordinary afternoon of the coldest month. Look whether a minus is missing.`;
      warnings.push(care('forecast-mild', text));
    }
    const loop = curve.series['loop']!.reduce((least, one) => Math.min(least, one), Infinity);
    if (loop < bench.control.alarmLow) {
      const text = sentence`The loop comes to ${amount(loop, temperature)}: a low alarm at ${amount(bench.control.alarmLow, temperature)} with its sensor there will sound.`;
      warnings.push(care('alarm-will-sound', text));
    }
    return {
      figures: {
        lowestRootTemperature: { value, low, high: value + range.high - range.value },
        lowestAfter: { value: times[roots.indexOf(value)]! },
        belowLimit: { value: timeBelow(times, roots, limit) },
        whatToSet: whatToSet(situation, weather, value - low),
        lowestWithCover: withCover === null ? null : { value: withCover },
        lowestOutside: { value: lowestOutside },
      },
      tables: { hours: { rows } },
      curves: { course: curve },
      warnings,
    };
  },
});

/** The answer to a forecast that cannot be read: where, what stands there, what may stand there. */
function unreadable({ line, found, allowed }: ForecastProblem) {
  const number = amount(line, 'count');
  const text =
    found === ''
      ? sentence`Line ${number} of the forecast must be ${allowed}.`
      : sentence`Line ${number} of the forecast, “${found}”, must be ${allowed}.`;
  return {
    figures: {
      lowestRootTemperature: null,
      lowestAfter: null,
      belowLimit: null,
      whatToSet: null,
      lowestWithCover: null,
      lowestOutside: null,
    },
    warnings: [care('forecast-unreadable', text)],
  };
}
