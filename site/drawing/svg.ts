import type { Drawing, Mark, Tone } from './drawing.ts';
import { pathOf } from './path.ts';

type Outlined = Exclude<Mark, { kind: 'text' }>;

/**
 * A drawing as SVG: one small tree of elements, written out as markup at build or made into nodes in the browser.
 * No inline style and no markup sink, so that both hold under the strictest content-security policy. Colours come
 * from the classes `tone-…` of drawing.css; each element paints with its own tone as current colour.
 */
interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (Node | string)[];
}

const namespace = 'http://www.w3.org/2000/svg';

/** To a hundredth of a millimetre, finer than any printer; adding zero makes a negative zero a plain one. */
const number = (value: number): string => String(Math.round(value * 100) / 100 + 0);

interface Layer {
  readonly attributes: Readonly<Record<string, string>>;
  readonly outlines: readonly Outlined[];
}

/** What one mark paints: its fill first, its stroke over it. */
function layers(mark: Outlined): Layer[] {
  const outlines = [mark];
  const painted: Layer[] = [];
  if (mark.fill) painted.push({ attributes: { class: `tone-${mark.fill}`, fill: 'currentColor' }, outlines });
  if (mark.stroke) {
    const attributes = {
      class: `tone-${mark.stroke}`,
      fill: 'none',
      stroke: 'currentColor',
      'stroke-width': number(mark.width ?? 0.35),
      ...(mark.dash ? { 'stroke-dasharray': mark.dash.map(number).join(' ') } : {}),
    };
    painted.push({ attributes, outlines });
  }
  return painted;
}

const same = (a: Readonly<Record<string, string>>, b: Readonly<Record<string, string>>): boolean =>
  Object.keys(a).length === Object.keys(b).length && Object.keys(a).every((key) => a[key] === b[key]);

function textNode(mark: Extract<Mark, { kind: 'text' }>): Node {
  const [x, y] = mark.at;
  const tone: Tone = mark.tone ?? 'ink';
  return {
    name: 'text',
    attributes: {
      class: `tone-${tone}`,
      fill: 'currentColor',
      'font-size': number(mark.size),
      ...(mark.bold ? { 'font-weight': '700' } : {}),
      ...(mark.align && mark.align !== 'start' ? { 'text-anchor': mark.align } : {}),
      x: number(x),
      y: number(y),
      ...(mark.upward ? { transform: `rotate(-90 ${number(x)} ${number(y)})` } : {}),
    },
    children: [mark.text],
  };
}

/** Neighbouring strokes of one pen become one path, which keeps a hatching of a hundred lines to one element. */
function paintedNodes(marks: readonly Mark[]): Node[] {
  const nodes: Node[] = [];
  let pending: Layer | undefined;
  const flush = () => {
    if (pending)
      nodes.push({
        name: 'path',
        attributes: { ...pending.attributes, d: pathOf(pending.outlines) },
        children: [],
      });
    pending = undefined;
  };
  for (const mark of marks) {
    if (mark.kind === 'text') {
      flush();
      nodes.push(textNode(mark));
      continue;
    }
    for (const layer of layers(mark)) {
      if (pending && same(pending.attributes, layer.attributes) && layer.attributes['stroke']) {
        pending = { ...pending, outlines: [...pending.outlines, ...layer.outlines] };
      } else {
        flush();
        pending = layer;
      }
    }
  }
  flush();
  return nodes;
}

/** @param id unique on the page: the title and the description are named after it. */
function svgTree(drawing: Drawing, id: string): Node {
  return {
    name: 'svg',
    attributes: {
      class: 'drawing',
      viewBox: `0 0 ${number(drawing.width)} ${number(drawing.height)}`,
      width: `${number(drawing.width)}mm`,
      height: `${number(drawing.height)}mm`,
      role: 'img',
      'aria-labelledby': `${id}-title`,
      'aria-describedby': `${id}-description`,
    },
    children: [
      { name: 'title', attributes: { id: `${id}-title` }, children: [drawing.title] },
      { name: 'desc', attributes: { id: `${id}-description` }, children: [drawing.description] },
      ...paintedNodes(drawing.marks),
    ],
  };
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escape = (text: string): string => text.replace(/[&<>"]/gu, (letter) => escapes[letter] ?? letter);

function write(node: Node): string {
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escape(value)}"`);
  const inside = node.children.map((child) => (typeof child === 'string' ? escape(child) : write(child)));
  const open = `<${node.name}${attributes.join('')}`;
  return inside.length === 0 ? `${open}/>` : `${open}>${inside.join('')}</${node.name}>`;
}

function make(node: Node, document: Document): SVGElement {
  const element = document.createElementNS(namespace, node.name);
  for (const [name, value] of Object.entries(node.attributes)) element.setAttribute(name, value);
  for (const child of node.children)
    element.append(typeof child === 'string' ? document.createTextNode(child) : make(child, document));
  return element;
}

/** The drawing as SVG markup, for a page that is built. */
export const svgMarkup = (drawing: Drawing, id: string): string => write(svgTree(drawing, id));

/** The drawing as nodes, for a page that is being read. The same tree as `svgMarkup`. */
export const svgElement = (drawing: Drawing, id: string, document: Document): SVGElement =>
  make(svgTree(drawing, id), document);
