import type { AstroIntegration } from 'astro';

type SetUp = NonNullable<AstroIntegration['hooks']['astro:config:setup']>;
type VitePlugin = NonNullable<NonNullable<Parameters<SetUp>[0]['config']['vite']>['plugins']>[number];

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [key: string]: unknown;
}

const isNode = (thing: unknown): thing is Node =>
  typeof thing === 'object' && thing !== null && typeof (thing as { type?: unknown }).type === 'string';

/** Every node below and including this one. */
function* nodesBelow(node: Node): Generator<Node> {
  yield node;
  for (const value of Object.values(node))
    for (const child of Array.isArray(value) ? (value as unknown[]) : [value])
      if (isNode(child)) yield* nodesBelow(child);
}

/** The properties of an object literal with their names. */
function propertiesOf(
  object: Node,
): { readonly name: string; readonly property: Node; readonly value: Node }[] {
  return (object['properties'] as Node[]).flatMap((property) => {
    const key = property['key'] as Node | undefined;
    const name = key?.['name'] ?? key?.['value'];
    return typeof name === 'string' ? [{ name, property, value: property['value'] as Node }] : [];
  });
}

/** What the pages have from the build already, so that a browser need not load it again to work figures out. */
const wordsOfCalculator = [
  'question',
  'summary',
  'reads',
  'tables',
  'curves',
  'formulas',
  'cites',
  'cautions',
];
const wordsOfFigure = ['label', 'explain', 'symbol'];

/**
 * The declaration of a calculator without its words: its id, the names of its figures, and what works them out.
 *
 * @param code the module, as JavaScript
 * @param parse gives its syntax tree (ESTree)
 */
export function leanCalculator(code: string, parse: (code: string) => unknown): string {
  const tree = parse(code) as Node;
  const declaration = [...nodesBelow(tree)].find(
    (node) => node.type === 'CallExpression' && (node['callee'] as Node)['name'] === 'calculator',
  );
  const [object] = (declaration?.['arguments'] ?? []) as Node[];
  if (object?.type !== 'ObjectExpression') throw new Error('a calculator is declared by calculator({ … })');
  const properties = propertiesOf(object);
  const figures = properties.find(({ name }) => name === 'figures')?.value;
  const ofFigures = figures?.type === 'ObjectExpression' ? propertiesOf(figures) : [];
  const words = [
    ...properties.filter(({ name }) => wordsOfCalculator.includes(name)),
    ...ofFigures.flatMap(({ value }) =>
      value.type === 'ObjectExpression'
        ? propertiesOf(value).filter(({ name }) => wordsOfFigure.includes(name))
        : [],
    ),
  ];
  return words
    .sort((one, other) => other.property.start - one.property.start)
    .reduce((rest, { name, property }) => {
      const { start, end } = property;
      return `${rest.slice(0, start)}${JSON.stringify(name)}:0${rest.slice(end)}`;
    }, code);
}

const leanModules = (): VitePlugin => ({
  name: 'lean-calculators',
  enforce: 'post',
  transform: {
    filter: { id: /[/\\]calculators[/\\]questions[/\\][^/\\]+\.ts\?figures$/u },
    handler(code) {
      return { code: leanCalculator(code, (text) => this.parse(text)), map: null };
    },
  },
});

/**
 * Lets a script import a calculator as `…ts?figures`: only what works the figures out. The words about them make up
 * half of a calculator and stand on the page already.
 */
export const leanCalculators = (): AstroIntegration => ({
  name: 'lean-calculators',
  hooks: {
    'astro:config:setup': ({ updateConfig }) => {
      updateConfig({ vite: { plugins: [leanModules()], worker: { plugins: () => [leanModules()] } } });
    },
  },
});
