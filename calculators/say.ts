import type { Sentence } from './calculator.ts';
import type { Manner } from './quantities/show.ts';

/**
 * Messages in the language of the reader. The English sentence is the message itself: a catalogue of another language
 * (`content/languages/`) maps it to its own, and where that has none the English is said. Places in braces take what
 * changes: say(manner, 'Side {number}', { number: '2' }).
 */

/** What a catalogue holds: for each message in English its words in another language, with the same places. */
export type Words = Readonly<Record<string, string>>;

const place = /\{(\w+)\}/gu;

/** The places of a message, each once, in the order of the alphabet. */
export const placesOf = (message: string): string[] =>
  [...new Set(Array.from(message.matchAll(place), ([, name = '']) => name))].sort();

/** The message with its places filled. */
export const filled = (message: string, parts: Readonly<Record<string, string>>): string =>
  message.replace(place, (whole, name: string) => parts[name] ?? whole);

/** The message in the language of the reader, its places still open. */
export const translated = ({ words }: Pick<Manner, 'words'>, message: string): string =>
  words && Object.hasOwn(words, message) ? (words[message] ?? message) : message;

/** A message in the language of the reader, its places filled with text that is in that language already. */
export const say = (
  manner: Pick<Manner, 'words'>,
  message: string,
  parts: Readonly<Record<string, string>> = {},
): string => filled(translated(manner, message), parts);

/**
 * Marks messages that are said elsewhere, such as those of a table by the choices of a field, so that whoever lists all
 * messages finds them: the words themselves, unchanged.
 */
export const messages = <const Table>(table: Table): Table => table;

/** The message of a sentence: its words, with its quantities and phrases as places that are numbered from 1. */
export function messageOf(sentence: Sentence): string {
  let count = 0;
  return sentence.map((part) => (typeof part === 'string' ? part : `{${(count += 1)}}`)).join('');
}
