import { messages } from '../say.ts';
import type { Celsius } from '../quantities/temperature.ts';
import type { Sentence } from '../calculator.ts';

/** How roots stand to the lowest temperature that the grower accepts, mildest first. */
export type RootState = 'calm' | 'freezing' | 'near' | 'below';

/** Roots this near to the limit need a hand: the error of a thermometer and of a forecast [K] (assumption). */
const near = 1;

/** The state of the coldest roots [°C] against the grower's limit [°C]. */
export function rootState(roots: Celsius, limit: Celsius): RootState {
  if (roots < limit) return 'below';
  if (roots < limit + near) return 'near';
  return roots < 0 ? 'freezing' : 'calm';
}

const actions: Readonly<Record<RootState, string>> = messages({
  below: 'Below your limit: cover, bring in more heat, or carry out what you cannot lose.',
  near: 'Near your limit: cover the plants, close every gap, look every two hours.',
  freezing: 'Pots are freezing and hold for now. Keep everything closed.',
  calm: 'Nothing to do.',
});

/** What to do at a temperature of the coldest roots. */
export const actionAt = (roots: Celsius, limit: Celsius): Sentence => [actions[rootState(roots, limit)]];
