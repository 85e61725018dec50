import { existsSync, readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { outline } from '../content/outline.ts';

/** The table of contents beside the files that it names. */

const folder = (path: string) => new URL(`../${path}/`, import.meta.url);
const written = readdirSync(folder('content/chapters')).map((name) => name.replace(/\.mdx$/u, ''));

describe('the table of contents', () => {
  it('asks one question a chapter, each once', () => {
    expect(outline.length).toBe(15);
    expect(new Set(outline.map(({ id }) => id)).size).toBe(outline.length);
    expect(new Set(outline.map(({ question }) => question)).size).toBe(outline.length);
    for (const { question } of outline) expect(question).toMatch(/^[A-Z].+\?$/u);
  });

  it('has a place for every chapter that is written', () => {
    expect(written.length).toBeGreaterThan(0);
    expect(written.filter((id) => !outline.some((step) => step.id === id))).toEqual([]);
  });

  it('names calculators that exist', () => {
    const named = outline.flatMap(({ calculators }) => calculators);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((id) => !existsSync(new URL(`${id}.ts`, folder('calculators/questions'))))).toEqual(
      [],
    );
  });
});
