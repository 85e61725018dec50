import { copyFile, mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import subsetFont from 'subset-font';
import { letters } from '../site/worksheet/letters.ts';

/** The two faces that a worksheet is set in, as TrueType files. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** Where the faces are kept, from the root of the project. */
export const fontFolder = fileURLToPath(new URL('../.cache/fonts/', import.meta.url));

/** File names of the faces and of their licence in the font folder. */
export const fontFiles = {
  regular: 'inter-regular.ttf',
  bold: 'inter-bold.ttf',
  licence: 'inter-OFL.txt',
} as const;

const originals = {
  regular: '@expo-google-fonts/inter/400Regular/Inter_400Regular.ttf',
  bold: '@expo-google-fonts/inter/700Bold/Inter_700Bold.ttf',
  licence: '@expo-google-fonts/inter/LICENSE_FONT',
} as const;

const original = (name: keyof typeof originals) => createRequire(import.meta.url).resolve(originals[name]);

/**
 * What the subset keeps besides the glyphs: kerning alone. Ligatures and contextual alternates would take letters and
 * the minus sign out of the text that a screen reader or a search gets from the PDF; hints serve screens of old.
 */
const recipe = {
  targetFormat: 'truetype',
  keepFeatures: ['kern'],
  noHinting: true,
  dropTables: ['GDEF', 'GSUB', 'STAT'],
} as const;

/** The faces cut down to the letters of the worksheet. The same bytes whenever and wherever it runs. */
export async function makeFonts(): Promise<Fonts> {
  const cut = async (name: 'regular' | 'bold') =>
    new Uint8Array(
      await subsetFont(await readFile(original(name)), letters, {
        ...recipe,
        keepFeatures: [...recipe.keepFeatures],
        dropTables: [...recipe.dropTables],
      }),
    );
  // One after the other: the cutter keeps one piece of memory for all its work.
  const regular = await cut('regular');
  return { regular, bold: await cut('bold') };
}

/**
 * The faces of the worksheet; made and kept in the font folder, with their licence beside them, when they are not
 * there yet or were made for other letters.
 */
export async function ensureFonts(): Promise<Fonts> {
  const wanted = JSON.stringify({ letters, recipe, originals });
  const stamp = join(fontFolder, 'recipe.json');
  try {
    if ((await readFile(stamp, 'utf8')) === wanted) {
      const [regular, bold] = await Promise.all(
        (['regular', 'bold'] as const).map(async (name) => readFile(join(fontFolder, fontFiles[name]))),
      );
      if (regular && bold) return { regular: new Uint8Array(regular), bold: new Uint8Array(bold) };
    }
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code !== 'ENOENT') throw problem;
  }
  const fonts = await makeFonts();
  await mkdir(dirname(stamp), { recursive: true });
  await writeFile(join(fontFolder, fontFiles.regular), fonts.regular);
  await writeFile(join(fontFolder, fontFiles.bold), fonts.bold);
  await copyFile(original('licence'), join(fontFolder, fontFiles.licence));
  // Written last: a stamp without its fonts would be believed.
  await writeFile(stamp, wanted);
  return fonts;
}

if (import.meta.main) {
  const { regular, bold } = await ensureFonts();
  const size = (bytes: Uint8Array) => `${Math.round(bytes.length / 1000)} kB`;
  console.log(`Fonts of the worksheet: regular ${size(regular)}, bold ${size(bold)}, in ${fontFolder}`);
}
