import { showQuantity, type Manner } from '../../calculators/quantities/show.ts';

/** Energy with what it costs: "85.2 kWh, costs 3.79". */
export const energyWords = (energy: number, cost: number, manner: Manner): string =>
  `${showQuantity(energy, 'energy', manner)}, costs ${showQuantity(cost, 'money', manner)}`;
