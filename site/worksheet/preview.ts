import { svgElement } from '../drawing/svg.ts';
import type { Item, Page } from './layout.ts';
import type { FontFiles } from './pdf.ts';
import type { Measure } from './text.ts';

/**
 * The sides of a laid-out worksheet on the screen, before they are printed: the same items at the same places, in the same
 * typeface, as SVG. Nodes and attributes alone, as the content-security policy of the pages asks for.
 */

const namespace = 'http://www.w3.org/2000/svg';

/** The name under which the page knows the typeface of the sheet. */
const family = 'Winter bench worksheet';

/** Makes the typeface of the sheet known to the page. */
export async function showTypeface({ regular, bold }: FontFiles, document: Document): Promise<void> {
  const faces = [
    new FontFace(family, new Uint8Array(regular), { weight: '400' }),
    new FontFace(family, new Uint8Array(bold), { weight: '700' }),
  ];
  for (const face of faces) document.fonts.add(await face.load());
}

function element(
  document: Document,
  name: string,
  attributes: Readonly<Record<string, string | number>>,
): SVGElement {
  const made = document.createElementNS(namespace, name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  return made;
}

/** The squares of a code as one path. */
function codePath({ box, modules, quiet }: Extract<Item, { kind: 'code' }>): string {
  const side = (box.width - 2 * quiet) / modules.length;
  return modules
    .flatMap((row, down) =>
      row.flatMap((dark, across) =>
        dark
          ? [`M${box.x + quiet + across * side} ${box.y + quiet + down * side}h${side}v${side}h${-side}z`]
          : [],
      ),
    )
    .join('');
}

function nodesOf(item: Item, id: string, measure: Measure, document: Document): SVGElement[] {
  const { box } = item;
  switch (item.kind) {
    case 'text':
      return item.lines.flatMap(({ pieces, x, baseline }) =>
        pieces.flatMap((piece) => {
          const text = piece.text.trimEnd();
          if (text === '') return [];
          const node = element(document, 'text', {
            x: box.x + x + piece.x,
            y: box.y + baseline,
            'font-size': piece.size,
            'font-weight': piece.bold ? 700 : 400,
            // As wide as on paper, whatever the browser makes of kerning.
            textLength: measure(text, piece.size, piece.bold),
          });
          node.append(document.createTextNode(text));
          return [node];
        }),
      );
    case 'rule':
      return [element(document, 'rect', { x: box.x, y: box.y, width: box.width, height: box.height })];
    case 'field':
      return [
        element(document, 'rect', {
          ...{ x: box.x, y: box.y, width: box.width, height: box.height },
          fill: 'none',
          stroke: '#bbb',
          'stroke-width': 0.4,
        }),
      ];
    case 'code':
      return [element(document, 'path', { d: codePath(item) })];
    case 'figure': {
      const drawing = svgElement(item.drawing, id, document);
      for (const [key, value] of Object.entries({
        ...{ x: box.x, y: box.y, width: box.width, height: box.height },
        'font-family': family,
      }))
        drawing.setAttribute(key, String(value));
      // Its size is that of the sheet, and not what pages make of a drawing.
      drawing.removeAttribute('class');
      return [drawing];
    }
  }
}

/** One side as it will be printed, named for those who cannot see it. */
export function pageElement(
  { width, height, items }: Page,
  name: string,
  id: string,
  measure: Measure,
  document: Document,
): SVGElement {
  const page = element(document, 'svg', {
    class: 'sheet-page',
    viewBox: `0 0 ${width} ${height}`,
    role: 'img',
    'aria-label': name,
    'font-family': family,
    fill: '#000',
  });
  page.append(
    element(document, 'rect', { width, height, fill: '#fff' }),
    ...items.flatMap((item, index) => nodesOf(item, `${id}-${index}`, measure, document)),
  );
  return page;
}

/** What a side is called in its own head, which is the first thing that it says. */
export function nameOf({ items }: Page): string {
  const head = items.find((item) => item.kind === 'text');
  return head?.kind === 'text'
    ? head.lines.map(({ pieces }) => pieces.map(({ text }) => text).join('')).join('')
    : '';
}
