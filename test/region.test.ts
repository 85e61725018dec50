import { describe, expect, it } from 'vitest';
import { plants } from '../calculators/tables/plants.ts';
import type { Problem } from '../content/problem.ts';
import { idOf, readRegions } from '../content/regions.ts';
import { readRegion } from '../content/region-schema.ts';
import { readStation } from '../content/station-schema.ts';
import { filesOf } from '../scripts/content-files.ts';
import { regions } from './support/regions.ts';

const [estermark, tallow] = regions;

describe('the regions of this guide', () => {
  it('are the invented ones: in metric and in US units, and one in Spanish', () => {
    expect(regions.map(({ id }) => id)).toEqual(['estermark', 'tallow', 'valdehielo']);
    expect(estermark).toMatchObject({
      units: 'metric',
      paper: 'a4',
      mains: { voltage: 230, frequency: 50, rules: 'iec' },
      tariff: { currency: 'EUR' },
    });
    expect(tallow).toMatchObject({
      units: 'us',
      paper: 'letter',
      mains: { voltage: 120, frequency: 60, rules: 'us' },
      tariff: { currency: 'USD' },
    });
  });

  it.each(regions)('$name says that it is invented, down to its telephone numbers', (region) => {
    expect(region.about).toMatch(/does not exist.*invented|no existe.*inventad/u);
    expect(region.guide).toMatch(/\.example\/$/u);
    expect(region.tariff.source).toMatch(/^Invent(?:ed|ado)/u);
    expect(region.mains.source).toMatch(/^Invent(?:ed|ado)/u);
    expect(region.office.name).toMatch(/invented|inventada/u);
    for (const { who, how } of region.office.contacts) {
      expect(who).toMatch(/invented|inventado/u);
      // Numbers with 555-01 are set aside for stories.
      expect(how).toMatch(/\b555[- ]01\d\d$/u);
    }
    for (const station of region.stations)
      expect(station.source).toMatch(
        /(?:stand-in.*invented|préstamo.*inventada).*vega-datasets.*National Oceanic/u,
      );
  });

  it.each(regions)('$name names plants of the table and has stations with whole years', (region) => {
    expect(region.plants.every((plant) => Object.hasOwn(plants, plant))).toBe(true);
    expect(region.stations.length).toBeGreaterThan(0);
    for (const station of region.stations) {
      expect(station.months).toHaveLength(12);
      expect(station.winters).toBeGreaterThanOrEqual(1);
    }
  });

  it('Estermark has the colder ground and the milder winter of the two records', () => {
    // Lowest of the daily lows in weather.csv of vega-datasets 3.2.1, read off the file: −7.1 °C and −16.0 °C.
    expect(estermark?.stations[0]?.recordLowest).toBe(-7.1);
    expect(tallow?.stations[0]?.recordLowest).toBe(-16);
  });
});

const record = filesOf('stations')[0]?.text ?? '';
const station = readStation(record, 'station.yaml');
const records = new Map(station.ok ? [['record', station.value]] : []);

const good = `name: Somewhere
about: Invented for a test.
guide: https://guide.example/
languages: [en]
units: metric
paper: a4
mains:
  voltage: 230 V
  frequency: 50 Hz
  rules: iec
  source: Invented for a test.
tariff:
  price: 0.30 /kWh
  currency: EUR
  source: Invented for a test.
stations:
  - id: here
    name: Here
    record: record
    note: Invented for a test.
plants: [buxus]
cautions:
codeReferences: []
office:
  name: Office
  contacts:
    - who: Anyone
      how: 000 555 0100
`;

const read = (text: string) => readRegion('somewhere', text, 'somewhere.yaml', records);

function problemOf(text: string): Problem {
  const result = read(text);
  expect(result.ok).toBe(false);
  const [problem, ...others] = result.ok ? [] : result.problems;
  expect(others).toEqual([]);
  if (!problem) throw new Error('no problem');
  return problem;
}

