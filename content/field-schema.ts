import * as z from 'zod/mini';
import type { Field } from '../calculators/bench/field.ts';
import { nearestName } from '../calculators/bench/nearest.ts';
import { readField, sayRight, sayProblem, type FieldProblem } from '../calculators/bench/read-field.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import { problem, type Problem } from './problem.ts';
import { lineAt, plainOf, type Group } from './yaml-tree.ts';

/**
 * Schemas of files, made of fields. zod walks the file and finds unknown names and wrong shapes; what a value means is
 * left to the one reader of fields. The message of each issue says what is allowed.
 */

const nearestOf = (written: string, names: readonly string[]): string => {
  const nearest = nearestName(written, names);
  return nearest === undefined ? '' : `; did you mean ${nearest}?`;
};

/** One value. Left out, it takes the start value of its field, unless a file must give it. */
export const fieldSchema = (field: Field, references?: readonly string[]) =>
  z.pipe(
    z.optional(z.unknown()),
    z.transform((raw, context) => {
      const needed = (field.shape === 'text' || field.shape === 'reference') && field.required === true;
      if (raw === undefined && !needed) return field.start;
      const read = readField(field, raw, undefined, references);
      if (read.ok) return read.value;
      context.issues.push({ code: 'custom', input: raw, params: { field, problem: read.problem } });
      return z.NEVER;
    }),
  );

/** A group of values, where no other names may stand. A name with nothing below it is a group without values. */
export const groupSchema = <Shape extends z.core.$ZodLooseShape>(shape: Shape) =>
  z.pipe(
    z.transform((raw: unknown) => raw ?? {}),
    z.strictObject(shape, {
      error: ({ code }) =>
        code === 'unrecognized_keys' ? Object.keys(shape).join(', ') : 'names with values',
    }),
  );

/** A list of one or more. */
export const listSchema = <Item extends z.core.$ZodType>(item: Item, what: string, most: number) =>
  z
    .array(item, { error: `a list of ${what}, each on its line after a hyphen and a blank` })
    .check(
      z.minLength(1, { error: `one or more ${what}` }),
      z.maxLength(most, { error: `${most} ${what} or fewer` }),
    );

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
    const at = { file, line: lineAt(tree, issue.path), field: name };
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
      return [
        problem(
          { ...at, found: wrong.found, allowed: sayRight(wrong, manner) },
          sayProblem(field, wrong, manner),
        ),
      ];
    }
    return [problem({ ...at, found: '', allowed: issue.message }, `Here must stand ${issue.message}`)];
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
