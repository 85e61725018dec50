/** What can be found in the guide: a heading, a word of the glossary, a field, a calculator. */
export interface Finding {
  readonly title: string;
  /** Where it stands, for the reader: "Chapter 7", "Field", "Calculator". */
  readonly where: string;
  /** Its address, from the top of the guide. */
  readonly to: string;
  /** Words that it is found by besides its title; not shown. */
  readonly words: string;
}

/** What goes to the browser: the findings without their words, and for each word the places of the findings it leads to. */
export interface SearchIndex {
  readonly findings: readonly (readonly [title: string, where: string, to: string])[];
  /** Words in order, so that all that begin alike stand together. */
  readonly words: readonly (readonly [word: string, ...places: number[]])[];
}

/** The words of a text as they are looked for: small letters, no accents, no signs. */
export const wordsOf = (text: string): string[] =>
  text
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .match(/[\p{L}\d]{2,}/gu) ?? [];

/** Words that stand everywhere and lead nowhere. */
const empty = new Set(
  'an and are as at be been but by can do does for from has have how if in into is it its my no not of on or so than that the their them then there these they this to was what when where which who why will with you your'.split(
    ' ',
  ),
);

/** The index of all that can be found. The same findings give the same index. */
export function indexOf(all: readonly Finding[]): SearchIndex {
  const places = new Map<string, Set<number>>();
  for (const [place, { title, words }] of all.entries())
    for (const word of wordsOf(`${title} ${words}`))
      if (!empty.has(word)) places.set(word, (places.get(word) ?? new Set()).add(place));
  return {
    findings: all.map(({ title, where, to }) => [title, where, to]),
    words: [...places]
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([word, found]) => [word, ...found] as const),
  };
}

/**
 * The places of the findings that have every word of the question, or a word that begins with it; those with most of
 * them in their titles first, and else in the order of the guide.
 */
export function find({ findings, words }: SearchIndex, question: string): number[] {
  const asked = wordsOf(question).filter((word) => !empty.has(word));
  if (asked.length === 0) return [];
  const leads = asked.map(
    (start) => new Set(words.filter(([word]) => word.startsWith(start)).flatMap(([, ...places]) => places)),
  );
  const inTitle = (place: number) => {
    const title = wordsOf(findings[place]?.[0] ?? '');
    return asked.reduce(
      (sum, start) =>
        sum + (title.includes(start) ? 2 : title.some((word) => word.startsWith(start)) ? 1 : 0),
      0,
    );
  };
  return [...(leads[0] ?? [])]
    .filter((place) => leads.every((found) => found.has(place)))
    .sort((one, other) => inTitle(other) - inTitle(one) || one - other);
}
