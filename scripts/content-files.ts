import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Manner } from '../calculators/quantities/show.ts';
import type { Region } from '../calculators/region.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { languageOf } from '../content/language-of.ts';
import { readCatalogue, type ReadCatalogue } from '../content/languages.ts';
import { readRegions, type FileText } from '../content/regions.ts';
import { BadInput, oneOfThese } from './command.ts';

const content = fileURLToPath(new URL('../content/', import.meta.url));

/** The YAML files of a folder of content, in the order of their names. */
export const filesOf = (
  folder: 'regions' | 'stations' | 'benches' | `languages/${string}`,
): readonly FileText[] =>
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

/** The languages that have a catalogue. English is what catalogues translate, and needs none. */
export const languages = (): readonly string[] => readdirSync(join(content, 'languages')).sort();

const catalogues = new Map<string, Extract<ReadCatalogue, { ok: true }>>();

/**
 * The catalogue of a language, read once.
 * @throws {BadInput} where there is no such language, or with every problem of its files
 */
export function catalogueOf(language: string): Extract<ReadCatalogue, { ok: true }> {
  const known = catalogues.get(language);
  if (known) return known;
  const all = languages();
  if (!all.includes(language))
    throw new BadInput(`The language must be ${oneOfThese(['en', ...all])}. Found: ${language}`);
  const read = readCatalogue(filesOf(`languages/${language}`));
  if (!read.ok) throw new BadInput(read.problems.map(({ text }) => text).join('\n'));
  catalogues.set(language, read);
  return read;
}

/** The tag of the language asked for: that of the region where it is one of its own, such as es-AR for es. */
export const tagOf = (language: string | undefined, { languages: own }: Region): string =>
  (language === undefined ? own[0] : own.find((tag) => languageOf(tag) === language)) ?? language ?? 'en';

/** How a language is written and said: what `Manner` takes of it. English where no catalogue has the language of the tag. */
export function languageManner(tag: string): Pick<Manner, 'locale' | 'words'> {
  const language = languageOf(tag);
  if (language === 'en') return { locale: tag };
  return { locale: tag, words: catalogueOf(language).words };
}

/** The region with this id. Throws `BadInput` that says what there is, where there is none; `asked` is how it was asked for. */
export function regionNamed(id: string, regions: readonly Region[], asked = '--region'): Region {
  const region = regions.find((one) => one.id === id);
  if (!region)
    throw new BadInput(`${asked} must be ${oneOfThese(regions.map((one) => one.id))}. Found: ${id}`);
  return region;
}

/** The bench files that stand in a region. Files that cannot be read are told where they are made something of. */
export const benchesIn = (region: Region, regions: readonly Region[]): readonly FileText[] =>
  filesOf('benches').filter(({ file, text }) => {
    const read = readBenchFile(text, file, regions);
    return read.ok && read.bench.place.region === region.id;
  });
