import type { Field } from './field.ts';
import { fields, type Bench, type FieldPath, type GroupId } from './fields.ts';
import type { FieldValue } from './read-field.ts';

/** A field with its place in the bench. */
export interface PlacedField {
  readonly group: GroupId;
  readonly name: string;
  readonly path: FieldPath;
  readonly field: Field;
}

/** Every field of the bench, in the order of the groups. */
export const allFields: readonly PlacedField[] = Object.entries(fields).flatMap(
  ([group, { fields: members }]) =>
    Object.entries<Field>(members).map(([name, field]) => ({
      group: group as GroupId,
      name,
      path: `${group}.${name}` as FieldPath,
      field,
    })),
);

/** The value of one field, in base units. */
export const valueAt = (bench: Bench, { group, name }: PlacedField): FieldValue =>
  (bench[group] as Readonly<Record<string, FieldValue>>)[name] ?? null;

/** A bench put together by asking for the value of each field. */
export function benchOf(valueFor: (placed: PlacedField) => FieldValue): Bench {
  const groups: Record<string, Record<string, FieldValue>> = {};
  for (const placed of allFields) {
    const members = (groups[placed.group] ??= {});
    members[placed.name] = valueFor(placed);
  }
  return groups as unknown as Bench;
}
