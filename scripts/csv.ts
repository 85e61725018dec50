/** One row of a table, with the line of the file that it stands on. */
export interface Row {
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

/** Splits a line at its separators; a cell in double quotes may hold one, and a doubled quote is a quote (RFC 4180). */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = '';
  let quoted = false;
  for (let at = 0; at < line.length; at++) {
    const letter = line.charAt(at);
    if (quoted && letter === '"' && line[at + 1] === '"') {
      cell += '"';
      at++;
    } else if (letter === '"') quoted = !quoted;
    else if (letter === separator && !quoted) {
      cells.push(cell);
      cell = '';
    } else cell += letter;
  }
  return [...cells, cell].map((text) => text.trim());
}

/**
 * Reads a table with one line of column names and one line for each row, separated by commas, semicolons or tabs,
 * whichever the first line has most of. Empty lines are passed over.
 */
export function readTable(text: string): {
  readonly columns: readonly string[];
  readonly rows: readonly Row[];
} {
  const lines = text.replace(/^\uFEFF/u, '').split(/\r?\n/u);
  const head = lines[0] ?? '';
  const count = (sign: string): number => head.split(sign).length;
  const separator = [',', ';', '\t'].reduce((best, sign) => (count(sign) > count(best) ? sign : best));
  const columns = cellsOf(head, separator);
  const rows = lines.slice(1).flatMap((line, index): Row[] => {
    if (line.trim() === '') return [];
    const cells = cellsOf(line, separator);
    return [
      { line: index + 2, cells: new Map(columns.map((column, place) => [column, cells[place] ?? ''])) },
    ];
  });
  return { columns, rows };
}
