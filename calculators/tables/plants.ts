import { cite, type Citation } from '../sources.ts';

/** Temperatures of the root zone that killed roots [°C], as published; null where nothing was found. */
export interface Plant {
  readonly label: string;
  readonly youngRoots: number | null;
  readonly matureRoots: number | null;
  readonly cites: readonly Citation[];
}

export const plants = {
  unknown: {
    label: 'Roses and other kinds with no published value',
    youngRoots: -5,
    matureRoots: -5,
    cites: [cite('assumption', 'tender class: roots at or below −5 °C are taken as lost')],
  },
  taxus: {
    label: 'Yew (Taxus)',
    youngRoots: -3.9,
    matureRoots: -12.2,
    cites: [cite('post1978', 'Taxus: 25 °F young, 10 °F older')],
  },
  buxus: {
    label: 'Box (Buxus)',
    youngRoots: -3.9,
    matureRoots: null,
    cites: [cite('dirr-smith', 'white root tips 20 to 25 °F')],
  },
  'ilex-crenata': {
    label: 'Japanese holly (Ilex crenata)',
    youngRoots: -3.9,
    matureRoots: -6.7,
    cites: [cite('dirr-smith', 'white root tips 20 to 25 °F'), cite('havis1976', '20 °F, from memory')],
  },
  'ilex-opaca': {
    label: 'American holly (Ilex opaca)',
    youngRoots: -5,
    matureRoots: -12.8,
    cites: [cite('mathers', '23 °F immature, 9 °F mature')],
  },
  pyracantha: {
    label: 'Firethorn (Pyracantha coccinea)',
    youngRoots: -5.6,
    matureRoots: -16.7,
    cites: [cite('dirr-smith', '22 °F young, 2 °F old')],
  },
  philadelphus: {
    label: 'Mock orange (Philadelphus)',
    youngRoots: -4.4,
    matureRoots: null,
    cites: [cite('post1978', '24 °F')],
  },
  magnolia: {
    label: 'Magnolia',
    youngRoots: -5,
    matureRoots: -5,
    cites: [cite('havis1976', '23 °F, from memory')],
  },
  cornus: {
    label: 'Flowering dogwood (Cornus florida)',
    youngRoots: null,
    matureRoots: -6.7,
    cites: [cite('havis1976', '20 °F, from memory')],
  },
  rhododendron: {
    label: 'Rhododendron, hardy large-leaved kinds',
    youngRoots: -6.7,
    matureRoots: -17.8,
    cites: [cite('dirr-smith', 'prunifolium young 20 °F; catawbiense 0 °F')],
  },
  'pinus-palustris': {
    label: 'Longleaf pine seedlings (Pinus palustris)',
    youngRoots: -3.9,
    matureRoots: null,
    cites: [cite('tinus2002', 'lowest tolerable 25 °F')],
  },
} as const satisfies Record<string, Plant>;
