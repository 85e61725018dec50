import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Region } from '../calculators/region.ts';
import { readRegions, type FileText } from '../content/regions.ts';

const content = fileURLToPath(new URL('../content/', import.meta.url));

/** The YAML files of a folder of content, in the order of their names. */
export const filesOf = (folder: 'regions' | 'stations' | 'benches'): readonly FileText[] =>
  readdirSync(join(content, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({
      file: `content/${folder}/${name}`,
      text: readFileSync(join(content, folder, name), 'utf8'),
    }));

/** The regions of this guide. Throws an error that tells every problem of their files. */
export function loadRegions(): readonly Region[] {
  const read = readRegions(filesOf('regions'), filesOf('stations'));
  if (!read.ok) throw new Error(read.problems.map(({ text }) => text).join('\n'));
  return read.regions;
}
