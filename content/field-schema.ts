import * as z from 'zod/mini';
import type { Field, ValueOf } from '../calculators/bench/field.ts';
import { nearestName } from '../calculators/bench/nearest.ts';
import { readField, sayRight, sayProblem, type FieldProblem } from '../calculators/bench/read-field.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { problem, type Problem } from './problem.ts';
import { fileAt, lineAt, plainOf, textAt, type Group } from './yaml-tree.ts';

/**
 * Schemas of files, made of fields. zod walks the file and finds unknown names and wrong shapes; what a value means is
 * left to the one reader of fields. The message of each issue says what is allowed.
 */

const nearestOf = (written: string, names: readonly string[]): string => {
  const nearest = nearestName(written, names);
  return nearest === undefined ? '' : `; did you mean ${nearest}?`;
};

const valueSchema = <F extends Field>(field: F, references: readonly string[], mayBeLeftOut: boolean) =>
  z.pipe(
    z.optional(z.unknown()),
    z.transform((raw, context): ValueOf<F> => {
      // What a field may start with is a value of it, unless a file must give one: for that see below.
      if (raw === undefined && mayBeLeftOut) return field.start as ValueOf<F>;
      const read = readField(field, raw, undefined, references);
      if (read.ok) return read.value as ValueOf<F>;
      context.issues.push({ code: 'custom', input: raw, params: { field, problem: read.problem } });
      return z.NEVER;
    }),
  );

/** One value. Left out, it takes the start value of its field, unless the field says that it is required. */
export const fieldSchema = <F extends Field>(field: F, references: readonly string[] = []) =>
  valueSchema(field, references, !('required' in field));

/** One value that may not be left out. */
export const givenSchema = <F extends Field>(field: F, references: readonly string[] = []) =>
  valueSchema(field, references, false);

/** A group of values, where no other names may stand. A name with nothing below it is a group without values. */
export const groupSchema = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z.pipe(
    z.transform((raw: unknown) => raw ?? {}),
    z.strictObject(shape, {
      error: ({ code }) =>
        code === 'unrecognized_keys' ? Object.keys(shape).join(', ') : 'names with values',
    }),
  );

/** A list of things, from the fewest to the most. */
export const listSchema = <Item extends z.core.$ZodType>(
  item: Item,
  what: string,
  fewest: number,
  most: number,
) => {
  const error = `a list of ${fewest === most ? fewest : `${fewest} to ${most}`} ${what}`;
  // A name with nothing after it is a list without things.
  return z.pipe(
    z.transform((raw: unknown) => raw ?? []),
    z.array(item, { error }).check(z.minLength(fewest, { error }), z.maxLength(most, { error })),
  );
};

interface FieldIssue {
  readonly field: Field;
  readonly problem: FieldProblem;
}

/** Turns what zod found into problems with lines, in the reader's units. */
function problemsOf(
  issues: readonly z.core.$ZodIssue[],
  tree: Group,
  file: string,
  manner: Manner,
): Problem[] {
  return issues.flatMap((issue): Problem[] => {
    const name = issue.path.map((step) => (typeof step === 'number' ? step + 1 : String(step))).join('.');
    // What was taken over from another file is wrong there; a name that nobody knows may be below it.
    const deepest = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path;
    const at = { file: fileAt(tree, deepest) ?? file, line: lineAt(tree, issue.path), field: name };
    if (issue.code === 'unrecognized_keys') {
      const names = issue.message.split(', ');
      const where = name === '' ? 'here' : `in ${name}`;
      return issue.keys.map((key) =>
        problem(
          {
            ...at,
            line: lineAt(tree, [...issue.path, key]),
            field: name === '' ? key : `${name}.${key}`,
            found: key,
            allowed: issue.message,
          },
          `There is no ${JSON.stringify(key)} ${where}, only ${issue.message}${nearestOf(key, names)}`,
        ),
      );
    }
    if (issue.code === 'custom' && issue.params) {
      const { field, problem: wrong } = issue.params as unknown as FieldIssue;
      // The whole value as it was written; of a list or a group, that it is one.
      const found = textAt(tree, issue.path) || wrong.found;
      return [problem({ ...at, found, allowed: sayRight(wrong, manner) }, sayProblem(field, wrong, manner))];
    }
    const found = textAt(tree, issue.path);
    return [problem({ ...at, found, allowed: issue.message }, `Here must stand ${issue.message}`)];
  });
}

export type Checked<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problems: readonly Problem[] };

/** Checks a tree against a schema; all problems at once, in the order of the lines. */
export function check<T>(schema: z.core.$ZodType<T>, tree: Group, file: string, manner: Manner): Checked<T> {
  const result = z.safeParse(schema, plainOf(tree));
  if (result.success) return { ok: true, value: result.data };
  const problems = problemsOf(result.error.issues, tree, file, manner);
  return { ok: false, problems: problems.sort((one, other) => one.line - other.line) };
}
