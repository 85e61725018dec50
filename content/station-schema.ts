import * as z from 'zod/mini';
import type { NumberField, TextField } from '../calculators/bench/field.ts';
import type { Station } from '../calculators/region.ts';
import { check, givenSchema, groupSchema, listSchema, type Checked } from './field-schema.ts';
import { readTree } from './yaml-tree.ts';

/** What a weather record says of a place, before a region makes a station of it. */
export type StationRecord = Omit<Station, 'id'>;

/** Words that a region or a station needs; `longest` in characters. */
export const words = (label: string, longest: number): TextField & { readonly required: true } => ({
  shape: 'text',
  label,
  explain: '',
  longest,
  start: '',
  required: true,
});

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

/** A value that has to be given is never empty. */
const number = (field: NumberField) =>
  z.pipe(
    givenSchema(field),
    z.transform((value) => value as number),
  );

/** A day of the calendar, as in ISO 8601: 2012-01-31. */
const day = (label: string) =>
  z.pipe(
    givenSchema(words(label, 10)),
    z.string().check(
      z.refine(
        (text) =>
          /^\d{4}-\d{2}-\d{2}$/u.test(text) && new Date(`${text}T00:00Z`).toJSON()?.slice(0, 10) === text,
        {
          error: 'a day, such as 2012-01-31',
        },
      ),
    ),
  );

const stationSchema = groupSchema({
  name: givenSchema(words('Name of the station', 80)),
  source: givenSchema(words('Source of the record', 300)),
  method: givenSchema(words('Method', 600)),
  firstDay: day('First day of the record'),
  lastDay: day('Last day of the record'),
  daysMissing: number(count('Days without a reading', 0, 100_000)),
  winters: number(count('Whole winters on the record', 1, 300)),
  usualLowest: number(temperature('Lowest temperature of an ordinary winter')),
  recordLowest: number(temperature('Lowest temperature on record')),
  exceeded996: number(temperature('Temperature exceeded in 99.6 % of all hours')),
  exceeded99: number(temperature('Temperature exceeded in 99 % of all hours')),
  ground: number(temperature('Temperature of the ground in the coldest weeks')),
  months: listSchema(
    groupSchema({
      meanLow: number(temperature('Mean of the daily lows')),
      meanHigh: number(temperature('Mean of the daily highs')),
    }),
    'months, January to December',
    12,
    12,
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
