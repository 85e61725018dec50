import { findUnit, toBase, type QuantityName } from './quantity.ts';

export type ReadProblem = 'empty' | 'not-a-number' | 'ambiguous-comma' | 'unit-missing' | 'unit-unknown';
export type ReadQuantity =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly problem: ReadProblem; readonly found: string };

const sign = '[-−–]?';
const decimal = String.raw`\d+(?:[.,]\d+)?|[.,]\d+`;
const part = new RegExp(
  String.raw`^\s*(?:(\d+)\s+(\d+)\s*/\s*(\d+)|(\d+)\s*/\s*(\d+)|(${decimal}))\s*([^\d\s.,+−–-][^\d\s]*(?:[23](?![\d\p{L}]))?(?:\s*[·*/]\s*[^\d\s]+|\s+\p{L}+)*)?\s*`,
  'u',
);

/**
 * Reads a quantity as people write it: "6 m", "1 1/2 in", "3 ft 6 in", "−2,5 °C", or a bare number in the unit
 * of the form. A comma before exactly three digits ("1,200") may mean two things and is refused, not guessed; so are powers
 * of ten ("1e9") and numbers with both a comma and a point.
 *
 * @param text what was written
 * @param name the quantity it is
 * @param unit the unit of a bare number; without it a bare number is a problem, except of plain numbers
 */
export function readQuantity(text: string, name: QuantityName, unit?: string): ReadQuantity {
  const fail = (problem: ReadProblem, found = text.trim()): ReadQuantity => ({ ok: false, problem, found });
  const trimmed = text.trim();
  if (trimmed === '') return fail('empty');
  // "1e9" is no unit e, and "1.234,5" has two signs of which only one can be the decimal one.
  if (/\d[eE][+\-−]?\d|\d[.,]\d+[.,]\d/u.test(trimmed)) return fail('not-a-number');
  const negative = new RegExp(`^${sign}`, 'u').exec(trimmed)?.[0] !== '';
  let rest = negative ? trimmed.slice(1) : trimmed;
  if (rest.trim() === '') return fail('not-a-number');

  const bare = findUnit(name, '') ? '' : unit;
  let total = 0;
  for (let parts = 0; rest !== ''; parts++) {
    const match = part.exec(rest);
    if (!match || parts > 2) return fail('not-a-number');
    const [whole, n1, d1, n2, d2, plain, spelling] = match.slice(1);
    if (plain && /^[1-9]\d{0,2},\d{3}$/u.test(plain)) return fail('ambiguous-comma', plain);
    const size = plain
      ? Number(plain.replace(',', '.'))
      : Number(whole ?? 0) + Number(n1 ?? n2) / Number(d1 ?? d2);
    const written = spelling?.replace(/\s+/gu, ' ').trim() ?? (parts === 0 ? bare : undefined);
    if (written === undefined) return fail('unit-missing');
    if (!findUnit(name, written)) return fail('unit-unknown', written);
    // Only lengths are written in parts ("3 ft 6 in"), and only a unit without offset can be added up.
    if (parts > 0 && name !== 'length' && name !== 'size') return fail('not-a-number');
    const signed = parts === 0 && negative && name.startsWith('temperature') ? -size : size;
    total += toBase(name, signed, written);
    rest = rest.slice(match[0].length);
  }
  if (negative && !name.startsWith('temperature')) total = -total;
  return Number.isFinite(total) ? { ok: true, value: total } : fail('not-a-number');
}
