import type { APIRoute } from 'astro';
import { region } from '../guide.ts';

/** The office's own colours, where it has some: in a file, as no page may hold a style. */
const { colours } = region;
const text = colours
  ? `html:root { --water: ${colours.link}; --heat: ${colours.heat}; }
@media (prefers-color-scheme: dark) { html:root { --water: ${colours.linkDark}; --heat: ${colours.heatDark}; } }
`
  : '/* This region has the colours of the guide. */\n';

export const GET: APIRoute = () => new Response(text);
