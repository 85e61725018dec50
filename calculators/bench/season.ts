import type { Situation } from '../calculator.ts';
import { temperatureThrough, type Series } from '../weather/series.ts';
import { groundThrough, heatingMonths, ordinaryWinter } from '../weather/winter.ts';
import { seriesOfDays } from '../weather/days.ts';
import { houseThrough, ordinaryNights } from './place.ts';
import { expectedParameters, type Parameters } from './priors.ts';
import { between, endsBy, spreadAbout, weightyInputs, type Span } from './range.ts';
import { sharedWith } from './rest-ranges.ts';
import type { Run } from './simulate.ts';
import { restOn } from './steady.ts';
import { throughWeather, type Through } from './through.ts';

const hour = 3600;
const day = 24 * hour;

/** Outside temperature through a heating season that begins on 1 October, and the ground under it. */
export interface SeasonWeather {
  readonly outside: Series;
  /** [°C], from the beginning of the series [s] */
  readonly ground: (time: number) => number;
}

/** An ordinary winter of the bench's station, made from its months; see `ordinaryWinter`. */
export function ordinarySeason({ station }: Situation, parameters: Parameters): SeasonWeather {
  const outside = seriesOfDays(ordinaryWinter(station));
  const ground = groundThrough(station, parameters.ground);
  return { outside, ground: (time) => ground(time + outside.clock) };
}

/** What a month came to. */
export interface Month {
  readonly name: string;
  /** Heat of the cable [J], and its price. */
  readonly energy: number;
  readonly cost: number;
  /** Mean outside temperature [°C]. */
  readonly outside: number;
  /** Coldest layer of the root zone at any hour [°C]. */
  readonly lowestRoots: number;
  /** Time that the middle of the root zone is above the temperature at which plants wake up [s]. */
  readonly tooWarm: number;
}

export interface Season {
  readonly months: readonly Month[];
  readonly energy: number;
  readonly cost: number;
  readonly lowestRoots: number;
  /** Too warm in December, January and February [s]. */
  readonly tooWarm: number;
}

/** The price of energy at a time of day, in the currency of the region per joule. */
export function priceAt({ bench: { money }, region }: Situation): (clock: number) => number {
  const price = money.tariff ?? region.tariff.price;
  const { nightTariff, nightFrom, nightUntil } = money;
  if (nightTariff === null) return () => price;
  // Cheap hours may run over midnight.
  const cheap = (time: number): boolean =>
    nightFrom <= nightUntil ? time >= nightFrom && time < nightUntil : time >= nightFrom || time < nightUntil;
  return (clock) => (cheap(clock % day) ? nightTariff : price);
}

/** Adds a season up by months. */
function summaryOf(situation: Situation, { outside }: SeasonWeather, { body, course }: Through): Season {
  const price = priceAt(situation);
  const outsideAt = temperatureThrough(outside);
  const { growthTemperature } = situation.bench.plants;
  const layers = body.roots.map((node) => course.temperatures[node]!);
  const middle = layers[Math.floor(layers.length / 2)]!;
  const sums = heatingMonths.map(() => ({
    energy: 0,
    cost: 0,
    outside: 0,
    time: 0,
    lowest: Infinity,
    warm: 0,
  }));
  const begins: number[] = [];
  heatingMonths.reduce((first, { days }) => (begins.push(first), first + days), 0);
  let month = 0;
  for (let index = 1; index < course.times.length; index++) {
    const step = course.times[index]! - course.times[index - 1]!;
    const middleOf = outside.clock + (course.times[index]! + course.times[index - 1]!) / 2;
    while (month < begins.length - 1 && middleOf >= begins[month + 1]! * day) month++;
    const sum = sums[month]!;
    const energy = course.power[index]! * step;
    sum.energy += energy;
    sum.cost += energy * price(middleOf);
    sum.outside += outsideAt(middleOf - outside.clock) * step;
    sum.time += step;
    for (const layer of layers) sum.lowest = Math.min(sum.lowest, layer[index]!);
    if (middle[index]! > growthTemperature) sum.warm += step;
  }
  const months = heatingMonths.map(({ name }, index) => {
    const { energy, cost, outside: level, time, lowest, warm } = sums[index]!;
    return { name, energy, cost, outside: level / time, lowestRoots: lowest, tooWarm: warm };
  });
  const total = (of: (one: Month) => number): number => months.reduce((sum, one) => sum + of(one), 0);
  return {
    months,
    energy: total(({ energy }) => energy),
    cost: total(({ cost }) => cost),
    lowestRoots: Math.min(...months.map(({ lowestRoots }) => lowestRoots)),
    tooWarm: months.slice(2, 5).reduce((sum, one) => sum + one.tooWarm, 0),
  };
}

