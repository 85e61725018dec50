import { allFields, type PlacedField } from '../calculators/bench/all-fields.ts';
import { fields, type Bench, type FieldPath } from '../calculators/bench/fields.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import type { Region } from '../calculators/region.ts';
import { assumedKey, currentFormat, migrate } from './bench-format.ts';
import { check, fieldSchema, groupSchema } from './field-schema.ts';
import { problem, type Problem } from './problem.ts';
import { readTree, textAt, type Group } from './yaml-tree.ts';

export { writeBenchFile } from './bench-writer.ts';
export type { Problem } from './problem.ts';

export type ReadBench =
  | {
      readonly ok: true;
      readonly bench: Bench;
      /** The fields that nobody has set: those that the file leaves out, and those that it says are taken over. */
      readonly assumed: readonly FieldPath[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The schema of a bench file, derived from the fields. */
function benchSchema(regions: readonly string[], stations: readonly string[]) {
  const groups: Record<string, Record<string, ReturnType<typeof fieldSchema>>> = {};
  for (const { group, name, field } of allFields) {
    const references = field.shape === 'reference' && field.to === 'region' ? regions : stations;
    (groups[group] ??= {})[name] = fieldSchema(field, references);
  }
  return groupSchema(
    Object.fromEntries(Object.entries(groups).map(([group, members]) => [group, groupSchema(members)])),
  );
}

/** The format that a file says it has; or what is wrong with what it says. */
function formatOf(tree: Group, file: string): number | Problem {
  const entry = tree.entries.get('format');
  if (!entry) return 1;
  const found = textAt(tree, ['format']);
  const at = { file, line: entry.line, field: 'format', found, allowed: `1 to ${currentFormat}` };
  if (!/^[1-9]\d{0,8}$/u.test(found))
    return problem(at, `The format must be a whole number, such as ${currentFormat}`);
  if (Number(found) > currentFormat)
    return problem(
      at,
      `This file was written by a newer guide than this one, which reads format ${currentFormat} and older. Open it in the guide that wrote it`,
    );
  return Number(found);
}

/** The fields that a file says nobody has set; or what is wrong with what it says. */
function takenOver(tree: Group, file: string): readonly FieldPath[] | Problem {
  const entry = tree.entries.get(assumedKey);
  if (!entry || (entry.tree.kind === 'value' && entry.tree.text === null)) return [];
  const allowed = 'names of fields with their groups, such as [frame.length, frame.width]';
  const { line } = entry;
  const items = entry.tree.kind === 'list' ? entry.tree.items : [];
  const names = items.map((item) => (item.kind === 'value' ? (item.text ?? '').trim() : ''));
  const unknown = names.find((name) => !allFields.some(({ path }) => path === name));
  if (entry.tree.kind === 'list' && unknown === undefined) return names as FieldPath[];
  return problem(
    { file, line, field: assumedKey, found: unknown ?? '', allowed },
    `The list of what is assumed must hold ${allowed}`,
  );
}

/** Unknown names at the top that are fields of a group: the file says where they belong. */
function misplaced(tree: Group, file: string): Problem[] {
  return [...tree.entries].flatMap(([key, { line }]) => {
    if (Object.hasOwn(fields, key)) return [];
    const owners = allFields.filter(({ name }) => name === key).map(({ group }) => group);
    if (owners.length === 0) return [];
    const names = owners.join(', ');
    return [
      problem(
        { file, line, field: key, found: key, allowed: names },
        `${JSON.stringify(key)} must stand below the name of its group and further in: ${names}`,
      ),
    ];
  });
}

const valueOn = (text: string, line: number) => ({ line, tree: { kind: 'value', line, text } }) as const;

/** The same file as if it named this region; and its one station, if it has only one. */
function movedTo(tree: Group, { id, stations }: Region): Group {
  const place = tree.entries.get('place');
  const line = place?.line ?? tree.line;
  const entries = new Map(place?.tree.kind === 'group' ? place.tree.entries : []);
  entries.set('region', valueOn(id, line));
  const named = textAt(tree, ['place', 'station']);
  const [only, ...others] = stations;
  if (only && others.length === 0 && named !== only.id) entries.set('station', valueOn(only.id, line));
  return {
    ...tree,
    entries: new Map(tree.entries).set('place', { line, tree: { kind: 'group', line, entries } }),
  };
}

/**
 * Reads a bench file: YAML as a grower writes it, into a bench in base units. Every problem is told, with file, line,
 * field, what was found and what is allowed; nothing is guessed. What the file leaves out takes its start value.
 *
 * @param text the whole file
 * @param file its name, for the problems
 * @param regions the regions that it may name
 * @param instead the region to take instead of the one that the file names
 */
export function readBenchFile(
  text: string,
  file: string,
  regions: readonly Region[],
  instead?: Region,
): ReadBench {
  const read = readTree(text, file);
  return read.ok ? readBenchTree(read.tree, file, regions, instead) : read;
}

/** Reads a bench out of what a file says, whatever kind of file it was: see `readBenchFile`. */
export function readBenchTree(
  read: Group,
  file: string,
  regions: readonly Region[],
  instead?: Region,
): ReadBench {
  const format = formatOf(read, file);
  if (typeof format !== 'number') return { ok: false, problems: [format] };
  const migrated = migrate(read, format);
  const entries = new Map(migrated.entries);
  entries.delete('format');
  const over = takenOver(migrated, file);
  entries.delete(assumedKey);
  const astray = misplaced({ ...migrated, entries }, file);
  for (const { field } of astray) entries.delete(field);
  const own: Group = { ...migrated, entries };
  const tree = instead ? movedTo(own, instead) : own;

  const named = textAt(tree, ['place', 'region']);
  const region = regions.find(({ id }) => id === named);
  const manner: Manner = { system: region?.units ?? 'metric', locale: region?.languages[0] ?? 'en' };
  // While the region is in doubt, any station of any region may be the right one.
  const stations = (region ? [region] : regions).flatMap((one) => one.stations.map(({ id }) => id));

  const checked = check(
    benchSchema(
      regions.map(({ id }) => id),
      stations,
    ),
    tree,
    file,
    manner,
  );
  if (!checked.ok || astray.length > 0 || 'text' in over) {
    const problems = [...astray, ...('text' in over ? [over] : []), ...(checked.ok ? [] : checked.problems)];
    return { ok: false, problems: problems.sort((one, other) => one.line - other.line) };
  }
  const given = ({ group, name }: PlacedField): boolean => {
    const members = tree.entries.get(group)?.tree;
    return members?.kind === 'group' && members.entries.has(name);
  };
  const assumed = allFields
    .filter((placed) => !given(placed) || over.includes(placed.path))
    .map(({ path }) => path);
  return { ok: true, bench: checked.value as unknown as Bench, assumed };
}
