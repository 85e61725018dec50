import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Sentence } from '../calculators/calculator.ts';
import { sentenceText } from '../site/widgets/text.ts';
import { readForecast, type TemperatureUnit } from '../calculators/weather/forecast.ts';
import { lengthOf } from '../calculators/weather/series.ts';
import { expectNear } from './support/near.ts';

const hour = 3600;

/** A forecast that can be read, as clock of its first value, kind and hourly or half-hourly values. */
function read(text: string, unit: TemperatureUnit = '°C') {
  const result = readForecast(text, unit);
  expect(result, text).toMatchObject({ ok: true });
  if (!result.ok) throw new Error('not read');
  const { kind, series } = result.forecast;
  const at = (hours: number): number => series.values[(hours * hour) / series.every] ?? NaN;
  return { kind, clock: series.clock / hour, hours: lengthOf(series) / hour, at };
}

const plain = (words: Sentence): string => sentenceText(words, { system: 'metric', locale: 'en' });

const problem = (text: string, unit: TemperatureUnit = '°C') => {
  const result = readForecast(text, unit);
  expect(result, text).toMatchObject({ ok: false });
  return result.ok
    ? { line: 0, found: '', allowed: '' }
    : { ...result.problem, allowed: plain(result.problem.allowed) };
};

describe('a forecast day by day', () => {
  it.each([
    ['Mon 5/-3, Tue 2/-8', 'with names and commas'],
    ['Mon 5/-3; Tue 2/-8', 'with semicolons'],
    ['5/-3\n2/-8', 'on lines'],
    ['Monday: 5/-3  Tuesday: 2/-8', 'with blanks alone, as a form keeps it'],
    ['Mon 12 5 / −3 °C\nTue 13 2 / −8 °C', 'with days of the month, a true minus and units'],
    ['2026-01-12 5/-3\n2026-01-13 2/-8', 'with dates'],
    ['high 5 low -3, low -8 high 2', 'in words, in any order'],
    ['max 5 min -3, max 2 min -8', 'with most and least'],
    ['Lu 5/-3, Ma 2/-8', 'with names of other languages'],
    ['41/26.6 F, 35.6/17.6', 'in °F, said once'],
    ['today 5 to -3, tomorrow 2 to -8', 'with to'],
  ])('%s (%s)', (text) => {
    const { kind, clock, hours, at } = read(text);
    expect([kind, clock, hours]).toEqual(['days', 15, 48]);
    [5, -3, 2, -8].forEach((t, index) =>
      expectNear(at([0, 14, 24, 38][index] ?? 0), t, 1e-9, `value ${index}`),
    );
  });

  it('may begin with the low of the morning', () => {
    const { clock, at } = read('-3/5, -8/2');
    expect([clock, at(0), at(10), at(24), at(34)]).toEqual([5, -3, 5, -8, 2]);
  });

  it('takes figures without a unit for those of the reader, and a decimal comma for one', () => {
    expectNear(read('41/14', '°F').at(14), -10, 1e-9);
    expectNear(read('4,5/-2,5').at(0), 4.5, 1e-9);
  });

  it('reads back whatever was written of falling days', () => {
    const level = fc.integer({ min: -300, max: 300 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(fc.array(fc.tuple(level, level), { minLength: 1, maxLength: 14 }), (pairs) => {
        const days = pairs.map(([a, b]) => [Math.max(a, b), Math.min(a, b)] as const);
        fc.pre(days.some(([high, low]) => high > low));
        const { at } = read(days.map(([high, low]) => `${high}/${low}`).join(', '));
        days.forEach(([high, low], day) => {
          expectNear(at(24 * day), high, 1e-9);
          expectNear(at(24 * day + 14), low, 1e-9);
        });
      }),
      { numRuns: 60 },
    );
  });
});

describe('a forecast hour by hour', () => {
  it.each([
    '18:00 2, 21:00 -1, 00:00 -4, 06:00 -7',
    '6 pm 2 9 pm -1 12 am -4 6 am -7',
    '18h 2°C\n21h -1\n0h -4\n6h -7',
    '2026-01-12T18:00 2\n2026-01-12T21:00 -1\n2026-01-13T00:00 -4\n2026-01-13T06:00 -7',
  ])('%j', (text) => {
    const { kind, clock, hours, at } = read(text);
    expect([kind, clock, hours]).toEqual(['hours', 18, 12]);
    expect([0, 1.5, 3, 6, 9, 12].map(at)).toEqual([2, 0.5, -1, -4, -5.5, -7]);
  });
});

describe('a forecast that cannot be read says where, what was found and what is allowed', () => {
  it.each([
    ['', 1, '', /a forecast, such as/u],
    ['Mon 5/-3\nTue warm', 2, 'Tue warm', /a high and the low of the night after it/u],
    ['Mon 5/-3\nWed 2/-8', 2, 'Wed 2/-8', /the day after “Mon 5\/-3”/u],
    ['2026-01-12 5/-3\n2026-01-14 2/-8', 2, '2026-01-14 2/-8', /the day after/u],
    ['5/-3\n\n-8/2', 3, '-8/2', /a high and then a low/u],
    ['-8/2, 5/-3', 1, '5/-3', /a low and then a high/u],
    ['5/-3\n18:00 2', 2, '18:00 2', /a high and a low, as the entries before/u],
    ['18:00 2, 5/3', 1, '5/3', /an hour and a temperature, as the entries before/u],
    ['18:00 2', 1, '18:00 2', /followed by at least one more hour/u],
    ['25:00 2, 26:00 1', 1, '25:00 2', /an hour of the clock/u],
    ['13 pm 2, 2 pm 1', 1, '13 pm 2', /an hour of the clock/u],
    ['06:00 2, 21:00 1', 1, '21:00 1', /by no more than 12 hours/u],
    ['Mon 500/3', 1, '500', /between -60 and 50 °C/u],
    ['5 C/-3, 40 F/2 F, 3/-2', 1, '3', /followed by °C or °F/u],
    ['-3', 1, '-3', /such as “Mon 5\/-3”/u],
    [Array.from({ length: 15 }, () => '5/-3').join(', '), 1, '5/-3', /no more than 14 days/u],
  ])('%j', (text, line, found, allowed) => {
    const wrong = problem(text);
    expect([wrong.line, wrong.found]).toEqual([line, found]);
    expect(wrong.allowed).toMatch(allowed);
  });

  it('never throws and never gives a temperature that is no number, whatever is typed', () => {
    const piece = fc.constantFrom(
      'Mon',
      '5',
      '-3',
      '/',
      ',',
      '18:00',
      'high',
      'low',
      '°F',
      'C',
      ' ',
      '\n',
      'pm',
      '2026-01-12',
      'T',
      '−',
      '.',
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), fc.string({ maxLength: 8 }), (pieces, noise) => {
        const result = readForecast(pieces.join('') + noise, '°C');
        if (result.ok) {
          for (const t of Array.from(result.forecast.series.values)) expect(Number.isFinite(t)).toBe(true);
        } else expect(plain(result.problem.allowed).length).toBeGreaterThan(5);
      }),
      { numRuns: 2000 },
    );
  });
});
