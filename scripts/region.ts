import { writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { parseArgs } from 'node:util';
import { isMap, isNode, parseDocument, type Document } from 'yaml';
import { readBenchFile } from '../content/bench-file.ts';
import { regionNotes } from '../content/region-notes.ts';
import { isId, readRegion } from '../content/region-schema.ts';
import { idOf, readRegions, type FileText } from '../content/regions.ts';
import { readStation, type StationRecord } from '../content/station-schema.ts';
import { BadInput, reasonOf, runCommand, type Surroundings } from './command.ts';
import { benchesIn, filesOf, loadRegions, regionNamed } from './content-files.ts';
import { station } from './station.ts';
import { root } from './steps.ts';
import { fileName } from './worksheets.ts';

const help = `Makes the file of a region, and reads it over.

  npm run region -- new ID --name NAME [options]
  npm run region -- check ID
  npm run region -- station FILE [options]

  new ID           write content/regions/ID.yaml and an example bench that stands there, out of another region's
  station FILE     make a weather record out of a file of hours or of days; "station --help" says more
  check ID         tell what is missing or wrong in content/regions/ID.yaml, and what to look at again

  --name NAME      what the region is called
  --like ID        the region to begin with (estermark; tallow where --units is us)
  --language TAG   language of the pages, such as en or en-US
  --units WHICH    metric or us
  --paper WHICH    a4 or letter
  --voltage V      of the mains, such as "230 V"
  --frequency HZ   of the mains, such as "50 Hz"
  --rules WHICH    rules for circuits, iec or us
  --price PRICE    of power, such as "0.28 /kWh"
  --currency ABC   three letters, such as EUR
  --guide ADDRESS  where the guide will lie on the web: https://, and a / at the end
  --station NAME   the weather station
  --record ID      its weather record, a file of content/stations; npm run station makes one
  --office NAME    whose guide it is
  --help           this text

What is not given is taken over from the other region; "check" lists the words that still stand there.
`;

const text = { type: 'string' } as const;
const options = {
  name: text,
  like: text,
  language: text,
  units: text,
  paper: text,
  voltage: text,
  frequency: text,
  rules: text,
  price: text,
  currency: text,
  guide: text,
  station: text,
  record: text,
  office: text,
  help: { type: 'boolean' },
} as const;

/** Where in the file of a region each option goes. */
const places = {
  name: ['name'],
  language: ['languages', 0],
  units: ['units'],
  paper: ['paper'],
  voltage: ['mains', 'voltage'],
  frequency: ['mains', 'frequency'],
  rules: ['mains', 'rules'],
  price: ['tariff', 'price'],
  currency: ['tariff', 'currency'],
  guide: ['guide'],
  station: ['stations', 0, 'name'],
  record: ['stations', 0, 'record'],
  office: ['office', 'name'],
} as const satisfies Readonly<Record<string, readonly (string | number)[]>>;

const regionFile = (id: string): string => `content/regions/${id}.yaml`;
const benchFile = (id: string): string => `content/benches/${id}-example.yaml`;

/** A file with the comments that it has, but for those at its top, which speak of the file that it was. */
function documentOf({ text: whole }: FileText, top: string): Document {
  const document = parseDocument(whole);
  document.commentBefore = top;
  const first = isMap(document.contents) ? document.contents.items[0]?.key : undefined;
  for (const node of [document.contents, first]) if (isNode(node)) delete node.commentBefore;
  return document;
}

const written = (document: Document): string =>
  document.toString({ lineWidth: 110, flowCollectionPadding: false });

function write(file: string, what: string): void {
  try {
    writeFileSync(join(root, file), what, { flag: 'wx' });
  } catch (error) {
    throw new BadInput(
      (error as NodeJS.ErrnoException).code === 'EEXIST'
        ? `${file} is there already; it was left as it is.`
        : `${file} cannot be written: ${reasonOf(error)}.`,
    );
  }
}

function fileOf(folder: 'regions' | 'benches', file: string): FileText {
  const found = filesOf(folder).find((one) => one.file === file);
  if (!found) throw new BadInput(`There is no ${file}.`);
  return found;
}

const records = (): ReadonlyMap<string, StationRecord> =>
  new Map(
    filesOf('stations').flatMap(({ file, text: whole }) => {
      const read = readStation(whole, file);
      return read.ok ? [[idOf(file), read.value] as const] : [];
    }),
  );

/** What the options of the command gave, by their names. */
export type Given = Readonly<Partial<Record<keyof typeof places, string>>> & {
  readonly name: string;
  readonly like?: string | undefined;
};

/**
 * The file of a new region and of an example bench that stands there.
 * @throws {BadInput} when the guide could not read them
 */
export function newRegion(id: string, given: Given): readonly FileText[] {
  const regions = loadRegions();
  const like = regionNamed(given.like ?? (given.units === 'us' ? 'tallow' : 'estermark'), regions, '--like');
  const file = regionFile(id);
  const top = ` Begun as a copy of ${like.id}.yaml: read every line over. "npm run region -- check ${id}" helps.`;
  const region = documentOf(fileOf('regions', regionFile(like.id)), top);
  for (const [option, place] of Object.entries(places)) {
    const value = given[option as keyof typeof places];
    if (value !== undefined) region.setIn(place, value);
  }
  const stationId = fileName(given.station ?? '').replaceAll(/[^a-z\d-]/gu, '');
  if (isId(stationId)) region.setIn(['stations', 0, 'id'], stationId);

  const [example] = benchesIn(like, regions);
  if (!example) throw new BadInput(`${like.id} has no example bench to begin with.`);
  const bench = documentOf(
    example,
    ` The example bench of ${given.name}, begun as a copy of ${example.file}.`,
  );
  bench.setIn(['place', 'region'], id);
  bench.setIn(['place', 'station'], region.getIn(['stations', 0, 'id']));

  const read = readRegion(id, written(region), file, records());
  if (!read.ok) throw new BadInput(read.problems.map((one) => one.text).join('\n'));
  const readBench = readBenchFile(written(bench), benchFile(id), [...regions, read.value]);
  if (!readBench.ok) throw new BadInput(readBench.problems.map((one) => one.text).join('\n'));
  return [
    { file, text: written(region) },
    { file: benchFile(id), text: written(bench) },
  ];
}

function makeNew(id: string, given: Partial<Given>, { write: say }: Surroundings): void {
  if (!isId(id))
    throw new BadInput(`The name in files must be small letters, digits and hyphens. Found: ${id}`);
  const { name } = given;
  if (name === undefined) throw new BadInput('Give --name; --help says what else there is.');
  const files = newRegion(id, { ...given, name });
  for (const one of files) write(one.file, one.text);
  say(`${files.map(({ file }) => `${file}\n`).join('')}Put your own numbers and words in, then:
  npm run region -- check ${id}
  npm run build -- --region ${id}
`);
}

function checkOne(id: string, { write: say }: Surroundings): void {
  const own = fileOf('regions', regionFile(id));
  // The others may have mistakes of their own, which are not this region's.
  const read = readRegions([own], filesOf('stations'), filesOf('regions'));
  if (!read.ok) throw new BadInput(read.problems.map((one) => one.text).join('\n'));
  const [region] = read.regions;
  if (!region) throw new Error(`${own.file} was read and is not there`);
  if (benchesIn(region, [region]).length === 0)
    throw new BadInput(
      `${own.file}: the region has no example bench, and the pages are built with one. Put a bench file with "region: ${id}" into ${relative(root, join(root, 'content/benches'))}/.`,
    );
  const notes = regionNotes(
    region,
    own,
    filesOf('regions').filter(({ file }) => file !== own.file),
  );
  const count = region.stations.length;
  say(`${own.file} can be built: ${region.name}, ${count} ${count === 1 ? 'station' : 'stations'}.\n`);
  if (notes.length > 0) say(`Look again at:\n${notes.map((one) => `  ${one.text}\n`).join('')}`);
}

/** Makes and checks regions as `npm run region` does; see the help above. */
export function region(args: readonly string[], surroundings: Surroundings): void {
  if (args[0] === 'station') {
    station(args.slice(1), surroundings);
    return;
  }
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: true,
    options,
  });
  if (values.help) {
    surroundings.write(help);
    return;
  }
  const [what, id, ...more] = positionals;
  if ((what !== 'new' && what !== 'check') || id === undefined || more.length > 0)
    throw new BadInput(
      `Ask for "new ID", "check ID" or "station FILE"; --help says more. Found: ${positionals.join(' ') || 'nothing'}`,
    );
  if (what === 'new') makeNew(id, values, surroundings);
  else checkOne(id, surroundings);
}

if (import.meta.main) await runCommand(region);
