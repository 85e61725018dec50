import { describe, expect, it } from 'vitest';
import { filesBelow, importsOf, layers, problemsOf, readProjectFile } from './support/imports.ts';

const endings = ['.ts', '.mts', '.js', '.mjs', '.astro', '.mdx'];

describe('imports point downhill: calculators <- content <- site <- scripts', () => {
  for (const layer of layers)
    it(`${layer} looks only at itself, at what is below it, and at its packages`, () => {
      const files = filesBelow(layer, endings);
      expect(files.length, `${layer} has files`).toBeGreaterThan(0);
      expect(files.flatMap((path) => problemsOf(path, readProjectFile(path)))).toEqual([]);
    });
});

describe('the check itself', () => {
  const planted: readonly (readonly [path: string, text: string])[] = [
    ['calculators/laws/planted.ts', `import { page } from '../../site/page.ts';`],
    ['calculators/planted.ts', `export { z } from 'zod';`],
    ['calculators/planted.ts', `import { readFileSync } from 'node:fs';`],
    ['calculators/planted.ts', `type Page = import('../site/page.ts').Page;`],
    ['calculators/planted.ts', `const late = await import('../content/link.ts');`],
    ['content/planted.ts', `import draw from '../site/drawing/drawing.ts';`],
    ['content/planted.ts', `import { PDFDocument } from 'pdf-lib';`],
    [
      'content/chapters/planted.mdx',
      `# A chapter\n\nimport Form from '../../site/components/Form.astro';\n\nWords.`,
    ],
    ['site/pages/planted.astro', `---\nimport { run } from '../../scripts/run.mjs';\n---\n<p>Words</p>`],
    [
      'site/pages/planted.astro',
      `---\nconst title = 'x';\n---\n<script>import '../../scripts/serve.ts';</script>`,
    ],
    ['site/planted.ts', `const all = import.meta.glob(['../content/*.yaml', '../scripts/*.ts']);`],
    ['site/planted.ts', `import React from 'react';`],
    ['scripts/planted.ts', `import { near } from '../test/support/near.ts';`],
    ['scripts/planted.ts', `import lodash from 'lodash/fp';`],
  ];

  it.each(planted)('finds the planted import in %s: %j', (path, text) => {
    expect(problemsOf(path, text)).toHaveLength(1);
  });

  it('lets downhill imports and allowed packages pass', () => {
    const text = `import { z } from 'zod/mini'; import yaml from 'yaml'; import { fields } from '../calculators/bench/fields.ts';`;
    expect(importsOf('content/sample.ts', text)).toHaveLength(3);
    expect(problemsOf('content/sample.ts', text)).toEqual([]);
  });

  it('does not take an import inside a code sample of a chapter for one of its own', () => {
    expect(
      importsOf('content/chapters/sample.mdx', "Words.\n\n```ts\nimport x from 'react';\n```\n"),
    ).toEqual([]);
  });
});
