import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';

export const root = fileURLToPath(new URL('../..', import.meta.url));

/** The text files below a folder of the project, by path from its top, with `/`, in order. */
export function filesBelow(folder: string, endings: readonly string[]): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((path) => !path.includes('node_modules/'))
    .sort();
}

export const readProjectFile = (path: string): string => readFileSync(join(root, path), 'utf8');

/** The code of a file: of an Astro page its front matter and its scripts, of a chapter its import and export lines. */
export function codeOf(path: string, text: string): string {
  if (path.endsWith('.astro')) {
    const front = /^\s*---\n([\s\S]*?)\n---/u.exec(text)?.[1] ?? '';
    const scripts = [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/gu)].map((match) => match[1] ?? '');
    return [front, ...scripts].join('\n');
  }
  if (path.endsWith('.mdx')) {
    const withoutFences = text.replace(/^(```|~~~)[\s\S]*?^\1/gmu, '');
    return withoutFences
      .split(/\n\s*\n/u)
      .filter((block) => /^\s*(import|export)\s/u.test(block))
      .join('\n');
  }
  return text;
}

/**
 * What a file imports, as it is written there: import and export declarations, `import()` of a fixed text, types'
 * `import('…')`, `require()`, `import.meta.glob()` and `new URL('…', import.meta.url)`.
 */
export function importsOf(path: string, text: string): string[] {
  const file = ts.createSourceFile(`${path}.ts`, codeOf(path, text), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const add = (node: ts.Node | undefined): void => {
    if (!node) return;
    if (ts.isStringLiteralLike(node)) found.push(node.text);
    else if (ts.isArrayLiteralExpression(node)) node.elements.forEach(add);
    else if (ts.isLiteralTypeNode(node)) add(node.literal);
  };
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) add(node.moduleSpecifier);
    else if (ts.isImportTypeNode(node)) add(node.argument);
    else if (ts.isCallExpression(node)) {
      const called = node.expression.getText(file);
      const takesPath =
        node.expression.kind === ts.SyntaxKind.ImportKeyword ||
        /^(require|import\.meta\.glob)$/u.test(called);
      if (takesPath) add(node.arguments[0]);
    } else if (ts.isNewExpression(node) && node.arguments?.[1]?.getText(file) === 'import.meta.url')
      add(node.arguments[0]);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** The layers, each of which may look at those before it. */
export const layers = ['calculators', 'content', 'site', 'scripts'] as const;
export type Layer = (typeof layers)[number];

/** The packages that a layer may use, `node:` standing for Node's own modules. */
const packages: Readonly<Record<Layer, readonly string[]>> = {
  // Nothing: what computes runs anywhere.
  calculators: [],
  // Reading files of words and numbers.
  content: ['yaml', 'zod', 'papaparse'],
  // Pages, formulas, the worksheet's PDF. `node:` and `yaml` only where a page is built, never in a widget.
  site: [
    'astro',
    'astro:content',
    'guide:known',
    'guide:region-files',
    '@astrojs/markdown-satteri',
    '@astrojs/mdx',
    'katex',
    'pdf-lib',
    '@pdf-lib/fontkit',
    'subset-font',
    'uqr',
    'zod',
    'yaml',
    'node:',
  ],
  // The command line and the project's own tools.
  scripts: [
    'node:',
    'astro',
    'yaml',
    'zod',
    'pdf-lib',
    '@pdf-lib/fontkit',
    'subset-font',
    'playwright-core',
    'pdfjs-dist',
    'tinybench',
    'eslint',
    '@eslint/js',
    'eslint-plugin-astro',
    'eslint-plugin-mdx',
    'typescript',
    'typescript-eslint',
    'vega-datasets',
    'odex',
  ],
};

/** The package of an import: "yaml" of "yaml/util", "@a/b" of "@a/b/c", "node:" of any of Node's modules. */
function packageOf(specifier: string): string {
  if (specifier.startsWith('node:')) return 'node:';
  const [first = '', second = ''] = specifier.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}

/** What is wrong with the imports of one file of a layer: a sentence each. */
export function problemsOf(path: string, text: string): string[] {
  const layer = layers.find((name) => path.startsWith(`${name}/`));
  if (!layer) return [];
  const below = layers.slice(0, layers.indexOf(layer) + 1);
  return importsOf(path, text).flatMap((specifier) => {
    if (specifier.startsWith('.')) {
      const target = posix.normalize(posix.join(posix.dirname(path), specifier));
      if (below.some((name) => target === name || target.startsWith(`${name}/`))) return [];
      if (target === 'package.json' && (layer === 'site' || layer === 'scripts')) return [];
      // The project's own tools work on the whole of it; they may not lean on the tests.
      if (layer === 'scripts' && target !== 'test' && !target.startsWith('test/')) return [];
      return [`${path} imports ${specifier}: ${layer} may look at ${below.join(', ')} alone`];
    }
    if (packages[layer].includes(packageOf(specifier)) || packages[layer].includes(specifier)) return [];
    return [
      `${path} imports ${specifier}: not among the packages of ${layer} (${packages[layer].join(', ') || 'none'})`,
    ];
  });
}
