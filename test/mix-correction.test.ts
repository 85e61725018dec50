import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { burstPoint, burstShareFor, coldestBurst } from '../calculators/properties/burst.ts';
import {
  freezingPoint,
  freezingPointAshrae,
  freezingPointMelinder,
  highestVolumeShare,
  massShareOf,
  type Glycol,
} from '../calculators/properties/glycol.ts';
import {
  addOnTop,
  drainAndReplace,
  shareOfBoth,
  shareThatFreezesAt,
} from '../calculators/properties/mix-correction.ts';
import { OutOfRange } from '../calculators/range.ts';
import { expectNear, expectPrinted } from './support/near.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const glycol = fc.constantFrom<Glycol>('propylene', 'ethylene');

describe('what share a mix has that freezes at a temperature', () => {
  it('lies between what the two sources say, the lower one first, and each freezes there', () => {
    fc.assert(
      fc.property(glycol, between(-30, -0.5), (kind, t) => {
        const { least, most } = shareThatFreezesAt(kind, t);
        expect(least).toBeLessThanOrEqual(most);
        const ashrae = (share: number): number => freezingPointAshrae(kind, share);
        const melinder = (share: number): number => freezingPointMelinder(kind, massShareOf(kind, share));
        const off = [ashrae, melinder].map((freezes) =>
          Math.min(Math.abs(freezes(least) - t), Math.abs(freezes(most) - t)),
        );
        for (const one of off) expectNear(one, 0, 1e-6);
        // The guide's own freezing point is the warmer of the two, so it asks for the most.
        expectNear(freezingPoint(kind, most), t, 1e-6);
      }),
    );
  });

  it('is none at 0 °C, and refuses what neither source reaches', () => {
    expect(shareThatFreezesAt('propylene', 0)).toEqual({ least: 0, most: 0 });
    expect(shareThatFreezesAt('ethylene', 3)).toEqual({ least: 0, most: 0 });
    expect(() => shareThatFreezesAt('propylene', -90)).toThrow(OutOfRange);
    expect(() => shareThatFreezesAt('propylene', Number.NaN)).toThrow(OutOfRange);
  });
});

describe('correcting a mix', () => {
  const share = between(0, 0.6);
  const volume = between(0.001, 1);

  it('comes out at the wanted share by drain and replace, and by adding on top', () => {
    fc.assert(
      fc.property(volume, share, share, between(0, 1), (full, present, wanted, filling) => {
        const replaced = drainAndReplace(full, present, wanted, filling);
        if (replaced !== null) {
          expectNear(shareOfBoth(full - replaced, present, replaced, filling), wanted, 1e-9);
          expect(replaced).toBeGreaterThanOrEqual(0);
          expect(replaced).toBeLessThanOrEqual(full);
        }
        const added = addOnTop(full, present, wanted, filling);
        if (added !== null) expectNear(shareOfBoth(full, present, added, filling), wanted, 1e-9);
      }),
    );
  });

  it('is possible with concentrate for a stronger mix and with water for a weaker one, and not the other way', () => {
    fc.assert(
      fc.property(volume, between(0.01, 0.29), between(0.31, 0.6), (full, weak, strong) => {
        expect(drainAndReplace(full, weak, strong)).not.toBeNull();
        expect(addOnTop(full, weak, strong)).not.toBeNull();
        expect(drainAndReplace(full, strong, weak)).toBeNull();
        expect(addOnTop(full, strong, weak)).toBeNull();
        expect(drainAndReplace(full, strong, weak, 0)).not.toBeNull();
        expect(addOnTop(full, strong, weak, 0)).not.toBeNull();
      }),
    );
  });

  it('asks for nothing where the mix is as wanted', () => {
    expect(drainAndReplace(0.1, 0.3, 0.3)).toBe(0);
    expect(addOnTop(0.1, 0.3, 0.3)).toBe(0);
  });

  it('100 L of 20 % become 30 % by 12.5 L replaced or 14.3 L added (worked out by hand)', () => {
    expectPrinted(drainAndReplace(100, 0.2, 0.3) ?? Number.NaN, '12.5');
    expectPrinted(addOnTop(100, 0.2, 0.3) ?? Number.NaN, '14.3');
  });
});

describe('burst protection', () => {
  it('asks for less than freeze protection, and for more the colder it gets', () => {
    fc.assert(
      fc.property(glycol, between(-30, -1), (kind, t) => {
        const asked = burstShareFor(kind, t);
        expect(freezingPoint(kind, asked)).toBeGreaterThan(t);
        expect(burstShareFor(kind, t - 1)).toBeGreaterThanOrEqual(asked);
      }),
    );
  });

  it('is undone by the coldest air that a mix stands', () => {
    fc.assert(
      fc.property(glycol, between(0.001, 0.3), (kind, share) => {
        expectNear(burstShareFor(kind, burstPoint(kind, share)), share, 1e-9);
      }),
    );
  });

  it('of plain water ends at 0 °C; a strong mix is safe in any cold of the table', () => {
    for (const kind of ['propylene', 'ethylene'] as const) {
      expect(Math.abs(burstPoint(kind, 0))).toBe(0);
      expect(burstShareFor(kind, 0)).toBe(0);
      expect(burstPoint(kind, highestVolumeShare(kind))).toBe(coldestBurst);
    }
    expectPrinted(coldestBurst, '-51.1');
  });

  it('refuses air colder than the table, and a share that no mix has', () => {
    expect(() => burstShareFor('propylene', -52)).toThrow(OutOfRange);
    expect(() => burstPoint('propylene', 1.1)).toThrow(OutOfRange);
    expect(() => burstPoint('ethylene', Number.NaN)).toThrow(OutOfRange);
  });
});
