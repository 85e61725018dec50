import type { Manner } from '../calculators/quantities/show.ts';
import type { Words } from '../calculators/say.ts';
import { languageOf } from '../content/language-of.ts';

/** The catalogues of the guide, by language and by file. */
const files = import.meta.glob<Words>('../content/languages/*/*.yaml', { eager: true, import: 'default' });

/** What only stands on the pages themselves; a browser that draws a worksheet or renews a figure never says it. */
const onPagesAlone: readonly string[] = ['explanations', 'pages'];

function wordsOf(language: string, all: boolean): Words {
  const mine = Object.entries(files).filter(([path]) => {
    const [, of, file = ''] = /\/([^/]+)\/([^/]+)\.yaml$/u.exec(path) ?? [];
    return of === language && (all || !onPagesAlone.includes(file));
  });
  return Object.assign({}, ...mine.map(([, words]) => words)) as Words;
}

/** Every language that the guide can be read in, at least in part; English first. */
export const languages: readonly string[] = [
  'en',
  ...new Set(Object.keys(files).map((path) => /\/([^/]+)\/[^/]+$/u.exec(path)?.[1] ?? '')),
];

/** A language by its own name: "español". */
export const nameOfLanguage = (language: string): string =>
  new Intl.DisplayNames([language], { type: 'language' }).of(language) ?? language;

/** What a browser needs of a language. */
export const wordsForBrowser = (language: string): Words => wordsOf(language, false);

/** How pages in the language of this tag say things; in English where no catalogue has it. */
export function mannerOf(tag: string): Pick<Manner, 'locale' | 'words'> {
  const language = languageOf(tag);
  return language === 'en' || !languages.includes(language)
    ? { locale: tag }
    : { locale: tag, words: wordsOf(language, true) };
}
