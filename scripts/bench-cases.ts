import { ensemble, nightHeadlines, toTheEnd } from '../calculators/bench/ensemble.ts';
import { nightOf } from '../calculators/bench/night.ts';
import { expectedParameters } from '../calculators/bench/priors.ts';
import { ordinarySeason, throughSeason, type SeasonWeather } from '../calculators/bench/season.ts';
import { designRest } from '../calculators/bench/steady.ts';
import type { Situation } from '../calculators/calculator.ts';
import { climateOf } from '../calculators/climate/record.ts';
import { answer, calculators, type CalculatorId } from '../calculators/index.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { benchAddress } from '../content/link.ts';
import { readWeather } from '../content/weather-file.ts';
import { edition } from '../site/edition.ts';
import { drawWorksheet } from '../site/worksheet/worksheet.ts';
import { buildGuide } from './build.ts';
import { filesOf, loadRegions } from './content-files.ts';
import { ensureFonts } from './fonts.ts';
import { lawCases } from './law-cases.ts';
import { odexCases } from './odex-cases.ts';

export interface Case {
  readonly name: string;
  readonly work: () => unknown;
  /** The most that it may take [ms], where something depends on it. */
  readonly budget?: number;
  /** A case that must be so many times faster than this one. */
  readonly slowerThan?: { readonly name: string; readonly times: number };
}

/** The first of the example benches where it stands. */
function firstExample(): Situation {
  const regions = loadRegions();
  const [first] = filesOf('benches');
  if (!first) throw new Error('content/benches holds no bench');
  const read = readBenchFile(first.text, first.file, regions);
  if (!read.ok) throw new Error(read.problems.map(({ text }) => text).join('\n'));
  const { bench } = read;
  const region = regions.find(({ id }) => id === bench.place.region);
  const station = region?.stations.find(({ id }) => id === bench.place.station);
  if (!region || !station) throw new Error(`${first.file} stands nowhere`);
  return { bench, region, station };
}

/** A season of as many hours: from October to April there are fewer, so that it begins again at its end. */
function ofHours(weather: SeasonWeather, hours: number): SeasonWeather {
  const { values } = weather.outside;
  const longer = Float64Array.from({ length: hours + 1 }, (_, hour) => values[hour % values.length] ?? NaN);
  return { ...weather, outside: { ...weather.outside, values: longer } };
}

/** Calculators that follow a bench through hours, nights or a winter; no key press waits for them. */
const throughTime: readonly CalculatorId[] = [
  'night',
  'tonight',
  'outage',
  'warm-up',
  'season',
  'ways',
  'readings',
];

/** Thirty years of hours as a service hands them out, 10 MB; invented, with a wave of the year and one of the day. */
function thirtyYearsOfHours(): string {
  const begin = Date.UTC(1990, 0, 1);
  const lines = Array.from({ length: 30 * 8766 }, (_, hour) => {
    const wave = (period: number): number => Math.cos((2 * Math.PI * hour) / period);
    const temperature = 10 - 9 * wave(8766) - 4 * wave(24) + 5 * wave(131);
    return `44,${new Date(begin + hour * 3_600_000).toISOString().slice(0, 16)},${temperature.toFixed(1)},87`;
  });
  return ['station,time,temperature,humidity', ...lines].join('\n');
}

/** What is measured over and over. */
export async function cases(): Promise<readonly Case[]> {
  const example = firstExample();
  // Answers are kept as long as a situation lives, so each run gets one of its own.
  const anew = (): Situation => ({ ...example });
  const { region } = example;
  const expected = expectedParameters(example);
  const longSeason = ofHours(ordinarySeason(example, expected), 5000);
  const fonts = await ensureFonts();
  const [file] = filesOf('benches');
  const regions = loadRegions();
  return [
    ...lawCases,
    { name: 'read a bench file', work: () => readBenchFile(file?.text ?? '', file?.file ?? '', regions) },
    { name: 'steady state, no heat', work: () => designRest(anew(), 'no-heat'), budget: 1 },
    { name: 'steady state, thermostat', work: () => designRest(anew(), 'thermostat'), budget: 1 },
    { name: 'steady state, roots held', work: () => designRest(anew(), 'hold-roots'), budget: 1 },
    // A form answers to each key: all of it must fit between two frames and still leave time to draw (50 ms).
    {
      name: 'all calculators of a bench at rest',
      work: () => {
        const one = anew();
        return calculators.filter(({ id }) => !throughTime.includes(id)).map(({ compute }) => compute(one));
      },
      budget: 50,
    },
    {
      name: 'a cold snap of 72 h in minutes',
      work: () => nightOf(example, expected, { every: 60, control: 'switched' }),
      budget: 10,
    },
    {
      name: 'a season of 5,000 h in hours',
      work: () => throughSeason(example, expected, longSeason),
      budget: 60,
    },
    {
      name: 'a snap of 200 benches in half hours',
      work: () => toTheEnd(ensemble(example, nightHeadlines(example))),
      budget: 1000,
    },
    {
      name: 'worksheet, with its answers',
      work: () =>
        drawWorksheet({
          situation: example,
          answers: answer(anew()),
          manner: { system: region.units, locale: region.languages[0] ?? 'en' },
          paper: region.paper,
          fonts,
          link: benchAddress(region.guide, example.bench),
          version: edition,
          assumed: [],
        }),
      budget: 300,
    },
  ];
}

/** Our steps and those of another integrator. */
export const besideOdex = (): readonly Case[] => odexCases(firstExample());

/** What is measured once, because it takes seconds. */
export const once: readonly Case[] = [
  {
    name: 'a station out of thirty years of hours',
    work: () => {
      const read = readWeather(thirtyYearsOfHours(), 'hours.csv');
      if (!read.ok) throw new Error(read.problems.map(({ text }) => text).join('\n'));
      return climateOf(read.days, 7, read.hours);
    },
    budget: 5000,
  },
  { name: 'the whole guide, built', work: () => buildGuide(), budget: 15_000 },
];
