import { fields } from '../calculators/bench/fields.ts';
import type { Field, NumberField } from '../calculators/bench/field.ts';
import { allFields } from '../calculators/bench/all-fields.ts';
import { allowedIn, sayAllowed } from '../calculators/bench/read-field.ts';
import { quantities, type Quantity, type UnitSystem } from '../calculators/quantities/quantity.ts';
import { showLimit } from '../calculators/quantities/show.ts';
import type { Region } from '../calculators/region.ts';
import { currentFormat } from './bench-format.ts';

/** JSON Schema 2020-12, as far as it is used here. */
export interface JsonSchema {
  readonly $schema?: string;
  readonly $id?: string;
  readonly title?: string;
  readonly description?: string;
  readonly type?: string | readonly string[];
  readonly pattern?: string;
  readonly const?: unknown;
  readonly oneOf?: readonly JsonSchema[];
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
  readonly items?: JsonSchema;
  readonly uniqueItems?: boolean;
  readonly properties?: Readonly<Record<string, JsonSchema>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean;
  readonly allOf?: readonly JsonSchema[];
  readonly if?: JsonSchema;
  readonly then?: JsonSchema;
}

const systems: readonly UnitSystem[] = ['metric', 'us'];

const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/gu, String.raw`\$&`);

/** Every spelling of every unit of a quantity that can be written behind a number, longest first. */
function spellings({ quantity }: NumberField): string[] {
  const { units }: Quantity = quantities[quantity];
  return Object.entries(units)
    .flatMap(([unit, { also = [] }]) => [unit, ...also])
    .filter((unit) => unit !== '' && !/^\d/u.test(unit))
    .sort((one, other) => other.length - one.length || (one < other ? -1 : 1));
}

/** A number as people write it: 6, 0.5, 0,5, .5, 1/2 or 1 1/2. */
const number = String.raw`(?:\d+\s+\d+\s*/\s*\d+|\d+\s*/\s*\d+|\d+(?:[.,]\d+)?|[.,]\d+)`;
const sign = String.raw`[-−–]?\s*`;

/** What a quantity looks like in a file: number and unit; lengths in up to three parts, as in 3 ft 6 in. */
function patternOf(field: NumberField): string {
  const part = `${number}\\s*(?:${spellings(field).map(escaped).join('|')})`;
  const more = field.quantity === 'length' || field.quantity === 'size' ? `(?:\\s*${part}){0,2}` : '';
  // Temperatures may be below zero by their nature; of others, the limits tell.
  const minus = field.quantity === 'temperature' || field.from < 0 ? sign : '';
  return `^\\s*${minus}${part}${more}\\s*$`;
}

/** A value in each system of units, typed as on a keyboard. */
function examplesOf(field: NumberField): string[] {
  const { example } = allowedIn(field) as { readonly example: number };
  const typed = (system: UnitSystem): string =>
    showLimit(example, field.quantity, { system, locale: 'en' }, 'lowest')
      .replace('\u202f', ' ')
      .replace('−', '-');
  return [...new Set(systems.map(typed))];
}

function limitsOf(field: NumberField): string {
  const [metric = '', us = ''] = systems.map((system) =>
    sayAllowed(allowedIn(field), { system, locale: 'en' }),
  );
  return metric === us ? metric : `${metric} (${us})`;
}

function schemaOf(
  field: Field,
  references: Readonly<Record<'region' | 'station', readonly JsonSchema[]>>,
): JsonSchema {
  const { label, explain } = field;
  switch (field.shape) {
    case 'number': {
      const empty = field.empty === undefined ? '' : ` Empty: ${field.empty}.`;
      const description = `${explain} Must be ${limitsOf(field)}.${empty}`;
      const nothing = field.empty === undefined ? [] : ['null'];
      if (spellings(field).length > 0)
        return {
          title: label,
          description,
          type: ['string', ...nothing],
          pattern: patternOf(field),
          examples: examplesOf(field),
        };
      // A plain number: an editor can check its limits.
      return {
        title: label,
        description,
        type: [field.quantity === 'count' ? 'integer' : 'number', ...nothing],
        minimum: field.from,
        maximum: field.to,
        examples: [allowedIn(field)].flatMap((allowed) =>
          allowed.kind === 'number' ? [allowed.example] : [],
        ),
      };
    }
    case 'choice':
      return {
        title: label,
        description: explain,
        oneOf: Object.entries(field.options).map(([value, option]) => ({
          const: value,
          description: option.label,
        })),
        examples: [field.start],
      };
    case 'text':
      return {
        title: label,
        description: explain,
        type: ['string', 'number', ...(field.required ? [] : ['null'])],
        maxLength: field.longest,
        ...(field.required ? { minLength: 1 } : {}),
      };
    case 'reference':
      return { title: label, description: explain, oneOf: references[field.to] };
  }
}

/** Only the stations of a region may stand beside it. */
const stationsOf = ({ id, stations }: Region): JsonSchema => ({
  if: { properties: { region: { const: id } }, required: ['region'] },
  then: { properties: { station: { enum: stations.map((station) => station.id) } } },
});

/**
 * The JSON Schema of bench files, derived from the fields: with it an editor completes names and choices, explains each
 * field and marks what is wrong. It checks how a quantity is written and in which unit; whether it is in its range only
 * the guide checks, as no schema can convert units.
 *
 * @param regions the regions that a file may name
 * @param id where the schema is published, if that is known
 */
export function benchJsonSchema(regions: readonly Region[], id?: string): JsonSchema {
  const references = {
    region: regions.map((region) => ({ const: region.id, description: region.name })),
    station: regions.flatMap((region) =>
      region.stations.map((station) => ({
        const: station.id,
        description: `${station.name}, ${region.name}`,
      })),
    ),
  };
  const groups = Object.entries(fields).map(([group, { label, explain }]): [string, JsonSchema] => {
    const members = allFields.filter((placed) => placed.group === group);
    const required = members.filter(({ field }) => 'required' in field).map(({ name }) => name);
    return [
      group,
      {
        title: label,
        description: explain,
        type: required.length > 0 ? 'object' : ['object', 'null'],
        properties: Object.fromEntries(members.map(({ name, field }) => [name, schemaOf(field, references)])),
        ...(required.length > 0 ? { required } : {}),
        additionalProperties: false,
        ...(group === 'place' ? { allOf: regions.map(stationsOf) } : {}),
      },
    ];
  });
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    ...(id === undefined ? {} : { $id: id }),
    title: 'Bench file of the winter bench guide',
    description:
      'One heated bench: what is true of it before anything is calculated. Quantities are written with their unit.',
    type: 'object',
    properties: {
      format: {
        title: 'Format of the file',
        description: 'Left out, it is 1.',
        type: 'integer',
        minimum: 1,
        maximum: currentFormat,
      },
      assumed: {
        title: 'What nobody has set',
        description:
          'Fields of this file whose values were taken over from an example, and not measured or chosen.',
        type: ['array', 'null'],
        items: { enum: allFields.map(({ path }) => path) },
        uniqueItems: true,
      },
      ...Object.fromEntries(groups),
    },
    required: groups.filter(([, schema]) => schema.required !== undefined).map(([group]) => group),
    additionalProperties: false,
  };
}
