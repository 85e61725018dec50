import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Region } from '../calculators/region.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { readRegions, type FileText } from '../content/regions.ts';
import { BadInput } from './command.ts';

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

/**
 * The regions of this guide.
 * @throws {BadInput} with every problem of their files
 */
export function loadRegions(): readonly Region[] {
  const read = readRegions(filesOf('regions'), filesOf('stations'));
  if (!read.ok) throw new BadInput(read.problems.map(({ text }) => text).join('\n'));
  return read.regions;
}

/** The region with this id. Throws `BadInput` that says what there is, where there is none; `asked` is how it was asked for. */
export function regionNamed(id: string, regions: readonly Region[], asked = '--region'): Region {
  const region = regions.find((one) => one.id === id);
  if (!region)
    throw new BadInput(`${asked} must be ${regions.map((one) => one.id).join(' or ')}. Found: ${id}`);
  return region;
}

/** The bench files that stand in a region. Files that cannot be read are told where they are made something of. */
export const benchesIn = (region: Region, regions: readonly Region[]): readonly FileText[] =>
  filesOf('benches').filter(({ file, text }) => {
    const read = readBenchFile(text, file, regions);
    return read.ok && read.bench.place.region === region.id;
  });
