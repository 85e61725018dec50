import { placesOf, type Words } from '../calculators/say.ts';
import { problem, type Problem } from './problem.ts';
import type { FileText } from './regions.ts';
import { readTree } from './yaml-tree.ts';

/**
 * Catalogues: what the guide says in other languages than English. Each file of `content/languages/LANGUAGE/` maps messages
 * in English to their words in that language, with the same places in braces and the same pairs of asterisks.
 */

/** A message with the line on which a catalogue has it. */
export interface Entry {
  readonly file: string;
  readonly line: number;
  readonly message: string;
  readonly words: string;
}

export type ReadCatalogue =
  | { readonly ok: true; readonly words: Words; readonly entries: readonly Entry[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const marksOf = (text: string): number => text.split('*').length - 1;

/** What is wrong with the words of a message, in a sentence; nothing where they will do. */
function wrongIn(message: string, words: string): string | undefined {
  if (words.trim() === '') return 'The words must not be empty: leave the message out until it is translated';
  const places = placesOf(message);
  if (placesOf(words).join() !== places.join())
    return places.length === 0
      ? 'The words must have no places in braces, as the message has none'
      : `The words must have the places ${places.map((name) => `{${name}}`).join(', ')}`;
  if (marksOf(words) !== marksOf(message))
    return `The words must have ${marksOf(message)} asterisks, as the message has`;
  if (/^\s|\s$/u.test(words) !== /^\s|\s$/u.test(message))
    return 'The words must begin and end with a blank where the message does';
  return undefined;
}

/** Reads the files of one language into its catalogue; all that is wrong is told at once, with its line. */
export function readCatalogue(files: readonly FileText[]): ReadCatalogue {
  const problems: Problem[] = [];
  const entries: Entry[] = [];
  const seen = new Map<string, Entry>();
  for (const { file, text } of files) {
    const read = readTree(text, file);
    if (!read.ok) {
      problems.push(...read.problems);
      continue;
    }
    for (const [message, { line, tree }] of read.tree.entries) {
      const found = tree.kind === 'value' ? (tree.text ?? '') : '';
      const fail = (words: string): void => {
        problems.push(problem({ file, line, field: '', found: found || message, allowed: 'words' }, words));
      };
      if (tree.kind !== 'value') {
        fail('A message must have words, not a list or a group');
        continue;
      }
      const wrong = wrongIn(message, found);
      const before = seen.get(message);
      if (before)
        fail(`This message stands in ${before.file}, line ${before.line} already; keep one of the two`);
      else if (wrong === undefined) {
        const entry = { file, line, message, words: found };
        seen.set(message, entry);
        entries.push(entry);
      } else fail(wrong);
    }
  }
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    entries,
    words: Object.fromEntries(entries.map(({ message, words }) => [message, words])),
  };
}
