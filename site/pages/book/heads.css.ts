import type { APIRoute } from 'astro';
import { chapters } from '../../chapters.ts';

/**
 * The running heads of the printed book: a kind of page for each chapter, with its title at the head. A rule of its own
 * for each, as browsers cannot yet take a running head from the text.
 */
const rules = [
  ...chapters.map(({ step, number, title }) => ({ name: step.id, words: `${number}. ${title}` })),
  { name: 'cautions', words: 'Cautions' },
  { name: 'symbols', words: 'Symbols and units' },
  { name: 'glossary', words: 'Glossary' },
  { name: 'sources', words: 'Sources' },
].map(({ name, words }) => {
  const quoted = words.replace(/[\\"]/gu, String.raw`\$&`);
  return `@page in-${name} { @top-left { content: "${quoted}"; font: 9pt sans-serif; } @top-right { content: "The winter bench guide"; font: 9pt sans-serif; } }
.in-${name} { page: in-${name}; }`;
});

export const GET: APIRoute = () =>
  new Response(`@media print {\n${rules.join('\n')}\n}\n`, { headers: { 'Content-Type': 'text/css' } });
