import { airChecks } from './air.ts';
import type { Check } from './check.ts';
import { convectionChecks } from './convection.ts';
import { coveringChecks } from './coverings.ts';
import { electricChecks } from './electric.ts';
import { glycolChecks } from './glycol.ts';
import { groundChecks } from './ground.ts';
import { mediaChecks } from './media.ts';
import { movingAirChecks } from './moving-air.ts';
import { pipeChecks } from './pipes.ts';
import { radiationChecks } from './radiation.ts';
import { waterChecks } from './water.ts';

/** The published values that one part of the guide is held against. */
export interface Topic {
  readonly id: string;
  readonly label: string;
  readonly checks: readonly Check[];
}

/** Every check of the guide: read by the tests, and by the page that shows them. */
export const topics: readonly Topic[] = [
  { id: 'water', label: 'Water and ice', checks: waterChecks },
  { id: 'glycol', label: 'Antifreeze mixes', checks: glycolChecks },
  { id: 'air', label: 'Air and its moisture', checks: airChecks },
  { id: 'convection', label: 'Natural convection', checks: convectionChecks },
  { id: 'moving-air', label: 'Draught and wind', checks: movingAirChecks },
  { id: 'radiation', label: 'Radiation, conduction and air exchange', checks: radiationChecks },
  { id: 'coverings', label: 'Skirts and covers', checks: coveringChecks },
  { id: 'ground', label: 'Ground and soil', checks: groundChecks },
  { id: 'media', label: 'Potting media', checks: mediaChecks },
  { id: 'pipes', label: 'Pipes', checks: pipeChecks },
  { id: 'electric', label: 'Cable and circuit', checks: electricChecks },
];
