import fc from 'fast-check';
import type { Field } from '../../calculators/bench/field.ts';
import { fields, type Bench, type GroupId } from '../../calculators/bench/fields.ts';

type Groups = { readonly [G in GroupId]: { readonly [name: string]: unknown } };

/** A bench made by asking each field of each group for its value. */
const benchOf = <V>(valueOf: (field: Field) => V) =>
  Object.fromEntries(
    Object.entries(fields).map(([group, { fields: members }]) => [
      group,
      Object.fromEntries(Object.entries(members).map(([name, field]) => [name, valueOf(field)])),
    ]),
  );

/** The bench of a file that names nothing but itself: every field has its start value. */
export const startBench = benchOf((field) => {
  if (field.shape === 'reference') return 'invented';
  return field.shape === 'text' ? 'Invented bench' : field.start;
}) as unknown as Bench;

/** Some fields of a bench, by group. */
export type BenchChanges = { readonly [G in GroupId]?: Partial<Bench[G]> };

/** A bench with some fields changed. */
export function changed(bench: Bench, changes: BenchChanges): Bench {
  const groups = bench as Groups;
  return Object.fromEntries(
    Object.entries(groups).map(([group, members]) => [group, { ...members, ...changes[group as GroupId] }]),
  ) as unknown as Bench;
}

function valuesOf(field: Field): fc.Arbitrary<unknown> {
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
export const anyBench = fc.record(
  Object.fromEntries(
    Object.entries(benchOf(valuesOf)).map(([group, members]) => [group, fc.record(members)]),
  ),
) as unknown as fc.Arbitrary<Bench>;
