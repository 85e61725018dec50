import type { SatteriProcessorOptions } from '@astrojs/markdown-satteri';
import { glossary, type Term } from '../../content/glossary/terms.ts';

type Plugin = NonNullable<SatteriProcessorOptions['mdastPlugins']>[number];
type Instance = Exclude<Extract<Plugin, { name: string }>, (...options: never[]) => unknown>;
type Context = Parameters<NonNullable<Instance['text']>>[1];
type Text = Parameters<NonNullable<Instance['text']>>[0];

/** How sentences have a term: in small letters, as in the middle of one. */
export const formsOf = ({ term, forms }: Term): readonly string[] => forms ?? [term.toLowerCase()];

const termOf = new Map(glossary.flatMap((one) => formsOf(one).map((form) => [form.toLowerCase(), one])));

/** Every form of every term as a word of its own, longer forms first: "limit thermostat" is not "thermostat". */
const anyForm = new RegExp(
  String.raw`(?<![\p{L}\d-])(?:${[...termOf.keys()]
    .sort((one, other) => other.length - one.length)
    .join('|')})(?![\p{L}\d-])`,
  'giu',
);

/** A piece of a text, with the term that it is, where it is one. */
export interface Piece {
  readonly text: string;
  readonly term?: Term;
}

/** A text cut where a term stands that is not in `seen`; those found are added to it. */
export function piecesOf(text: string, seen: Set<string>): Piece[] {
  const pieces: Piece[] = [];
  let from = 0;
  for (const match of text.matchAll(anyForm)) {
    const term = termOf.get(match[0].toLowerCase());
    if (!term || seen.has(term.id)) continue;
    seen.add(term.id);
    if (match.index > from) pieces.push({ text: text.slice(from, match.index) });
    pieces.push({ text: match[0], term });
    from = match.index + match[0].length;
  }
  if (from < text.length) pieces.push({ text: text.slice(from) });
  return pieces;
}

/** Where a word stays as it is: it is a link already, a name, a heading, or a row of numbers. */
const left: readonly string[] = ['heading', 'link', 'linkReference', 'table'];

function mayLink(node: Readonly<Text>, context: Context): boolean {
  let above: ReturnType<Context['parent']> = context.parent(node);
  while (above) {
    if (left.includes(above.type)) return false;
    above = context.parent(above);
  }
  return true;
}

/**
 * Links the words of the glossary where a chapter first uses them, with their meaning at hand for those who point at
 * them. `base` is the folder of the host that the guide lies in, with a slash at its end.
 */
export const termsInText = (base: string): Plugin => {
  return () => {
    const seen = new Set<string>();
    return {
      name: 'terms-in-text',
      text(node, context) {
        if (!mayLink(node, context)) return;
        const pieces = piecesOf(node.value, seen);
        if (!pieces.some(({ term }) => term)) return;
        context.replaceNode(
          node,
          pieces.map(({ text, term }) =>
            term
              ? {
                  type: 'link' as const,
                  url: `${base}glossary/#${term.id}`,
                  title: term.meaning,
                  data: { hProperties: { className: ['term'] } },
                  children: [{ type: 'text' as const, value: text }],
                }
              : { type: 'text' as const, value: text },
          ),
        );
      },
    };
  };
};
