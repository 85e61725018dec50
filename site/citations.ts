import { cautions } from '../calculators/cautions.ts';
import { disagreements } from '../calculators/checks/disagreements.ts';
import { topics } from '../calculators/checks/index.ts';
import { calculators } from '../calculators/index.ts';
import { sources, type Citation, type SourceId } from '../calculators/sources.ts';
import { benchTops, floors, houseCoverings } from '../calculators/tables/benches.ts';
import { conductors } from '../calculators/tables/conductors.ts';
import { sheets } from '../calculators/tables/films.ts';
import { media } from '../calculators/tables/media.ts';
import { pipes } from '../calculators/tables/pipes.ts';
import { plants } from '../calculators/tables/plants.ts';

/** Where in the guide a source is cited, and for what. */
export interface Cited extends Citation {
  readonly where: string;
  /** Address of a page from the top of the guide, if the place has one. */
  readonly page?: `/${string}`;
}

interface Rows {
  readonly [key: string]: { readonly cites: readonly Citation[] };
}

const table = (where: string, rows: Rows): Cited[] =>
  Object.values(rows).flatMap(({ cites }) => cites.map((one) => ({ ...one, where })));

const attribute = (tag: string, name: string): string | undefined =>
  new RegExp(String.raw`\b${name}=(?:"([^"]*)"|\{'([^']*)'\})`, 'u').exec(tag)?.slice(1).find(Boolean);

/**
 * What a chapter cites in its own words, and with them what its calculators and cautions cite.
 * @param whose `own` leaves the calculators and cautions out
 */
export function citedInChapter(body: string, whose: 'own' | 'all' = 'all'): Citation[] {
  const tags = (name: string) =>
    [...body.matchAll(new RegExp(String.raw`<${name}\b[^>]*>`, 'gu'))].map(([tag]) => tag);
  const own = tags('Cite').map((tag) => ({
    source: attribute(tag, 'source') as SourceId,
    at: attribute(tag, 'at') ?? '',
  }));
  if (whose === 'own') return own;
  const ids = tags('Calculator').map((tag) => attribute(tag, 'id'));
  const theirs = calculators.filter(({ id }) => ids.includes(id)).flatMap(citedInCalculator);
  const warned = tags('Caution').flatMap(
    (tag) => cautions[attribute(tag, 'id') as keyof typeof cautions].cites as readonly Citation[],
  );
  return [...own, ...theirs, ...warned];
}

/** What a calculator cites: for its figures and for its formulas. */
export const citedInCalculator = (calculator: {
  readonly cites: readonly Citation[];
  readonly formulas: readonly { readonly cites: readonly Citation[] }[];
}): Citation[] => [...calculator.cites, ...calculator.formulas.flatMap(({ cites }) => cites)];

/** Every place that cites a source: calculators, cautions, tables and checks; chapters are added by whoever has read them. */
export const citedByCalculators: readonly Cited[] = [
  ...calculators.flatMap((calculator) =>
    citedInCalculator(calculator).map((one) => ({
      ...one,
      where: calculator.question,
      page: `/reference/${calculator.id}/` as const,
    })),
  ),
  ...Object.values(cautions).flatMap(({ title, cites }) =>
    cites.map((one) => ({ ...one, where: `Caution: ${title}` })),
  ),
  { source: 'nist-sp811', at: 'appendix B, conversion factors', where: 'Units' },
  ...table('Table of pipes', pipes),
  ...table('Table of films and fleeces', sheets),
  ...table('Table of media', media),
  ...table('Table of plants', plants),
  ...table('Table of bench tops', benchTops),
  ...table('Table of floors', floors),
  ...table('Table of coverings of houses', houseCoverings),
  ...table('Table of conductors', conductors),
  ...topics.flatMap(({ id, label, checks }) =>
    checks
      .flatMap(({ from, via }) => (via ? [from, via] : [from]))
      .map((one) => ({ ...one, where: `Checks: ${label}`, page: `/checks/#${id}` as const })),
  ),
  ...disagreements.flatMap(({ cites }) =>
    cites.map((one) => ({
      ...one,
      where: 'Checks: where sources disagree',
      page: '/checks/#disagreements' as const,
    })),
  ),
];

/** The same places once each, source by source in the order of the list of sources. */
export function bySource<T extends Citation>(
  cited: readonly T[],
): { readonly id: SourceId; readonly cited: T[] }[] {
  return (Object.keys(sources) as SourceId[]).flatMap((id) => {
    const mine = cited.filter(({ source }) => source === id);
    return mine.length > 0 ? [{ id, cited: mine }] : [];
  });
}

/** What each standing means, for readers. */
export const standings = {
  seen: 'Read in a copy of the source.',
  memory: 'From memory: no copy was at hand.',
  practice: 'A fact of the trade without a published source.',
  assumption: 'An assumption of this guide.',
} as const;
