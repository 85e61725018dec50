import { execFile } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { findBrowser } from '../scripts/find-browser.ts';
import { timeInWords } from '../scripts/steps.ts';
import { root } from './support/imports.ts';

const run = (...words: string[]) =>
  new Promise<{ code: number; out: string; err: string }>((done) => {
    execFile(process.execPath, ['scripts/run.mjs', ...words], { cwd: root }, (error, out, err) => {
      done({ code: error ? Number(error.code) : 0, out, err });
    });
  });

describe('the way in: scripts/run.mjs', () => {
  const { scripts } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    scripts: Record<string, string>;
  };

  it('tells which tasks there are when it does not know the one asked for, or none is', async () => {
    for (const words of [['no-such-task'], ['__proto__'], []]) {
      const { code, out, err } = await run(...words);
      expect([code, out]).toEqual([2, '']);
      for (const name of Object.keys(scripts)) expect(err).toContain(name);
    }
  });

  it('hands arguments to the task, says nothing of its own once set up, and gives back the task’s exit code', async () => {
    const { code, out, err } = await run('test', 'no-such-step');
    expect([code, out]).toEqual([2, '']);
    expect(err).toBe(
      'There is no step "no-such-step". There are: types, build, style, lint, source, built.\n',
    );
  });
});

describe('the browser', () => {
  it('that CHROME_PATH names is taken, and a wrong one is an error, not passed over', () => {
    const before = process.env['CHROME_PATH'];
    const folder = mkdtempSync(join(tmpdir(), 'browser-'));
    try {
      process.env['CHROME_PATH'] = process.execPath;
      expect(findBrowser()).toBe(process.execPath);
      // A file that no one may run, whatever the folder of the project allows.
      const picture = join(folder, 'browser.png');
      writeFileSync(picture, '', { mode: 0o644 });
      for (const wrong of [picture, join(folder, 'nowhere')]) {
        process.env['CHROME_PATH'] = wrong;
        expect(() => findBrowser()).toThrow(/CHROME_PATH/u);
      }
    } finally {
      if (before === undefined) delete process.env['CHROME_PATH'];
      else process.env['CHROME_PATH'] = before;
      rmSync(folder, { recursive: true });
    }
  });
});

describe('times', () => {
  it.each([
    [40, '0.0 s'],
    [9_940, '9.9 s'],
    [12_300, '12 s'],
    [59_600, '1 min 0 s'],
    [125_000, '2 min 5 s'],
  ])('%i ms is said as %s', (milliseconds, words) => {
    expect(timeInWords(milliseconds)).toBe(words);
  });
});
