import type { Words } from '../../calculators/say.ts';
import { languageOf } from '../../content/language-of.ts';
import { guideAddress } from './guide-address.ts';

/**
 * The words of other languages than English, fetched when they are first needed. English is in the code, and is what is
 * said where they do not come.
 */

const fetched = new Map<string, Promise<Words | undefined>>();
const here = new Map<string, Words>();

/** The words of the language of this tag; nothing for English. A failure may be tried again. */
export async function loadWords(tag: string): Promise<Words | undefined> {
  const language = languageOf(tag);
  if (language === 'en') return undefined;
  const asked =
    fetched.get(language) ??
    fetch(new URL(`words/${language}.json`, guideAddress())).then(async (response) => {
      if (!response.ok) throw new Error(`the words of ${language} could not be loaded (${response.status})`);
      return (await response.json()) as Words;
    });
  fetched.set(language, asked);
  try {
    const words = await asked;
    if (words) here.set(language, words);
    return words;
  } catch (error) {
    fetched.delete(language);
    throw error;
  }
}

/** Those that have come already. */
export const wordsHere = (tag: string): Words | undefined => here.get(languageOf(tag));
