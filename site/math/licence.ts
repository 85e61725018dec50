import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';

/** The words of the licence of the formulas' font, which go with every copy of it. */
export const mathFontLicence = (): Promise<string> =>
  readFile(createRequire(import.meta.url).resolve('@fontsource/stix-two-math/LICENSE'), 'utf8');
