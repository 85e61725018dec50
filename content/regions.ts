import type { Region } from '../calculators/region.ts';
import { idOf, type FileText } from './file-text.ts';
import { problem, type Problem } from './problem.ts';
import { isId, readRegion } from './region-schema.ts';
import { readStation, type StationRecord } from './station-schema.ts';

export { idOf, type FileText };

export type ReadRegions =
  | { readonly ok: true; readonly regions: readonly Region[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Reads the regions of a guide and the weather records that their stations are made of.
 *
 * @param regionFiles the files of content/regions
 * @param stationFiles the files of content/stations
 * @param likes the files that a region may be like, where not all of them are to be read
 */
export function readRegions(
  regionFiles: readonly FileText[],
  stationFiles: readonly FileText[],
  likes: readonly FileText[] = regionFiles,
): ReadRegions {
  const problems: Problem[] = [];
  const named = ({ file }: FileText): boolean => {
    if (isId(idOf(file))) return true;
    const allowed = 'small letters, digits and hyphens, then .yaml';
    problems.push(
      problem({ file, line: 1, field: '', found: idOf(file), allowed }, `The file’s name must be ${allowed}`),
    );
    return false;
  };
  const records = new Map<string, StationRecord>();
  for (const one of stationFiles.filter(named)) {
    const read = readStation(one.text, one.file);
    if (read.ok) records.set(idOf(one.file), read.value);
    else problems.push(...read.problems);
  }
  const regions: Region[] = [];
  for (const one of regionFiles.filter(named)) {
    const read = readRegion(idOf(one.file), one.text, one.file, records, likes);
    if (read.ok) regions.push(read.value);
    else problems.push(...read.problems);
  }
  return problems.length > 0 ? { ok: false, problems } : { ok: true, regions };
}
