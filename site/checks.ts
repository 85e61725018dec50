import type { Check, Checked } from '../calculators/checks/check.ts';

/** How the page of checks writes numbers: as print does, and ours with one digit more than the source has. */

const raised = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const asPower = (power: string): string =>
  `10${power.startsWith('-') ? '⁻' : ''}${power.replace(/\D/gu, '').replace(/\d/gu, (digit) => raised.charAt(Number(digit)))}`;

/** "1.2e-5" as 1.2 × 10⁻⁵, and every minus as long as a digit is wide. */
export const inPrint = (text: string): string =>
  text
    .replace(/(\d)e\+?(-?\d+)/gu, (_, digit: string, power: string) => `${digit} × ${asPower(power)}`)
    .replace(/(^|[\s(])-(?=\d)/gu, '$1−');

/** Beyond these a double has no digits left. */
const mostDigits = 15;

/** A value of ours with one decimal more than the printed one, and with its power of ten. */
export function likePrinted(printed: string, value: number): string {
  const [mantissa = '', power] = (printed.split(' to ')[0] ?? '').split('e');
  const digits = mantissa.replace(/\D/gu, '').length;
  const decimals = (mantissa.split('.')[1]?.length ?? 0) + (digits < mostDigits ? 1 : 0);
  const scaled = power === undefined ? value : value / 10 ** Number(power);
  return inPrint(`${scaled.toFixed(decimals)}${power === undefined ? '' : `e${power}`}`);
}

/** A number with two digits that count, never with a power of ten. */
function short(value: number): string {
  const size = Math.abs(value);
  const decimals = size === 0 ? 0 : Math.max(0, 1 - Math.floor(Math.log10(size)));
  return size.toFixed(Math.min(decimals, 20));
}

/** Less than this share is no difference but the last bit of a double. */
const lastBit = 1e-12;

/** A share that nobody needs the digits of. */
const least = 1e-5;

/** How far ours lies from the printed value, with its sign: "+1.3 %", "−0.05 K", "+4.1 points". */
export function offBy({ deviation, share }: Checked, unit: string): string {
  const amount = share ?? deviation;
  if (Math.abs(amount) < lastBit) return 'none';
  const sign = amount < 0 ? '−' : '+';
  if (share !== null) {
    return Math.abs(share) < least ? `under ${100 * least} %` : `${sign}${short(100 * share)} %`;
  }
  return `${sign}${short(deviation)} ${unit === '%' ? 'points' : unit === '°C' ? 'K' : unit}`.trimEnd();
}

/** How far off it may be: "half a digit", "3 %", "±5 points". */
export function mayBeOff({ tolerance, unit }: Check): string {
  if (tolerance === undefined) return 'half a digit';
  if ('share' in tolerance) {
    return tolerance.share < 1e-5
      ? inPrint(`${tolerance.share} of it`)
      : `${Number(short(100 * tolerance.share))} %`;
  }
  const { plusMinus } = tolerance;
  if (plusMinus < 1e-8) return 'nothing';
  return `${Number(short(plusMinus))} ${unit === '%' ? 'points' : unit === '°C' ? 'K' : unit}`.trimEnd();
}

/** The one of these checks that is furthest off, as a share of what is printed. */
export function furthest<T extends { readonly result: Checked }>(rows: readonly T[]): T | undefined {
  const far = ({ result }: T): number => Math.abs(result.share ?? 0);
  return rows.reduce<T | undefined>((most, row) => (most && far(most) >= far(row) ? most : row), undefined);
}
