import type { Situation } from '../calculator.ts';
import { changed } from './changed.ts';
import { improvements } from './improvements.ts';
import { expectedParameters, type Parameters, type PriorId } from './priors.ts';
import { rangedAll, weightyOf, type Ranged } from './range.ts';
import { designRanges, once, remembered, restFromFirst, sharedWith } from './rest-ranges.ts';
import type { Rest } from './steady.ts';

/** Roots this near to the limit are held there [K]. */
const nearLimit = 0.01;

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
