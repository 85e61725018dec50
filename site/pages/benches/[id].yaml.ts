import type { APIRoute, GetStaticPaths } from 'astro';
import { idOf } from '../../../content/regions.ts';
import { benches } from '../../guide.ts';

const files = import.meta.glob<string>('../../../content/benches/*.yaml', {
  eager: true,
  query: '?raw',
  import: 'default',
});

/** The example benches that the guide knows, as the files that they are. */
export const getStaticPaths = (() =>
  Object.entries(files)
    .filter(([path]) => Object.hasOwn(benches, idOf(path)))
    .map(([path, text]) => ({
      params: { id: idOf(path) },
      props: { text },
    }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ text: string }> = ({ props }) => new Response(props.text);
