import katex from 'katex';

/**
 * A formula as MathML, which browsers draw by themselves: no script, no style attributes, no style sheet of its own.
 * The TeX stays inside as an annotation, for whoever copies it.
 *
 * @throws {katex.ParseError} when the TeX is wrong or leaves what KaTeX is strict about
 */
export function mathml(tex: string, display: boolean): string {
  const wrapped = katex.renderToString(tex, {
    output: 'mathml',
    displayMode: display,
    throwOnError: true,
    strict: 'error',
  });
  const math = /<math[\s\S]*<\/math>/u.exec(wrapped)?.[0];
  if (math === undefined) throw new Error(`KaTeX made no formula of ${tex}`);
  return math;
}
