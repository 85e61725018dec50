/**
 * What the linter asks for, beside what the compiler and the formatter already do. Run as
 * `eslint --config scripts/eslint.config.js`, since the top level of the project holds only what a reader needs.
 */
import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import astro from 'eslint-plugin-astro';
import * as mdx from 'eslint-plugin-mdx';
import { fileURLToPath } from 'node:url';
import ts from 'typescript-eslint';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Properties and calls that turn text into markup or code: the site's policy forbids them, and so do we. */
const sinks = [
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'srcdoc',
  'createContextualFragment',
  'setHTMLUnsafe',
  'parseHTMLUnsafe',
];

const noSinks = {
  'no-eval': 'error',
  'no-implied-eval': 'error',
  'no-new-func': 'error',
  'no-restricted-properties': [
    'error',
    { object: 'document', property: 'write', message: 'Build nodes with createElement.' },
    { object: 'document', property: 'writeln', message: 'Build nodes with createElement.' },
  ],
};

const sinkSelectors = sinks.flatMap((name) => [
  {
    selector: `MemberExpression[property.name='${name}']`,
    message: `${name} turns text into markup. Build nodes with createElement.`,
  },
  {
    selector: `MemberExpression[property.value='${name}']`,
    message: `${name} turns text into markup. Build nodes with createElement.`,
  },
]);

const testsThatLie = [
  {
    selector: 'CallExpression > MemberExpression[property.name=/^toBeCloseTo$/]',
    message:
      'toBeCloseTo counts digits, not distance: 10.49 is "close to" 10 at 0. Use the helper of test/support/near.ts.',
  },
  {
    selector:
      'MemberExpression[object.name=/^(describe|it|test|suite)$/][property.name=/^(only|skip|todo|skipIf|runIf|fails)$/]',
    message: 'Every test runs, every time.',
  },
  {
    selector: 'CallExpression[callee.name=/^(xit|xdescribe|xtest|fit|fdescribe)$/]',
    message: 'Every test runs, every time.',
  },
];

const noStyleAttribute = [
  {
    selector: "JSXAttribute[name.name='style']",
    message: 'The site’s policy blocks inline style. Give it a class.',
  },
  {
    selector: "CallExpression[callee.property.name='setAttribute'][arguments.0.value='style']",
    message: 'The site’s policy blocks inline style. Set a class, or one property of style.',
  },
];

export default defineConfig(
  { ignores: ['dist/', 'node_modules/', '.astro/', '.cache/', 'worksheets/'] },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  js.configs.recommended,
  {
    files: ['**/*.ts'],
    extends: [ts.configs.strictTypeChecked, ts.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      // The compiler's own check of unused names is on; an underscore says "on purpose" to both.
      '@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_', varsIgnorePattern: '^_' }],
      // Numbers are written into sentences and paths all the time, and a number cannot be written wrongly there.
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      // `env['NAME']` is what the compiler asks for.
      '@typescript-eslint/dot-notation': 'off',
      // Both ask the compiler a lot about what hardly exists here: enums (which do not compile) and classes.
      '@typescript-eslint/no-unsafe-enum-assignment': 'off',
      '@typescript-eslint/no-unsafe-class-instance-assignment': 'off',
      // Going through a text by code points is meant.
      '@typescript-eslint/no-misused-spread': ['error', { allow: ['string'] }],
      // An index signature names what the key is; a record cannot.
      '@typescript-eslint/consistent-indexed-object-style': 'off',
      '@typescript-eslint/consistent-type-imports': [
        'error',
        { fixStyle: 'inline-type-imports', disallowTypeAnnotations: false },
      ],
      '@typescript-eslint/switch-exhaustiveness-check': [
        'error',
        { considerDefaultExhaustiveForUnions: true },
      ],
      '@typescript-eslint/no-confusing-void-expression': ['error', { ignoreArrowShorthand: true }],
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      '@typescript-eslint/no-non-null-assertion': 'error',
    },
  },
  {
    files: ['**/*.{js,mjs}'],
    languageOptions: {
      globals: {
        process: 'readonly',
        console: 'readonly',
        URL: 'readonly',
        setInterval: 'readonly',
        clearInterval: 'readonly',
      },
    },
  },
  astro.configs['flat/recommended'],
  {
    files: ['**/*.astro'],
    plugins: { '@typescript-eslint': ts.plugin },
    rules: {
      '@typescript-eslint/no-explicit-any': 'error',
      'astro/no-set-html-directive': 'error',
      'astro/no-unsafe-inline-scripts': 'error',
      'astro/valid-compile': 'error',
      'no-restricted-syntax': ['error', ...sinkSelectors, ...noStyleAttribute],
    },
  },
  {
    ...mdx.flat,
    rules: {
      ...mdx.flat.rules,
      'mdx/remark': 'off',
      // The page hands a chapter its words, and the build stops at one that it does not hand out.
      'no-undef': 'off',
      // Between a number and its unit stands a narrow space that does not break.
      'no-irregular-whitespace': 'off',
      'no-restricted-syntax': ['error', ...noStyleAttribute, ...sinkSelectors],
    },
  },
  {
    files: ['**/*.{ts,js,mjs}'],
    rules: {
      ...noSinks,
      eqeqeq: 'error',
      'prefer-const': 'error',
      'no-var': 'error',
      'object-shorthand': 'error',
      'no-restricted-syntax': ['error', ...sinkSelectors, ...noStyleAttribute],
    },
  },
  {
    files: ['calculators/**/*.ts', 'test/**/*.ts'],
    rules: {
      // The compiler treats every index into a list as perhaps missing; in tables and matrices the bounds are known.
      '@typescript-eslint/no-non-null-assertion': 'off',
    },
  },
  {
    files: ['test/**/*.ts'],
    // The rules that ask the compiler cost most of the linter's time; tests are compiled strictly and run.
    extends: [ts.configs.disableTypeChecked],
    languageOptions: { parserOptions: { projectService: true } },
    rules: {
      // Save one: a promise that nobody waits for is a test that cannot fail.
      '@typescript-eslint/no-floating-promises': 'error',
      'no-restricted-syntax': ['error', ...sinkSelectors, ...noStyleAttribute, ...testsThatLie],
    },
  },
  {
    files: ['calculators/**/*.ts'],
    rules: {
      'no-restricted-globals': [
        'error',
        ...[
          'document',
          'window',
          'navigator',
          'localStorage',
          'fetch',
          'process',
          'setTimeout',
          'setInterval',
          'performance',
          'console',
        ].map((name) => ({ name, message: 'The calculators know no page, no machine and no clock.' })),
      ],
      'no-restricted-properties': [
        'error',
        { object: 'Math', property: 'random', message: 'Chance comes from a seed.' },
        { object: 'Date', property: 'now', message: 'The calculators know no clock.' },
      ],
      'no-restricted-syntax': [
        'error',
        ...sinkSelectors,
        {
          selector: "NewExpression[callee.name='Date'][arguments.length=0]",
          message: 'The calculators know no clock.',
        },
      ],
    },
  },
);
