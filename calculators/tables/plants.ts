import { messages } from '../say.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { cite, type Citation } from '../sources.ts';

/**
 * Temperatures of the root zone that killed roots [°C], as published; null where nothing was found. Where sources differ it is
 * the warmest. Young roots are this year's, white; mature ones brown.
 */
export interface Plant {
  readonly label: string;
  readonly youngRoots: Celsius | null;
  readonly matureRoots: Celsius | null;
  readonly cites: readonly Citation[];
}

const plant = (
  label: string,
  youngRoots: Celsius | null,
  matureRoots: Celsius | null,
  ...cites: readonly Citation[]
): Plant => ({ label, youngRoots, matureRoots, cites });

/** The list of 38 kinds of 1976. Its range, 23 to −10 °F, was seen; its rows are from memory. */
const havis = (fahrenheit: number): Citation => cite('havis1976', `${fahrenheit} °F, from memory`);

export const plants = {
  unknown: plant(
    messages('Roses and other kinds with no published value'),
    -3.9,
    -5,
    cite(
      'assumption',
      'tender class: young roots as those of yew and box, −3.9 °C; old roots at or below −5 °C are taken as lost',
    ),
  ),
  'picea-glauca-conica': plant(
    messages('Alberta spruce (Picea glauca ‘Conica’)'),
    null,
    -17.8,
    cite('bay-weekly', '0 °F'),
  ),
  'acer-ginnala': plant(messages('Amur maple (Acer ginnala)'), null, -17.8, cite('bay-weekly', '0 °F')),
  'azalea-exbury': plant(messages('Azalea, Exbury hybrid'), null, -8.3, cite('jars37', '17 °F')),
  'rhododendron-gibraltar': plant(messages('Azalea ‘Gibraltar’'), null, -12.2, havis(10)),
  'rhododendron-hino-crimson': plant(messages('Azalea ‘Hino Crimson’'), null, -7.2, cite('jars37', '19 °F')),
  'rhododendron-hinodegiri': plant(
    messages('Azalea ‘Hinodegiri’'),
    null,
    -12.2,
    cite('dirr-smith', '10 °F'),
    cite('jars37', '−12.2 °C'),
    havis(10),
  ),
  betula: plant(messages('Birch (Betula)'), null, -17.8, cite('bay-weekly', '0 °F')),
  buxus: plant(
    messages('Box (Buxus)'),
    -3.9,
    -9.4,
    cite('dirr-smith', 'white root tips 20 to 25 °F'),
    havis(15),
  ),
  cytisus: plant(messages('Broom (Cytisus × praecox)'), null, -9.4, havis(15)),
  camellia: plant(messages('Camellia'), -4.4, -4.4, cite('bay-weekly', 'as high as 24 °F')),
  'cotoneaster-adpressus': plant(
    messages('Cotoneaster, creeping (C. adpressus praecox)'),
    null,
    -12.2,
    havis(10),
  ),
  'cotoneaster-horizontalis': plant(messages('Cotoneaster, rock (C. horizontalis)'), null, -9.4, havis(15)),
  cryptomeria: plant(messages('Japanese cedar (Cryptomeria japonica)'), null, -8.9, havis(16)),
  daphne: plant(messages('Rose daphne (Daphne cneorum)'), null, -6.7, havis(20)),
  cornus: plant(messages('Flowering dogwood (Cornus florida)'), null, -6.7, havis(20)),
  pyracantha: plant(
    messages('Firethorn (Pyracantha coccinea)'),
    -5.6,
    -7.8,
    cite('dirr-smith', '22 °F young, 2 °F old'),
    havis(18),
  ),
  'fraxinus-pennsylvanica': plant(
    messages('Green ash (Fraxinus pennsylvanica)'),
    null,
    -9,
    cite('santamour1979', 'two seed sources, −9 and −15 °C'),
  ),
  'ilex-opaca': plant(
    messages('American holly (Ilex opaca)'),
    -5,
    -6.7,
    cite('mathers', '23 °F immature, 9 °F mature'),
    havis(20),
  ),
  'ilex-crenata': plant(
    messages('Japanese holly (Ilex crenata)'),
    -3.9,
    -6.7,
    cite('dirr-smith', 'white root tips 20 to 25 °F'),
    havis(20),
  ),
  'ilex-glabra': plant(messages('Inkberry (Ilex glabra)'), null, -9.4, havis(15)),
  'hedera-helix': plant(messages('Ivy (Hedera helix ‘Baltica’)'), null, -9.4, havis(15)),
  'juniperus-horizontalis': plant(
    messages('Creeping juniper (Juniperus horizontalis)'),
    null,
    -17.8,
    havis(0),
  ),
  leucothoe: plant(messages('Drooping leucothoe (Leucothoe fontanesiana)'), null, -15, havis(5)),
  magnolia: plant(messages('Magnolia'), -4.4, -5, cite('bay-weekly', 'as high as 24 °F'), havis(23)),
  'acer-palmatum': plant(messages('Japanese maple (Acer palmatum ‘Atropurpureum’)'), null, -10, havis(14)),
  philadelphus: plant(messages('Mock orange (Philadelphus)'), -4.4, null, cite('post1978', '24 °F')),
  pachysandra: plant(messages('Pachysandra (P. terminalis)'), null, -9.4, havis(15)),
  'vinca-minor': plant(messages('Periwinkle (Vinca minor)'), null, -9.4, havis(15)),
  'pieris-japonica': plant(messages('Pieris, Japanese (P. japonica)'), null, -9.4, havis(15)),
  'pieris-floribunda': plant(messages('Pieris, mountain (P. floribunda)'), null, -15, havis(5)),
  'pinus-palustris': plant(
    messages('Longleaf pine seedlings (Pinus palustris)'),
    -3.9,
    null,
    cite('tinus2002', 'lowest tolerable 25 °F'),
  ),
  potentilla: plant(messages('Shrubby cinquefoil (Potentilla fruticosa)'), null, -23.3, havis(-10)),
  rhododendron: plant(
    messages('Rhododendron, hardy large-leaved kinds'),
    -6.7,
    -17.8,
    cite('dirr-smith', 'prunifolium young 20 °F; catawbiense 0 °F'),
    havis(0),
  ),
  'rhododendron-carolinianum': plant(
    messages('Rhododendron, Carolina (R. carolinianum)'),
    null,
    -17.8,
    havis(0),
  ),
  'rhododendron-pjm': plant(
    messages('Rhododendron ‘PJM’'),
    null,
    -22.8,
    cite('dirr-smith', '−9 °F'),
    cite('jars37', '−23.3 °C'),
    havis(-9),
  ),
  'rhododendron-prunifolium': plant(
    messages('Rhododendron, plumleaf (R. prunifolium)'),
    -6.7,
    null,
    cite('dirr-smith', 'young roots 20 °F'),
  ),
  'rhododendron-purple-gem': plant(
    messages('Rhododendron ‘Purple Gem’'),
    null,
    -9.4,
    cite('jars37', '15 °F'),
  ),
  'picea-glauca': plant(messages('White spruce (Picea glauca)'), null, -23.3, havis(-10)),
  'picea-omorika': plant(messages('Serbian spruce (Picea omorika)'), null, -23.3, havis(-10)),
  'viburnum-carlesii': plant(
    messages('Koreanspice viburnum (Viburnum carlesii)'),
    -4.4,
    -9.4,
    cite('bay-weekly', 'viburnum as high as 24 °F'),
    havis(15),
  ),
  'euonymus-fortunei': plant(
    messages('Wintercreeper (Euonymus fortunei), variegated and large kinds'),
    null,
    -9.4,
    havis(15),
  ),
  'euonymus-colorata': plant(
    messages('Wintercreeper, purple (Euonymus fortunei ‘Colorata’)'),
    null,
    -15,
    havis(5),
  ),
  taxus: plant(
    messages('Yew (Taxus)'),
    -3.9,
    -12.2,
    cite('post1978', 'Taxus: 25 °F young, 10 °F older'),
    havis(10),
  ),
} as const satisfies Record<string, Plant>;

/** The temperature to stay away from, and whether it was published for this kind and age of roots. */
export interface Killing {
  readonly t: Celsius;
  readonly published: boolean;
}

/**
 * The temperature that kills roots of this kind and age [°C]. Young roots die at temperatures 5 to 11 K warmer than old ones
 * live through (Dirr and Smith; Mathers), so an old root's temperature is never taken for a young one: where none was
 * published for young roots they are of the tender class. Old roots without a value are taken as tender as young ones.
 */
export function killingTemperature(kind: keyof typeof plants, age: 'young' | 'mature'): Killing {
  const { youngRoots, matureRoots }: Plant = plants[kind];
  const tender = plants.unknown.youngRoots ?? -5;
  const value = age === 'young' ? youngRoots : matureRoots;
  if (kind !== 'unknown' && value !== null) return { t: value, published: true };
  if (age === 'young') return { t: Math.max(tender, matureRoots ?? tender), published: false };
  return { t: youngRoots ?? tender, published: false };
}
