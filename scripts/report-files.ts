import type { Region } from '../calculators/region.ts';
import { languageOf } from '../content/language-of.ts';
import { readBenchFile } from '../content/bench-file.ts';
import { filesOf, loadRegions } from './content-files.ts';
import { reportLines } from './report-words.ts';

/** Reports are in English, with the digits of the region where it speaks that. */
const reportLocale = ({ languages: [tag = 'en'] }: Region): string => (languageOf(tag) === 'en' ? tag : 'en');

interface Report {
  readonly file: URL;
  readonly lines: readonly string[];
}

/** A report of each example bench, in the units of its region, and the file that it belongs into. */
export function reportsOfExamples(): readonly Report[] {
  const regions = loadRegions();
  return filesOf('benches').map(({ file, text }) => {
    const read = readBenchFile(text, file, regions);
    if (!read.ok) throw new Error(read.problems.map((problem) => problem.text).join('\n'));
    const { bench } = read;
    const region = regions.find(({ id }) => id === bench.place.region);
    const station = region?.stations.find(({ id }) => id === bench.place.station);
    if (!region || !station) throw new Error(`${file} stands nowhere`);
    const name = (file.split('/').at(-1) ?? file).replace(/\.yaml$/u, '.txt');
    return {
      file: new URL(`../test/reports/${name}`, import.meta.url),
      lines: reportLines({ bench, region, station }, { system: region.units, locale: reportLocale(region) }),
    };
  });
}
