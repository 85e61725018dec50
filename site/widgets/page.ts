import type { Answer, Figure, Situation } from '../../calculators/calculator.ts';
import type { Bench, FieldPath } from '../../calculators/bench/fields.ts';
import type { Answers } from '../../calculators/index.ts';
import { shownUnit, type QuantityName } from '../../calculators/quantities/quantity.ts';
import { showLimit, showQuantity, type Manner } from '../../calculators/quantities/show.ts';
import { fieldValue } from '../bench-value.ts';
import { say } from '../../calculators/say.ts';
import { drawings } from '../drawings.ts';
import { loadWords } from './words.ts';
import { askAnswers, readyAnswers, whenFailing } from './answers.ts';
import { manner } from './manner.ts';
import { announce, notice } from './notice.ts';
import { situationOf } from './place.ts';
import { figureText, rangeText, sentenceText, valueText, warningWord, type Saying } from './text.ts';
import { tableRows, type Column } from './table-rows.ts';
import { inSlices, type Steps } from './slices.ts';
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

function* showUnits(how: Manner): Steps {
  if (how.system === unitsShown) return;
  for (const element of all('[data-unit]')) {
    write(element, shownUnit(element.dataset['unit'] as QuantityName, how.system));
    yield;
  }
  for (const element of all('[data-base]')) {
    const value = Number(element.dataset['base']);
    const limit = element.dataset['limit'] as 'lowest' | 'highest' | undefined;
    const text = limit
      ? showLimit(value, quantityOf(element), how, limit)
      : showQuantity(value, quantityOf(element), how);
    write(element, text);
    yield;
  }
  unitsShown = how.system;
}

function* showGiven(how: Manner): Steps {
  for (const element of all('[data-given]')) {
    const path = element.dataset['given'] as FieldPath;
    const saying = JSON.parse(element.dataset['saying'] ?? '') as Saying;
    write(element, valueText(fieldValue(store.state.bench, path), saying, how));
    yield;
  }
}

function* showOrigins(): Steps {
  const set = new Set<string | undefined>(store.state.set);
  for (const element of all('[data-origin]')) {
    const own = set.has(element.dataset['origin']);
    if (element.hidden !== own) element.hidden = own;
    yield;
  }
}

/** How many of the fields that an element speaks for are the reader's own. */
function* showOwn(): Steps {
  const set = new Set<string>(store.state.set);
  for (const element of all('[data-own]')) {
    const paths = element.dataset['own']?.split(' ') ?? [];
    const own = paths.filter((path) => set.has(path)).length;
    write(element, say(manner(), '{own} of {all} yours', { own: String(own), all: String(paths.length) }));
    yield;
  }
}

/** Whose figures these are, in the words of the strip. */
function whoseFigures(): string {
  if (store.untouched) return say(manner(), 'Figures of the example bench');
  return say(
    manner(),
    store.state.origin === 'example'
      ? 'Figures of your bench, begun from the example'
      : 'Figures of your bench',
  );
}

