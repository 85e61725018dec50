import { svgElement, svgMarkup } from './drawing/svg.ts';
import type { Drawing } from './drawing/drawing.ts';

/**
 * A piece of a page as a small tree: written out as markup at build, made into elements in the browser. For what must
 * be the same in both; no markup sink, so that it holds under the strictest policy.
 */
export type Part = Branch | { readonly drawing: Drawing; readonly id: string } | string;

interface Branch {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Part[];
}

/** An element; attributes that are undefined are left out, `''` is an attribute without a value. */
export const part = (
  name: string,
  attributes: Readonly<Record<string, string | undefined>> = {},
  ...children: readonly Part[]
): Branch => ({
  name,
  attributes: Object.fromEntries(
    Object.entries(attributes).filter((entry): entry is [string, string] => entry[1] !== undefined),
  ),
  children,
});

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escape = (text: string): string => text.replace(/[&<>"]/gu, (letter) => escapes[letter] ?? letter);

/** The parts as markup, at build. */
export function partsMarkup(parts: readonly Part[]): string {
  return parts
    .map((one) => {
      if (typeof one === 'string') return escape(one);
      if ('drawing' in one) return svgMarkup(one.drawing, one.id);
      const attributes = Object.entries(one.attributes).map(([name, value]) =>
        value === '' ? ` ${name}` : ` ${name}="${escape(value)}"`,
      );
      return `<${one.name}${attributes.join('')}>${partsMarkup(one.children)}</${one.name}>`;
    })
    .join('');
}

/** The parts as nodes of a document, in the browser. */
export const partsNodes = (parts: readonly Part[], document: Document): Node[] =>
  parts.map((one) => {
    if (typeof one === 'string') return document.createTextNode(one);
    if ('drawing' in one) return svgElement(one.drawing, one.id, document);
    const element = document.createElement(one.name);
    for (const [name, value] of Object.entries(one.attributes)) element.setAttribute(name, value);
    element.append(...partsNodes(one.children, document));
    return element;
  });
