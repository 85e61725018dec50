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

/** About so long is what is read in one go [characters]: a hundredth of a second's work. */
const pieceLength = 100_000;

/** A text in pieces that end with a line, but never inside quotes, where a cell may run over several lines. */
export function* piecesOf(text: string): Generator<string> {
  let from = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const sign = text.charCodeAt(at);
    if (sign === 34) quoted = !quoted;
    else if (sign === 10 && !quoted && at - from >= pieceLength) {
      yield text.slice(from, at + 1);
      from = at + 1;
    }
  }
  if (from < text.length) yield text.slice(from);
}

/**
 * The lines of a text that have anything in them, with their cells. Read piece by piece: after each, the length that
 * was read so far is handed out [characters], so that whoever asks can do something else in between.
 */
export function* readLines(text: string, delimiter: Delimiter): Generator<number, Line[]> {
  const lines: Line[] = [];
  let at = 1;
  let done = 0;
  for (const piece of piecesOf(text)) {
    // The end of the last line is not the beginning of another.
    const { data } = Papa.parse<string[]>(piece.replace(/\r?\n$/u, ''), { delimiter, skipEmptyLines: false });
    for (const cells of data) {
      const number = at;
      at += 1 + cells.reduce((sum, cell) => sum + (cell.match(/\r\n|\n|\r/gu)?.length ?? 0), 0);
      const trimmed = cells.map((cell) => cell.trim());
      if (trimmed.some((cell) => cell !== '')) lines.push({ number, cells: trimmed });
    }
    done += piece.length;
    yield done;
  }
  return lines;
}

/** `readLines` in one go. */
export function linesOf(text: string, delimiter: Delimiter): Line[] {
  const steps = readLines(text, delimiter);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
