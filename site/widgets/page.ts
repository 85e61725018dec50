import type { Answer, Figure, Situation } from '../../calculators/calculator.ts';
import type { Bench, FieldPath } from '../../calculators/bench/fields.ts';
import type { Answers } from '../../calculators/index.ts';
import { shownUnit, type QuantityName } from '../../calculators/quantities/quantity.ts';
import { showLimit, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { fieldValue } from '../bench-value.ts';
import { drawings } from '../drawings.ts';
import { askAnswers, readyAnswers, whenFailing } from './answers.ts';
import { manner } from './manner.ts';
import { announce, notice } from './notice.ts';
import { situationOf } from './place.ts';
import { figureText, rangeText, sentenceText, valueText, warningWord, type Saying } from './text.ts';
import { tableRows, type Column } from './table-rows.ts';
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

/** The units that the page is in; those of the build at first. */
let unitsShown = document.documentElement.dataset['units'];

function showUnits(how: Manner): void {
  if (how.system === unitsShown) return;
  unitsShown = how.system;
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
  const { set } = store.state;
  for (const element of all('[data-origin]'))
    element.hidden = set.includes(element.dataset['origin'] as FieldPath);
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

/** What the page shows of one calculator. */
interface Shown {
  readonly figures: readonly HTMLElement[];
  readonly ranges: readonly HTMLElement[];
  readonly tables: readonly HTMLElement[];
  readonly warnings: readonly HTMLElement[];
  readonly forms: readonly HTMLElement[];
}

/** By calculator. Looked for once: pages keep the elements that they came with. */
const shown = new Map<string, Shown>();

function shownOf(id: string): Shown {
  const known = shown.get(id);
  if (known) return known;
  const found: Shown = {
    figures: all(`[data-figure^="${id}."]`),
    ranges: all(`[data-range^="${id}."]`),
    tables: all(`[data-table^="${id}."]`),
    warnings: all(`[data-warnings="${id}"]`),
    forms: all(`bench-calculator[data-calculator="${id}"]`),
  };
  shown.set(id, found);
  return found;
}

const nameIn = (name: string | undefined): string => name?.split('.')[1] ?? '';

function showFigures(id: string, { figures }: Answer, how: Manner): void {
  const named = (name: string | undefined): Figure | null => figures[nameIn(name)] ?? null;
  for (const element of shownOf(id).figures)
    write(element, figureText(named(element.dataset['figure']), quantityOf(element), how));
  for (const element of shownOf(id).ranges)
    write(element, rangeText(named(element.dataset['range']), quantityOf(element), how));
}

function showWarnings(id: string, { warnings }: Answer, how: Manner): void {
  for (const list of shownOf(id).warnings) {
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

function showTables(id: string, { tables }: Answer, how: Manner): void {
  for (const body of shownOf(id).tables) {
    const columns = JSON.parse(body.dataset['columns'] ?? '[]') as Column[];
    const rows = tables?.[nameIn(body.dataset['table'])]?.rows ?? [];
    body.replaceChildren(...tableRows(rows, columns, how));
  }
}

const drawingName = (element: HTMLElement) => element.dataset['drawing'] as keyof typeof drawings;

const needsOf = (sheet: HTMLElement): readonly string[] => drawings[drawingName(sheet)].needs;

/** The drawings of the page, and the calculators whose answers it shows. Looked for once, as above. */
let whole: { readonly ids: readonly string[]; readonly sheets: readonly HTMLElement[] } | undefined;

function wholePage() {
  if (whole) return whole;
  const sheets = all('[data-drawing]');
  const named = [
    ...all('[data-figure]').map((element) => element.dataset['figure']?.split('.')[0] ?? ''),
    ...all('[data-table]').map((element) => element.dataset['table']?.split('.')[0] ?? ''),
    ...all('[data-warnings]').map((element) => element.dataset['warnings'] ?? ''),
    ...sheets.flatMap(needsOf),
  ];
  return (whole = { ids: [...new Set(named)], sheets });
}

/**
 * Marks what this calculator shows as out of date, or as right again. Calm, and nothing moves: the look of it waits a
 * moment (calculator.css), as most answers are there before anyone could read that they are not.
 */
function mark(id: string, behind: boolean): void {
  const { figures, ranges, tables, warnings, forms } = shownOf(id);
  for (const part of [...figures, ...ranges, ...tables, ...warnings])
    part.toggleAttribute('data-behind', behind);
  for (const form of forms) markBusy(form, behind);
}

function markBusy(element: HTMLElement, busy: boolean): void {
  if (busy) element.setAttribute('aria-busy', 'true');
  else element.removeAttribute('aria-busy');
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
 * What has been worked out for a bench: to change the units or to undo a step, nothing is worked out again. A bench is
 * never changed, only followed by another.
 */
const workedOut = new WeakMap<Bench, Record<string, Answer>>();

/** The latest call wins: what arrives for an earlier bench is kept for it, and not shown. */
let turn = 0;

/** Lets the page answer its reader between two pieces of work. */
const breath = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));

/** Draws anew what these answers bring to its figures, one drawing at a time. */
async function showDrawings(
  sheets: readonly HTMLElement[],
  situation: Situation,
  answers: AnyAnswers,
  mine: number,
): Promise<void> {
  for (const sheet of sheets) {
    const name = drawingName(sheet);
    const [draw, { svgElement }] = await Promise.all([drawings[name].load(), import('../drawing/svg.ts')]);
    await breath();
    if (mine !== turn) return;
    const width = Number(sheet.dataset['width']);
    const drawing = draw({ situation, answers: answers as Answers, manner: manner(), width });
    const id = sheet.querySelector('title')?.id.replace(/-title$/u, '') ?? `drawing-${name}`;
    sheet.replaceChildren(svgElement(drawing, id, document));
    for (const title of all(`[data-drawing-title="${name}"]`)) write(title, drawing.title);
    markBusy(sheet, false);
  }
}

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
  const { ids, sheets } = wholePage();
  if (ids.length === 0) return;
  const { bench } = store.state;
  const answers = workedOut.get(bench) ?? {};
  workedOut.set(bench, answers);
  const missing = ids.filter((id) => !answers[id]);
  for (const id of missing) mark(id, true);
  for (const sheet of sheets) markBusy(sheet, true);
  const situation = await situationOf(bench);
  if (mine !== turn) return;
  const show = (id: string, answer: Answer): void => {
    showFigures(id, answer, manner());
    showTables(id, answer, manner());
    showWarnings(id, answer, manner());
    mark(id, false);
  };
  const ready = (sheet: HTMLElement): boolean => needsOf(sheet).every((id) => answers[id]);
  for (const id of ids) if (answers[id]) show(id, answers[id]);
  keepStrip();
  void showDrawings(sheets.filter(ready), situation, answers, mine);
  if (missing.length > 0)
    askAnswers(missing, situation, (id, answer) => {
      answers[id] = answer;
      if (mine !== turn) return;
      show(id, answer);
      keepStrip();
      void showDrawings(
        sheets.filter((sheet) => needsOf(sheet).includes(id) && ready(sheet)),
        situation,
        answers,
        mine,
      );
    });
}

/** Has what works this page's figures out loaded before the first key is pressed. */
export function getReady(): void {
  readyAnswers(wholePage().ids);
}

whenFailing((problem) => {
  reportError(problem);
  notice(
    'no-figures',
    'The grey figures could not be worked out for your bench; they are those of before. Load the page again.',
  );
});

/** How long nobody has typed before a headline is read out [ms]. */
const pause = 900;
let waiting: ReturnType<typeof setTimeout> | undefined;

/** Reads out what is wrong with an answer; what else was to be read out would be said over it. */
export function announceProblem(words: string): void {
  clearTimeout(waiting);
  announce(words);
}

/** Reads the headline of a calculator out, a moment after the reader stopped typing; one that is still being worked on, when it is there. */
export function announceHeadline(calculator: string, told = false): void {
  clearTimeout(waiting);
  waiting = setTimeout(() => {
    if (document.querySelector(`#${calculator}[aria-busy]`)) {
      if (!told) announce('Working…');
      announceHeadline(calculator, true);
      return;
    }
    const row = document.querySelector(`#${calculator} .headline .figure-row`);
    const said = [row?.querySelector('dt'), row?.querySelector('output'), row?.querySelector('.range')]
      .map((element) => element?.textContent.trim())
      .filter(Boolean);
    const warnings = document.querySelectorAll(`#${calculator} .warning`).length;
    const count = warnings === 0 ? '' : ` ${warnings === 1 ? '1 warning' : `${warnings} warnings`}.`;
    announce(`${said.join(', ')}.${count}`);
  }, pause);
}
