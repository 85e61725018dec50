import type { APIRoute, GetStaticPaths } from 'astro';
import { idOf } from '../../../content/regions.ts';

const files = import.meta.glob<string>('../../../content/benches/*.yaml', {
  eager: true,
  query: '?raw',
  import: 'default',
});

/** The example benches as the files that they are. */
export const getStaticPaths = (() =>
  Object.entries(files).map(([path, text]) => ({
    params: { id: idOf(path) },
    props: { text },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ text: string }> = ({ props }) => new Response(props.text);