describe('readRegion', () => {
  it('puts a region together with its records', () => {
    const result = read(good);
    expect(result).toMatchObject({
      ok: true,
      value: { id: 'somewhere', cautions: [], stations: [{ id: 'here', name: 'Here' }] },
    });
    // 0.30 for each 3.6 MJ.
    if (result.ok) expect(result.value.tariff.price).toBe(0.3 / 3.6e6);
  });

  it.each([
    ['230 V', '230', 8, 'mains.voltage', /must have a unit/u],
    ['230 V', '23 kV', 8, 'mains.voltage', /must be in V, not in kV/u],
    ['230 V', '2300 V', 8, 'mains.voltage', /between 12.V and 480.V/u],
    ['50 Hz', '50 V', 9, 'mains.frequency', /must be in Hz/u],
    ['rules: iec', 'rules: nec', 10, 'mains.rules', /must be us or iec/u],
    ['0.30 /kWh', '-0.30 /kWh', 13, 'tariff.price', /must be between/u],
    ['EUR', 'Euro', 14, 'tariff.currency', /three letters/u],
    ['EUR', 'XQX', 14, 'tariff.currency', /three letters of a currency that there is/u],
    ['https://', 'http://', 3, 'guide', /starts with https/u],
    ['[en]', '[english_GB]', 4, 'languages.1', /language tag/u],
    ['[en]', '[xx]', 4, 'languages.1', /language tag/u],
    ['[en]', 'en', 4, 'languages', /a list of/u],
    ['units: metric', 'units: imperial', 5, 'units', /metric or us/u],
    ['paper: a4', 'paper: A4', 6, 'paper', /did you mean a4/u],
    ['id: here', 'id: Over there', 17, 'stations.1.id', /small letters/u],
    ['record: record', 'record: recrod', 19, 'stations.1.record', /did you mean record/u],
    ['[buxus]', '[buxus, oak]', 21, 'plants.2', /must be/u],
    ['office:', 'offices:', 24, 'offices', /did you mean office/u],
  ])('%s as %s', (right, wrong, line, field, words) => {
    const result = read(good.replace(right, wrong));
    expect(result.ok).toBe(false);
    const problem = result.ok ? undefined : result.problems.find((one) => one.field === field);
    expect(problem).toMatchObject({ file: 'somewhere.yaml', line, field });
    expect(problem?.text).toMatch(words);
  });

  it('does without a value that has to be given', () => {
    expect(problemOf(good.replace('  frequency: 50 Hz\n', ''))).toMatchObject({
      line: 7,
      field: 'mains.frequency',
    });
    expect(problemOf(good.replace('units: metric\n', ''))).toMatchObject({ line: 1, field: 'units' });
  });

  it('refuses two stations of one id', () => {
    const twice = good.replace('plants:', '  - {id: here, name: Too, record: record, note: x}\nplants:');
    expect(problemOf(twice)).toMatchObject({ field: 'stations.2.id', line: 21, found: 'here' });
  });
});

describe('readStation', () => {
  const problems = (text: string): readonly Problem[] => {
    const result = readStation(text, 'station.yaml');
    return result.ok ? [] : result.problems;
  };
  it('takes a record', () => expect(problems(record)).toEqual([]));

  it.each([
    ['firstDay: 2012-01-01', 'firstDay: 2012-02-30', 'firstDay', /a day, such as/u],
    [/usualLowest: .*/u, 'usualLowest: -14.4', 'usualLowest', /must have a unit/u],
    [/usualLowest: .*/u, 'usualLowest: -14.4 K', 'usualLowest', /must be in °C or °F/u],
    [/usualLowest: .*/u, 'usualLowest: -80 °C', '', /rise from recordLowest/u],
    [/winters: .*/u, 'winters: 0', 'winters', /between 1 and/u],
    [/ {2}- meanLow.*\n.*\n#/u, '#', 'months', /12 months/u],
    [/meanLow: .*/u, 'meanLow: 50 °C', '', /mean low is not above/u],
  ] as const)('refuses %s as %s', (right, wrong, field, words) => {
    const [problem] = problems(record.replace(right, wrong));
    expect(problem?.field).toBe(field);
    expect(problem?.text).toMatch(words);
  });
});

describe('readRegions', () => {
  it('tells the problems of all files', () => {
    const result = readRegions(
      [
        { file: 'content/regions/a.yaml', text: 'name: A\n' },
        { file: 'content/regions/B b.yaml', text: good },
      ],
      [{ file: 'content/stations/record.yaml', text: 'name: x\n' }],
    );
    const files = new Set(result.ok ? [] : result.problems.map(({ file }) => file));
    expect(files).toEqual(
      new Set(['content/stations/record.yaml', 'content/regions/a.yaml', 'content/regions/B b.yaml']),
    );
  });

  it('calls a file by its name without folders and ending', () => {
    expect(idOf('content/regions/tallow.yaml')).toBe('tallow');
    expect(idOf(String.raw`C:\guide\regions\tallow.yaml`)).toBe('tallow');
  });
});
