import type { Situation } from '../calculator.ts';
import { heatPaths } from './heat-paths.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';
import { rangedAll } from './range.ts';
import { restOn, type Asked, type Rest } from './steady.ts';

/**
 * Ranges of the bench at rest on its design night: benches that are asked for again and again with uncertain inputs that
 * hardly differ.
 */

/** How close the members of a range have to come to rest [K]: a thirtieth of what a reader is shown. */
const closeEnough = 3e-3;

/**
 * The bench at rest as `restOn` gives it, each found from the first that was asked for. The first is as exact as
 * `restOn`: ask with the expected inputs first.
 */
export function restFromFirst(
  situation: Situation,
  asked: Asked,
  outside?: number,
): (parameters: Parameters) => Rest {
  let first: Rest | undefined;
  return (parameters) => {
    if (first) return restOn(situation, asked, parameters, outside, { from: first, within: closeEnough });
    return (first = restOn(situation, asked, parameters, outside));
  };
}

/**
 * The uncertain inputs of a changed bench where those of the bench as it is are known, so that both are moved together:
 * they have the same house, ground and pots. What the change itself replaces, such as a gap that is closed, is as expected
 * of the changed bench.
 */
export function sharedWith(situation: Situation, other: Situation): (parameters: Parameters) => Parameters {
  const [before, after] = [priorsOf(situation), priorsOf(other)];
  const replaced = Object.entries(expectedParameters(other)).filter(([name]) => {
    const id = name as PriorId;
    return (['low', 'expected', 'high'] as const).some((end) => before[id][end] !== after[id][end]);
  });
  const own = Object.fromEntries(replaced);
  return (parameters) => ({ ...parameters, ...own });
}

/** Several calculators ask the same of one situation; its answer is kept for as long as the situation is. */
export function remembered<Answer>(work: (situation: Situation) => Answer): (situation: Situation) => Answer {
  const kept = new WeakMap<Situation, { readonly answer: Answer }>();
  return (situation) => {
    const known = kept.get(situation) ?? { answer: work(situation) };
    kept.set(situation, known);
    return known.answer;
  };
}

/** Work that is done when it is first asked for, and once. */
export function once<Answer>(work: () => Answer): () => Answer {
  let done: { readonly answer: Answer } | undefined;
  return () => (done ??= { answer: work() }).answer;
}

/** The bench as it is, by every uncertain input. */
export const designRanges = remembered((situation: Situation) => {
  const [cold, heated, held] = [
    restFromFirst(situation, 'no-heat'),
    restFromFirst(situation, 'thermostat'),
    restFromFirst(situation, 'hold-roots'),
  ];
  return rangedAll(situation, (parameters) => {
    const asSet = once(() => heated(parameters));
    const atLimit = once(() => held(parameters));
    const paths = once(() => heatPaths(situation, atLimit()));
    return {
      /** Coldest roots without heat and with the thermostat as set [°C]. */
      get withoutHeat() {
        return cold(parameters).coldestRoots;
      },
      get withHeat() {
        return asSet().coldestRoots;
      },
      /** Mean power with the thermostat as set [W], and as a share of the full power [1]. */
      get settled() {
        return asSet().power;
      },
      get duty() {
        const { power, fullPower } = asSet();
        return fullPower === 0 ? 1 : power / fullPower;
      },
      /** Power that holds the roots at the limit [W], its ways out, and the air under the bench and in the house [°C]. */
      get required() {
        return atLimit().power;
      },
      get skirt() {
        return paths().skirt;
      },
      get leakage() {
        return paths().leakage;
      },
      get plants() {
        return paths().plants;
      },
      get edge() {
        return paths().edge;
      },
      get ground() {
        return paths().ground;
      },
      get throughMedium() {
        return paths().throughMedium;
      },
      get radiated() {
        return paths().radiated;
      },
      get air() {
        return atLimit().temperatures[atLimit().body.under]!;
      },
      get house() {
        return atLimit().temperatures[atLimit().body.house]!;
      },
    };
  });
});
