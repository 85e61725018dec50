import * as z from 'zod/mini';
import type { ChoiceField, NumberField, ReferenceField } from '../calculators/bench/field.ts';
import { fields } from '../calculators/bench/fields.ts';
import type { Region } from '../calculators/region.ts';
import { plants } from '../calculators/tables/plants.ts';
import { check, givenSchema, groupSchema, listSchema, type Checked } from './field-schema.ts';
import type { FileText } from './file-text.ts';
import { readRegionTree, withTakers } from './region-like.ts';
import { leastContrast, lowestContrast, type grounds } from './colours.ts';
import { outline } from './outline.ts';
import { sourceSchema, words } from './source-schema.ts';
import type { StationRecord } from './station-schema.ts';

const choice = <const Options extends Readonly<Record<string, { readonly label: string }>>>(
  label: string,
  options: Options,
) => ({ shape: 'choice', label, explain: '', options, start: '' }) as const satisfies ChoiceField;

const reference = (label: string): ReferenceField => ({
  shape: 'reference',
  to: 'station',
  label,
  explain: '',
  start: '',
  required: true,
});

/** From railway to ship's mains [Hz]; houses have 50 or 60 (IEC 60038, from memory). */
const frequency = { quantity: 'frequency', from: 16, to: 400 } as const;

/** A number that a region has to give, with one that is shown to whoever gets it wrong. */
const numberLike = (
  label: string,
  { quantity, from, to }: Pick<NumberField, 'quantity' | 'from' | 'to'>,
  example: number,
) => givenSchema<NumberField>({ shape: 'number', quantity, label, explain: '', from, to, start: example });

/** Words of a certain form, said in `error`. */
const formed = (label: string, form: (text: string) => boolean, error: string, longest = 40) =>
  z.pipe(givenSchema(words(label, longest)), z.string().check(z.refine(form, { error })));

export const isId = (text: string): boolean => /^[a-z][a-z\d-]{0,39}$/u.test(text);

const languageNames = new Intl.DisplayNames('en', { type: 'language', fallback: 'none' });

/** Whether this is the tag of a language that has a name, spelt as it should be: "en-US", but not "en_us" and not "xx". */
function isLanguage(tag: string): boolean {
  try {
    return Intl.getCanonicalLocales(tag)[0] === tag && languageNames.of(tag) !== undefined;
  } catch {
    return false;
  }
}

const currencies: ReadonlySet<string> = new Set(Intl.supportedValuesOf('currency'));

