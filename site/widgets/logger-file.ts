import type { Bench, FieldPath } from '../../calculators/bench/fields.ts';
import type { FieldValue } from '../../calculators/bench/read-field.ts';
import type { LoggerChoices, ReadLogger } from '../../content/logger-file.ts';
import type { Part } from '../tree.ts';
import { fieldValue } from '../bench-value.ts';
import { follow } from './following.ts';
import { manner } from './manner.ts';
import { announce, notice } from './notice.ts';
import { store } from './the-store.ts';

/**
 * The place for a logger's file on a page. What reads files is loaded with the first one; a large file is read in
 * slices, so that the page goes on answering. Nothing that was read touches the bench before the button is pressed.
 */

/** Bytes of the largest file that is opened: the reader of files takes as many characters. */
const largestFile = 64_000_000;
/** How long a slice may take before the page gets its turn [ms]: half of a frame of 60 a second. */
const sliceTime = 8;

/** How long someone may go on typing the name of a choice before the file is read with it [ms]. */
const typing = 400;

type Readings = Partial<Bench['readings']>;

interface Given {
  readonly name: string;
  readonly text: string;
  readonly choices: LoggerChoices;
  /** Whether it is the example's, which is no reading of the reader's bench. */
  readonly isExample: boolean;
}

const readingModules = () =>
  Promise.all([
    import('../../content/logger-file.ts'),
    import('../../content/logger-text.ts'),
    import('../logger-parts.ts'),
    import('../logger-view.ts'),
    import('../tree.ts'),
  ]).then(([reader, text, parts, view, tree]) => ({ ...reader, ...text, ...parts, ...view, ...tree }));

class LoggerFile extends HTMLElement {
  #given: Given | undefined;
  #read: ReadLogger | undefined;
  #readings: Readings = {};
  #units = document.documentElement.dataset['units'];
  /** The latest file wins: what was begun before it is dropped. */
  #turn = 0;
  #waiting: ReturnType<typeof setTimeout> | undefined;

