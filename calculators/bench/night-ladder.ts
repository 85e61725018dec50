import type { Situation } from '../calculator.ts';
import type { Celsius } from '../quantities/temperature.ts';
import { changed } from './changed.ts';
import { ladder } from './ladder.ts';
import { nightOf, nightSteps, summaryOf } from './night.ts';
import { expectedParameters } from './priors.ts';
import { restOn } from './steady.ts';

/** What a cold night of one temperature comes to. */
export interface NightRung {
  /** Lowest outside [°C]. */
  readonly outside: Celsius;
  /** The coldest layer of the roots at its coldest [°C]. */
  readonly roots: Celsius;
  /** Share of the time that the cable is on while outside is lowest [1]; null where the cable gives nothing. */
  readonly on: number | null;
}

/** The cold snap of a bench with another temperature for its lowest, in coarse steps: within 0.2 K of the fine ones. */
export function nightRung(situation: Situation, outside: Celsius): NightRung {
  const other = changed(situation, { place: { designNight: 'own', ownLowest: outside } });
  const parameters = expectedParameters(other);
  const { lowestRoots, meanPower } = summaryOf(
    other,
    nightOf(other, parameters, { every: nightSteps.coarse }),
  );
  const { fullPower } = restOn(other, 'thermostat', parameters);
  return { outside, roots: lowestRoots, on: fullPower > 0 ? Math.min(1, meanPower / fullPower) : null };
}

/** A rung for each temperature of `ladder`. */
export const nightLadder = (situation: Situation): readonly NightRung[] =>
  ladder(situation.region).map((outside) => nightRung(situation, outside));
