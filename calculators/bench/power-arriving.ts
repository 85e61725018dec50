import type { Situation } from '../calculator.ts';
import { ratedPower } from '../electric/cable.ts';
import { currentOf, powerShareAfterDrop, settledDrop, voltageDrop } from '../electric/circuit.ts';
import { conductors } from '../tables/conductors.ts';

/** Voltage at the panel [V]: the bench's own, or that of the region. */
export const voltageOf = ({ bench: { supply }, region }: Situation): number =>
  supply.voltage ?? region.mains.voltage;

/** Current of the cable when it is on and warm, and of all else on its circuit [A], at the full voltage. */
export function currentsOf(situation: Situation): { readonly cable: number; readonly other: number } {
  const { cable, supply } = situation.bench;
  const voltage = voltageOf(situation);
  return { cable: currentOf(ratedPower(cable), voltage), other: currentOf(supply.otherLoad, voltage) };
}

/** Voltage lost in the feeder, reckoned as tables do, as a share of the full voltage [1]. */
export function dropOf(situation: Situation): number {
  const { conductor, feederLength } = situation.bench.supply;
  const { cable, other } = currentsOf(situation);
  return voltageDrop(conductors[conductor], feederLength, cable + other) / voltageOf(situation);
}

/**
 * Share of its rated power that a cable gives at the end of its feeder [1]; see `powerShareAfterDrop`. A self-regulating
 * cable makes up for what it loses and is taken at its line.
 */
export const powerArriving = (situation: Situation): number =>
  situation.bench.cable.kind === 'constant' ? powerShareAfterDrop(settledDrop(dropOf(situation))) : 1;
