import type { APIRoute } from 'astro';
import { benchJsonSchema } from '../../content/json-schema.ts';
import { regions } from '../guide.ts';

/** What a bench file may hold, for editors and programs. */
export const GET: APIRoute = () =>
  new Response(`${JSON.stringify(benchJsonSchema(Object.values(regions)), null, 2)}\n`);
