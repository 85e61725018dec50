import type { Situation } from '../calculator.ts';
import { sheets } from '../tables/films.ts';
import { sideArea, skirtClosed } from './geometry.ts';
import { straightThrough } from './sheet-stack.ts';
import { heatLost, type Rest } from './steady.ts';

/** Conduction up through the pots: from the middle layer of the medium to the upper one [W]. */
function throughMedium({ body, links, temperatures }: Rest): number {
  const [below, above] = body.roots.slice(-2);
  return links
    .filter(({ from, to }) => from === below && to === above)
    .reduce(
      (sum, { conductance, from, to }) =>
        sum + conductance * ((temperatures[from] ?? NaN) - (temperatures[to] ?? NaN)),
      0,
    );
}

/** Radiation from under the bench straight through the film of the skirt to the house [W]; none without a skirt. */
function radiated({ bench }: Situation, { body, temperatures }: Rest): number {
  const { material, layers, wet } = bench.skirt;
  if (material === 'none') return 0;
  const [under, house] = [temperatures[body.under] ?? NaN, temperatures[body.house] ?? NaN];
  const hung = Array.from({ length: layers }, () => sheets[material]);
  const perArea = straightThrough(
    { sheets: hung, wet: wet === 'wet', longwave: 0, place: 'side', size: bench.frame.height },
    under,
    house,
  );
  return sideArea(bench) * skirtClosed(bench) * perArea * (under - house);
}

/** The heat of a bench at rest on each of its ways out, as a grower asks for them [W]. */
export function heatPaths(situation: Situation, rest: Rest) {
  const lost = heatLost(rest);
  const sum = (...names: (keyof typeof lost)[]): number =>
    names.reduce((total, path) => total + (lost[path] ?? 0), 0);
  return {
    skirt: sum('skirt'),
    leakage: sum('leakage'),
    plants: sum('tops', 'sides', 'between', 'cover'),
    edge: sum('edge'),
    ground: sum('floor'),
    throughMedium: throughMedium(rest),
    radiated: radiated(situation, rest),
  };
}
