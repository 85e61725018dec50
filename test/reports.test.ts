import { existsSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { reportsOfExamples } from '../scripts/report-files.ts';
import { changedLines } from '../scripts/report-words.ts';

describe('reports of the example benches', () => {
  const reports = reportsOfExamples();

  it('there is one of each example bench', () => {
    expect(reports.length).toBeGreaterThan(1);
  });

  it.each(reports)('$file.pathname says what the calculators say, line by line', ({ file, lines }) => {
    const kept = existsSync(file) ? readFileSync(file, 'utf8').trimEnd().split('\n') : [];
    // What an answer says may change, but never unread: `npm run reports` writes the file anew and lists the same lines.
    expect(changedLines(kept, lines).join('\n'), 'lines that have changed').toBe('');
  });

  it('say every figure with its unit or that there is none, and nothing that no reader understands', () => {
    for (const { lines } of reports) {
      expect(lines.length).toBeGreaterThan(150);
      for (const line of lines) expect(line).not.toMatch(/NaN|undefined|Infinity|\bnull\b/u);
    }
  });
});

describe('changedLines(before, after)', () => {
  it('names a line that changed, and none of those after a line that came or went', () => {
    expect(changedLines(['a', 'b', 'c'], ['a', 'b', 'c'])).toEqual([]);
    expect(changedLines(['a', 'b', 'c'], ['a', 'x', 'c'])).toEqual(['line 2 was: b', 'line 2 is:  x']);
    expect(changedLines(['a', 'c', 'd'], ['a', 'b', 'c', 'd'])).toEqual(['line 2 is:  b']);
    expect(changedLines(['a', 'b'], [])).toEqual(['line 1 was: a', 'line 2 was: b']);
  });
});
