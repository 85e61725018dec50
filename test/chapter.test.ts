import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fields } from '../calculators/bench/fields.ts';
import type { Calculator } from '../calculators/calculator.ts';
import { cautions } from '../calculators/cautions.ts';
import { calculators } from '../calculators/index.ts';
import { toBase } from '../calculators/quantities/quantity.ts';
import { showNumber, showQuantity, type Manner } from '../calculators/quantities/show.ts';
import winding from '../calculators/questions/winding.ts';
import { circumference, wind } from '../calculators/electric/winding.ts';
import { pipeOf } from '../calculators/bench/geometry.ts';
import { sources } from '../calculators/sources.ts';
import { mathml } from '../site/math/mathml.ts';
import { drawings } from '../site/drawings.ts';
import { expectPrinted } from './support/near.ts';
import { situation } from './support/situations.ts';
import { workedExample } from './support/worked-example.ts';

const folder = new URL('../content/chapters/', import.meta.url);
const chapters = readdirSync(folder)
  .filter((name) => name.endsWith('.mdx'))
  .map((name) => {
    const text = readFileSync(new URL(name, folder), 'utf8');
    const [, front = '', body = ''] = /^---\n([\s\S]*?)\n---\n([\s\S]*)$/u.exec(text) ?? [];
    return { name, front, body };
  });

/** A use of a component in a chapter, with its attributes that are plain words. */
interface Use {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
}

