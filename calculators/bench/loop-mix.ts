import {
  highestVolumeShare,
  liquidRange,
  massShareOf,
  mixDensity,
  mixHeatCapacity,
  type Antifreeze,
} from '../properties/glycol.ts';
import { waterRange } from '../properties/water.ts';
import type { Bench } from './fields.ts';
import { loopVolume, loopWallMass, pipeOf } from './geometry.ts';

/** What fills the loop. */
export interface LoopMix {
  readonly antifreeze: Antifreeze;
  /** Share of antifreeze by mass [1]; zero for plain water. */
  readonly massShare: number;
  /** The coldest at which it is still liquid [°C]. */
  readonly coldestLiquid: number;
  /** Whether the bench asks for a larger share than any published figure reaches. The mix is then the strongest published. */
  readonly beyondPublished: boolean;
}

export function loopMix({ mix }: Pick<Bench, 'mix'>): LoopMix {
  const { antifreeze, share } = mix;
  if (antifreeze === 'none') {
    return { antifreeze, massShare: 0, coldestLiquid: waterRange.from, beyondPublished: false };
  }
  const highest = highestVolumeShare(antifreeze);
  const massShare = massShareOf(antifreeze, Math.min(share, highest));
  const coldestLiquid = liquidRange(antifreeze, massShare).from;
  return { antifreeze, massShare, coldestLiquid, beyondPublished: share > highest };
}

/** Density of the fluid in the loop [kg/m³] at t [°C]. Throws `OutOfRange` where it is frozen or boils. */
export const fluidDensity = ({ antifreeze, massShare }: LoopMix, t: number): number =>
  mixDensity(antifreeze, massShare, t);

/** Heat capacity of the fluid per volume [J/(m³·K)] at t [°C]. Throws `OutOfRange` where it is frozen or boils. */
export const fluidVolumeHeatCapacity = ({ antifreeze, massShare }: LoopMix, t: number): number =>
  mixDensity(antifreeze, massShare, t) * mixHeatCapacity(antifreeze, massShare, t);

/** Temperature at which the heat capacity of the loop is taken [°C]: where common practice keeps it. */
export const loopReference = 5;

/** Heat capacity of the filled loop, fluid and pipe wall [J/K]. */
export const loopHeatCapacity = (bench: Bench): number =>
  loopVolume(bench) * fluidVolumeHeatCapacity(loopMix(bench), loopReference) +
  loopWallMass(bench) * pipeOf(bench).heatCapacity;
