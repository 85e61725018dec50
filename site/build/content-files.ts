import type { AstroIntegration } from 'astro';
import { readdir, readFile } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';
import { readBenchFile, type Problem } from '../../content/bench-file.ts';
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

/** The example bench of a region: the first file of content/benches that stands there. */
export async function exampleOf(region: string) {
  const regions = await regionsOfContent();
  const benches = (await filesOf('benches')).map((file) => readBench(file, regions));
  const found = benches.find(({ bench }) => bench.place.region === region);
  if (found) return found;
  throw new Error(
    regions.some(({ id }) => id === region)
      ? `The region "${region}" has no example bench: no file of content/benches stands there.`
      : `No region is called "${region}". There are: ${regions.map(({ id }) => id).join(', ')}.`,
  );
}

/** The units, the paper and the money that people are used to in each region, by id. */
export async function customsOfRegions() {
  const regions = await regionsOfContent();
  return Object.fromEntries(
    regions.map(({ id, units, paper, tariff: { currency } }) => [id, { units, paper, currency }]),
  );
}

type VitePlugins = NonNullable<NonNullable<Parameters<SetUp>[0]['config']['vite']>['plugins']>;
type SetUp = NonNullable<AstroIntegration['hooks']['astro:config:setup']>;

/**
 * Lets pages and scripts import the YAML of regions and example benches as what the readers of content make of it. A
 * file with a mistake stops the build with the reader's own message, and neither YAML nor its checker goes to a
 * browser.
 */
function contentModules(): VitePlugins[number] {
  return {
    name: 'content-files',
    async load(id: string) {
      const folder = /[/\\]content[/\\](regions|benches)[/\\][^/\\]+\.yaml$/u.exec(id)?.[1];
      if (folder === undefined) return undefined;
      const regions = await regionsOfContent();
      const isThis = ({ file }: FileText) => idOf(file) === idOf(id);
      const value =
        folder === 'regions'
          ? regions.find((region) => region.id === idOf(id))
          : (await filesOf('benches')).filter(isThis).map((file) => readBench(file, regions))[0];
      return `export default ${JSON.stringify(value)};`;
    },
  };
}

export const contentFiles = (): AstroIntegration => ({
  name: 'content-files',
  hooks: {
    'astro:config:setup': ({ updateConfig }) => {
      updateConfig({ vite: { plugins: [contentModules()] } });
    },
  },
});
