import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { calculators } from '../calculators/index.ts';
import { quantities } from '../calculators/quantities/quantity.ts';
import { letters } from '../content/glossary/symbols.ts';
import { unitWords } from '../content/glossary/units.ts';
import { outline } from '../content/outline.ts';
import { lettersOf } from '../site/math/letters.ts';
import { mathml } from '../site/math/mathml.ts';
import { chapterOfCalculator, symbols } from '../site/symbols.ts';

const folder = new URL('../content/chapters/', import.meta.url);

/** Every formula of the guide with the chapter that it belongs to. */
const formulas = [
  ...readdirSync(folder)
    .filter((name) => name.endsWith('.mdx'))
    .flatMap((name) => {
      const body = readFileSync(new URL(name, folder), 'utf8');
      return [...body.matchAll(/tex="([^"]*)"|\$([^$]+)\$/gu)].map(([, apart, inside]) => ({
        chapter: name.replace('.mdx', ''),
        tex: apart ?? inside ?? '',
      }));
    }),
  ...calculators.flatMap(({ id, formulas: its }) =>
    its.map(({ tex }) => ({ chapter: chapterOfCalculator(id) ?? id, tex })),
  ),
];

const inChapter = (chapter: string): Set<string> =>
  new Set(formulas.filter((one) => one.chapter === chapter).flatMap(({ tex }) => lettersOf(tex)));

describe('lettersOf(tex)', () => {
  it.each([
    [String.raw`P = \frac{k\,A\,(T_1 - T_2)}{d}`, ['P', 'k', 'A', 'T_1', 'T_2', 'd']],
    [String.raw`\Delta U = 2\,R'\,\ell\,I`, [String.raw`\Delta U`, "R'", String.raw`\ell`, 'I']],
    [String.raw`E = \int P\,dt,\qquad \text{cost} = \int p(t)\,P\,dt`, ['E', 'P', 't', 'p']],
    [String.raw`T_{\text{face}} = T_{f,1}`, [String.raw`T_{\text{face}}`, 'T_{f,1}']],
    [String.raw`\sum_j G_{ij}\,T_j`, ['G_{ij}', 'T_j']],
    [String.raw`P - G\,(\bar T - x)`, ['P', 'G', String.raw`\bar T`, 'x']],
  ])('%s', (tex, found) => {
    expect(lettersOf(tex)).toEqual(found);
  });
});

describe('symbols and units', () => {
  it('there are formulas in almost every chapter, and each has letters', () => {
    expect(formulas.length).toBeGreaterThan(50);
    for (const { tex } of formulas) expect(lettersOf(tex), tex).not.toEqual([]);
  });

  it.each(outline.map(({ id }) => id))('every letter in a formula of “%s” is listed for it', (id) => {
    const listed = symbols.filter(({ chapters }) => chapters.includes(id)).map(({ tex }) => tex);
    expect([...inChapter(id)].filter((one) => !listed.includes(one))).toEqual([]);
  });

  it.each(letters.map(({ tex, meaning, chapters }) => [tex, meaning, chapters] as const))(
    '%s, %s: is in a formula of each chapter that it names',
    (tex, _, chapters) => {
      for (const id of chapters) expect([...inChapter(id)], id).toContain(tex);
    },
  );

  it('every unit that is shown behind a figure is explained', () => {
    const shown = Object.values(quantities).flatMap((one) => [one.shown.metric, one.shown.us]);
    const missing = shown.filter((unit) => unit !== '' && !unit.startsWith('/') && !(unit in unitWords));
    expect(missing).toEqual([]);
  });

  it.each(symbols)('$tex can be set', ({ tex }) => {
    expect(mathml(tex, false)).toContain('<math');
  });
});
