import type { Answer, Figure } from '../../calculators/calculator.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';
import type { Answers } from '../../calculators/index.ts';
import { shownUnit, type QuantityName } from '../../calculators/quantities/quantity.ts';
import { showLimit, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { fieldValue } from '../bench-value.ts';
import { drawings } from '../drawings.ts';
import { answersFor } from './answers.ts';
import { manner } from './manner.ts';
import { announce } from './notice.ts';
import { situationOf } from './place.ts';
import {
  cellText,
  figureText,
  rangeText,
  sentenceText,
  valueText,
  warningWord,
  type Column,
  type Saying,
} from './text.ts';
import { stripKey, type StripWords } from './strip-words.ts';
import { store } from './the-store.ts';

/**
 * Keeps everything on the page that depends on the bench or on the units in step with the store: figures and values
 * in the text, drawings, warnings, units. The pages carry the marks; this file knows no page.
 */

const all = (selector: string): HTMLElement[] => [...document.querySelectorAll<HTMLElement>(selector)];

/** Leaves what is right already alone, so that nothing is read out or painted twice. */
function write(element: HTMLElement, text: string): void {
  if (element.textContent.trim() !== text) element.textContent = text;
}

const quantityOf = (element: HTMLElement) => element.dataset['quantity'] as QuantityName;

function showUnits(how: Manner): void {
  for (const element of all('[data-unit]'))
    write(element, shownUnit(element.dataset['unit'] as QuantityName, how.system));
  for (const element of all('[data-base]')) {
    const value = Number(element.dataset['base']);
    const limit = element.dataset['limit'] as 'lowest' | 'highest' | undefined;
    const text = limit
      ? showLimit(value, quantityOf(element), how, limit)
      : showQuantity(value, quantityOf(element), how);
    write(element, text);
  }
}

function showGiven(how: Manner): void {
  for (const element of all('[data-given]')) {
    const path = element.dataset['given'] as FieldPath;
    const saying = JSON.parse(element.dataset['saying'] ?? '') as Saying;
    write(element, valueText(fieldValue(store.state.bench, path), saying, how));
  }
}

function showOrigins(): void {
  const { set, origin } = store.state;
  for (const element of all('[data-origin]')) {
    element.hidden = set.includes(element.dataset['origin'] as FieldPath);
    write(element, origin === 'example' ? 'example' : 'assumed');
  }
}

/** How many of the fields that an element speaks for are the reader's own. */
function showOwn(): void {
  for (const element of all('[data-own]')) {
    const paths = element.dataset['own']?.split(' ') ?? [];
    const own = paths.filter((path) => store.state.set.includes(path as FieldPath)).length;
    write(element, `${own} of ${paths.length} yours`);
  }
}

function showWhose(): void {
  const { bench, set, origin } = store.state;
  const whose = store.untouched
    ? 'Figures of the example bench'
    : origin === 'example'
      ? 'Figures of your bench, begun from the example'
      : 'Figures of your bench';
  for (const element of all('[data-whose]')) write(element, whose);
  for (const element of all('[data-bench-name]')) write(element, bench.identity.name);
  for (const element of all('[data-filled]')) write(element, String(set.length));
  for (const bar of document.querySelectorAll<HTMLProgressElement>('[data-filled-bar]'))
    bar.value = set.length;
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-undo]'))
    button.disabled = !store.canUndo;
  for (const button of document.querySelectorAll<HTMLButtonElement>('[data-redo]'))
    button.disabled = !store.canRedo;
  for (const radio of document.querySelectorAll<HTMLInputElement>('input[name="units"]'))
    radio.checked = radio.value === store.system;
}

type AnyAnswers = Readonly<Record<string, Answer>>;

function figureNamed(answers: AnyAnswers, name: string): Figure | null {
  const [id = '', key = ''] = name.split('.');
  return answers[id]?.figures[key] ?? null;
}

function showFigures(answers: AnyAnswers, how: Manner): void {
  for (const element of all('[data-figure]'))
    write(
      element,
      figureText(figureNamed(answers, element.dataset['figure'] ?? ''), quantityOf(element), how),
    );
  for (const element of all('[data-range]'))
    write(element, rangeText(figureNamed(answers, element.dataset['range'] ?? ''), quantityOf(element), how));
}

function showWarnings(answers: AnyAnswers, how: Manner): void {
  for (const list of all('[data-warnings]')) {
    const { warnings } = answers[list.dataset['warnings'] ?? ''] ?? { warnings: [] };
    list.hidden = warnings.length === 0;
    list.replaceChildren(
      ...warnings.map(({ code, level, text }) => {
        const item = document.createElement('li');
        item.className = `warning ${level}`;
        item.dataset['code'] = code;
        const word = document.createElement('strong');
        word.textContent = warningWord(level);
        item.append(word, ` ${sentenceText(text, how)}`);
        return item;
      }),
    );
  }
}