/** Steps of a season: hours, or three of them where seasons are compared [s]. */
export const seasonSteps = { usual: hour, coarse: 3 * hour } as const;

/** A bench through a season, with the sun on the house by day. */
export function throughSeason(
  situation: Situation,
  parameters: Parameters = expectedParameters(situation),
  weather: SeasonWeather = ordinarySeason(situation, parameters),
  { every, control }: { every: number; control: NonNullable<Run['control']> } = {
    every: seasonSteps.usual,
    control: 'averaged',
  },
): Season {
  const { outside, ground } = weather;
  const firstDay = Array.from(outside.values).slice(0, 24);
  const before = firstDay.reduce((sum, one) => sum + one, 0) / firstDay.length;
  const through = throughWeather(
    situation,
    parameters,
    { outside, ground, sun: 'with-sun', before },
    { heat: true, every, control },
  );
  return summaryOf(situation, weather, through);
}

/** The season in longer steps, for one set of uncertain inputs after another. */
export const quickSeason = (situation: Situation, parameters: Parameters): Season =>
  throughSeason(situation, parameters, ordinarySeason(situation, parameters), {
    every: seasonSteps.coarse,
    control: 'averaged',
  });

/**
 * Range of a season's energy [J] about the value given. The bins tell where its ends lie, and the season itself is run
 * there. On the example benches the ends lie within 5 % of those of running every input through (a test holds it to 10 %).
 */
export function seasonRange(situation: Situation, value: number): Span {
  const ends = endsBy(situation, (one) => binEnergy(situation, one));
  const middle = quickSeason(situation, expectedParameters(situation)).energy;
  const range = between(middle, ends, (at) => quickSeason(situation, at).energy);
  return spreadAbout(value, range, 0);
}

/**
 * Range of what a season's money is less for a change of the bench, of the same winter, house and ground. The bins of both
 * benches tell where the ends of the difference lie, by the few inputs that weigh on the energy; both seasons are run there.
 */
export function savingRange(situation: Situation, other: Situation): Span {
  const shared = sharedWith(situation, other);
  const inputs = weightyInputs(situation, (one) => ({ energy: binEnergy(situation, one) }));
  const ends = endsBy(situation, (one) => binEnergy(situation, one) - binEnergy(other, shared(one)), inputs);
  const saved = (parameters: Parameters): number =>
    quickSeason(situation, parameters).cost - quickSeason(other, shared(parameters)).cost;
  return between(saved(expectedParameters(situation)), ends, saved);
}

/** Width of the bins of `binEnergy` [K]. */
const binWidth = 2;

/**
 * Energy of a season by bins of temperature [J]: the hours of each bin times the power that holds the bench at rest in
 * it (the bin method of the ASHRAE handbooks). It leaves out what pots and soil take up and give back, and is twenty
 * times faster than `throughSeason`: for how an uncertain input moves the season, not for the season itself.
 */
export function binEnergy(
  situation: Situation,
  parameters: Parameters,
  weather: SeasonWeather = ordinarySeason(situation, parameters),
): number {
  const { outside } = weather;
  // House air less its night offset is the outside temperature of a night that is as hard on the bench as that hour.
  const unheated = houseThrough(
    {
      ...situation,
      bench: { ...situation.bench, place: { ...situation.bench.place, houseKind: 'unheated' } },
    },
    outside,
    parameters.houseOffset,
    'with-sun',
  );
  const bins = new Map<number, number>();
  for (let index = 0; index < outside.values.length; index++) {
    const level = unheated(index * outside.every) - parameters.houseOffset;
    const bin = Math.round(level / binWidth);
    bins.set(bin, (bins.get(bin) ?? 0) + 1);
  }
  const ordinary = { ...parameters, clearness: parameters.clearness * ordinaryNights };
  let energy = 0;
  for (const [bin, count] of [...bins].sort(([a], [b]) => a - b)) {
    const { power } = restOn(situation, 'thermostat', ordinary, bin * binWidth);
    // The power falls as it gets warmer: from the first bin without heat on there is none.
    if (power <= 0) break;
    energy += power * count * outside.every;
  }
  return energy;
}