  connectedCallback(): void {
    for (const element of this.querySelectorAll<HTMLElement>('[data-needs-script]')) element.hidden = false;
    const { readings } = this.dataset;
    if (readings !== undefined) this.#readings = JSON.parse(readings) as Readings;
    this.#part('[data-logger-input]').addEventListener('change', (event) => {
      const input = event.target as HTMLInputElement;
      const [file] = input.files ?? [];
      if (file) void this.#open(file);
      // So that the same file, put right, can be opened again.
      input.value = '';
    });
    this.addEventListener('dragover', (event) => {
      event.preventDefault();
      this.classList.add('dropping');
    });
    this.addEventListener('dragleave', (event) => {
      if (!this.contains(event.relatedTarget as Node | null)) this.classList.remove('dropping');
    });
    this.addEventListener('drop', (event) => {
      event.preventDefault();
      this.classList.remove('dropping');
      const [file] = event.dataTransfer?.files ?? [];
      const pasted = event.dataTransfer?.getData('text') ?? '';
      if (file) void this.#open(file);
      else if (pasted !== '') void this.#take({ name: 'dropped text', text: pasted });
    });
    this.#part('[data-logger-read-pasted]').addEventListener('click', () => {
      const text = (this.#part('textarea') as HTMLTextAreaElement).value;
      void this.#take({ name: 'pasted text', text });
    });
    this.querySelector('[data-logger-example]')?.addEventListener('click', () => void this.#openExample());
    this.#part('[data-logger-result]').addEventListener('change', (event) => {
      this.#choose(event.target as HTMLElement);
    });
    this.#part('[data-logger-take]').addEventListener('click', () => {
      this.#askToTakeOver();
    });
    follow(() => {
      if (store.system === this.#units) return;
      this.#units = store.system;
      if (this.#given) void this.#show();
      else if (this.dataset['file'] !== undefined) void this.#openExample();
    });
    if (store.system !== this.#units && this.dataset['file'] !== undefined) {
      this.#units = store.system;
      void this.#openExample();
    }
  }

  #part(selector: string): HTMLElement {
    const found = this.querySelector<HTMLElement>(selector);
    if (!found) throw new Error(`the place for a logger's file lacks ${selector}`);
    return found;
  }

  async #open(file: File): Promise<void> {
    if (file.size > largestFile) {
      await this.#refuse(
        file.name,
        `${Math.round(file.size / 1e6)} MB`,
        `${largestFile / 1e6} MB at most`,
        'The file is too long: export fewer days of it',
      );
      return;
    }
    const [{ textOf }, bytes] = await Promise.all([readingModules(), file.arrayBuffer()]);
    await this.#take({ name: file.name, text: textOf(new Uint8Array(bytes)) });
  }

  async #openExample(): Promise<void> {
    const { file = '', fileName = '' } = this.dataset;
    const answer = await fetch(file);
    if (!answer.ok) return;
    await this.#take({ name: fileName, text: await answer.text() }, true);
  }

  async #refuse(file: string, found: string, allowed: string, words: string): Promise<void> {
    const { problem } = await import('../../content/problem.ts');
    this.#given = { name: file, text: '', choices: {}, isExample: false };
    const problems = [problem({ file, line: 1, field: '', found, allowed }, words)];
    this.#read = { ok: false, problems, questions: [] };
    await this.#show();
  }

  async #take({ name, text }: { name: string; text: string }, isExample = false): Promise<void> {
    clearTimeout(this.#waiting);
    this.#given = { name, text, choices: {}, isExample };
    await this.#readOn();
  }

  /** Reads the file with what was chosen so far, a slice at a time. */
  async #readOn(): Promise<void> {
    const given = this.#given;
    if (!given) return;
    const mine = ++this.#turn;
    const { loggerReading } = await readingModules();
    const bar = this.#part('[data-logger-progress]');
    const progress = this.#part('progress') as HTMLProgressElement;
    const steps = loggerReading(given.text, given.name, given.choices);
    let since = performance.now();
    for (;;) {
      const { done, value } = steps.next();
      if (done) {
        this.#read = value;
        break;
      }
      if (performance.now() - since < sliceTime) continue;
      bar.hidden = false;
      progress.value = value;
      await new Promise((resolve) => setTimeout(resolve));
      if (mine !== this.#turn) return;
      since = performance.now();
    }
    bar.hidden = true;
    await this.#show();
  }

  async #show(): Promise<void> {
    const [given, read] = [this.#given, this.#read];
    if (!given || !read) return;
    const { readParts, questionParts, refusedParts, loggerView, part, partsNodes } = await readingModules();
    const place = this.#part('[data-logger-result]');
    const focused =
      document.activeElement instanceof HTMLElement && place.contains(document.activeElement)
        ? document.activeElement.dataset['loggerColumn']
        : undefined;
    const choosing = place.contains(document.activeElement);
    const name = given.isExample
      ? `Example: an invented night, ${given.name}. Nobody measured it; the file says how it was made.`
      : `Your file: ${given.name}`;
    const parts: Part[] = [part('p', { class: 'logger-name' }, name)];
    let said: string;
    this.#readings = {};
    if (read.ok) {
      const view = loggerView(read.log, read.account, manner());
      this.#readings = view.readings;
      parts.push(...readParts(read.log, read.account, manner(), true));
      said = `${given.name} was read. ${view.stretch}`;
    } else if (read.questions.length > 0) {
      parts.push(...questionParts(read.questions, given.choices));
      said = `${given.name} leaves something open: ${read.questions[0]?.text ?? ''}`;
    } else {
      parts.push(...refusedParts(read.problems));
      said = '';
    }
    place.replaceChildren(...partsNodes(parts, document));
    this.#closeAsk();
    const take = this.#part('[data-logger-take]') as HTMLButtonElement;
    take.disabled = Object.keys(this.#readings).length === 0;
    take.textContent = given.isExample
      ? 'Try these means on the bench of this guide'
      : 'Put these means into my readings';
    const example = this.querySelector<HTMLElement>('[data-logger-example]');
    if (example) example.hidden = given.isExample;
    this.#focusOn(place, choosing, focused);
    if (said !== '') announce(said);
  }

  /** Whoever was choosing goes on where they were; what is asked and what is wrong is told at once. */
  #focusOn(place: HTMLElement, choosing: boolean, column: string | undefined): void {
    const same =
      column === undefined
        ? null
        : place.querySelector<HTMLElement>(`select[data-logger-column="${column}"]`);
    if (same) same.focus();
    else if (this.#read && !this.#read.ok)
      place.querySelector<HTMLElement>('select, [data-logger-problems]')?.focus();
    else if (choosing) place.querySelector('summary')?.focus();
  }

  /** An answer to a question about the file, or another use of a column: the file is read again. */
  #choose(target: HTMLElement): void {
    const given = this.#given;
    if (!given || !(target instanceof HTMLSelectElement) || target.value === '') return;
    const { loggerAbout: about = 'columns', loggerColumn: column } = target.dataset;
    const { choices } = given;
    const next =
      about === 'columns'
        ? { ...choices, columns: { ...this.#columnsNow(), [Number(column)]: target.value } }
        : { ...choices, [about]: target.value };
    this.#given = { ...given, choices: next as LoggerChoices };
    // A name that is typed into a list chooses at each letter; the list must stay until it is whole.
    clearTimeout(this.#waiting);
    this.#waiting = setTimeout(() => void this.#readOn(), typing);
  }

  /** What the columns are taken for now: a change of one leaves the others as they stand. */
  #columnsNow(): NonNullable<LoggerChoices['columns']> {
    const chosen = this.#given?.choices.columns ?? {};
    if (!this.#read?.ok) return chosen;
    const { columns } = this.#read.account;
    return {
      ...Object.fromEntries(columns.map(({ number, holds }) => [number, holds ?? 'none'])),
      ...chosen,
    };
  }

  #closeAsk(): void {
    const ask = this.#part('[data-logger-ask]');
    ask.hidden = true;
    ask.replaceChildren();
  }

  /** Puts the means into the readings, at once where nothing was read yet, else after the reader has seen both. */
  #askToTakeOver(): void {
    const values = Object.fromEntries(
      Object.entries(this.#readings).map(([name, value]) => [`readings.${name}`, value]),
    ) as Partial<Record<FieldPath, FieldValue>>;
    const { bench, set, drafts } = store.state;
    const lost = (Object.keys(values) as FieldPath[]).filter((path) => {
      const there = fieldValue(bench, path);
      const own = path in drafts || (there !== null && (set.includes(path) || typeof there === 'number'));
      return own && there !== values[path];
    });
    if (lost.length === 0) {
      this.#takeOver(values);
      return;
    }
    void this.#showAsk(values, lost);
  }

  async #showAsk(values: Partial<Record<FieldPath, FieldValue>>, lost: readonly FieldPath[]): Promise<void> {
    const { meanWords, part, partsNodes } = await readingModules();
    const ask = this.#part('[data-logger-ask]');
    const named = (readings: Readings) =>
      new Map(meanWords(readings, manner()).map(({ path, label, text }) => [path, { label, text }]));
    const [now, next] = [named(store.state.bench.readings), named(this.#readings)];
    const lines = lost.map((path) => {
      const label = now.get(path)?.label ?? next.get(path)?.label ?? path;
      const typed = store.state.drafts[path];
      const before = typed ? `“${typed.text}”` : (now.get(path)?.text ?? 'not read');
      return part('li', {}, `${label}: ${before} becomes ${next.get(path)?.text ?? 'not read'}`);
    });
    ask.replaceChildren(
      ...partsNodes(
        [
          part('p', {}, 'Your readings hold values already. These would be replaced:'),
          part('ul', {}, ...lines),
          part(
            'div',
            { class: 'buttons' },
            part('button', { type: 'button', 'data-logger-replace': '' }, 'Replace them'),
            part('button', { type: 'button', 'data-logger-keep': '' }, 'Keep mine'),
          ),
        ],
        document,
      ),
    );
    ask.querySelector('[data-logger-replace]')?.addEventListener('click', () => {
      this.#closeAsk();
      this.#takeOver(values);
      this.#part('[data-logger-take]').focus();
    });
    ask.querySelector('[data-logger-keep]')?.addEventListener('click', () => {
      this.#closeAsk();
      announce('Your readings are as they were.');
      this.#part('[data-logger-take]').focus();
    });
    ask.hidden = false;
    ask.focus();
  }

  #takeOver(values: Partial<Record<FieldPath, FieldValue>>): void {
    // A step of its own, before and after which typing is another.
    store.endStep();
    store.give(values);
    store.endStep();
    const from = this.#given ? `of ${this.#given.name}` : 'of the example’s night';
    notice('logger', `The means ${from} are in your readings.`, [
      {
        words: 'Undo: back to the readings before',
        take: () => {
          store.undo();
        },
      },
    ]);
  }
}

customElements.define('logger-file', LoggerFile);
