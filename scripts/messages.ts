import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import ts from 'typescript';
import { root } from './steps.ts';

/**
 * Every message that the guide can say, read out of its code: what is handed to `say` and its like, what `messages` marks,
 * sentences, and the declared words of calculators, fields and tables.
 */

export interface Message {
  /** In English, as it is looked up in a catalogue. */
  readonly text: string;
  readonly file: string;
  readonly line: number;
}

/** What is told of how far a language has come, part by part. The first two must be whole. */
export const parts = ['cautions', 'worksheet', 'interface', 'calculators'] as const;
export type Part = (typeof parts)[number];

/** Drawings that the worksheet has. */
const onPaper =
  /^site\/drawing\/(?:plan|plan-loop|section|section-names|winding|winding-words|course|nothing)\.ts$/u;

/** The part of the guide to which a file belongs. */
export function partOf(file: string): Part {
  if (file === 'calculators/cautions.ts') return 'cautions';
  if (file.startsWith('site/worksheet/') || file === 'calculators/shopping.ts' || onPaper.test(file))
    return 'worksheet';
  return file.startsWith('site/') ? 'interface' : 'calculators';
}

/** Properties of declarations that hold words for a reader. */
const worded = new Set([
  ...['label', 'explain', 'question', 'summary', 'empty', 'measure'],
  ...['words', 'title', 'text', 'short', 'device', 'ask', 'lead'],
]);

/** Functions whose message is their argument of this number. */
const sayers: Readonly<Record<string, number>> = {
  ...{ say: 1, runsOf: 1, translated: 1, messages: 0, inWords: 0 },
};

/** Declarations are read in these folders; the guide's sources and its checks are quoted as they are printed. */
const declares = (file: string): boolean =>
  file.startsWith('calculators/') && !/^calculators\/(?:checks\/|sources\.ts)/u.test(file);

/** Whether there is something in a message to be said in words, rather than a unit or a number. */
const hasWords = (text: string): boolean => /\p{L}{2}/u.test(text.replace(/\{\w+\}/gu, ''));

/** The literals that an expression may come to. */
function literalsIn(node: ts.Node, found: ts.Node[] = []): ts.Node[] {
  if (ts.isStringLiteralLike(node)) found.push(node);
  else if (ts.isConditionalExpression(node)) {
    literalsIn(node.whenTrue, found);
    literalsIn(node.whenFalse, found);
  } else if (ts.isParenthesizedExpression(node) || ts.isAsExpression(node) || ts.isSatisfiesExpression(node))
    literalsIn(node.expression, found);
  else if (ts.isObjectLiteralExpression(node)) {
    for (const one of node.properties) if (ts.isPropertyAssignment(one)) literalsIn(one.initializer, found);
  } else if (ts.isArrayLiteralExpression(node)) for (const one of node.elements) literalsIn(one, found);
  return found;
}

/** A template with its places numbered from 1, as `messageOf` has it. */
function templateText(template: ts.TemplateLiteral): string {
  if (ts.isNoSubstitutionTemplateLiteral(template)) return template.text;
  return template.templateSpans.reduce(
    (text, { literal }, index) => `${text}{${index + 1}}${literal.text}`,
    template.head.text,
  );
}

function messagesIn(file: string, text: string): Message[] {
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: Message[] = [];
  const add = (node: ts.Node, message: string): void => {
    if (!hasWords(message)) return;
    const { line } = source.getLineAndCharacterOfPosition(node.getStart());
    found.push({ text: message, file, line: line + 1 });
  };
  const visit = (node: ts.Node): void => {
    if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
      const at = sayers[node.expression.text];
      const argument = at === undefined ? undefined : node.arguments[at];
      if (argument)
        for (const one of literalsIn(argument)) if (ts.isStringLiteralLike(one)) add(one, one.text);
    } else if (ts.isTaggedTemplateExpression(node) && node.tag.getText() === 'sentence')
      add(node, templateText(node.template));
    else if (
      declares(file) &&
      ts.isPropertyAssignment(node) &&
      worded.has(node.name.getText()) &&
      !ts.isObjectLiteralExpression(node.initializer) &&
      !ts.isArrayLiteralExpression(node.initializer)
    )
      for (const one of literalsIn(node.initializer)) if (ts.isStringLiteralLike(one)) add(one, one.text);
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

/** What the script of an Astro file is: its front matter, and the expressions of its markup that say a message. */
function scriptOf(markup: string): string {
  const [, front = '', body = markup] = /^---\n(.*?)\n---(.*)$/su.exec(markup) ?? [];
  const calls = Array.from(
    body.matchAll(/\b(?:say\(\s*\w+,\s*|inWords\(\s*)((?:'(?:[^'\\]|\\.)*'|[^'(){}]|\([^()]*\))*?)[,)]/gsu),
    ([, argument = '']) => `inWords(${argument});`,
  );
  return `${front}\n${calls.join('\n')}`;
}

/** Every file of the code that may say something. */
function filesOf(folder: string): string[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(?:ts|astro)$/u.test(entry.name) && !entry.name.endsWith('.d.ts'))
    .map(({ parentPath, name }) => relative(root, join(parentPath, name)).split(sep).join('/'))
    .sort();
}

/** Every message of the guide, each once, where it is first said: cautions and worksheet before the rest. */
export function allMessages(): readonly Message[] {
  const files = [...filesOf('calculators'), ...filesOf('content'), ...filesOf('site')].toSorted(
    (a, b) => parts.indexOf(partOf(a)) - parts.indexOf(partOf(b)),
  );
  const found = new Map<string, Message>();
  for (const file of files) {
    const text = readFileSync(join(root, file), 'utf8');
    for (const message of messagesIn(file, file.endsWith('.astro') ? scriptOf(text) : text))
      if (!found.has(message.text)) found.set(message.text, message);
  }
  return [...found.values()];
}
