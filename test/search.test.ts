import { describe, expect, it } from 'vitest';
import { outline } from '../content/outline.ts';
import { glossary } from '../content/glossary/terms.ts';
import { find, indexOf, wordsOf } from '../site/search/index-of.ts';

const index = indexOf([
  { title: 'How do I wind the cable?', where: 'Chapter 7', to: 'a', words: 'even turns on the pipe' },
  { title: 'Heated length of the cable', where: 'Field', to: 'b', words: 'without the cold lead' },
  { title: 'Pitch', where: 'Glossary', to: 'c', words: 'from one turn of the cable to the next' },
  { title: 'Überwintern', where: 'Chapter 1', to: 'd', words: '' },
]);
const titles = (question: string) => find(index, question).places.map((place) => index.findings[place]?.[2]);

describe('the search', () => {
  it('finds what has every word of the question or a word that begins so, what has them in its title first', () => {
    expect(titles('cable')).toEqual(['a', 'b', 'c']);
    expect(titles('pitch')).toEqual(['c']);
    expect(titles('turn cab')).toEqual(['a', 'c']);
    expect(titles('Lead, COLD!')).toEqual(['b']);
    expect(titles('uberw')).toEqual(['d']);
  });

  it('takes one for many; where nothing has every word, gives what has most of them, and says so', () => {
    expect(find(index, 'cables turns pitch')).toEqual({ places: [2], whole: true });
    expect(find(index, 'pitch lead cold')).toEqual({ places: [1], whole: false });
    expect(find(index, 'zebra')).toMatchObject({ places: [] });
  });

  it('looks for nothing where nothing is asked, or only words that stand everywhere', () => {
    for (const question of ['', '  ', '?', 'the', 'how do I']) expect(titles(question)).toEqual([]);
  });

  it('leads from everyday words to the chapter, before any field of the bench that has the same words', () => {
    const guide = indexOf([
      ...outline.map(({ id, question, gives, asked }) => ({
        title: question,
        where: 'Chapter',
        to: id,
        words: gives,
        asked: asked.join(' '),
      })),
      ...[
        'Power cut looked at',
        'Stand-pipe overflow',
        'Leak',
        'Top up the loop',
        'Burst',
        'Tripped',
        'Cost',
      ].map((title) => ({ title, where: 'Field', to: 'field', words: 'runs over', form: true })),
    ]);
    const first = (question: string) => guide.findings[find(guide, question).places[0] ?? NaN]?.[2];
    for (const [question, chapter] of [
      ['overflow', 'loop'],
      ['stand-pipe overflowed', 'loop'],
      ['runs over', 'loop'],
      ['leak', 'loop'],
      ['burst', 'loop'],
      ['tripped', 'outage'],
      ['power cut', 'outage'],
      ['power is off', 'outage'],
      ['top up', 'antifreeze'],
      ['cold tonight', 'night'],
      ['cost', 'season'],
    ] as const)
      expect(first(question), question).toBe(chapter);
  });

  it('has its words in order, each once', () => {
    const words = index.words.map(([word]) => word);
    expect(words).toEqual([...new Set(words)].sort());
    expect(wordsOf('3 in Pipe – “Süd”')).toEqual(['in', 'pipe', 'sud']);
  });
});

describe('the glossary', () => {
  it('explains each word once, in the order of the alphabet, in a sentence or two', () => {
    expect(glossary.length).toBeGreaterThan(25);
    expect(new Set(glossary.map(({ id }) => id)).size).toBe(glossary.length);
    const terms = glossary.map(({ term }) => term);
    expect(terms).toEqual([...terms].sort((one, other) => one.localeCompare(other, 'en')));
    for (const { id, meaning } of glossary) {
      expect(id).toMatch(/^[a-z-]+$/u);
      expect(meaning).toMatch(/^[A-Z].{15,220}\.$/u);
    }
  });
});
