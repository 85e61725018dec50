import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acceptsProtection,
  circuitCurrent,
  conductorResistance,
  currentOf,
  powerShareAfterDrop,
  settledDrop,
  shareOfPower,
  smallestBreaker,
  startUpRatio,
  threePhaseDrop,
  threeWireDrop,
  voltageDrop,
} from '../calculators/electric/circuit.ts';
import { toBase } from '../calculators/quantities/quantity.ts';
import { OutOfRange } from '../calculators/range.ts';
import { conductors } from '../calculators/tables/conductors.ts';
import { ruleSets } from '../calculators/tables/rule-sets.ts';
import { startUpTable } from '../calculators/tables/start-up.ts';
import { expectNear } from './support/near.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const ruleSet = fc.constantFrom(...Object.values(ruleSets));

describe('breakers', () => {
  it.each(Object.entries(ruleSets))('%s: sizes rise, factors are sane, every rule is cited', (_, rules) => {
    const sizes: readonly number[] = rules.breakers.value;
    sizes.slice(1).forEach((size, index) => expect(size).toBeGreaterThan(sizes[index] ?? Number.NaN));
    expect(rules.continuousLoad.value).toBeGreaterThanOrEqual(1);
    expect(rules.continuousLoad.value).toBeLessThanOrEqual(1.5);
    expect(rules.voltageDrop.value).toBeGreaterThan(0);
    expect(rules.voltageDrop.value).toBeLessThanOrEqual(0.05);
    for (const rule of [rules.continuousLoad, rules.breakers, rules.voltageDrop, rules.groundFault]) {
      expect(rule.cites.length).toBeGreaterThan(0);
    }
  });

  it('the smallest is large enough, and the next smaller one is not', () => {
    fc.assert(
      fc.property(ruleSet, between(0.1, 60), between(0, 20), (rules, heating, other) => {
        const size = smallestBreaker(rules, heating, other);
        expect(size).not.toBeNull();
        const needed = circuitCurrent(rules, heating, other);
        expect(size).toBeGreaterThanOrEqual(needed * (1 - 1e-6));
        const smaller = rules.breakers.value.filter((one) => one < (size ?? 0)).at(-1);
        if (smaller !== undefined) expect(smaller).toBeLessThan(needed);
      }),
    );
  });

  it.each(Object.entries(ruleSets))(
    '%s: no protection is never accepted, protection of people always is',
    (_, rules) => {
      expect(acceptsProtection(rules, 'none')).toBe(false);
      expect(acceptsProtection(rules, 'people')).toBe(true);
      expect(acceptsProtection(rules, 'equipment')).toBe(false);
      // A person survives 30 mA for the time that a device takes (IEC 60364-7-705, from memory).
      expect(rules.tripsAt.value.people).toBeLessThanOrEqual(0.03);
      expect(rules.tripsAt.value.equipment).toBeGreaterThan(rules.tripsAt.value.people);
    },
  );

  it('says so when no standard breaker is large enough', () => {
    expect(smallestBreaker(ruleSets.us, 200, 0)).toBeNull();
    expect(smallestBreaker(ruleSets.iec, 200, 0)).toBeNull();
  });

  it('counts the other load on the circuit', () => {
    expect(smallestBreaker(ruleSets.us, 10, 0)).toBe(15);
    expect(smallestBreaker(ruleSets.us, 10, 4)).toBe(20);
    expect(smallestBreaker(ruleSets.iec, 10, 0)).toBe(10);
    expect(smallestBreaker(ruleSets.iec, 10, 0.1)).toBe(13);
  });
});