const uses = (body: string): Use[] =>
  [...body.matchAll(/<([A-Z]\w*)((?:[^>"]|"[^"]*")*)>/gu)].map(([, name = '', rest = '']) => ({
    name,
    attributes: Object.fromEntries(
      [...rest.matchAll(/(\w+)="([^"]*)"/gu)].map(([, key = '', value = '']) => [key, value]),
    ),
  }));

/** What a reader reads in running text: no components, formulas, tables, marks of emphasis. */
const prose = (body: string): string =>
  body
    .replace(/^\|.*$/gmu, '')
    .replace(/<Formula[\s\S]*?\/>/gu, '')
    // A figure reads as one short word.
    .replace(/<(?:Value|NightValue|Given)[^>]*\/>/gu, 'it')
    .replace(/<(?:[^>"]|"[^"]*")*>/gu, '')
    .replace(/\$[^$]+\$/gu, 'it')
    .replace(/[*#]/gu, '');

/**
 * Syllables of an English word, by groups of vowels: a silent e at the end, and of "-ed" and "-es" where they are not
 * spoken, are taken off. The rule of thumb that readability programs use; right to about one word in ten.
 */
function syllables(word: string): number {
  const plain = word.toLowerCase().replace(/[^a-z]/gu, '');
  const spoken = plain.replace(/(?:[^laeiouy]es|[^dt]ed|[^l]e)$/u, (end) => end.slice(0, 1));
  return Math.max(1, (spoken.match(/[aeiouy]+/gu) ?? []).length);
}

/** Grade of US schools that can read a text (Kincaid and others 1975): 0.39 words a sentence + 11.8 syllables a word − 15.59. */
function grade(text: string): number {
  const sentences = text
    .split(/[.:?!](?:\s|$)|\n{2,}/u)
    .map((sentence) => sentence.match(/[\p{L}’]+/gu) ?? [])
    .filter((words) => words.length > 0);
  const words = sentences.flat();
  const spoken = words.reduce((sum, word) => sum + syllables(word), 0);
  return 0.39 * (words.length / sentences.length) + 11.8 * (spoken / words.length) - 15.59;
}

describe.each(chapters)('$name', ({ front, body }) => {
  const used = uses(body);
  const all = (component: string, attribute: string) =>
    used.filter(({ name }) => name === component).map(({ attributes }) => attributes[attribute]);

  it('has a title that asks, and a summary', () => {
    expect(front).toMatch(/^title: .+\?$/mu);
    expect(front).toMatch(/^summary: .{60,}$/mu);
  });

  it('imports nothing and uses only the words that pages know', () => {
    expect(body).not.toMatch(/^(?:import|export) /mu);
    const known = [
      'Aside',
      'Calculator',
      'Caution',
      'Cite',
      'Drawing',
      'Formula',
      'Given',
      'HowSure',
      'LoggerFile',
      'NightSays',
      'NightValue',
      'Quantity',
      'Value',
      'Warnings',
    ];
    expect(used.map(({ name }) => name).filter((name) => !known.includes(name))).toEqual([]);
  });

  it('names figures, fields, cautions, sources, calculators and drawings that exist', () => {
    const figures = calculators.flatMap((one: Calculator) =>
      Object.keys(one.figures).map((figure) => `${one.id}.${figure}`),
    );
    const paths = Object.entries(fields).flatMap(([group, { fields: members }]) =>
      Object.keys(members).map((member) => `${group}.${member}`),
    );
    const there: readonly (readonly [component: string, attribute: string, known: readonly string[]])[] = [
      ['Value', 'figure', figures],
      ['NightValue', 'figure', figures],
      ['Given', 'field', paths],
      ['Caution', 'id', Object.keys(cautions)],
      ['Cite', 'source', Object.keys(sources)],
      ['Calculator', 'id', calculators.map(({ id }) => id)],
      ['Warnings', 'id', calculators.map(({ id }) => id)],
      ['Drawing', 'name', Object.keys(drawings)],
    ];
    for (const [component, attribute, known] of there)
      for (const value of all(component, attribute))
        expect(known, `${component} ${attribute}`).toContain(value);
  });

  it('has formulas that can be set, each with what it says in words', () => {
    for (const tex of all('Formula', 'tex')) expect(mathml(tex ?? '', true)).toContain('<math');
    for (const words of all('Formula', 'words')) expect(words?.length).toBeGreaterThan(40);
    for (const [, tex = ''] of body.matchAll(/\$([^$]+)\$/gu)) expect(mathml(tex, false)).toContain('<math');
  });

  it('shows each caution of its calculators, inside them or on the page', () => {
    for (const { name, attributes } of used.filter((use) => use.name === 'Calculator')) {
      expect(name).toBe('Calculator');
      const left = new RegExp(`<Calculator id="${attributes['id']}" without=\\{\\[([^\\]]*)\\]\\}`, 'u').exec(
        body,
      );
      const without = [...(left?.[1] ?? '').matchAll(/'([^']+)'/gu)].map(([, id]) => id);
      for (const id of without) expect(all('Caution', 'id')).toContain(id);
    }
  });

  it('leaves figures of the bench to the reader’s own numbers', () => {
    // The one fact of the trade is given in both systems, as people say it.
    const said = prose(body).replace('3 in pipe with 75 to 100 mm (3 to 4 in)', '');
    expect(said.match(/\d+(?:[.,]\d+)?\s*(?:mm|cm|m|in|ft|°C|°F|K|W|V|A|kW|Ω|L|gal)\b/gu) ?? []).toEqual([]);
  });

  it('reads easily: grade 8 or below, and no longer than a chapter should be', () => {
    expect(grade(prose(body))).toBeLessThanOrEqual(8);
    const words = prose(body).match(/[\p{L}\d’]+/gu) ?? [];
    expect(words.length).toBeGreaterThan(1200);
    expect(words.length).toBeLessThan(1900);
  });
});

describe('grade(text)', () => {
  // Examples of public encyclopaedias for this formula, from memory. They count syllables by ear: hence 1.5 grades.
  it.each([
    ['The cat sat on the mat.', -1.45],
    ['The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.', 11.3],
  ])('%s', (text, published) => {
    expect(Math.abs(grade(text) - published)).toBeLessThan(1.5);
  });
});

describe('the example that is worked by hand in winding.mdx', () => {
  const { cell, sum: parts } = workedExample('winding');
  const sums = [
    'Once round',
    'Cable that goes round',
    'Turns',
    'Pitch',
    'Cable in one turn',
    'Gap',
    'Power per length of pipe',
  ];

  it.each(sums.flatMap((head) => [[head, 'metric'] as const, [head, 'us'] as const]))(
    '%s, %s: the sum comes to what stands behind it',
    (head, system) => {
      const { value, result } = parts(head, system);
      expectPrinted(value, result, head);
    },
  );

  /** The two invented loops, read off the table's first row. */
  const given = {
    metric:
      /^(?<loop>\d+) m of 110 mm drain pipe; (?<cable>\d+) m of cable, (?<thick>\d+) mm thick, (?<power>\d+) W\/m$/u,
    us: /^(?<loop>\d+) ft of 3 in Schedule 40 pipe, 3\.5 in outside; (?<cable>\d+) ft of cable, (?<thick>[\d.]+) in thick, (?<power>\d+) W\/ft$/u,
  } as const;
  const units = {
    metric: { long: 'm', short: 'mm', power: 'W/m' },
    us: { long: 'ft', short: 'in', power: 'W/ft' },
  } as const;

  it.each(['metric', 'us'] as const)('the calculator agrees to the digit, %s', (system) => {
    const read = given[system].exec(cell('Pipe, cable', system))?.groups;
    if (!read) throw new Error('the first row is worded otherwise');
    const { long, short, power } = units[system];
    const number = (name: string) => Number(read[name]);
    const where = situation({
      loop: {
        pipe: system === 'us' ? 'schedule40-3in' : 'drain-110',
        length: toBase('length', number('loop'), long),
      },
      cable: {
        length: toBase('length', number('cable'), long),
        diameter: toBase('size', number('thick'), short),
        powerPerLength: toBase('powerPerLength', number('power'), power),
      },
    });
    const { figures } = winding.compute(where);
    const manner: Manner = { system, locale: 'en' };
    const show = (value: number | undefined, quantity: 'size' | 'powerPerLength') =>
      showQuantity(value ?? NaN, quantity, manner).replace('\u202f', ' ');
    const written = (head: string) => {
      const { result, unit } = parts(head, system);
      return `${result} ${unit}`;
    };
    expect(written('Pitch')).toBe(show(figures.pitch?.value, 'size'));
    expect(written('Gap')).toBe(show(figures.gap?.value, 'size'));
    expect(written('Power per length of pipe')).toBe(
      show(figures.powerPerPipeLength?.value, 'powerPerLength'),
    );
    expectPrinted(figures.turns?.value ?? NaN, parts('Turns', system).result, 'turns');
    expect(showNumber(figures.turns?.value ?? NaN, 'number', manner)).toMatch(/^\d+\.\d\d$/u);

    const { bench } = where;
    const helix = wind({
      pipeDiameter: pipeOf(bench).outsideDiameter,
      cableDiameter: bench.cable.diameter,
      pipeLength: bench.loop.length ?? NaN,
      cableLength: bench.cable.length,
    });
    if (helix.outcome !== 'wound') throw new Error('the example cannot be wound');
    const shorts = (value: number) => value / toBase('size', 1, short);
    expectPrinted(
      shorts(circumference(pipeOf(bench).outsideDiameter, bench.cable.diameter)),
      parts('Once round', system).result,
    );
    expectPrinted(shorts(helix.turnLength), parts('Cable in one turn', system).result);
  });
});
