import type { APIRoute, GetStaticPaths } from 'astro';
import { exampleLogs } from '../../example-night.ts';

/** The invented nights as the files that they are. */
export const getStaticPaths = (() =>
  Object.entries(exampleLogs).map(([id, text]) => ({
    params: { id },
    props: { text },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ text: string }> = ({ props }) => new Response(props.text);
