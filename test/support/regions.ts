import { loadRegions } from '../../scripts/content-files.ts';

/** The regions of this guide, read once. */
export const regions = loadRegions();
