import { describe, expect, it } from 'vitest';
import roots from '../calculators/questions/roots.ts';
import { killingTemperature, plants, type Plant } from '../calculators/tables/plants.ts';
import { codesOf, valueOf } from './support/answers.ts';
import { expectNear } from './support/near.ts';
import { situation } from './support/situations.ts';

const rows = Object.entries(plants) as [keyof typeof plants, Plant][];

describe('temperatures that kill roots', () => {
  it.each(rows)('%s: lies where roots of woody plants die, young ones first, and is cited', (_, plant) => {
    // Havis 1976, abstract: 38 kinds from 23 °F down to −10 °F. White root tips of box and holly die at 25 °F.
    for (const t of [plant.youngRoots, plant.matureRoots])
      if (t !== null) expect(t <= -3.9 + 0.05 && t >= -23.4).toBe(true);
    if (plant.youngRoots !== null && plant.matureRoots !== null)
      expect(plant.youngRoots).toBeGreaterThanOrEqual(plant.matureRoots);
    expect(plant.cites.length).toBeGreaterThan(0);
    expect(plant.youngRoots ?? plant.matureRoots).not.toBeNull();
  });

  it('hold every kind of the list of 1976 at its temperature or warmer (from memory)', () => {
    const listed = {
      23: ['magnolia'],
      20: ['cornus', 'daphne', 'ilex-crenata', 'ilex-opaca'],
      18: ['pyracantha'],
      16: ['cryptomeria'],
      15: [
        ...['cotoneaster-horizontalis', 'viburnum-carlesii', 'cytisus', 'buxus', 'ilex-glabra'],
        ...['euonymus-fortunei', 'hedera-helix', 'pachysandra', 'vinca-minor', 'pieris-japonica'],
      ],
      14: ['acer-palmatum'],
      10: ['cotoneaster-adpressus', 'taxus', 'rhododendron-gibraltar', 'rhododendron-hinodegiri'],
      5: ['leucothoe', 'pieris-floribunda', 'euonymus-colorata'],
      0: ['juniperus-horizontalis', 'rhododendron-carolinianum', 'rhododendron'],
      [-9]: ['rhododendron-pjm'],
      [-10]: ['potentilla', 'picea-glauca', 'picea-omorika'],
    } as const satisfies Record<number, readonly (keyof typeof plants)[]>;
    for (const [fahrenheit, kinds] of Object.entries(listed))
      for (const kind of kinds)
        expect(killingTemperature(kind, 'mature').t, kind).toBeGreaterThanOrEqual(
          ((Number(fahrenheit) - 32) * 5) / 9 - 0.05,
        );
  });

  it('never take an old root for a young one, and never pass off the default for published', () => {
    for (const [kind, { youngRoots, matureRoots }] of rows) {
      const [young, mature] = (['young', 'mature'] as const).map((age) => killingTemperature(kind, age));
      expect(young!.t).toBeGreaterThanOrEqual(mature!.t);
      expect(young!.published).toBe(kind !== 'unknown' && youngRoots !== null);
      expect(mature!.published).toBe(kind !== 'unknown' && matureRoots !== null);
      if (youngRoots === null) expect(young!.t).toBeGreaterThanOrEqual(-5);
    }
    expect(killingTemperature('unknown', 'young')).toEqual({ t: -3.9, published: false });
  });

  it('are said to be a default where they are, but not twice for kinds that are called unknown', () => {
    const asked = (kind: keyof typeof plants, lowestRootTemperature = 0) =>
      roots.compute(situation({ plants: { kind, rootAge: 'young', lowestRootTemperature } }));
    expect(codesOf(asked('potentilla'))).toContain('care no-published-limit');
    expect(codesOf(asked('unknown'))).not.toContain('care no-published-limit');
    expect(codesOf(asked('taxus'))).not.toContain('care no-published-limit');
    expect(codesOf(asked('potentilla', -6))).toContain('stop limit-kills-roots');
    expectNear(valueOf(asked('taxus').figures.killing), -3.9, 1e-9);
  });
});
