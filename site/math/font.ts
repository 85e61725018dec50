import type { AstroIntegration } from 'astro';
import { createHash } from 'node:crypto';
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import subsetFont from 'subset-font';

const require = createRequire(import.meta.url);
const from = '@fontsource/stix-two-math';

const range = (first: number, last: number): string =>
  Array.from({ length: last - first + 1 }, (_, index) => String.fromCodePoint(first + index)).join('');

/**
 * What the guide's formulas may be written with. KaTeX leaves it to the browser to slant a single letter, which
 * then takes the glyph from the mathematical alphabets: so those have to be there too.
 */
export const mathCharacters = [
  range(0x20, 0x7e),
  '\u00a0±·×÷°²³µ–−′″…',
  range(0x391, 0x3a9).replace('\u03a2', ''),
  range(0x3b1, 0x3c9),
  'ϑϕϵ',
  'ℎ∂∆∇∏∑√∞∝∫≈≠≡≤≥→⇒⋅⟨⟩|‖⏞⏟¯ˆ˙',
  // Mathematical italic and bold: Latin and Greek.
  range(0x1d400, 0x1d433),
  range(0x1d434, 0x1d467).replace('\u{1d455}', ''),
  range(0x1d6e2, 0x1d71b),
].join('');

const recipe = { targetFormat: 'woff2', noHinting: true } as const;

/**
 * Makes the part of STIX Two Math that the formulas need, as a file for the style sheet: a tenth of the whole
 * font. Same characters, same bytes; made again only when the recipe or the font has changed.
 */
async function makeMathFont(folder: URL): Promise<void> {
  const whole = await readFile(require.resolve(`${from}/files/stix-two-math-latin-400-normal.woff2`));
  const wanted = createHash('sha256')
    .update(JSON.stringify([mathCharacters, recipe]))
    .update(whole)
    .digest('hex');
  const stamp = new URL('stix-two-math.recipe', folder);
  if ((await readFile(stamp, 'utf8').catch(() => '')) === wanted) return;
  const part = await subsetFont(whole, mathCharacters, recipe);
  await mkdir(folder, { recursive: true });
  await writeFile(new URL('stix-two-math.woff2', folder), part);
  // Written last: a stamp without its font would be believed.
  await writeFile(stamp, wanted);
}

/** The font of the formulas, ready before the pages are built. */
export const mathFont = (): AstroIntegration => ({
  name: 'math-font',
  hooks: {
    'astro:config:setup': ({ config }) => makeMathFont(new URL('.cache/site-fonts/', config.root)),
  },
});
