import type { Situation } from '../calculator.ts';
import type { Parameters } from './priors.ts';
import { restOn, type Asked, type Rest } from './steady.ts';

/** How close the members of a range have to come to rest [K]: a hundredth of what a reader is shown. */
const closeEnough = 1e-3;

/**
 * What the design night comes to, if it never ended, for one set of uncertain inputs after another: the coldest roots
 * with the heat as it is [°C], how much warmer it then is under the bench than in the house [K], and the power that
 * would hold the roots at the grower's limit [W]. All are found from the first.
 */
export function hardNight(situation: Situation): (parameters: Parameters) => {
  readonly coldestRoots: number;
  readonly rise: number;
  readonly required: number;
} {
  const first: Partial<Record<Asked, Rest>> = {};
  const rest = (asked: Asked, parameters: Parameters): Rest => {
    const from = first[asked];
    if (from) return restOn(situation, asked, parameters, undefined, { from, within: closeEnough });
    return (first[asked] = restOn(situation, asked, parameters));
  };
  return (parameters) => {
    const { coldestRoots, body, temperatures } = rest('thermostat', parameters);
    return {
      coldestRoots,
      rise: temperatures[body.under]! - temperatures[body.house]!,
      required: rest('hold-roots', parameters).power,
    };
  };
}
