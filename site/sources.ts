import { sources, type SourceId } from '../calculators/sources.ts';

const order = Object.keys(sources) as SourceId[];

/** The number that a source has in the list of sources, from 1. */
export const sourceNumber = (id: SourceId): number => {
  const place = order.indexOf(id);
  if (place < 0) throw new Error(`No source is called "${id}". There are: ${order.join(', ')}.`);
  return place + 1;
};