describe('conductors', () => {
  it('thicker ones drop less and may carry more', () => {
    for (const family of ['awg', 'mm2']) {
      const ids = (Object.keys(conductors) as (keyof typeof conductors)[]).filter((id) =>
        id.startsWith(family),
      );
      ids.slice(1).forEach((id, index) => {
        const thinner = ids[index];
        if (thinner === undefined) return;
        expect(voltageDrop(conductors[id], 25, 10)).toBeLessThan(voltageDrop(conductors[thinner], 25, 10));
        expect(conductors[id].highestBreaker).toBeGreaterThan(conductors[thinner].highestBreaker);
      });
      expect(ids.length).toBeGreaterThan(3);
    }
  });

  it('are as the resistivity of copper has them: 1.7241e-8 Ω·m at 20 °C (IEC 60287), or a little more', () => {
    for (const [id, area] of [
      ['mm2-1.5', 1.5],
      ['mm2-2.5', 2.5],
      ['mm2-4', 4],
      ['mm2-6', 6],
      ['mm2-10', 10],
      ['awg-14', 2.081],
      ['awg-12', 3.309],
      ['awg-10', 5.261],
      ['awg-8', 8.367],
      ['awg-6', 13.3],
    ] as const) {
      const ratio = conductorResistance(conductors[id], 20) / (1.7241e-8 / (area * 1e-6));
      expect(ratio, id).toBeGreaterThan(0.99);
      expect(ratio, id).toBeLessThan(1.09);
    }
  });

  it('a table for 20 °C is taken up to 70 °C, one for 75 °C as it is', () => {
    expectNear(voltageDrop(conductors['mm2-2.5'], 1000, 1), 2 * 7.41 * 1.1965, 1e-3);
    expectNear(voltageDrop(conductors['awg-12'], toBase('length', 1000, 'ft'), 1), 2 * 1.98, 1e-9);
  });

  it('drop in proportion to current and length', () => {
    fc.assert(
      fc.property(between(0, 60), between(0, 300), (current, length) => {
        const drop = voltageDrop(conductors['mm2-4'], length, current);
        expectNear(voltageDrop(conductors['mm2-4'], length, 2 * current), 2 * drop, 1e-9);
        expectNear(voltageDrop(conductors['mm2-4'], 2 * length, current), 2 * drop, 1e-9);
      }),
    );
  });

  it('of three wires lose half as much as of two when both legs are loaded alike, and as much when one is idle', () => {
    fc.assert(
      fc.property(between(0, 60), between(0, 300), between(0, 60), (current, length, other) => {
        const two = voltageDrop(conductors['mm2-4'], length, current);
        expectNear(threeWireDrop(conductors['mm2-4'], length, current, current), two / 2, 1e-9);
        expectNear(threeWireDrop(conductors['mm2-4'], length, current, 0), two, 1e-9);
        // Kirchhoff: down the leg and back through the neutral, which the other leg's current runs against.
        const ohms = length * conductorResistance(conductors['mm2-4'], 70);
        expectNear(
          threeWireDrop(conductors['mm2-4'], length, current, other),
          ohms * current + ohms * (current - other),
          1e-9,
        );
        expectNear(threePhaseDrop(conductors['mm2-4'], length, current), (two * Math.sqrt(3)) / 2, 1e-9);
      }),
    );
  });

  it('leave the cable the power that the two resistances in series leave it', () => {
    fc.assert(
      fc.property(between(50, 3000), between(100, 240), between(0, 5), (power, voltage, feeder) => {
        const cable = voltage ** 2 / power;
        const current = voltage / (cable + feeder);
        expectNear(power * shareOfPower(power, voltage, feeder), current ** 2 * cable, power * 1e-9);
      }),
    );
    expect(currentOf(600, 120)).toBe(5);
    // 5 % less voltage is 9.75 % less heat; of 5 % reckoned with the full current, 4.76 % is lost.
    expectNear(powerShareAfterDrop(0.05), 0.9025, 1e-12);
    expectNear(settledDrop(0.05), 0.05 / 1.05, 1e-15);
    expect([powerShareAfterDrop(0), powerShareAfterDrop(1), settledDrop(0)]).toEqual([1, 0, 0]);
    expect(() => powerShareAfterDrop(1.1)).toThrow(OutOfRange);
  });
});

describe('the start of a self-regulating cable', () => {
  const foot = toBase('length', 1, 'ft');
  const wattsPerMetre = (perFoot: number): number => perFoot / foot;

  it('of the 5 W/ft class draws 10.7 W/ft at −20 °F and 6.4 W/ft at 50 °F, by the table of its maker', () => {
    expectNear(5 * startUpRatio(wattsPerMetre(5), toBase('temperature', -20, '°F')), 10.7, 0.05);
    expectNear(5 * startUpRatio(wattsPerMetre(5), toBase('temperature', 50, '°F')), 6.4, 0.05);
    expectNear(8 * startUpRatio(wattsPerMetre(8), toBase('temperature', 0, '°F')), 14.4, 0.05);
  });

  it('always draws more than the label, and never less when it is colder', () => {
    fc.assert(
      fc.property(between(3, 60), between(-28.8, 30), between(0, 20), (power, t, colder) => {
        expect(startUpRatio(power, t)).toBeGreaterThan(1);
        const low = Math.max(-28.88, t - colder);
        expect(startUpRatio(power, low)).toBeGreaterThanOrEqual(startUpRatio(power, t) - 1e-12);
      }),
    );
  });

  it('is refused colder than the table goes', () => {
    expect(() => startUpRatio(16, -29)).toThrow(OutOfRange);
    expect(() => startUpRatio(16, Number.NaN)).toThrow(OutOfRange);
  });

  it('the table falls with class and rises with temperature', () => {
    const { longest } = startUpTable;
    longest.forEach((row, kind) => {
      row.slice(1).forEach((length, index) => expect(length).toBeGreaterThan(row[index] ?? Number.NaN));
      const thinner: readonly number[] | undefined = longest[kind - 1];
      if (thinner) row.forEach((length, index) => expect(length).toBeLessThan(thinner[index] ?? Number.NaN));
    });
  });
});
