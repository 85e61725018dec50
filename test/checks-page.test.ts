import { describe, expect, it } from 'vitest';
import type { Check, Checked } from '../calculators/checks/check.ts';
import { furthest, inPrint, likePrinted, mayBeOff, offBy } from '../site/checks.ts';

const result = (deviation: number, share: number | null): Checked => ({
  actual: 1,
  deviation,
  share,
  allowed: 1,
  passes: true,
});
const check: Check = {
  what: 'an invented value',
  given: 'nothing',
  printed: '1',
  unit: 'W',
  computed: () => 1,
  kind: 'table',
  from: { source: 'invented', at: 'here' },
  standing: 'memory',
};
const because = 'of no reason at all';

describe('the page of checks', () => {
  it('writes powers of ten and minus signs as print does', () => {
    expect(inPrint('1.896e-5 m²/s')).toBe('1.896 × 10⁻⁵ m²/s');
    expect(inPrint('Re 4.710e+5, Pr 0.7')).toBe('Re 4.710 × 10⁵, Pr 0.7');
    expect(inPrint('-50 °C (-58 °F)')).toBe('−50 °C (−58 °F)');
    expect(inPrint('R-10, 2 ft deep')).toBe('R-10, 2 ft deep');
  });

  it.each([
    ['0.88', 0.8767, '0.877'],
    ['1.869e6', 1_830_530, '1.8305 × 10⁶'],
    ['1.729e-5', 1.7164e-5, '1.7164 × 10⁻⁵'],
    ['-2.2', -2.1931, '−2.19'],
    ['5.7 to 6.8', 6.817, '6.82'],
    ['139.13493970073597', 139.134939700736, '139.13493970073600'],
    ['443', 448.899, '448.9'],
  ])('shows beside %s with one digit more what the guide makes of it', (printed, value, shown) => {
    expect(likePrinted(printed, value)).toBe(shown);
  });

  it('says how far off a value is, in the measure that suits it', () => {
    expect(offBy(result(3, 0.0123), 'W')).toBe('+1.2 %');
    expect(offBy(result(-3, -0.000123), 'W')).toBe('−0.012 %');
    expect(offBy(result(12, 0.19), 'W')).toBe('+19 %');
    expect(offBy(result(-0.05, null), '°C')).toBe('−0.050 K');
    expect(offBy(result(4.1, null), '%')).toBe('+4.1 points');
    expect(offBy(result(1e-15, 1e-15), 'W')).toBe('none');
    expect(offBy(result(0.3, null), '')).toBe('+0.30');
    expect(offBy(result(-3e-9, -7e-10), 'W')).toBe('under 0.001 %');
  });

  it('says what is allowed', () => {
    expect(mayBeOff(check)).toBe('half a digit');
    expect(mayBeOff({ ...check, tolerance: { share: 0.025, because } })).toBe('2.5 %');
    expect(mayBeOff({ ...check, tolerance: { share: 1e-9, because } })).toBe('1 × 10⁻⁹ of it');
    expect(mayBeOff({ ...check, tolerance: { plusMinus: 1e-9, because } })).toBe('nothing');
    expect(mayBeOff({ ...check, unit: '%', tolerance: { plusMinus: 5, because } })).toBe('5 points');
    expect(mayBeOff({ ...check, unit: '', tolerance: { plusMinus: 0.1, because } })).toBe('0.1');
  });

  it('finds the row that is furthest off, on either side', () => {
    const rows = [result(0, 0.01), result(0, -0.2), result(9, null)].map((one) => ({ result: one }));
    expect(furthest(rows)?.result.share).toBe(-0.2);
    expect(furthest<{ result: Checked }>([])).toBeUndefined();
  });
});
