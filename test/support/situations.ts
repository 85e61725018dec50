import type { Situation } from '../../calculators/calculator.ts';
import type { Region, Station } from '../../calculators/region.ts';
import { both, changed, startBench, type BenchChanges } from './benches.ts';

/** A place that does not exist, with round numbers that are easy to follow by hand. */
export const inventedStation: Station = {
  id: 'invented',
  name: 'Invented station',
  usualLowest: -12,
  winters: 10,
  recordLowest: -18,
  exceeded996: -8,
  exceeded99: -6,
  ground: 7,
  months: [0, 1, 4, 7, 11, 14, 16, 16, 13, 9, 5, 1].map((meanLow) => ({ meanLow, meanHigh: meanLow + 8 })),
  source: 'Invented for tests',
  method: 'Invented for tests',
  firstDay: '2001-01-01',
  lastDay: '2010-12-31',
  daysMissing: 0,
};

/** Metric units, 230 V, IEC rules. */
export const metricRegion: Region = {
  id: 'invented',
  name: 'Invented metric region',
  about: 'Invented for tests',
  guide: 'https://guide.example/',
  languages: ['en'],
  units: 'metric',
  paper: 'a4',
  mains: { voltage: 230, frequency: 50, rules: 'iec', source: 'Invented for tests' },
  tariff: { price: 0.3 / 3.6e6, currency: 'EUR', source: 'Invented for tests' },
  stations: [inventedStation],
  plants: [],
  cautions: [],
  codeReferences: [],
  office: { name: 'Invented office', contacts: [] },
};

/** US units, 120 V, US rules. */
export const usRegion: Region = {
  ...metricRegion,
  name: 'Invented US region',
  languages: ['en-US'],
  units: 'us',
  paper: 'letter',
  mains: { voltage: 120, frequency: 60, rules: 'us', source: 'Invented for tests' },
  tariff: { price: 0.15 / 3.6e6, currency: 'USD', source: 'Invented for tests' },
};

/** The bench of the start values, with some fields changed, at the invented station of the metric region. */
export const situation = (changes: BenchChanges = {}): Situation => ({
  bench: changed(startBench, changes),
  region: metricRegion,
  station: inventedStation,
});

/** The same under US rules: the start bench with US wire and a US breaker. */
export const usSituation = (changes: BenchChanges = {}): Situation => ({
  ...situation(both({ supply: { breaker: 15, conductor: 'awg-12' } }, changes)),
  region: usRegion,
});

/**
 * Changes to the start bench that make it sound: a cable of little power per length whose sheath bears a crossing, a
 * wide stand-pipe, a mix with enough in hand. No calculator of pipe, cable or circuit has anything to say against it.
 */
export const sound: BenchChanges = {
  loop: { standpipeDiameter: 0.1, hottest: 35 },
  mix: { share: 0.43, protectTo: -15 },
  cable: { powerPerLength: 10, length: 60, highestSheath: 130 },
};

/** The sound bench with some fields changed. */
export const soundSituation = (changes: BenchChanges = {}): Situation => situation(both(sound, changes));

/** The sound bench under US rules with some fields changed. */
export const soundUsSituation = (changes: BenchChanges = {}): Situation => usSituation(both(sound, changes));
