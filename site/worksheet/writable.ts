import { letters, unknownLetter } from './letters.ts';

const known = new Set(letters);
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Text of others made fit for the sheet. */
export interface Writable {
  readonly text: string;
  /** The letters that the fonts do not have, each once, in the order met. */
  readonly unknown: readonly string[];
}

/**
 * A text that somebody else wrote, with every letter that the sheet cannot print replaced by a box, so that it is
 * seen that something stood there. Composed letters are used where they exist; marks without ink are left out; line
 * breaks and tabs become spaces.
 */
export function writable(text: string): Writable {
  const unknown = new Set<string>();
  const plain = text.normalize('NFC').replace(/\s+/gu, (space) => (known.has(space) ? space : ' '));
  const written = Array.from(graphemes.segment(plain), ({ segment }) => {
    if ([...segment].every((letter) => known.has(letter))) return segment;
    const inked = segment.replace(/[\p{Default_Ignorable_Code_Point}\p{Control}\p{Format}]/gu, '');
    if (inked === '') return '';
    if ([...inked].every((letter) => known.has(letter))) return inked;
    unknown.add(segment);
    return unknownLetter;
  });
  return { text: written.join('').trim(), unknown: [...unknown] };
}

/** Our own words, which must be printable to the letter. Throws with the letter and the text. */
export function assertWritable(text: string): void {
  for (const letter of text)
    if (!known.has(letter)) {
      const code = letter.codePointAt(0)?.toString(16).toUpperCase().padStart(4, '0');
      throw new Error(`the worksheet's fonts have no "${letter}" (U+${code}), in "${text}"`);
    }
}
