import { describe, expect, it } from 'vitest';
import { answer } from '../calculators/index.ts';
import type { Answer } from '../calculators/calculator.ts';
import { messageOf, placesOf, say } from '../calculators/say.ts';
import type { Sentence } from '../calculators/calculator.ts';
import { showDate, showQuantity } from '../calculators/quantities/show.ts';
import { readCatalogue } from '../content/languages.ts';
import { shoppingList } from '../calculators/shopping.ts';
import { catalogueOf, languageManner, languages } from '../scripts/content-files.ts';
import { allMessages, partOf } from '../scripts/messages.ts';
import { runsOf } from '../site/worksheet/text.ts';
import { letters } from '../site/worksheet/letters.ts';
import fc from 'fast-check';
import { anyBench } from './support/benches.ts';
import { inventedStation, metricRegion, usRegion } from './support/situations.ts';

const messages = allMessages();
const known = new Set(messages.map(({ text }) => text));

/** The parts of which no language may lack a message. */
const whole = ['cautions', 'worksheet', 'interface'] as const;

describe('messages', () => {
  it('are found where they are said: in cautions, on the worksheet, in calculators', () => {
    for (const text of ['Mains and water', 'Fill and mix', 'Length of the bench', 'likely {low} to {high}'])
      expect(known, text).toContain(text);
  });

  it('are all found that calculators say of any bench', () => {
    const said = new Set<string>();
    const add = (sentence: Sentence): void => {
      said.add(messageOf(sentence));
      for (const part of sentence) if (typeof part !== 'string' && 'phrase' in part) add(part.phrase);
    };
    fc.assert(
      fc.property(anyBench, fc.constantFrom(metricRegion, usRegion), (bench, region) => {
        const situation = { bench, region, station: inventedStation };
        const answers = answer(situation);
        for (const { warnings, figures, tables = {} } of Object.values(answers) as Answer[]) {
          for (const { text } of warnings) add(text);
          for (const figure of Object.values(figures)) if (figure?.words) add(figure.words);
          for (const { rows } of Object.values(tables))
            for (const cell of rows.flatMap((row) => Object.values(row)))
              if (cell !== null && typeof cell === 'object') add(cell);
        }
        for (const { name, quantity } of shoppingList(situation, answers)) {
          add(name);
          add(quantity);
        }
      }),
      { numRuns: 4 },
    );
    const wordless = /^[^\p{L}]*(?:\{\w+\}[^\p{L}]*)*$/u;
    // What a grower typed into a forecast is said back as it stands there.
    expect(
      [...said].filter((message) => !known.has(message) && !wordless.test(message) && message !== 'invented'),
    ).toEqual([]);
  });
});

describe.each(languages())('the catalogue of %s', (language) => {
  const { words, entries } = catalogueOf(language);

  it.each(whole)('has every message of the %s', (part) => {
    const missing = messages.filter(({ file, text }) => partOf(file) === part && !Object.hasOwn(words, text));
    expect(missing.map(({ text, file, line }) => `${file}, line ${line}: ${text}`)).toEqual([]);
  });

  it('has nothing that the guide no longer says', () => {
    expect(entries.filter(({ message }) => !known.has(message)).map(({ message }) => message)).toEqual([]);
  });

  it('has the places of each message, and no letter that the worksheet cannot print', () => {
    const printed = new Set(letters);
    for (const { message, words: said } of entries) {
      expect(placesOf(said), message).toEqual(placesOf(message));
      expect(
        [...said].filter((letter) => !printed.has(letter)),
        message,
      ).toEqual([]);
    }
  });
});

describe('a catalogue', () => {
  const read = (text: string) => readCatalogue([{ file: 'xx.yaml', text }]);

  it.each([
    ["'Side {number}': 'Cara'", /line 1: The words must have the places \{number\}/u],
    ["'Side': 'Cara {number}'", /line 1: The words must have no places/u],
    ["'Side': ''", /line 1: The words must not be empty/u],
    ["'*Side*: one': '*Cara: uno'", /line 1: The words must have 2 asterisks/u],
    ["' Side': 'Cara'", /line 1: The words must begin and end with a blank/u],
    ["'Side': [Cara]", /line 1: A message must have words, not a list/u],
    ["'Side': 'Cara'\n'Side': 'Lado'", /line 2.*already/u],
  ])('%s is refused with its line', (text, why) => {
    const { problems } = read(text) as Extract<ReturnType<typeof read>, { ok: false }>;
    expect(problems.map((one) => one.text).join('\n')).toMatch(why);
  });

  it('is looked up by the whole message, and what it lacks is said in English', () => {
    const manner = { words: { 'Side {number}': 'Cara {number}' } };
    expect(say(manner, 'Side {number}', { number: '2' })).toBe('Cara 2');
    expect(say(manner, 'Page {number}', { number: '2' })).toBe('Page 2');
    expect(say({ words: {} }, 'constructor')).toBe('constructor');
  });

  it('may put what is bold where it likes', () => {
    const manner = { words: { 'Stir *{a}* in.': '*{a}*: eche.' } };
    expect(runsOf(manner, 'Stir *{a}* in.', { a: '2*3' })).toEqual([
      { text: '2*3', bold: true },
      { text: ': eche.' },
    ]);
  });
});

describe('numbers and days in Spanish', () => {
  const manner = { system: 'metric', ...languageManner('es') } as const;

  it('have a decimal comma, a true minus sign and the units of the SI', () => {
    expect(showQuantity(-4, 'temperature', manner)).toBe('−4,0\u202f°C');
    expect(showQuantity(602, 'power', manner)).toBe('602\u202fW');
  });

  it('have the month in words', () => {
    expect(showDate('2026-11-25', manner)).toBe('25 nov 2026');
    expect(showDate('2026-11-25', { system: 'metric', locale: 'en' })).toBe('2026-11-25');
  });
});
