import type { Situation } from '../calculator.ts';
import { changed } from './changed.ts';
import { heatPaths } from './heat-paths.ts';
import { improvements } from './improvements.ts';
import { expectedParameters, priorsOf, type Parameters, type PriorId } from './priors.ts';
import { rangedAll, weightyOf, type Ranged } from './range.ts';
import { restOn, type Asked, type Rest } from './steady.ts';

/** Roots this near to the limit are held there [K]. */
const nearLimit = 0.01;

/**
 * Ranges of the bench at rest on its design night, and of what changes of it save: benches that are asked for again and
 * again with uncertain inputs that hardly differ.
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
function remembered<Answer>(work: (situation: Situation) => Answer): (situation: Situation) => Answer {
  const kept = new WeakMap<Situation, { readonly answer: Answer }>();
  return (situation) => {
    const known = kept.get(situation) ?? { answer: work(situation) };
    kept.set(situation, known);
    return known.answer;
  };
}

/** Work that is done when it is first asked for, and once. */
function once<Answer>(work: () => Answer): () => Answer {
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

/** Inputs that a change of the bench may bring in, or that weigh on what it saves though not on the whole need. */
const ofChanges = ['coverGap', 'topGap', 'mediumConductivity', 'soilConductivity', 'ground'] as const;

/** The uncertain inputs that the power needed and what changes save of it hang on; the rest move nothing to speak of. */
const inputsOfNeed = (situation: Situation): readonly PriorId[] => [
  ...new Set<PriorId>([...weightyOf([designRanges(situation).required]), ...ofChanges]),
];

export type ImprovementId = keyof typeof improvements;

/** What a bench needs after a change, and what of its present need the change saves [W]. */
export interface ImprovementRanges {
  /** Power that holds the roots at the limit after each change, and after all of them; null where no heat from below does. */
  readonly needs: Readonly<Record<ImprovementId | 'all', Ranged | null>>;
  /** Of the same house, ground and pots: less than zero where the change asks for more. Null where the bench has it. */
  readonly saves: Readonly<Record<ImprovementId, Ranged | null>>;
}

export const improvementRanges = remembered((situation: Situation): ImprovementRanges => {
  const asIs = restFromFirst(situation, 'hold-roots');
  const limit = situation.bench.plants.lowestRootTemperature;
  const held = ({ coldestRoots }: Rest): boolean => coldestRoots >= limit - nearLimit;
  const missing = (Object.keys(improvements) as ImprovementId[]).filter(
    (id) => !improvements[id].present(situation.bench),
  );
  const after = (ids: readonly ImprovementId[]) => {
    const other = ids.reduce((one, id) => changed(one, improvements[id].changes), situation);
    const shared = sharedWith(situation, other);
    const rest = restFromFirst(other, 'hold-roots');
    return (parameters: Parameters): Rest => rest(shared(parameters));
  };
  const rests = Object.fromEntries([
    ...missing.map((id) => [id, after([id])]),
    ['all', after(missing)],
  ]) as Record<string, (parameters: Parameters) => Rest>;
  const doable = new Set(Object.keys(rests).filter((id) => held(rests[id]!(expectedParameters(situation)))));
  const ranges: Readonly<Record<string, Ranged>> = rangedAll(
    situation,
    (parameters) => {
      const now = once(() => asIs(parameters).power);
      const results: Record<string, number> = {};
      const tell = (name: string, get: () => number) =>
        Object.defineProperty(results, name, { get, enumerable: true });
      for (const [id, rest] of Object.entries(rests)) {
        const then = once(() => rest(parameters).power);
        tell(`need ${id}`, then);
        if (id !== 'all') tell(`save ${id}`, () => now() - then());
      }
      return results;
    },
    inputsOfNeed(situation),
  );
  const needOf = (id: ImprovementId | 'all'): Ranged | null => {
    // A bench that has it already keeps its own.
    if (!(id in rests))
      return held(asIs(expectedParameters(situation))) ? designRanges(situation).required : null;
    return doable.has(id) ? ranges[`need ${id}`]! : null;
  };
  const saveOf = (id: ImprovementId): Ranged | null => ranges[`save ${id}`] ?? null;
  return {
    needs: {
      cover: needOf('cover'),
      gaps: needOf('gaps'),
      secondLayer: needOf('secondLayer'),
      floor: needOf('floor'),
      all: needOf('all'),
    },
    saves: {
      cover: saveOf('cover'),
      gaps: saveOf('gaps'),
      secondLayer: saveOf('secondLayer'),
      floor: saveOf('floor'),
    },
  };
});
