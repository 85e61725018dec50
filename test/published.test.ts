import { describe, expect, it } from 'vitest';
import { airRows } from './published/air.ts';
import { electricRows } from './published/electric.ts';
import { glycolRows } from './published/glycol.ts';
import { heatRows } from './published/heat.ts';
import { miss, sentence, type Published } from './published/published.ts';
import { waterRows } from './published/water.ts';

const suites: Readonly<Record<string, readonly Published[]>> = {
  'water and ice': waterRows,
  'antifreeze mixes': glycolRows,
  'air and moisture': airRows,
  'convection, radiation, conduction and leakage': heatRows,
  'cable and circuit': electricRows,
};
const all = Object.values(suites).flat();

describe.each(Object.entries(suites))('published values: %s', (_, rows) => {
  it('has rows, so that an empty table is not a pass', () => {
    expect(rows.length).toBeGreaterThan(0);
  });

  it.each(rows.map((row) => [sentence(row), row] as const))('%s', (_sentence, row) => {
    expect(miss(row)).toBeNull();
  });
});

describe('the published checks themselves', () => {
  it('are many, and no two are the same', () => {
    expect(all.length).toBeGreaterThanOrEqual(120);
    expect(new Set(all.map(sentence)).size).toBe(all.length);
  });

  it('name their source and say why, wherever more than half a digit is allowed', () => {
    for (const { source, tolerance } of all) {
      expect(source.length).toBeGreaterThan(5);
      if (tolerance) expect(tolerance.because.length).toBeGreaterThan(5);
    }
  });

  it('are mostly seen in print, not remembered', () => {
    expect(all.filter((row) => row.standing === 'seen').length).toBeGreaterThan(all.length / 2);
  });

  it('fail when the computed value is off by more than is allowed', () => {
    const row = waterRows[0];
    expect(row).toBeDefined();
    if (!row) return;
    expect(miss(row)).toBeNull();
    expect(miss({ ...row, computed: () => row.computed() * 1.000_001 })).not.toBeNull();
    expect(miss({ ...row, computed: () => Number.NaN })).not.toBeNull();
  });
});
