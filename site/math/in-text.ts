import type { SatteriProcessorOptions } from '@astrojs/markdown-satteri';
import { mathml } from './mathml.ts';

type Plugin = NonNullable<SatteriProcessorOptions['mdastPlugins']>[number];

/** Turns `$…$` and `$$…$$` of a chapter into MathML. A formula that is wrong stops the build. */
export const mathInText: Plugin = {
  name: 'math-in-text',
  inlineMath(node, context) {
    context.replaceNode(node, { raw: mathml(node.value, false), mdxExpressions: false });
  },
  math(node, context) {
    const raw = `<div class="formula"><div class="formula-line" role="group" aria-label="Formula" tabindex="0">${mathml(node.value, true)}</div></div>`;
    context.replaceNode(node, { raw, mdxExpressions: false });
  },
};
