import type { Bench, FieldPath } from '../calculators/bench/fields.ts';
import type { FieldValue } from '../calculators/bench/read-field.ts';

type Groups = Readonly<Record<string, Readonly<Record<string, FieldValue>>>>;

const split = (path: FieldPath): [string, string] => path.split('.') as [string, string];

/** The value of the field with this path. */
export function fieldValue(bench: Bench, path: FieldPath): FieldValue {
  const [group, name] = split(path);
  return (bench as Groups)[group]?.[name] ?? null;
}

/** The same bench with other values in some of its fields. */
export function withValues(bench: Bench, values: Readonly<Partial<Record<FieldPath, FieldValue>>>): Bench {
  const changed: Record<string, Record<string, FieldValue>> = {};
  for (const [path, value] of Object.entries(values) as [FieldPath, FieldValue][]) {
    const [group, name] = split(path);
    changed[group] = {
      ...((changed[group] ?? (bench as Groups)[group]) as Record<string, FieldValue>),
      [name]: value,
    };
  }
  return { ...bench, ...changed };
}
