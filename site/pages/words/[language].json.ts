import type { APIRoute, GetStaticPaths } from 'astro';
import { languages, wordsForBrowser } from '../../languages.ts';

/** The words of each language but English, for what a browser says and draws by itself. */
export const getStaticPaths = (() =>
  languages
    .filter((language) => language !== 'en')
    .map((language) => ({ params: { language } }))) satisfies GetStaticPaths;

export const GET: APIRoute = ({ params: { language = '' } }) =>
  new Response(JSON.stringify(wordsForBrowser(language)));