/** Of a page without query and part: what a code on paper is put behind. */
const isAddress = (text: string): boolean =>
  URL.canParse(text) && new URL(text).href === text && /^https:[^?#@]*\/$/u.test(text);

/** Where an office may put words of its own: the first page, and below the head of each chapter. */
export const places: readonly string[] = ['start', ...outline.map(({ id }) => id)];

const insertion = groupSchema({
  at: z.pipe(
    givenSchema(words('Place of the words', 40)),
    z
      .string()
      .check(z.refine((text) => places.includes(text), { error: `one of the places ${places.join(', ')}` })),
  ),
  kind: givenSchema(choice('Kind of the words', { caution: { label: 'Caution' }, note: { label: 'Note' } })),
  title: givenSchema(words('Title of the words', 80)),
  text: givenSchema(words('The words', 600)),
});

/** A colour for text that can be read on the grounds of a scheme; the message has the contrast that was found. */
const colour = (label: string, scheme: keyof typeof grounds) =>
  z.pipe(
    givenSchema(words(label, 7)),
    z.string().check(({ value, issues }) => {
      const wrong = (message: string) => issues.push({ code: 'custom', message, input: value });
      if (!/^#[\da-f]{6}$/iu.test(value)) wrong(`a colour such as '#164a60', in quotes`);
      else if (lowestContrast(value, scheme) < leastContrast) {
        const found = lowestContrast(value, scheme).toFixed(1);
        wrong(
          `a colour with a contrast of ${leastContrast} or more to the ${scheme} page; this one has ${found}, so many could not read it`,
        );
      }
    }),
  );

const regionSchema = (records: readonly string[]) =>
  groupSchema({
    name: givenSchema(words('Name of the region', 80)),
    about: givenSchema(words('What the region is', 400)),
    guide: formed(
      'Address of the guide',
      isAddress,
      'a web address that starts with https:// and ends with /',
      120,
    ),
    languages: listSchema(
      formed('Language', isLanguage, 'a language tag, such as en or en-US'),
      'languages',
      1,
      20,
    ),
    units: givenSchema(choice('System of units', { metric: { label: 'Metric' }, us: { label: 'US' } })),
    paper: givenSchema(choice('Paper', { a4: { label: 'A4' }, letter: { label: 'US Letter' } })),
    mains: groupSchema({
      voltage: numberLike('Voltage of the mains', fields.supply.fields.voltage, 230),
      frequency: numberLike('Frequency of the mains', frequency, 50),
      rules: givenSchema(choice('Rules for circuits', { us: { label: 'US' }, iec: { label: 'IEC' } })),
      source: sourceSchema('Source of the mains’ figures'),
    }),
    tariff: groupSchema({
      price: numberLike('Price of power', fields.money.fields.tariff, 0.3 / 3.6e6),
      currency: formed(
        'Currency',
        (text) => currencies.has(text),
        'the three letters of a currency that there is, such as EUR',
      ),
      source: sourceSchema('Source of the price'),
    }),
    stations: listSchema(
      groupSchema({
        id: formed('Name of the station in files', isId, 'small letters, digits and hyphens'),
        name: givenSchema(words('Name of the station', 80)),
        record: givenSchema(reference('Weather record'), records),
        note: givenSchema(words('Note on the record', 300)),
      }),
      'stations',
      1,
      50,
    ).check(({ value, issues }) => {
      for (const [index, { id }] of value.entries())
        if (value.findIndex((one) => one.id === id) < index)
          issues.push({
            code: 'custom',
            path: [index, 'id'],
            message: 'an id that no station above has',
            input: id,
          });
    }),
    plants: listSchema(givenSchema(choice('Plant', plants)), 'plants', 0, 100),
    cautions: listSchema(givenSchema(words('Caution', 300)), 'cautions', 0, 20),
    codeReferences: listSchema(
      givenSchema(words('Reference to the code', 300)),
      'references to the code',
      0,
      20,
    ),
    insertions: z.optional(listSchema(insertion, 'words of your own', 0, 40)),
    colours: z.optional(
      groupSchema({
        link: colour('Colour of links', 'light'),
        heat: colour('Colour of heat', 'light'),
        linkDark: colour('Colour of links on the dark page', 'dark'),
        heatDark: colour('Colour of heat on the dark page', 'dark'),
      }),
    ),
    office: groupSchema({
      name: givenSchema(words('Name of the office', 80)),
      contacts: listSchema(
        groupSchema({
          who: givenSchema(words('Person or service to call', 80)),
          how: givenSchema(words('Way to reach them', 80)),
        }),
        'contacts',
        1,
        10,
      ),
    }),
  });

/**
 * Reads the file of a region, and puts its stations together with their weather records.
 *
 * @param id the region's name in files: that of its file, without the ending
 * @param text the whole file
 * @param file its name, for the problems
 * @param records the weather records that it may name
 * @param regions the files of regions that it may be like
 */
export function readRegion(
  id: string,
  text: string,
  file: string,
  records: ReadonlyMap<string, StationRecord>,
  regions: readonly FileText[] = [],
): Checked<Region> {
  const read = readRegionTree({ file, text }, regions);
  if (!read.ok) return read;
  const checked = check(regionSchema([...records.keys()]), read.tree, file, {
    system: 'metric',
    locale: 'en',
  });
  if (!checked.ok) return { ok: false, problems: withTakers(checked.problems, { file, text }) };
  const stations = checked.value.stations.flatMap((station) => {
    const record = records.get(station.record);
    if (!record) return [];
    const source = `${station.note} ${record.name}, ${record.firstDay} to ${record.lastDay}: ${record.source}`;
    return [{ ...record, id: station.id, name: station.name, source }];
  });
  return { ok: true, value: { id, ...checked.value, stations } };
}
