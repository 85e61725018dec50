/** Signs of TeX that are no letters: fractions, roots, brackets, functions, spaces, words, and indices of sums. */
const noLetter = new RegExp(
  [
    String.raw`\\(?:sum|min)_(?:\{[^{}]*\}|[a-z])`,
    String.raw`\\(?:t?frac|sqrt|q?quad|ln|sum|int|max|min|[bB]ig[lr]|left|right|ge|approx)(?![A-Za-z])`,
    String.raw`\\[,;!]`,
    // The d of a derivative or of an integral belongs to what it is of.
    String.raw`d(?=H_|t(?![A-Za-z]))`,
  ].join('|'),
  'gu',
);

/** A letter with what belongs to it: a Δ or a bar before, a dash and an index behind. */
const letter =
  /(?:\\Delta\s*|\\bar\s*)?(?:\\[A-Za-z]+|[A-Za-z])'?(?:_(?:\{(?:[^{}]|\{[^{}]*\})*\}|[A-Za-z0-9]))?/gu;

/** The letters of a formula in TeX, each once, as the declarations write them. */
export function lettersOf(tex: string): string[] {
  const bare = tex
    .replace(noLetter, ' ')
    // Words set between formulas; those in an index are part of the letter.
    .replace(/(^|[^{_])\\text\{[^}]*\}/gu, '$1');
  return [...new Set([...bare.matchAll(letter)].map(([found]) => found.replace(/^(\\\w+)\s+/u, '$1 ')))];
}
