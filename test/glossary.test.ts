import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fields } from '../calculators/bench/fields.ts';
import { cautions } from '../calculators/cautions.ts';
import { calculators } from '../calculators/index.ts';
import { glossary } from '../content/glossary/terms.ts';
import { formsOf, piecesOf } from '../site/glossary/in-text.ts';

const folder = new URL('../content/chapters/', import.meta.url);
const chapters = readdirSync(folder)
  .filter((name) => name.endsWith('.mdx'))
  .map((name) => readFileSync(new URL(name, folder), 'utf8').replace(/<(?:[^>"]|"[^"]*")*>/gu, ''));
const text = chapters.join('\n');

const linked = (words: string, seen = new Set<string>()) =>
  piecesOf(words, seen).flatMap(({ term }) => (term ? [term.id] : []));

/** Words of gardening, heating and wiring that a beginner may not know, gone through by hand, chapter by chapter. */
const trade =
  'ammeter antifreeze braid breaker concentrate conduction conductivity convection density differential emissivity feeder film fleece inhibitor insulation kelvin kilowatt-hour liner mains medium pitch probe radiation refractometer relay resistance sheath skirt slats slush splice stand-pipe thermostat vapour vent voltage watt'.split(
    ' ',
  );
const phrases = [
  'carbon monoxide',
  'clear sky',
  'cold lead',
  'continuous load',
  'dew point',
  'ethylene glycol',
  'extension lead',
  'freezing point',
  'heat of freezing',
  'limit thermostat',
  'propylene glycol',
  'relative humidity',
  'root zone',
  'self-regulating',
  'set point',
  'voltage drop',
];

describe('words of the trade in chapters', () => {
  it.each([...trade, ...phrases])('“%s” is a word of a chapter and of the glossary', (word) => {
    expect(text.toLowerCase()).toContain(word);
    expect(linked(`Some say ${word}.`)).toHaveLength(1);
  });

  it('each form leads to one word', () => {
    const forms = glossary.flatMap((term) => formsOf(term).map((form) => form.toLowerCase()));
    expect(forms.filter((form, index) => forms.indexOf(form) !== index)).toEqual([]);
  });

  it('each word of the glossary is found in a chapter, a field, a calculator or a caution', () => {
    const seen = new Set<string>();
    for (const chapter of chapters) piecesOf(chapter, seen);
    piecesOf(JSON.stringify([fields, calculators, cautions]), seen);
    expect(glossary.map(({ id }) => id).filter((id) => !seen.has(id))).toEqual([]);
  });
});

describe('piecesOf(text, seen)', () => {
  it('cuts a text at the first use of each term, and puts it together again', () => {
    const words = 'A thermostat, a limit thermostat, Vapour and another thermostat.';
    const pieces = piecesOf(words, new Set());
    expect(pieces.map((piece) => piece.text).join('')).toBe(words);
    expect(pieces.flatMap(({ term, text: said }) => (term ? [`${said}: ${term.id}`] : []))).toEqual([
      'thermostat: thermostat',
      'limit thermostat: limit-thermostat',
      'Vapour: vapour',
    ]);
  });

  it('takes the longest word, and no part of another', () => {
    expect(linked('the voltage drop')).toEqual(['voltage-drop']);
    expect(linked('eventful preventing')).toEqual([]);
    expect(linked('a stand-pipe')).toEqual(['stand-pipe']);
  });

  it('leaves what was seen before', () => {
    const seen = new Set<string>();
    expect(linked('fleece', seen)).toEqual(['fleece']);
    expect(linked('more fleece', seen)).toEqual([]);
  });
});
