import { satteri } from '@astrojs/markdown-satteri';
import mdx from '@astrojs/mdx';
import { defineConfig } from 'astro/config';
import { createHash } from 'node:crypto';
import { fields } from './calculators/bench/fields.ts';
import { contentFiles, customsOfRegions, exampleOf } from './site/build/content-files.ts';
import { leanCalculators } from './site/build/lean-calculators.ts';
import { noPreloading } from './site/build/no-preloading.ts';
import { termsInText } from './site/glossary/in-text.ts';
import { mathFont } from './site/math/font.ts';
import { mathInText } from './site/math/in-text.ts';

/** The folder of the host that the guide lies in: "/" or, for an office's sub-path, "/winter/". */
const base = process.env.BASE || '/';
/** The region that the guide is built for: a file of content/regions. */
const region = process.env.REGION || 'estermark';
const example = await exampleOf(region);
/** Changes whenever the fields do, so that a bench kept by an older guide is looked through once. */
const fieldsMark = createHash('sha256').update(JSON.stringify(fields)).digest('hex').slice(0, 12);

export default defineConfig({
  srcDir: './site',
  publicDir: './site/public',
  outDir: process.env.OUT || './dist',
  // Builds that run side by side keep apart what they keep.
  cacheDir: process.env.CACHE || './.cache/astro',
  base,
  // Known only where an office has said where its guide will lie.
  ...(process.env.SITE ? { site: process.env.SITE } : {}),
  trailingSlash: 'always',
  devToolbar: { enabled: false },
  // The default eats the blank between "12" and "kWh" when each has an element of its own.
  compressHTML: true,
  // Everything comes from files of the guide: nothing is inline, so that the strictest policy holds.
  build: { inlineStylesheets: 'never', assets: 'assets' },
  markdown: {
    syntaxHighlight: false,
    // Smart punctuation would turn the inch mark of 3/8" into a quotation mark.
    processor: satteri({
      features: { smartPunctuation: false, math: true },
      mdastPlugins: [mathInText, termsInText(base)],
    }),
  },
  integrations: [
    mdx(),
    contentFiles(process.env.REGION || undefined),
    leanCalculators(),
    noPreloading(),
    mathFont(),
  ],
  vite: {
    define: {
      'import.meta.env.REGION': JSON.stringify(region),
      'import.meta.env.EXAMPLE': JSON.stringify(example),
      'import.meta.env.CUSTOMS': JSON.stringify(await customsOfRegions(process.env.REGION || undefined)),
      'import.meta.env.BOOK': JSON.stringify(process.env.BOOK ?? ''),
      'import.meta.env.CHOOSER': JSON.stringify(process.env.CHOOSER ?? ''),
      'import.meta.env.PREVIEW': JSON.stringify(Boolean(process.env.PREVIEW)),
      'import.meta.env.FIELDS': JSON.stringify(fieldsMark),
    },
    // Preloading costs every page a script of its own, and what is loaded late here is small.
    build: { assetsInlineLimit: 0, modulePreload: false },
    // What calculates is in a folder of its own: none of it is part of what a page weighs.
    worker: {
      format: 'es',
      rolldownOptions: {
        output: {
          entryFileNames: 'assets/worker/[name].[hash].js',
          chunkFileNames: 'assets/worker/[name].[hash].js',
        },
      },
    },
  },
});
