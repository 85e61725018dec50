import { benchOf } from './all-fields.ts';
import type { Bench } from './fields.ts';

/**
 * A bench of start values, in base units: what a file or a link that leaves a field out means. Its name is empty.
 *
 * @param region where it stands, and
 * @param station the station of that region; both stay empty when left out, which only a form may show
 */
export const startBench = (region = '', station = ''): Bench =>
  benchOf(({ field }) => (field.shape === 'reference' ? { region, station }[field.to] : field.start));
