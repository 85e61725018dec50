import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answer } from '../calculators/index.ts';
import { shoppingList } from '../calculators/shopping.ts';
import { amountsOf, type Situation } from '../calculators/calculator.ts';
import { sentenceText } from '../site/widgets/text.ts';
import { anyBench, type BenchChanges } from './support/benches.ts';
import { inventedStation, metricRegion, situation, usRegion, usSituation } from './support/situations.ts';

const listOf = (where: Situation): Record<string, string> =>
  Object.fromEntries(
    shoppingList(where, answer(where)).map(({ id, name, quantity }) => [
      id,
      [name, quantity]
        .map((words) => sentenceText(words, { system: where.region.units, locale: 'en' }))
        .join(': ')
        .replaceAll('\u202f', ' '),
    ]),
  );
const list = (changes: BenchChanges = {}) => listOf(situation(changes));

describe('what to buy', () => {
  it('has what switches, guards and watches the heat, whatever the bench', () => {
    for (const where of [situation(), usSituation()])
      expect(Object.keys(listOf(where))).toEqual(
        expect.arrayContaining([
          'thermostat',
          'limit-thermostat',
          'ground-fault-device',
          'alarm',
          // The log and the proof of the bench read it; the loop is drained through the plug.
          'energy-meter',
          'drain-plug',
          'thermometers',
          'supports',
        ]),
      );
  });

  // UL 943, class A: 4 to 6 mA; IEC 60364-7-705: 30 mA; both from memory.
  it('asks for the ground-fault device of the region', () => {
    expect(list()['ground-fault-device']).toBe('Ground-fault device (RCD), 30 mA or less: 1');
    expect(listOf(usSituation())['ground-fault-device']).toBe(
      'Ground-fault device (GFCI of class A), 6 mA or less: 1',
    );
  });

  // By hand: 12 m of pipe on supports 0.6 m apart has 20 stretches and 21 supports, a ring of it 20.
  it('counts supports, bends and caps as the loop runs', () => {
    expect(list({ loop: { length: 12, run: 'u' } })).toMatchObject({
      supports: 'Pipe supports: 21',
      bends: 'Bends of 90°: 2',
      'end-caps': 'End caps: 2',
    });
    const ring = list({ loop: { length: 12, run: 'ring' } });
    expect(ring).toMatchObject({ supports: 'Pipe supports: 20', bends: 'Bends of 90°: 4' });
    expect(ring).not.toHaveProperty('end-caps');
    expect(list({ loop: { length: 12, run: 'straight' } })).not.toHaveProperty('bends');
  });

  it('lists only what this bench has', () => {
    expect(list({ cable: { contact: 'taped', length: 40 } })['foil-tape']).toMatch(/: 40\.00? m$/u);
    expect(list({ cable: { contact: 'bare' } })).not.toHaveProperty('foil-tape');
    const water = list({ mix: { antifreeze: 'none' } });
    expect(water).toHaveProperty('frost-thermostat');
    expect(water).not.toHaveProperty('concentrate');
    expect(water).not.toHaveProperty('refractometer');
    expect(list({ loop: { expansion: 'headspace' } })).not.toHaveProperty('standpipe');
    expect(list({ loop: { expansion: 'headspace' } })['drain-plug']).not.toContain('tee');
    // The chapter on closing lays the foot of the skirt out on the floor.
    const skirted = list({ skirt: { material: 'film-plain' }, frame: { height: 0.8 } });
    expect(skirted['skirt']).toContain('0.95 m high');
    const open = list({
      skirt: { material: 'none' },
      cover: { kind: 'none' },
      frame: { floorInsulation: 0 },
    });
    for (const id of ['skirt', 'cover', 'floor-board']) expect(open).not.toHaveProperty(id);
    const closed = list({ cover: { kind: 'film', height: 0.5 }, frame: { length: 6, width: 1.2 } });
    // 6 × 1.2 m of top and 14.4 m around, half a metre high.
    expect(closed['cover']).toBe('Cover: film: 14.40 m²');
  });

  it('names each thing of any bench once, with a quantity', () => {
    fc.assert(
      fc.property(anyBench, fc.constantFrom(metricRegion, usRegion), (bench, region) => {
        const where = { bench, region, station: inventedStation };
        const bought = shoppingList(where, answer(where));
        expect(new Set(bought.map(({ id }) => id)).size).toBe(bought.length);
        for (const { name, quantity } of bought)
          for (const words of [name, quantity]) {
            expect(words).not.toContain('');
            for (const { value } of amountsOf(words)) expect(Number.isFinite(value)).toBe(true);
          }
      }),
      { numRuns: 30 },
    );
  });
});
