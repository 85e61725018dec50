import fc from 'fast-check';
import { allFields, benchOf } from '../../calculators/bench/all-fields.ts';
import type { Field } from '../../calculators/bench/field.ts';
import type { Bench, GroupId } from '../../calculators/bench/fields.ts';
import type { FieldValue } from '../../calculators/bench/read-field.ts';
import { startBench as startBenchAt } from '../../calculators/bench/start.ts';

/** Some fields of a bench, by group. */
export type BenchChanges = { readonly [G in GroupId]?: Partial<Bench[G]> };

/** A bench with some fields changed. */
export const changed = (bench: Bench, changes: BenchChanges): Bench =>
  Object.fromEntries(
    Object.entries(bench).map(([group, members]) => [group, { ...members, ...changes[group as GroupId] }]),
  ) as unknown as Bench;

/** One set of changes over another. */
export const both = (first: BenchChanges, second: BenchChanges): BenchChanges => {
  const groups = new Set([...Object.keys(first), ...Object.keys(second)]) as Set<GroupId>;
  return Object.fromEntries([...groups].map((group) => [group, { ...first[group], ...second[group] }]));
};

/** The bench of a file that names nothing but itself and its place: every other field has its start value. */
export const startBench = changed(startBenchAt('invented', 'invented'), {
  identity: { name: 'Invented bench' },
});

function valuesOf(field: Field): fc.Arbitrary<FieldValue> {
  switch (field.shape) {
    case 'number': {
      const { from, to, quantity, empty } = field;
      const number =
        quantity === 'count'
          ? fc.integer({ min: from, max: to })
          : fc.double({ min: from, max: to, noNaN: true });
      return empty === undefined ? number : fc.option(number, { nil: null });
    }
    case 'choice':
      return fc.constantFrom(...Object.keys(field.options));
    case 'text':
    case 'reference':
      return fc.constant('invented');
  }
}

/**
 * Any bench that the fields allow: every number between its lowest and highest value, every choice, every field that
 * may be empty sometimes empty. Its region and station are called "invented".
 */
export const anyBench: fc.Arbitrary<Bench> = fc
  .tuple(...allFields.map(({ field }) => valuesOf(field)))
  .map((values) => {
    const byPath = new Map(allFields.map(({ path }, index) => [path, values[index] ?? null]));
    return benchOf(({ path }) => byPath.get(path) ?? null);
  });

/** The bench with every field but these taken from another: what hangs on these alone does not change. */
export const withOthersFrom = (other: Bench, bench: Bench, kept: readonly string[]): Bench =>
  Object.fromEntries(
    Object.entries(bench).map(([group, members]) => [
      group,
      Object.fromEntries(
        Object.entries(members).map(([name, value]) => [
          name,
          kept.includes(`${group}.${name}`)
            ? value
            : (other as unknown as Record<string, Record<string, unknown>>)[group]?.[name],
        ]),
      ),
    ]),
  ) as unknown as Bench;
