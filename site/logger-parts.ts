import type { LoggedId } from '../calculators/logger/columns.ts';
import type { Log } from '../calculators/logger/log.ts';
import type { Manner } from '../calculators/quantities/show.ts';
import type { LoggerAccount, LoggerChoices, Question } from '../content/logger-file.ts';
import type { Problem } from '../content/problem.ts';
import { loggedDrawing } from './drawing/logged.ts';
import { drawingWidths } from './drawings.ts';
import { columnChoices, holdsWords, loggerView, type LoggerView } from './logger-view.ts';
import { part, type Part } from './tree.ts';

/** What stands on a page for a logger's file: its account, its columns, its drawing, its means. Ids start with `logger`. */

const list = (items: readonly string[], attributes: Readonly<Record<string, string>> = {}): Part =>
  part('ul', attributes, ...items.map((text) => part('li', {}, text)));

const asText = (holds: LoggedId | null): string => holdsWords[holds ?? 'none'];

/** Which column is which: a choice for each where someone can choose, else words. */
function columnTable({ columns }: LoggerView, live: boolean): Part {
  const rows = columns.map(({ number, head, holds }) => {
    const id = `logger-column-${number}`;
    const choice = part(
      'select',
      { id, 'data-logger-column': String(number) },
      ...columnChoices.map((value) =>
        part('option', { value, selected: value === (holds ?? 'none') ? '' : undefined }, holdsWords[value]),
      ),
    );
    return part(
      'tr',
      {},
      part('th', { scope: 'row' }, live ? part('label', { for: id }, head) : head),
      part('td', {}, live ? choice : asText(holds)),
    );
  });
  return part(
    'table',
    { class: 'logger-columns' },
    part('caption', {}, 'Which column is which'),
    part(
      'thead',
      {},
      part('tr', {}, part('th', { scope: 'col' }, 'Column'), part('th', { scope: 'col' }, 'Taken for')),
    ),
    part('tbody', {}, ...rows),
  );
}

function drawn(log: Log, view: LoggerView, manner: Manner): Part {
  const sheets = Object.entries(drawingWidths).map(([size, width]) =>
    part(
      'div',
      { class: `drawn-sheet ${size}` },
      { drawing: loggedDrawing({ log, window: view.window, manner, width }), id: `logger-drawing-${size}` },
    ),
  );
  return part(
    'figure',
    { class: 'drawn' },
    ...sheets,
    part('figcaption', {}, part('span', { class: 'drawn-title' }, 'What the logger recorded'), view.stretch),
  );
}

const means = (view: LoggerView): Part =>
  part(
    'dl',
    { class: 'facts logger-means' },
    ...view.means.map(({ label, text }) => part('div', {}, part('dt', {}, label), part('dd', {}, text))),
  );

/** A file that was read. */
export function readParts(log: Log, account: LoggerAccount, manner: Manner, live: boolean): Part[] {
  const view = loggerView(log, account, manner);
  return [
    part(
      'details',
      { class: 'answer-table', open: '' },
      part('summary', {}, 'What was read, and what was left out'),
      list(view.read),
      ...(view.leftOut.length > 0 ? [list(view.leftOut, { class: 'logger-left-out' })] : []),
      columnTable(view, live),
    ),
    drawn(log, view, manner),
    ...(view.means.length > 0
      ? [part('p', { class: 'logger-head' }, 'The means of these two hours'), means(view)]
      : []),
  ];
}

const questionWords: Readonly<Record<string, string>> = {
  ...holdsWords,
  'year-first': 'The year first',
  'day-first': 'The day first',
  'month-first': 'The month first',
  '.': 'A point, as in 5.4',
  ',': 'A comma, as in 5,4',
  Wh: 'Wh, counting up',
  kWh: 'kWh, counting up',
};

/** What the file does not tell by itself, each with its answers. */
export function questionParts(questions: readonly Question[], choices: LoggerChoices): Part[] {
  return [
    part('p', { class: 'logger-head' }, 'The file leaves this open. Answer it, and it is read on.'),
    ...questions.map(({ about, column, text, allowed }, index) => {
      const id = `logger-question-${index}`;
      const chosen = about === 'columns' ? choices.columns?.[column ?? 0] : choices[about];
      return part(
        'p',
        { class: 'logger-question' },
        part('label', { for: id }, text),
        part(
          'select',
          {
            id,
            'data-logger-about': about,
            'data-logger-column': column === undefined ? undefined : String(column),
          },
          part('option', { value: '', selected: chosen === undefined ? '' : undefined }, 'Choose'),
          ...allowed.map((value) =>
            part(
              'option',
              { value, selected: chosen === value ? '' : undefined },
              questionWords[value] ?? value,
            ),
          ),
        ),
      );
    }),
  ];
}

/** A file that cannot be read. */
export const refusedParts = (problems: readonly Problem[]): Part[] => [
  part(
    'div',
    { class: 'file-problems', 'data-logger-problems': '', tabindex: '-1' },
    part(
      'p',
      { class: 'logger-head' },
      'The file could not be read; your bench and your readings are as they were',
    ),
    list(problems.map(({ text }) => text)),
  ),
];
