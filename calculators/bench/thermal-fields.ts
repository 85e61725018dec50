import type { FieldPath } from './fields.ts';

/** The fields that the thermal network of a bench is made of, where it stands, and how its heat is driven. */
export const thermalFields = [
  'cover.kind',
  'control.sensor',
  'control.setPoint',
  'control.differential',
  'skirt.material',
  'skirt.layers',
  'skirt.bottomGap',
  'skirt.topGap',
  'skirt.closed',
  'skirt.wet',
  'cover.height',
  'cover.gap',
  'frame.length',
  'frame.width',
  'frame.height',
  'frame.top',
  'frame.potShare',
  'frame.floor',
  'frame.floorInsulation',
  'pots.count',
  'pots.diameter',
  'pots.height',
  'pots.medium',
  'pots.moisture',
  'pots.spacing',
  'loop.pipe',
  'loop.run',
  'loop.inset',
  'loop.length',
  'mix.antifreeze',
  'mix.share',
  'cable.kind',
  'cable.powerPerLength',
  'cable.slope',
  'cable.length',
  'cable.diameter',
  'cable.contact',
  'supply.voltage',
  'supply.feederLength',
  'supply.conductor',
  'supply.otherLoad',
  'place.station',
  'place.houseKind',
  'place.houseCovering',
  'place.houseOffset',
  'place.houseMinimum',
  'place.groundTemperature',
] as const satisfies readonly FieldPath[];

/** The fields that the night is told by that a bench is built for. */
export const designNightFields = [
  'place.designNight',
  'place.ownLowest',
  'place.coldHours',
] as const satisfies readonly FieldPath[];

/** Fields by their importance to a question, each once. */
export const reading = (...paths: readonly FieldPath[]): readonly FieldPath[] => [...new Set(paths)];
