import * as z from 'zod/mini';
import type { TextField } from '../calculators/bench/field.ts';
import { sources, type Source } from '../calculators/sources.ts';
import { givenSchema } from './field-schema.ts';

/** Words that a file has to give; `longest` in characters. */
export const words = (label: string, longest: number): TextField & { readonly required: true } => ({
  shape: 'text',
  label,
  explain: '',
  longest,
  start: '',
  required: true,
});

const known: Readonly<Record<string, Source>> = sources;

/** A publication in words; who wrote it only where it is one. */
function inWords({ title, by, standing }: Source): string {
  if (standing === 'assumption' || standing === 'practice') return `${title}.`;
  return `${title}; ${by}${standing === 'memory' ? ' (from memory)' : ''}.`;
}

/** Where a number of a file comes from: the name of one of the guide's sources, or words of the file's own. */
export const sourceSchema = (label: string) =>
  z.pipe(
    givenSchema(words(label, 300)),
    z.transform((text) => (Object.hasOwn(known, text) && known[text] ? inWords(known[text]) : text)),
  );
