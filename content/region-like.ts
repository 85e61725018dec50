import { nearestName } from '../calculators/bench/nearest.ts';
import { problem, type Problem } from './problem.ts';
import { idOf, type FileText } from './file-text.ts';
import { lineAt, readTree, textAt, type Entry, type Group, type ReadTree } from './yaml-tree.ts';

/**
 * A region may say `like: ID` and then hold only what differs from that region. Groups are put together name by name;
 * a value or a list that both have is the region's own.
 */

/** Everything of a tree marked as taken over from a file, unless it was taken over from yet another. */
const takenOver = (group: Group, file: string): Group => ({
  ...group,
  entries: new Map([...group.entries].map(([name, entry]) => [name, { ...entry, from: entry.from ?? file }])),
});

function together(own: Group, other: Group, file: string): Group {
  const entries = new Map<string, Entry>();
  for (const [name, theirs] of takenOver(other, file).entries) {
    const mine = own.entries.get(name);
    if (!mine) entries.set(name, theirs);
    else if (mine.tree.kind === 'group' && theirs.tree.kind === 'group')
      entries.set(name, { ...mine, tree: together(mine.tree, theirs.tree, theirs.from ?? file) });
    else entries.set(name, mine);
  }
  for (const [name, mine] of own.entries) if (!entries.has(name)) entries.set(name, mine);
  return { ...own, entries };
}

const without = (group: Group, name: string): Group => ({
  ...group,
  entries: new Map([...group.entries].filter(([one]) => one !== name)),
});

/**
 * The tree of a region with what it takes over from those that it is like.
 *
 * @param own its file
 * @param regions the files that it may be like one of
 * @param on the files on the way here, so that no circle is walked for ever
 */
export function readRegionTree(
  own: FileText,
  regions: readonly FileText[],
  on: readonly string[] = [],
): ReadTree {
  const read = readTree(own.text, own.file);
  if (!read.ok || !read.tree.entries.has('like')) return read;
  const id = textAt(read.tree, ['like']);
  const fail = (words: string, allowed: string): { ok: false; problems: Problem[] } => {
    const at = { file: own.file, line: lineAt(read.tree, ['like']), field: 'like', found: id, allowed };
    return { ok: false, problems: [problem(at, words)] };
  };
  const others = regions.filter(({ file }) => file !== own.file);
  const ids = others.map(({ file }) => idOf(file));
  const other = others.find(({ file }) => idOf(file) === id);
  if (!other) {
    if (id === idOf(own.file)) return fail('A region cannot be like itself', ids.join(', '));
    const nearest = nearestName(id, ids);
    return fail(
      `This must name another region: ${ids.join(', ')}${nearest === undefined ? '' : `; did you mean ${nearest}?`}`,
      ids.join(', '),
    );
  }
  if (on.includes(other.file))
    return fail(
      `Regions may not be like each other in a circle: ${[...on, own.file].map(idOf).join(', ')}`,
      '',
    );
  const theirs = readRegionTree(other, regions, [...on, own.file]);
  if (!theirs.ok) return theirs;
  return { ok: true, tree: together(without(read.tree, 'like'), theirs.tree, other.file) };
}

/** The problems of a region, of which those that it took over also say who took them. */
export function withTakers(problems: readonly Problem[], own: FileText): readonly Problem[] {
  const read = readTree(own.text, own.file);
  if (!read.ok || !read.tree.entries.has('like')) return problems;
  const line = lineAt(read.tree, ['like']);
  return problems.map((one) =>
    one.file === own.file ? one : { ...one, text: `${one.text} (${own.file}, line ${line}, takes it over.)` },
  );
}
