import files from 'guide:region-files';
import type { Situation } from '../../calculators/calculator.ts';
import type { Region, Station } from '../../calculators/region.ts';
import type { Bench } from '../../calculators/bench/fields.ts';

/** The ids of all regions that the guide knows. */
export const regionIds: readonly string[] = Object.keys(files);

/** The region with this id; that of the guide where a bench names one that the guide does not know. */
export async function loadRegion(id: string): Promise<Region> {
  const load = files[id] ?? files[import.meta.env.REGION];
  if (!load) throw new Error(`no region ${id}`);
  return load();
}

/** The region's station with this id, or its first. */
export function stationOf(region: Region, id: string): Station {
  const station = region.stations.find((one) => one.id === id) ?? region.stations[0];
  if (!station) throw new Error(`the region ${region.id} has no station`);
  return station;
}

/** A bench where it stands. */
export async function situationOf(bench: Bench): Promise<Situation> {
  const region = await loadRegion(bench.place.region);
  return { bench, region, station: stationOf(region, bench.place.station) };
}
