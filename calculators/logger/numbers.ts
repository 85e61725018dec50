/** Numbers as loggers write them in any country. */

/** What loggers write where a sensor gave nothing. */
const nothing = /^(?:|-+|n\/?a|nan|null|none|err(?:or)?|ol|open|missing|#n\/a|[-+]?inf(?:inity)?|\*+)$/iu;
export const isNothing = (cell: string): boolean => nothing.test(cell);

const number =
  /^[-+−–]?(?:\d+(?:[.,]\d+)?|[.,]\d+|\d{1,3}(?:,\d{3})+(?:\.\d+)?|\d{1,3}(?:\.\d{3})+(?:,\d+)?)(?:e[-+]?\d+)?$/iu;

export type DecimalSign = '.' | ',';

/** A number and the unit that may stand behind it, apart: "12.5 °C", "400W". What has digits in it is no unit. */
export function withoutUnit(cell: string): { readonly bare: string; readonly unit: string } {
  const found = /^([-+−–]?[\d.,]+(?:e[-+]?\d+)?)\s*([^\d\s.,]\D*)?$/iu.exec(cell);
  return { bare: found?.[1] ?? cell, unit: found?.[2] ?? '' };
}

/**
 * The sign before the decimals, as all numbers of a file together show it; undefined where they could as well be
 * thousands, or contradict each other.
 *
 * @param small whether numbers of a thousand and more make no sense, as of temperatures
 */
export function decimalOf(
  columns: readonly { readonly cells: readonly string[]; readonly small: boolean }[],
): DecimalSign | undefined {
  let [comma, point, either] = [false, false, false];
  for (const { cells, small } of columns)
    for (const cell of cells) {
      if (!number.test(cell)) continue;
      const last = Math.max(cell.lastIndexOf(','), cell.lastIndexOf('.'));
      if (last < 0) continue;
      const decimals = /^\d*/u.exec(cell.slice(last + 1))?.[0].length ?? 0;
      const leading = cell.slice(0, last).replace(/^[-+−–]/u, '');
      // "1,234" and "1.234" may be a thousand; "21,5", "0,125", "1234,567" and "1.234,5" may not.
      const thousand = decimals === 3 && /^[1-9]\d{0,2}$/u.test(leading);
      if (thousand && !small) either = true;
      else if (cell.charAt(last) === ',') comma = true;
      else point = true;
    }
  if (comma !== point) return comma ? ',' : '.';
  return comma || either ? undefined : '.';
}

/** The value of a cell with that decimal sign; NaN where it is no number. */
export function valueOf(cell: string, decimal: DecimalSign): number {
  if (!number.test(cell)) return NaN;
  const thousands = decimal === '.' ? ',' : '.';
  return Number(cell.split(thousands).join('').replace(decimal, '.').replace(/[−–]/u, '-'));
}
