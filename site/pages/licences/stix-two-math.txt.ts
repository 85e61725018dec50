import type { APIRoute } from 'astro';
import { mathFontLicence } from '../../math/licence.ts';

/** The licence of the font of the formulas, beside the guide that carries the font. */
export const GET: APIRoute = async () =>
  new Response(await mathFontLicence(), { headers: { 'Content-Type': 'text/plain; charset=utf-8' } });
