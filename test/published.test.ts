import { describe, expect, it } from 'vitest';
import { runCheck, sentence, type Check } from '../calculators/checks/check.ts';
import { disagreements } from '../calculators/checks/disagreements.ts';
import { topics } from '../calculators/checks/index.ts';
import { printed } from '../calculators/checks/printed.ts';
import {
  freezingPointAshrae,
  freezingPointMelinder,
  highestVolumeShare,
  massShareOf,
  type Glycol,
} from '../calculators/properties/glycol.ts';
import { sources } from '../calculators/sources.ts';
import { expectNear } from './support/near.ts';

const all = topics.flatMap(({ checks }) => checks);
const ofKind = (kind: Check['kind']): number => all.filter((check) => check.kind === kind).length;

describe.each(topics.map((topic) => [topic.label, topic.checks] as const))(
  'published values: %s',
  (_, checks) => {
    it('has rows, so that an empty table is not a pass', () => {
      expect(checks.length).toBeGreaterThan(0);
    });

    it.each(checks.map((check) => [sentence(check), check] as const))('%s', (_sentence, check) => {
      const { passes, actual, deviation, allowed } = runCheck(check);
      expect(passes, `${actual} is ${deviation} away, ${allowed} is allowed`).toBe(true);
    });
  },
);

describe('the published checks themselves', () => {
  it('are many, and no two are the same', () => {
    expect(all.length).toBeGreaterThanOrEqual(250);
    expect(new Set(all.map(sentence)).size).toBe(all.length);
  });

  it('hold at least sixty answers to worked examples, beside tables and programs', () => {
    expect(ofKind('worked example')).toBeGreaterThanOrEqual(60);
    expect(ofKind('table')).toBeGreaterThan(0);
    expect(ofKind('program check')).toBeGreaterThan(0);
  });

  it('name their source and say why, wherever more than half a digit is allowed', () => {
    for (const { from, via, tolerance } of all) {
      for (const { source, at } of via ? [from, via] : [from]) {
        expect(sources).toHaveProperty(source);
        expect(at.length).toBeGreaterThan(2);
      }
      if (tolerance) expect(tolerance.because.length).toBeGreaterThan(5);
    }
  });

  it('are mostly seen in print, not remembered', () => {
    expect(all.filter(({ standing }) => standing === 'seen').length).toBeGreaterThan(all.length * 0.8);
  });

  it('fail when the computed value is off by more than is allowed', () => {
    for (const check of all) {
      const { actual, deviation, allowed, passes } = runCheck(check);
      expect(passes).toBe(true);
      const { from, to } = printed(check.printed);
      const off = actual < from ? -1 : 1;
      const beyond = to - from + 2 * allowed + Math.abs(deviation);
      expect(runCheck({ ...check, computed: () => actual + off * beyond }).passes, sentence(check)).toBe(
        false,
      );
      expect(runCheck({ ...check, computed: () => Number.NaN }).passes).toBe(false);
    }
  });

  it('read what is printed as it is meant', () => {
    expect(printed('2833')).toEqual({ from: 2833, to: 2833, within: 0.5 });
    expect(printed('−15.60')).toEqual({ from: -15.6, to: -15.6, within: 0.005 });
    expectNear(printed('1.2e-5').within, 5e-7, 1e-20);
    expect(printed('5.7 to 6.8')).toEqual({ from: 5.7, to: 6.8, within: 0.05 });
    for (const not of ['', 'about 5', '5,7', '1.', '5 to', '1 to 2 to 3']) {
      expect(() => printed(not), not).toThrow(RangeError);
    }
  });

  it('measure how far off a value is from the nearer end of a range', () => {
    const range: Check = {
      what: 'an invented value',
      given: 'nothing',
      printed: '1.0 to 2.0',
      unit: 'W',
      computed: () => 1.5,
      kind: 'table',
      from: { source: 'invented', at: 'here' },
      standing: 'memory',
    };
    expect(runCheck(range)).toMatchObject({ deviation: 0, share: 0, passes: true });
    const above = runCheck({ ...range, computed: () => 2.5 });
    expect(above).toMatchObject({ deviation: 0.5, share: 0.25, passes: false });
    expect(runCheck({ ...range, computed: () => 0.5 })).toMatchObject({ deviation: -0.5, share: -0.5 });
    expect(runCheck({ ...range, unit: '°C' }).share).toBeNull();
  });
});

describe('the list of disagreements', () => {
  it('names at least one source for each, and none twice', () => {
    for (const { about, differ, used, cites } of disagreements) {
      expect(cites.length, about).toBeGreaterThan(0);
      expect(differ.endsWith('.') && used.endsWith('.'), about).toBe(true);
    }
    expect(new Set(disagreements.map(({ about }) => about)).size).toBe(disagreements.length);
  });

  it.each([
    ['propylene', 1.4],
    ['ethylene', 2.9],
  ] as const)('says rightly how far the freezing points of %s glycol are apart', (glycol: Glycol, most) => {
    const highest = highestVolumeShare(glycol);
    const apart = Array.from({ length: 601 }, (_, index) => {
      const share = (highest * index) / 600;
      return Math.abs(
        freezingPointAshrae(glycol, share) - freezingPointMelinder(glycol, massShareOf(glycol, share)),
      );
    });
    expectNear(Math.max(...apart), most, 0.05);
  });
});
