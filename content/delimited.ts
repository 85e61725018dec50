import Papa from 'papaparse';

/** A line of a delimited text; a quoted cell may run over several, of which this is the first. */
export interface Line {
  /** From 1. */
  readonly number: number;
  readonly cells: readonly string[];
}

const delimiters = ['\t', '|', ';', ','] as const;
export type Delimiter = (typeof delimiters)[number];

export const delimiterNames: Readonly<Record<Delimiter, string>> = {
  '\t': 'tab',
  '|': 'bar',
  ';': 'semicolon',
  ',': 'comma',
};

/** How often a sign stands outside quotes in a line. */
const countOf = (line: string, sign: string): number => line.replace(/"[^"]*"/gu, '').split(sign).length - 1;

/**
 * The sign between the cells of a text: the first of tab, bar, semicolon and comma that most lines have equally often.
 * The comma comes last, as it is a decimal sign too.
 */
export function delimiterOf(text: string): Delimiter {
  const lines = text
    .slice(0, 100_000)
    .split(/\r\n|\n|\r/u)
    .filter((line) => line.trim() !== '')
    .slice(0, 200);
  const usual = delimiters.find((sign) => {
    const counts = new Map<number, number>();
    for (const line of lines) {
      const count = countOf(line, sign);
      if (count > 0) counts.set(count, (counts.get(count) ?? 0) + 1);
    }
    return Math.max(0, ...counts.values()) > lines.length / 2;
  });
  return usual ?? ',';
}

/** The lines of a text that have anything in them, with their cells. */
export function linesOf(text: string, delimiter: Delimiter): Line[] {
  const { data } = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: false });
  let at = 1;
  return data.flatMap((cells) => {
    const number = at;
    at += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/gu)?.length ?? 0), 0);
    const trimmed = cells.map((cell) => cell.trim());
    return trimmed.some((cell) => cell !== '') ? [{ number, cells: trimmed }] : [];
  });
}
