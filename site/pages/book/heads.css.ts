import type { APIRoute } from 'astro';
import { atTheEnd } from '../../book/at-the-end.ts';
import { chapters } from '../../chapters.ts';

/**
 * The running heads of the printed book: a kind of page for each chapter, with its title at the head. A rule of its own
 * for each, as browsers cannot yet take a running head from the text.
 */
const rules = [
  ...chapters.map(({ step, number, title }) => ({ name: step.id, words: `${number}. ${title}` })),
  ...atTheEnd.map(([name, words]) => ({ name, words })),
].map(({ name, words }) => {
  const quoted = words.replace(/[\\"]/gu, String.raw`\$&`);
  return `@page in-${name} { @top-left { content: "${quoted}"; font: 9pt sans-serif; } @top-right { content: "The winter bench guide"; font: 9pt sans-serif; } }
.in-${name} { page: in-${name}; }`;
});

export const GET: APIRoute = () =>
  new Response(`@media print {\n${rules.join('\n')}\n}\n`, { headers: { 'Content-Type': 'text/css' } });
