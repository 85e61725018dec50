import { readFileSync } from 'node:fs';
import { evaluate } from 'mathjs';

/** The example of a chapter that is worked by hand: a table with a column in metric and one in US units. */
export type Column = 'metric' | 'us';

/** A cell such as "π × (110 + 5) = 361.3 mm": the sum, what stands behind it, and the unit. */
export interface Sum {
  /** What the sum comes to, worked out by mathjs. */
  readonly value: number;
  /** What is printed behind it. */
  readonly result: string;
  readonly unit: string;
}

export interface WorkedExample {
  readonly heads: readonly string[];
  readonly cell: (head: string, column: Column) => string;
  readonly sum: (head: string, column: Column) => Sum;
  /** A number inside a cell: the first group of the pattern. */
  readonly given: (head: string, column: Column, pattern: RegExp) => number;
}

const plainSigns: readonly (readonly [string, string])[] = [
  ['\u202f', ''],
  ['×', '*'],
  ['÷', '/'],
  ['−', '-'],
  ['²', '^2'],
  ['⁴', '^4'],
  ['π', 'pi'],
  ['√', 'sqrt'],
  // mathjs writes the natural logarithm so.
  ['ln', 'log'],
];
const plain = (text: string): string =>
  plainSigns.reduce((sum, [sign, written]) => sum.replaceAll(sign, written), text);

/** The tables of a chapter, whose rows each have a head of their own. */
export function workedExample(chapter: string): WorkedExample {
  const text = readFileSync(new URL(`../../content/chapters/${chapter}.mdx`, import.meta.url), 'utf8');
  const rows = (text.match(/^\| .*$/gmu) ?? []).map((row) =>
    row
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim()),
  );
  const known = new Map(rows.map(([head = '', metric = '', us = '']) => [head, { metric, us }]));
  const cell = (head: string, column: Column): string => {
    const found = known.get(head)?.[column];
    if (!found) throw new Error(`${chapter}.mdx has no row "${head}"`);
    return found;
  };
  const sum = (head: string, column: Column): Sum => {
    const match = /^(.+) = ([−\d.\u202f]+)(?: (\S+))?$/u.exec(cell(head, column));
    if (!match) throw new Error(`"${cell(head, column)}" is not a sum with a result`);
    const [, written = '', result = '', unit = ''] = match;
    return { value: evaluate(plain(written)) as number, result: plain(result), unit };
  };
  return {
    heads: [...known.keys()],
    cell,
    sum,
    given: (head, column, pattern) => {
      const found = pattern.exec(cell(head, column))?.[1];
      if (found === undefined) throw new Error(`"${cell(head, column)}" does not read ${pattern.source}`);
      return Number(plain(found));
    },
  };
}
