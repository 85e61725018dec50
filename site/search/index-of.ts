/** What can be found in the guide: a heading, a word of the glossary, a field, a calculator. */
export interface Finding {
  readonly title: string;
  /** Where it stands, for the reader: "Chapter 7", "Field", "Calculator". */
  readonly where: string;
  /** Its address, from the top of the guide. */
  readonly to: string;
  /** Words that it is found by besides its title; not shown. */
  readonly words: string;
  /** Words in which readers ask for it, as good as those of its title; not shown. */
  readonly asked?: string;
  /** Whether it is a place to type something in: what explains the same comes first. */
  readonly form?: boolean;
}

/** What goes to the browser: the findings without their words, and for each word the places of the findings it leads to. */
export interface SearchIndex {
  readonly findings: readonly (readonly [title: string, where: string, to: string, asked?: string])[];
  /** Places of the findings that are forms. */
  readonly forms: readonly number[];
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
  for (const [place, { title, words, asked = '' }] of all.entries())
    for (const word of wordsOf(`${title} ${words} ${asked}`))
      if (!empty.has(word)) places.set(word, (places.get(word) ?? new Set()).add(place));
  return {
    findings: all.map(({ title, where, to, asked }) =>
      asked === undefined ? [title, where, to] : [title, where, to, asked],
    ),
    forms: [...all.keys()].filter((place) => all[place]?.form),
    words: [...places]
      .sort(([one], [other]) => (one < other ? -1 : 1))
      .map(([word, found]) => [word, ...found] as const),
  };
}

/** What a word that is looked for begins with: one and many are the same. */
const startOf = (word: string): string => (word.length > 3 ? word.replace(/s$/u, '') : word);

/** What a question leads to. */
export interface Found {
  /** Places of the findings, the best first. */
  readonly places: readonly number[];
  /** Whether they have every word of the question, or only as many as any finding has. */
  readonly whole: boolean;
}

/**
 * The findings that have every word of the question, or a word that begins with it; where none has all, those that have
 * the most. What has all of them in its title, or is asked for in them, comes first, and of that what explains before
 * what is to be filled in; then what has most of them in its title, and else the order of the guide.
 */
export function find({ findings, forms, words }: SearchIndex, question: string): Found {
  const asked = wordsOf(question).filter((word) => !empty.has(word));
  const starts = asked.map(startOf);
  const leads = starts.map(
    (start) => new Set(words.filter(([word]) => word.startsWith(start)).flatMap(([, ...places]) => places)),
  );
  const counted = [...new Set(leads.flatMap((found) => [...found]))].map((place) => ({
    place,
    count: leads.filter((found) => found.has(place)).length,
  }));
  const most = counted.reduce((highest, { count }) => Math.max(highest, count), 0);
  const ranked = counted
    .filter(({ count }) => count === most)
    .map(({ place }) => {
      const [title = '', , , askedFor = ''] = findings[place] ?? [];
      const own = wordsOf(`${title} ${askedFor}`);
      const marks = asked.map((word, index) =>
        own.includes(word) ? 2 : own.some((one) => one.startsWith(starts[index] ?? word)) ? 1 : 0,
      );
      const group = marks.includes(0) ? 2 : forms.includes(place) ? 1 : 0;
      return { place, group, marks: marks.reduce((sum: number, mark) => sum + mark, 0) };
    });
  return {
    places: ranked
      .sort((one, other) => one.group - other.group || other.marks - one.marks || one.place - other.place)
      .map(({ place }) => place),
    whole: most === asked.length,
  };
}
