import { isAlias, isMap, isNode, isScalar, isSeq, LineCounter, parseDocument, type Node } from 'yaml';
import { problem, type Problem } from './problem.ts';

/** What a YAML file says, each part with the line that it stands on. Values are text as it was written. */
export type Tree =
  | { readonly kind: 'value'; readonly line: number; readonly text: string | null }
  | { readonly kind: 'list'; readonly line: number; readonly items: readonly Tree[] }
  | Group;

export interface Group {
  readonly kind: 'group';
  readonly line: number;
  readonly entries: ReadonlyMap<string, Entry>;
}

export interface Entry {
  readonly line: number;
  readonly tree: Tree;
  /** The file that it stands in, where that is another one: taken over from there. */
  readonly from?: string;
}

export type ReadTree =
  { readonly ok: true; readonly tree: Group } | { readonly ok: false; readonly problems: readonly Problem[] };

/** A bench file has some 8 kB with all its comments; whoever hands in more than this means another file. */
export const largestFile = 256 * 1024;

/** The problem of a file that is too large to be read at all; told by its size, before anything is read. */
export function tooLarge(file: string, bytes: number): Problem | null {
  if (bytes <= largestFile) return null;
  const allowed = `${largestFile / 1024} kB or less`;
  const found = `${Math.ceil(bytes / 1024)} kB`;
  return problem({ file, line: 1, field: '', found, allowed }, `The file must have ${allowed}`);
}

/** One slip confuses a parser for lines to come; what it says after that is no help. */
const mostErrors = 5;

/** What people can do about the errors that they are most likely to make. */
const advice: Readonly<Record<string, string>> = {
  TAB_AS_INDENT: 'Indent with blanks, not with tabs',
  MULTIPLE_DOCS: 'Take out the line with --- and what follows it: one file holds one thing',
  MISSING_CHAR: 'Something is missing here, such as a blank after the colon, a closing quote or a bracket',
  BAD_INDENT: 'The names of one group must start below each other, and every bracket must be closed',
  UNEXPECTED_TOKEN: 'A value that starts or ends with a sign of YAML must stand in quotes',
  BAD_SCALAR_START: 'A value that starts with @, % or ` must stand in quotes',
  RESOURCE_EXHAUSTION: 'There are too many brackets within brackets',
  MULTILINE_IMPLICIT_KEY: 'A name must be followed by a colon and a blank',
  BLOCK_AS_IMPLICIT_KEY: 'A value that holds a colon and a blank must stand in quotes',
};

/**
 * Reads YAML 1.2 into a tree of groups, lists and values. All that is wrong is told at once, each with its line.
 * Anchors, aliases and tags are refused: a file of values has no use for them, and each is more often a slip than meant.
 *
 * @param text the whole file
 * @param file its name, for the problems
 */
