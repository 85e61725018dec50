import { allFields } from '../calculators/bench/all-fields.ts';
import { nearestName } from '../calculators/bench/nearest.ts';
import { delimiterNames, delimiterOf, linesOf, type Line } from './delimited.ts';
import { problem, type Problem } from './problem.ts';
import type { Group, Tree } from './yaml-tree.ts';

/** One bench of a table: its line, and what the line says in the form in which a bench file says it. */
export interface BenchRow {
  readonly line: number;
  /** What stands in the column of the bench's name; empty where nothing does. */
  readonly name: string;
  readonly tree: Group;
}

export type ReadBenchTable =
  | { readonly ok: true; readonly rows: readonly BenchRow[]; readonly wrong: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** More benches than any office has growers; whoever hands in more than this means another file. */
export const largestTable = 32 * 1024 * 1024;

/** The names that a column may have: the format of the file, and every field with its group. */
export const tableColumns: readonly string[] = ['format', ...allFields.map(({ path }) => path)];

const nameColumn = 'identity.name';

/** What is wrong with the names of the columns. */
function columnProblems({ number, cells }: Line, file: string): Problem[] {
  const at = (field: string, allowed: string, words: string): Problem =>
    problem({ file, line: number, field, found: field, allowed }, words);
  const problems = cells.flatMap((name, index): Problem[] => {
    if (name === '')
      return [at('', 'a name over each column', `Column ${index + 1} has no name in the first line`)];
    if (cells.indexOf(name) < index) return [at(name, 'each name once', 'Two columns have this name')];
    if (tableColumns.includes(name)) return [];
    const nearest = nearestName(name, tableColumns);
    const meant = nearest === undefined ? '' : `; did you mean ${nearest}?`;
    return [
      at(
        name,
        tableColumns.join(', '),
        `There is no column ${JSON.stringify(name)}, only format and the fields with their groups, such as frame.length${meant}`,
      ),
    ];
  });
  return problems.length > 0 || cells.includes(nameColumn)
    ? problems
    : [at('', nameColumn, `There must be a column ${nameColumn}`)];
}

/** A line of the table as a bench file would say it. An empty cell says nothing, as a line that is not there. */
function treeOf({ number, cells }: Line, columns: readonly string[]): Group {
  type Entries = Map<string, { line: number; tree: Tree }>;
  const groups = new Map<string, Entries>();
  const top: Entries = new Map();
  for (const [index, column] of columns.entries()) {
    const text = cells[index] ?? '';
    if (text === '') continue;
    const entry = { line: number, tree: { kind: 'value', line: number, text } } as const;
    const [group = '', name] = column.split('.');
    if (name === undefined) top.set(group, entry);
    else groups.set(group, (groups.get(group) ?? (new Map() as Entries)).set(name, entry));
  }
  for (const [group, entries] of groups)
    top.set(group, { line: number, tree: { kind: 'group', line: number, entries } });
  return { kind: 'group', line: number, entries: top };
}

/**
 * Reads a table of benches: names of fields in the first line ("frame.length"), below it one bench a line, each cell as
 * it would stand in a bench file ("6 m"). Any usual sign between the cells will do; the decimal sign is that of a bench
 * file. Lines that are longer than the first are told and left out, the others are read.
 *
 * @param text the whole file
 * @param file its name, for the problems
 */
export function readBenchTable(text: string, file: string): ReadBenchTable {
  const plain = text.replace(/^\uFEFF/u, '');
  const fail = (allowed: string, words: string): ReadBenchTable => ({
    ok: false,
    problems: [problem({ file, line: 1, field: '', found: '', allowed }, words)],
  });
  if (plain.includes('\0'))
    return fail('plain text', 'The file is not plain text in UTF-8, so it cannot be read');
  const delimiter = delimiterOf(plain);
  const [head, ...lines] = linesOf(plain, delimiter);
  if (!head) return fail('names of fields, and below them a bench a line', 'The file is empty');
  const problems = columnProblems(head, file);
  if (problems.length > 0) return { ok: false, problems };
  if (lines.length === 0) return fail('a bench a line', 'There is no bench below the names of the columns');

  const columns = head.cells;
  const long = ({ cells }: Line): boolean => cells.slice(columns.length).some((cell) => cell !== '');
  const at = columns.indexOf(nameColumn);
  return {
    ok: true,
    rows: lines
      .filter((line) => !long(line))
      .map((line) => ({ line: line.number, name: line.cells[at] ?? '', tree: treeOf(line, columns) })),
    wrong: lines.filter(long).map((line) =>
      problem(
        {
          file,
          line: line.number,
          field: '',
          found: `${line.cells.length} cells`,
          allowed: `${columns.length} cells or fewer`,
        },
        `There are more cells than columns; a cell that holds a ${delimiterNames[delimiter]} must stand in double quotes`,
      ),
    ),
  };
}
