import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { contrast, grounds, luminance } from '../content/colours.ts';
import { outline } from '../content/outline.ts';
import { readRegions } from '../content/regions.ts';
import { places } from '../content/region-schema.ts';
import { filesOf } from '../scripts/content-files.ts';
import { root } from './support/imports.ts';
import { expectNear } from './support/near.ts';

const whole = filesOf('regions').find(({ file }) => file.endsWith('tallow.yaml'))?.text ?? '';

function problemOf(right: string, wrong: string): string {
  expect(whole).toContain(right);
  const read = readRegions([{ file: 'mine.yaml', text: whole.replace(right, wrong) }], filesOf('stations'));
  return read.ok ? '' : read.problems.map(({ text }) => text).join('\n');
}

describe('contrast', () => {
  // WCAG 2.2: white to black is 21:1. Of greys on white the lightest that passes at 4.5 is #767676, with 4.54; #777777
  // has 4.48 (common knowledge of the trade, from memory).
  it.each([
    ['#ffffff', '#000000', 21],
    ['#767676', '#ffffff', 4.54],
    ['#777777', '#ffffff', 4.48],
    ['#164a60', '#164a60', 1],
  ])('of %s and %s is %d', (one, other, ratio) => {
    expectNear(contrast(one, other), ratio, 0.005);
    expectNear(contrast(other, one), ratio, 0.005);
  });

  it('has the weights of the standard', () => {
    expectNear(luminance('#ff0000'), 0.2126, 1e-12);
    expectNear(luminance('#00ff00'), 0.7152, 1e-12);
    expectNear(luminance('#0000ff'), 0.0722, 1e-12);
  });

  it('is taken on the paper and the panels that the styles have', () => {
    const tokens = readFileSync(join(root, 'site/styles/tokens.css'), 'utf8');
    const [light = '', dark = ''] = tokens.split('@media');
    for (const ground of grounds.light) expect(light).toContain(ground);
    for (const ground of grounds.dark) expect(dark).toContain(ground);
  });
});

describe('what a region brings of its own', () => {
  it('is read, at places that the guide has', () => {
    expect(problemOf('name: Tallow', 'name: Tallow')).toBe('');
    expect(places).toEqual(['start', ...outline.map(({ id }) => id)]);
  });

  it.each([
    [
      "link: '#174d2c'",
      "link: '#8fae99'",
      /mine\.yaml, line \d+, colours\.link: .*contrast of 4\.5 or more to the light page; this one has 2\.1/u,
    ],
    [
      "linkDark: '#9fd3ae'",
      "linkDark: '#174d2c'",
      /colours\.linkDark: .*to the dark page; this one has 1\.\d/u,
    ],
    ["link: '#174d2c'", "link: 'green'", /colours\.link: .*a colour such as/u],
    ["  linkDark: '#9fd3ae'\n", '', /colours\.linkDark: Enter the colour of links on the dark page/u],
    ['at: outage', 'at: outages', /insertions\.1\.at: .*one of the places start, roots.*Found: outages/u],
    ['kind: caution', 'kind: warning', /insertions\.1\.kind: .*must be caution or note/u],
    ['    title: Freezing rain (invented)\n', '', /insertions\.1\.title: Enter the title of the words/u],
  ])('%j as %j is told', (right, wrong, words) => {
    expect(problemOf(right, wrong)).toMatch(words);
  });
});