export function readTree(text: string, file: string): ReadTree {
  const at = (line: number, field: string, found: string, allowed: string, words: string): Problem =>
    problem({ file, line, field, found, allowed }, words);
  const fail = (...problems: Problem[]): ReadTree => ({ ok: false, problems });

  const large = tooLarge(file, text.length) ?? tooLarge(file, new TextEncoder().encode(text).length);
  if (large) return fail(large);
  if (text.includes('\0'))
    return fail(at(1, '', '', 'plain text', 'The file is not plain text in UTF-8, so it cannot be read'));

  const lines = new LineCounter();
  const lineOf = (offset: number): number => Math.max(1, lines.linePos(offset).line);
  const lineText = (line: number): string => text.split('\n')[line - 1]?.trim() ?? '';
  const problems: Problem[] = [];
  let contents: Node | null;
  try {
    const document = parseDocument(text.replace(/^\uFEFF/u, ''), {
      version: '1.2',
      schema: 'core',
      // Done below: the parser takes the square of the number of names for it.
      uniqueKeys: false,
      prettyErrors: false,
      lineCounter: lines,
      logLevel: 'error',
    });
    contents = document.contents;
    const told = new Set<number>();
    for (const error of document.errors) {
      // What is missing is often missed only at the end of the file: the last line with words on it is told.
      let line = lineOf(error.pos[0]);
      while (line > 1 && lineText(line) === '') line--;
      if (told.has(line) || told.size === mostErrors) continue;
      told.add(line);
      const words = advice[error.code] ?? `This cannot be read as YAML (${error.message})`;
      problems.push(at(line, '', lineText(line), 'YAML 1.2', words));
    }
  } catch {
    // Brackets within brackets by the thousand: the parser runs out of stack.
    return fail(at(1, '', '', 'YAML 1.2', 'The file cannot be read as YAML'));
  }
  if (problems.length > 0) return fail(...problems);

  function treeOf(node: unknown, line: number, path: readonly string[]): Tree {
    if (!isNode(node)) return { kind: 'value', line, text: null };
    const here = node.range ? lineOf(node.range[0]) : line;
    const field = path.join('.');
    if (isAlias(node) || node.anchor !== undefined || node.tag !== undefined) {
      const mark = isAlias(node) ? '*' : node.tag === undefined ? '&' : '!';
      const words = `A value that starts with ${mark} must stand in quotes`;
      problems.push(at(here, field, lineText(here), 'a value in quotes', words));
    }
    if (isMap(node)) {
      const entries = new Map<string, { line: number; tree: Tree }>();
      for (const { key, value } of node.items) {
        const keyLine = isNode(key) && key.range ? lineOf(key.range[0]) : here;
        if (isScalar(key)) {
          const name = key.source ?? String(key.value);
          const first = entries.get(name);
          if (first) {
            const words = `This name stands on line ${first.line} already; keep one of the two`;
            problems.push(at(keyLine, [...path, name].join('.'), lineText(keyLine), 'each name once', words));
            continue;
          }
          entries.set(name, { line: keyLine, tree: treeOf(value, keyLine, [...path, name]) });
        } else
          problems.push(
            at(keyLine, field, '', 'a name', 'A name must be a plain word, not a list or a group'),
          );
      }
      return { kind: 'group', line: here, entries };
    }
    if (isSeq(node)) {
      const items = node.items.map((item, index) => treeOf(item, here, [...path, String(index + 1)]));
      return { kind: 'list', line: here, items };
    }
    if (!isScalar(node) || node.value === null) return { kind: 'value', line: here, text: null };
    const plain = node.type === 'PLAIN';
    // "name: Bench #2" would lose its number without a word.
    if (plain && /^\d/u.test(node.comment ?? ''))
      problems.push(
        at(
          here,
          field,
          `${node.source} #${node.comment}`,
          'a value in quotes',
          'A value that holds # must stand in quotes',
        ),
      );
    return {
      kind: 'value',
      line: here,
      text: plain || typeof node.value !== 'string' ? (node.source ?? '') : node.value,
    };
  }

  if (contents === null || (isScalar(contents) && contents.value === null))
    return fail(at(1, '', '', 'groups of names with values', 'The file is empty'));
  const tree = treeOf(contents, 1, []);
  if (problems.length > 0) return fail(...problems);
  if (tree.kind !== 'group')
    return fail(
      at(
        tree.line,
        '',
        '',
        'groups of names with values',
        'The file must hold names with values, such as "frame:" and below it "  length: 6 m"',
      ),
    );
  return { ok: true, tree };
}

/** The tree as plain objects, arrays and text, for a schema to check. */
export function plainOf(tree: Tree): unknown {
  switch (tree.kind) {
    case 'value':
      return tree.text;
    case 'list':
      return tree.items.map(plainOf);
    case 'group':
      // `fromEntries` makes own properties of every name, "__proto__" too, and changes no prototype.
      return Object.fromEntries([...tree.entries].map(([name, entry]) => [name, plainOf(entry.tree)]));
  }
}

/** What is found one step further down, if there is anything. */
function below(tree: Tree, step: PropertyKey): Entry | undefined {
  if (tree.kind === 'group') return tree.entries.get(String(step));
  const item = tree.kind === 'list' ? tree.items[Number(step)] : undefined;
  return item && { line: item.line, tree: item };
}

/** The line of a place in the tree, or of the innermost group on the way to it that is there. */
export function lineAt(tree: Tree, path: readonly PropertyKey[]): number {
  let at: { readonly line: number; readonly tree: Tree } = { line: tree.line, tree };
  for (const step of path) {
    const next = below(at.tree, step);
    if (!next) break;
    at = next;
  }
  return at.line;
}

/** The text of the value at a place in the tree; empty where there is no value. */
export function textAt(tree: Tree, path: readonly PropertyKey[]): string {
  let at: Tree = tree;
  for (const step of path) {
    const next = below(at, step);
    if (!next) return '';
    at = next.tree;
  }
  return at.kind === 'value' ? (at.text ?? '').trim() : '';
}

/** The file that a place of the tree was taken over from; undefined where it is the tree's own. */
export function fileAt(tree: Tree, path: readonly PropertyKey[]): string | undefined {
  let at: Tree = tree;
  for (const step of path) {
    const next = below(at, step);
    if (next?.from !== undefined) return next.from;
    if (!next) return undefined;
    at = next.tree;
  }
  return undefined;
}
