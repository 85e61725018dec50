import * as z from 'zod/mini';
import type { NumberField } from '../calculators/bench/field.ts';
import type { Station } from '../calculators/region.ts';
import { check, givenSchema, groupSchema, listSchema, type Checked } from './field-schema.ts';
import { sourceSchema, words } from './source-schema.ts';
import { readTree } from './yaml-tree.ts';

/** What a weather record says of a place, before a region makes a station of it. */
export type StationRecord = Omit<Station, 'id'>;

/** Colder and warmer than any weather station has read: −89 °C and 57 °C (records of the WMO, from memory). */
const outside = { from: -90, to: 60 } as const;

const temperature = (label: string) =>
  ({
    shape: 'number',
    quantity: 'temperature',
    label,
    explain: '',
    ...outside,
    start: null,
  }) as const satisfies NumberField;

const count = (label: string, from: number, to: number) =>
  ({
    shape: 'number',
    quantity: 'count',
    label,
    explain: '',
    from,
    to,
    start: null,
  }) as const satisfies NumberField;

/** A year at the pole, 60 K below a base, has half of the upper limit [K·s]. */
const degreeHours = {
  shape: 'number',
  quantity: 'degreeHours',
  label: 'Degree hours of a year',
  explain: '',
  from: 0,
  to: 1e6 * 3600,
  start: null,
} as const satisfies NumberField;

/** Whether this is a day of the calendar, as in ISO 8601: 2012-01-31. */
export function isDay(text: string): boolean {
  const at = /^\d{4}-\d{2}-\d{2}$/u.test(text) ? Date.parse(`${text}T00:00Z`) : NaN;
  // A day that there is not, such as 30 February, may be taken for one of March.
  return !Number.isNaN(at) && new Date(at).toISOString().startsWith(text);
}

const day = (label: string) =>
  z.pipe(
    givenSchema(words(label, 10)),
    z.string().check(z.refine(isDay, { error: 'a day, such as 2012-01-31' })),
  );

const stationSchema = groupSchema({
  name: givenSchema(words('Name of the station', 80)),
  source: sourceSchema('Source of the record'),
  method: givenSchema(words('Method', 600)),
  firstDay: day('First day of the record'),
  lastDay: day('Last day of the record'),
  daysMissing: givenSchema(count('Days without a reading', 0, 100_000)),
  winters: givenSchema(count('Whole winters on the record', 1, 300)),
  usualLowest: givenSchema(temperature('Lowest temperature of an ordinary winter')),
  recordLowest: givenSchema(temperature('Lowest temperature on record')),
  exceeded996: givenSchema(temperature('Temperature exceeded in 99.6 % of all hours')),
  exceeded99: givenSchema(temperature('Temperature exceeded in 99 % of all hours')),
  ground: givenSchema(temperature('Temperature of the ground in the coldest weeks')),
  months: listSchema(
    groupSchema({
      meanLow: givenSchema(temperature('Mean of the daily lows')),
      meanHigh: givenSchema(temperature('Mean of the daily highs')),
    }),
    'months, January to December',
    12,
    12,
  ),
  // Records of before these were worked out go without.
  hoursUsed: z.optional(givenSchema(count('Hours used', 0, 10_000_000))),
  degreeHours: z.optional(
    listSchema(
      groupSchema({
        below: givenSchema(temperature('Temperature that degree hours are counted below')),
        sum: givenSchema(degreeHours),
      }),
      'degree hours',
      0,
      10,
    ),
  ),
  coldestSnap: z.optional(
    groupSchema({
      begins: day('First of the three coldest days'),
      mean: givenSchema(temperature('Mean of the three coldest days')),
      lowest: givenSchema(temperature('Lowest of the three coldest days')),
    }),
  ),
});

const ordered = stationSchema.check(
  z.refine(
    ({ recordLowest, usualLowest, exceeded996, exceeded99 }) => {
      const rising = [recordLowest, usualLowest, exceeded996, exceeded99];
      return rising.every((value, index) => index === 0 || value >= (rising[index - 1] ?? value));
    },
    { error: 'temperatures that rise from recordLowest over usualLowest and exceeded996 to exceeded99' },
  ),
  z.refine(({ months }) => months.every(({ meanLow, meanHigh }) => meanLow <= meanHigh), {
    error: 'months whose mean low is not above their mean high',
  }),
);

/**
 * Reads the file of a weather record.
 *
 * @param text the whole file
 * @param file its name, for the problems
 */
export function readStation(text: string, file: string): Checked<StationRecord> {
  const read = readTree(text, file);
  return read.ok ? check(ordered, read.tree, file, { system: 'metric', locale: 'en' }) : read;
}