function showTables(answers: AnyAnswers, how: Manner): void {
  for (const body of all('[data-table]')) {
    const [id = '', name = ''] = body.dataset['table']?.split('.') ?? [];
    const columns = JSON.parse(body.dataset['columns'] ?? '[]') as Column[];
    const rows = answers[id]?.tables?.[name]?.rows ?? [];
    body.replaceChildren(
      ...rows.map((row) => {
        const line = document.createElement('tr');
        line.append(
          ...columns.map(({ key, quantity }, index) => {
            const cell = document.createElement(index === 0 ? 'th' : 'td');
            if (index === 0) cell.scope = 'row';
            cell.textContent = cellText(row[key] ?? null, quantity, how);
            return cell;
          }),
        );
        return line;
      }),
    );
  }
}

const drawingName = (element: HTMLElement) => element.dataset['drawing'] as keyof typeof drawings;

/** The calculators whose answers this page shows. */
function needed(): string[] {
  const named = [
    ...all('[data-figure]').map((element) => element.dataset['figure']?.split('.')[0] ?? ''),
    ...all('[data-table]').map((element) => element.dataset['table']?.split('.')[0] ?? ''),
    ...all('[data-warnings]').map((element) => element.dataset['warnings'] ?? ''),
    ...all('[data-drawing]').flatMap((element) => drawings[drawingName(element)].needs),
  ];
  return [...new Set(named)];
}

/** Leaves the words of the strip for pages without calculators. */
function keepStrip(): void {
  const strip = document.querySelector('.bench-strip');
  if (!strip) return;
  const said = (selector: string) => strip.querySelector(selector)?.textContent.trim() ?? '';
  const words: StripWords = {
    whose: said('[data-whose]'),
    name: said('[data-bench-name]'),
    own: store.state.set.length,
    result: said('[data-figure]'),
    undo: store.canUndo,
    redo: store.canRedo,
    system: store.system,
  };
  store.leave(stripKey, words);
}

/**
 * How long the answers of this page took last time [ms]. Where it is long, nothing is worked out while someone types: a
 * season takes most of a second, in which no key would be answered.
 */
let took = 0;
const felt = 50;
const longestPause = 700;

const paused = (time: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, time));

/** The latest call wins: an answer that arrives after a newer one was asked for is dropped. */
let turn = 0;

/** Shows the bench of the store on the whole page. */
export async function showBench(): Promise<void> {
  const mine = ++turn;
  const how = manner();
  showUnits(how);
  showGiven(how);
  showOrigins();
  showOwn();
  showWhose();
  // A reader who goes on to another page at once finds the strip as it is, if not yet with the new result.
  keepStrip();
  const ids = needed();
  if (ids.length === 0) return;
  const situation = await situationOf(store.state.bench);
  if (took > felt) await paused(Math.min(longestPause, took));
  if (mine !== turn) return;
  const begun = performance.now();
  const answers = await answersFor(ids, situation);
  took = performance.now() - begun;
  if (mine !== turn) return;
  showFigures(answers, how);
  showTables(answers, how);
  showWarnings(answers, how);
  keepStrip();
  for (const sheet of all('[data-drawing]')) {
    const name = drawingName(sheet);
    const { load } = drawings[name];
    const [draw, { svgElement }] = await Promise.all([load(), import('../drawing/svg.ts')]);
    if (mine !== turn) return;
    const width = Number(sheet.dataset['width']);
    const drawing = draw({ situation, answers: answers as Answers, manner: how, width });
    const id = sheet.querySelector('title')?.id.replace(/-title$/u, '') ?? `drawing-${name}`;
    sheet.replaceChildren(svgElement(drawing, id, document));
    for (const title of all(`[data-drawing-title="${name}"]`)) write(title, drawing.title);
  }
}

/** Reads the headline of a calculator out, a moment after the reader stopped typing. */
let waiting: ReturnType<typeof setTimeout> | undefined;
const pause = 900;

export function announceHeadline(calculator: string): void {
  clearTimeout(waiting);
  waiting = setTimeout(() => {
    const row = document.querySelector(`#${calculator} .headline .figure-row`);
    const said = [row?.querySelector('dt'), row?.querySelector('output'), row?.querySelector('.range')]
      .map((element) => element?.textContent.trim())
      .filter(Boolean);
    const warnings = document.querySelectorAll(`#${calculator} .warning`).length;
    const count = warnings === 0 ? '' : ` ${warnings === 1 ? '1 warning' : `${warnings} warnings`}.`;
    announce(`${said.join(', ')}.${count}`);
  }, pause);
}
