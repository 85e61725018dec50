import type { AstroIntegration } from 'astro';
import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { readBenchFile, type Problem } from '../../content/bench-file.ts';
import { readCatalogue } from '../../content/languages.ts';
import { idOf, readRegions, type FileText } from '../../content/regions.ts';
import type { Region } from '../../calculators/region.ts';

const content = fileURLToPath(new URL('../../content/', import.meta.url));

const stop = (problems: readonly Problem[]): never => {
  throw new Error(problems.map(({ text }) => text).join('\n'));
};

async function filesOf(folder: string): Promise<FileText[]> {
  const names = (await readdir(content + folder)).filter((name) => name.endsWith('.yaml')).sort();
  return Promise.all(
    names.map(async (name) => ({
      file: `content/${folder}/${name}`,
      text: await readFile(`${content}${folder}/${name}`, 'utf8'),
    })),
  );
}

async function regionsOfContent(): Promise<readonly Region[]> {
  const read = readRegions(await filesOf('regions'), await filesOf('stations'));
  return read.ok ? read.regions : stop(read.problems);
}

function readBench({ file, text }: FileText, regions: readonly Region[]) {
  const read = readBenchFile(text, file, regions);
  return read.ok ? { id: idOf(file), bench: read.bench, assumed: read.assumed } : stop(read.problems);
}

/** The example benches, or those that stand in one region; others are not even read. */
async function benchesOf(region?: string) {
  const regions = await regionsOfContent();
  // A bench names its region on a line of its own.
  const here = (text: string): boolean =>
    region === undefined ||
    new RegExp(String.raw`^\s+region:\s*["']?${region}["']?\s*(?:#.*)?$`, 'mu').test(text);
  return (await filesOf('benches')).filter(({ text }) => here(text)).map((file) => readBench(file, regions));
}

/** The example bench of a region: the first file of content/benches that stands there. */
export async function exampleOf(region: string) {
  const regions = await regionsOfContent();
  const benches = await benchesOf(region);
  const found = benches.find(({ bench }) => bench.place.region === region);
  if (found) return found;
  throw new Error(
    regions.some(({ id }) => id === region)
      ? `The region "${region}" has no example bench: no file of content/benches stands there.`
      : `No region is called "${region}". There are: ${regions.map(({ id }) => id).join(', ')}.`,
  );
}

/** The regions that a guide knows: all, or the one that it is for. */
const knownRegions = async (only: string | undefined): Promise<readonly Region[]> =>
  (await regionsOfContent()).filter(({ id }) => only === undefined || id === only);

/** The units, the paper and the money that people are used to in each region that the guide knows, by id. */
export async function customsOfRegions(only: string | undefined) {
  const regions = await knownRegions(only);
  return Object.fromEntries(
    regions.map(({ id, units, paper, tariff: { currency } }) => [id, { units, paper, currency }]),
  );
}

type VitePlugins = NonNullable<NonNullable<Parameters<SetUp>[0]['config']['vite']>['plugins']>;
type SetUp = NonNullable<AstroIntegration['hooks']['astro:config:setup']>;

/** What the pages are built with, and what a browser loads of a region when a bench stands there. */
const modules = { known: 'guide:known', files: 'guide:region-files' } as const;

/**
 * Lets pages and scripts import regions and example benches as what the readers of content make of them. A file with a
 * mistake stops the build with the reader's own message, and neither YAML nor its checker goes to a browser. A guide
 * for one region knows that one alone, so that neither its size nor its files depend on the others.
 */
function contentModules(only: string | undefined): VitePlugins[number] {
  return {
    name: 'content-files',
    resolveId: (id: string) => (Object.values<string>(modules).includes(id) ? `\0${id}` : undefined),
    async load(id: string) {
      if (id === `\0${modules.known}`) {
        const value = { regions: await knownRegions(only), benches: await benchesOf(only) };
        return `export default ${JSON.stringify(value)};`;
      }
      if (id === `\0${modules.files}`) {
        const files = (await knownRegions(only)).map((region) => {
          const file = JSON.stringify(`${content}regions/${region.id}.yaml`);
          return `${JSON.stringify(region.id)}: () => import(${file}).then((one) => one.default)`;
        });
        return `export default { ${files.join(', ')} };`;
      }
      const catalogue = /[/\\]content[/\\](languages[/\\].+\.yaml)$/u.exec(id)?.[1];
      if (catalogue !== undefined) {
        const file = `content/${catalogue}`;
        const read = readCatalogue([{ file, text: await readFile(content + catalogue, 'utf8') }]);
        return read.ok ? `export default ${JSON.stringify(read.words)};` : stop(read.problems);
      }
      const region = /[/\\]content[/\\]regions[/\\]([^/\\]+)\.yaml$/u.exec(id)?.[1];
      if (region === undefined) return undefined;
      const value = (await regionsOfContent()).find((one) => one.id === region);
      return `export default ${JSON.stringify(value)};`;
    },
  };
}

/** @param only the one region that the guide is for; all where it is left out */
export const contentFiles = (only: string | undefined): AstroIntegration => ({
  name: 'content-files',
  hooks: {
    'astro:config:setup': ({ updateConfig }) => {
      updateConfig({
        vite: { plugins: [contentModules(only)], worker: { plugins: () => [contentModules(only)] } },
      });
    },
  },
});
