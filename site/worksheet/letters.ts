/**
 * The letters and signs that a worksheet can print: everything that the guide itself writes, and the names of people
 * and places in the Latin, Greek and Cyrillic alphabets. The fonts are cut down to these.
 */
const ranges: readonly (readonly [from: number, to: number])[] = [
  [0x20, 0x7e], // basic Latin
  [0xa0, 0xac], // Latin of western Europe; the soft hyphen, 0xad, has no ink
  [0xae, 0x148], // and of the rest of Europe; 0x149 is out of use
  [0x14a, 0x17f],
  [0x192, 0x192], // ƒ
  [0x1cd, 0x1dc], // carons of Pinyin
  [0x1e6, 0x1e7], // Ǧ
  [0x1fc, 0x1ff], // Ǽ Ǿ
  [0x218, 0x21b], // Romanian comma below
  [0x384, 0x38a], // Greek
  [0x38c, 0x38c],
  [0x38e, 0x3a1],
  [0x3a3, 0x3ce],
  [0x400, 0x45f], // Cyrillic
  [0x490, 0x491], // Ґ
  [0x1e80, 0x1e85], // Welsh
  [0x1e9e, 0x1e9e], // ẞ
  [0x1ea0, 0x1ef9], // Vietnamese and Welsh
];

/** Signs beyond the alphabets: spaces, quotation marks, mathematics, arrows, shapes, money. */
const signs =
  '\u2009\u202f‐‑–—‘’‚“”„†•…‰′″‹›⁰⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉₤₦₩₪₫€₱₴₹₺₽₿ℓ№™←↑→↓↔⅓⅔⅛⅜⅝⅞∂∏∑−√∞∫≈≠≤≥■□▲△▶▼◆●○⚠';

const spread = ([from, to]: readonly [number, number]) =>
  Array.from({ length: to - from + 1 }, (_, at) => String.fromCodePoint(from + at)).join('');

/** Every letter and sign that the fonts of the worksheet keep. */
export const letters: string = ranges.map(spread).join('') + signs;

/** Stands for each letter of a grower's text that the fonts do not have. */
export const unknownLetter = '□';
