import type { Table } from '../../calculators/calculator.ts';
import type { Manner } from '../../calculators/quantities/show.ts';
import { cellText, type Column } from './text.ts';

export type { Column };

/** The rows of a table of answers; the first cell of each names it. */
export const tableRows = (
  rows: Table['rows'],
  columns: readonly Column[],
  how: Manner,
): HTMLTableRowElement[] =>
  rows.map((row) => {
    const line = document.createElement('tr');
    line.append(
      ...columns.map(({ key, quantity, empty }, index) => {
        const cell = document.createElement(index === 0 ? 'th' : 'td');
        if (index === 0) cell.scope = 'row';
        cell.textContent = cellText(row[key] ?? null, quantity, how, empty);
        return cell;
      }),
    );
    return line;
  });