function showWhose(): void {
  const { bench, set } = store.state;
  for (const element of all('[data-whose]')) write(element, whoseFigures());
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

function* showFigures(id: string, { figures }: Answer, how: Manner): Steps {
  const named = (name: string | undefined): Figure | null => figures[nameIn(name)] ?? null;
  for (const element of shownOf(id).figures) {
    const figure = named(element.dataset['figure']);
    const { none } = element.dataset;
    write(element, figure || none === undefined ? figureText(figure, quantityOf(element), how) : none);
    yield;
  }
  for (const element of shownOf(id).ranges) {
    write(element, rangeText(named(element.dataset['range']), quantityOf(element), how));
    yield;
  }
}

/** What the parts of the page that are made anew were made from: where that is the same, they stay as they are. */
const madeFrom = new WeakMap<Element, string>();

/** Whether this part has to be made anew; it is then taken for made. */
function isNew(part: Element, from: unknown): boolean {
  const words = JSON.stringify(from);
  if (madeFrom.get(part) === words) return false;
  madeFrom.set(part, words);
  return true;
}

function* showWarnings(id: string, { warnings }: Answer, how: Manner): Steps {
  for (const list of shownOf(id).warnings) {
    const said = warnings.map(({ code, level, text }) => ({ code, level, words: sentenceText(text, how) }));
    if (!isNew(list, said)) continue;
    list.hidden = said.length === 0;
    list.replaceChildren(
      ...said.map(({ code, level, words }) => {
        const item = document.createElement('li');
        item.className = `warning ${level}`;
        item.dataset['code'] = code;
        const word = document.createElement('strong');
        word.textContent = warningWord(level, how);
        item.append(word, ` ${words}`);
        return item;
      }),
    );
    yield;
  }
}

function* showTables(id: string, { tables }: Answer, how: Manner): Steps {
  for (const body of shownOf(id).tables) {
    const columns = JSON.parse(body.dataset['columns'] ?? '[]') as Column[];
    const rows = tables?.[nameIn(body.dataset['table'])]?.rows ?? [];
    if (!isNew(body, [rows, how])) continue;
    const lines: HTMLTableRowElement[] = [];
    for (const row of rows) {
      lines.push(...tableRows([row], columns, how));
      yield;
    }
    body.replaceChildren(...lines);
    yield;
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

/** Marks what this calculator shows as out of date, or as right again. Nothing moves for it. */
function* mark(id: string, behind: boolean): Steps {
  const { figures, ranges, tables, warnings } = shownOf(id);
  for (const part of [...figures, ...ranges, ...tables, ...warnings])
    if (part.hasAttribute('data-behind') !== behind) {
      part.toggleAttribute('data-behind', behind);
      yield;
    }
}

function markBusy(element: HTMLElement, busy: boolean): void {
  if (busy) element.setAttribute('aria-busy', 'true');
  else element.removeAttribute('aria-busy');
}

/** Leaves the words of the strip for pages without calculators. */
function keepStrip(): void {
  const result = document.querySelector('.bench-strip [data-figure]');
  if (!result) return;
  const { bench, set } = store.state;
  const words: StripWords = {
    whose: whoseFigures(),
    name: bench.identity.name,
    own: set.length,
    result: result.textContent.trim(),
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

/** What arrives for an earlier bench, or for other units, is kept for it, and not shown. */
let turn = 0;

/** The windows in which the narrow drawings are shown, as in parts.css. */
const onTelephones = '(max-width: 40rem)';

/** Draws anew what these answers bring to its figures, one drawing at a time. */
async function showDrawing(sheet: HTMLElement, situation: Situation, answers: AnyAnswers): Promise<void> {
  const mine = turn;
  const name = drawingName(sheet);
  const [draw, { svgElement }] = await Promise.all([drawings[name].load(), import('../drawing/svg.ts')]);
  if (mine !== turn) return;
  await inSlices(function* () {
    const width = Number(sheet.dataset['width']);
    const drawing = draw({ situation, answers: answers as Answers, manner: manner(), width });
    yield;
    if (isNew(sheet, drawing)) {
      const id = sheet.querySelector('title')?.id.replace(/-title$/u, '') ?? `drawing-${name}`;
      const svg = svgElement(drawing, id, document);
      yield;
      sheet.replaceChildren(svg);
      for (const title of all(`[data-drawing-title="${name}"]`)) write(title, drawing.title);
      yield 'show';
    }
    markBusy(sheet, false);
  });
}

/** How long figures may be out of date before they say so: most are right before anyone could read that they are not [ms]. */
const patience = 400;

/** While something on the page is still to follow the last change. */
const catchingUp = 'data-catching-up';

/** Shows what is known of the bench, and asks for what is not; the answers are shown as they come. */
async function showAnswers(answers: Record<string, Answer>): Promise<void> {
  const mine = turn;
  const { ids, sheets } = wholePage();
  const missing = () => ids.filter((id) => !answers[id]);
  const situation = await situationOf(store.state.bench);
  if (mine !== turn) return;
  const shownSoFar: Promise<void>[] = [];
  const show = (those: readonly string[]): void => {
    for (const id of those)
      shownSoFar.push(
        inSlices(function* () {
          const [answer, how] = [answers[id], manner()];
          if (!answer) return;
          yield* showFigures(id, answer, how);
          yield* showTables(id, answer, how);
          yield* showWarnings(id, answer, how);
          yield* mark(id, false);
          for (const form of shownOf(id).forms) markBusy(form, false);
          keepStrip();
        }),
      );
    const ready = sheets.filter((sheet) => {
      const needs = needsOf(sheet);
      return needs.some((id) => those.includes(id)) && needs.every((id) => answers[id]);
    });
    // What is in sight comes before what is drawn for paper, or for a telephone.
    const unseen = matchMedia(onTelephones).matches ? 'wide' : 'narrow';
    for (const last of [false, true])
      for (const sheet of ready)
        if (sheet.classList.contains(unseen) === last)
          shownSoFar.push(showDrawing(sheet, situation, answers));
    if (missing().length === 0)
      void Promise.all(shownSoFar).then(() => {
        if (mine === turn) document.documentElement.removeAttribute(catchingUp);
      });
  };
  const asked = missing();
  if (asked.length > 0)
    askAnswers(asked, situation, (id, answer) => {
      answers[id] = answer;
      if (mine === turn) show([id]);
    });
  show(ids.filter((id) => answers[id]));
  setTimeout(() => {
    if (mine !== turn) return;
    const behind = missing();
    void inSlices(function* () {
      for (const id of behind) if (!answers[id]) yield* mark(id, true);
      for (const sheet of sheets) if (needsOf(sheet).some((id) => !answers[id])) markBusy(sheet, true);
    });
  }, patience);
}

/** Shows the bench of the store on the whole page. */
export function* showBench(): Steps {
  const how = manner();
  const { bench } = store.state;
  const answers = workedOut.get(bench) ?? {};
  workedOut.set(bench, answers);
  showWhose();
  // A reader who goes on to another page at once finds the strip as it is, if not yet with the new result.
  keepStrip();
  // Asked first, so that it is worked on while the page shows what it knows.
  void showAnswers(answers);
  yield;
  yield* showUnits(how);
  yield* showGiven(how);
  yield* showOrigins();
  yield* showOwn();
}

/** Marks, within the key's own task, that what follows from the key is still to come. */
export function markChanged(): void {
  turn++;
  document.documentElement.setAttribute(catchingUp, '');
  for (const form of all('bench-calculator[data-calculator]')) markBusy(form, true);
}

/** Has what works this page's figures out loaded before the first key is pressed. */
export function getReady(): void {
  const { ids, sheets } = wholePage();
  readyAnswers(ids);
  void loadWords(document.documentElement.lang).catch(reportError);
  for (const sheet of sheets) void drawings[drawingName(sheet)].load();
  // What a page does for the first time takes a browser several times as long: this changes nothing that is right.
  void inSlices(function* () {
    yield* showGiven(manner());
    yield* showOrigins();
    yield* showOwn();
  });
}

whenFailing((problem) => {
  reportError(problem);
  notice(
    'no-figures',
    say(
      manner(),
      'The grey figures could not be worked out for your bench; they are those of before. Load the page again.',
    ),
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
      if (!told) announce(say(manner(), 'Working…'));
      announceHeadline(calculator, true);
      return;
    }
    const row = document.querySelector(`#${calculator} .headline .figure-row`);
    const said = [row?.querySelector('dt'), row?.querySelector('output'), row?.querySelector('.range')]
      .map((element) => element?.textContent.trim())
      .filter(Boolean);
    const warnings = document.querySelectorAll(`#${calculator} .warning`).length;
    const count =
      warnings === 0
        ? ''
        : ` ${warnings === 1 ? say(manner(), '1 warning.') : say(manner(), '{count} warnings.', { count: String(warnings) })}`;
    announce(`${said.join(', ')}.${count}`);
  }, pause);
}
