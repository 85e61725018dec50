import type { APIRoute, GetStaticPaths } from 'astro';
import { worksheetFont } from '../../worksheet-fonts.ts';

/** The faces that the worksheet is drawn with in a browser, and their licence beside them. */
export const getStaticPaths = (() =>
  ['inter-regular.ttf', 'inter-bold.ttf', 'inter-OFL.txt'].map((file) => ({
    params: { file },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<Record<string, never>, { file: string }> = async ({ params }) =>
  new Response(await worksheetFont(params.file));
