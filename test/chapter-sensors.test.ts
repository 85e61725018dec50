import { describe, expect, it } from 'vitest';
import { toBase } from '../calculators/quantities/quantity.ts';
import { showQuantity, type Manner } from '../calculators/quantities/show.ts';
import loop from '../calculators/questions/loop.ts';
import settings from '../calculators/questions/settings.ts';
import { valueOf } from './support/answers.ts';
import { expectNear, expectPrinted } from './support/near.ts';
import { situation } from './support/situations.ts';
import { workedExample } from './support/worked-example.ts';

describe('the example that is worked by hand in sensors.mdx', () => {
  const { cell, sum } = workedExample('sensors');
  const units = {
    metric: { level: '°C', step: 'K', long: 'm', power: 'W/m', pipe: 'drain-110' },
    us: { level: '°F', step: '°F', long: 'ft', power: 'W/ft', pipe: 'schedule40-3in' },
  } as const;
  const numbers = (text: string) => (text.replaceAll('−', '-').match(/-?\d+(?:\.\d+)?/gu) ?? []).map(Number);

  it.each(['metric', 'us'] as const)('each sum comes to what stands behind it, %s', (column) => {
    for (const head of ['Low alarm', 'Set point', 'Power of the cable', 'Shortest cycle']) {
      const { value, result } = sum(head, column);
      expectPrinted(value, result, head);
    }
  });

  it.each(['metric', 'us'] as const)('the calculator agrees to the digit, %s', (column) => {
    const { level, step, long, power, pipe } = units[column];
    const [limit = NaN, over = NaN] = numbers(cell('Limit, sensor above coldest layer', column));
    const [differential = NaN] = numbers(cell('Differential', column));
    const [length = NaN] = numbers(cell('Loop', column));
    const [cable = NaN, output = NaN] = numbers(cell('Power of the cable', column));
    const where = situation({
      plants: { lowestRootTemperature: toBase('temperature', limit, level) },
      control: { differential: toBase('temperatureDifference', differential, step) },
      loop: { pipe, length: toBase('length', length, long) },
      mix: { antifreeze: 'none' },
      cable: {
        length: toBase('length', cable, long),
        powerPerLength: toBase('powerPerLength', output, power),
      },
    });
    const { figures } = settings.compute(where);
    const manner: Manner = { system: column, locale: 'en' };
    const show = (value: number, quantity: 'temperature' | 'duration' | 'heatCapacity') =>
      showQuantity(value, quantity, manner).replace('\u202f', ' ').replace('−', '-');
    const written = (head: string) => `${sum(head, column).result} ${sum(head, column).unit}`;
    // The bench's own pot has another difference between sensor and coldest layer: it is put in from the table.
    const own = valueOf(figures.potAtLimit) - where.bench.plants.lowestRootTemperature;
    const other = toBase('temperatureDifference', over, step) - own;
    expect(show(valueOf(figures.alarmLow) + other, 'temperature')).toBe(written('Low alarm'));
    expect(show(valueOf(figures.setInPot) + other, 'temperature')).toBe(written('Set point'));
    expect(show(valueOf(figures.shortestCycle), 'duration')).toBe(written('Shortest cycle'));
    expectNear(
      where.bench.cable.length * where.bench.cable.powerPerLength,
      sum('Power of the cable', column).value,
      1e-6,
    );
    expect(cell('Loop', column)).toContain(
      show(valueOf(loop.compute(where).figures.heatCapacity), 'heatCapacity'),
    );
  });
});
