import type { Field } from '../../calculators/bench/field.ts';
import type { FieldPath } from '../../calculators/bench/fields.ts';
import { readField, sayProblem } from '../../calculators/bench/read-field.ts';
import { shownUnit } from '../../calculators/quantities/quantity.ts';
import { showForInput } from '../../calculators/quantities/show.ts';
import { fieldValue } from '../bench-value.ts';
import { follow } from './following.ts';
import { manner } from './manner.ts';
import { announceHeadline, announceProblem, getReady } from './page.ts';
import { loadRegion } from './place.ts';
import { inSlices, type Steps } from './slices.ts';
import { store } from './the-store.ts';

type Answerable = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

const pathOf = (input: Answerable) => input.name as FieldPath;

/** Read once: a form may have ninety of them. */
const fields = new WeakMap<Answerable, Field>();

/** The declaration of a typed field; chosen ones carry none and need no reading. */
function fieldOf(input: Answerable): Field | undefined {
  const known = fields.get(input);
  if (known || input.dataset['field'] === undefined) return known;
  const field = JSON.parse(input.dataset['field']) as Field;
  fields.set(input, field);
  return field;
}

const unitOf = (field: Field): string | undefined =>
  field.shape === 'number' ? shownUnit(field.quantity, store.system) : undefined;

/** A bare number that was typed in the other system of units keeps its meaning: it gets its unit written behind it. */
function draftText(field: Field, path: FieldPath): string | undefined {
  const draft = store.state.drafts[path];
  if (!draft || field.shape !== 'number' || draft.system === store.system) return draft?.text;
  const unit = shownUnit(field.quantity, draft.system);
  return /^[-−–]?[\d\s.,/]+$/u.test(draft.text) ? `${draft.text.trim()} ${unit}` : draft.text;
}

/**
 * Wakes a form that was rendered at build: reads what is typed, keeps it in the store, says what is wrong beside the
 * field and at the figures in the same words. The figures themselves are filled by the page. A wrong answer is never
 * cleared, and the figures hold for the last answers that could be used.
 */
export class BenchCalculator extends HTMLElement {
  /** Fields being typed in whose fault is not yet pointed out: nobody is told off in the middle of a number. */
  readonly #unfinished = new Set<FieldPath>();
  #inputs: readonly Answerable[] = [];
  /** What the figures say of wrong answers. */
  #said = '';
  /** Show the field that is being typed in as well: its answer is finished. */
  #everywhere = false;
  #awake = false;

  connectedCallback(): void {
    if (this.#awake) return;
    this.#awake = true;
    for (const fieldset of this.querySelectorAll('fieldset')) fieldset.disabled = false;
    this.addEventListener('input', (event) => {
      this.#answered(event.target as Answerable, false);
    });
    this.addEventListener('change', (event) => {
      this.#answered(event.target as Answerable, true);
    });
    // What works the figures out is loaded as soon as someone steps in, so that the first key press is answered at once.
    this.addEventListener('focusin', getReady, { once: true });
    this.#inputs = [...this.querySelectorAll<Answerable>('input[name], select[name], textarea[name]')];
    const show = () => this.#show();
    follow(show);
    void inSlices(show);
  }

  /** @param finished the reader has left the field or pressed Enter */
  #answered(input: Answerable, finished: boolean): void {
    const path = pathOf(input);
    const field = fieldOf(input);
    if (!field) {
      // A choice comes as both events at once.
      if (finished) void this.#chosen(path, input.value);
      return;
    }
    const read = readField(field, input.value, unitOf(field));
    if (finished || read.ok) this.#unfinished.delete(path);
    else if (!input.hasAttribute('aria-invalid')) this.#unfinished.add(path);
    // What was typed as "1 1/2 in" is shown again in the unit that stands beside the field.
    this.#everywhere = finished;
    if (!read.ok) store.draft(path, input.value);
    else if (read.value !== fieldValue(store.state.bench, path) || store.state.drafts[path])
      store.give({ [path]: read.value });
    else if (finished) void inSlices(() => this.#show());
    if (finished) store.endStep();
    if (!read.ok && finished) announceProblem(sayProblem(field, read.problem, manner()));
    else this.#announce();
  }

  async #chosen(path: FieldPath, value: string): Promise<void> {
    if (path === 'place.region') {
      const { stations } = await loadRegion(value);
      store.give({ 'place.region': value, 'place.station': stations[0]?.id ?? '' });
    } else store.give({ [path]: value });
    store.endStep();
    this.#announce();
  }

  #announce(): void {
    const { calculator } = this.dataset;
    if (calculator) announceHeadline(calculator);
  }

  *#show(): Steps {
    const problems: { readonly id: string; readonly words: string }[] = [];
    for (const input of this.#inputs) {
      yield;
      const field = fieldOf(input);
      const path = pathOf(input);
      const typing = !this.#everywhere && input === document.activeElement;
      if (!field) void this.#showChoice(input, path);
      else {
        const text = draftText(field, path) ?? this.#settled(field, path);
        if (!typing && input.value !== text) input.value = text;
        const words = this.#problemOf(field, path);
        this.#showProblem(input, words);
        if (words) problems.push({ id: input.id, words });
      }
    }
    this.#everywhere = false;
    this.#showProblems(problems);
  }

  #settled(field: Field, path: FieldPath): string {
    const value = fieldValue(store.state.bench, path);
    return field.shape === 'number' && typeof value === 'number'
      ? showForInput(value, field.quantity, manner())
      : String(value ?? '');
  }

  async #showChoice(input: Answerable, path: FieldPath): Promise<void> {
    const value = String(fieldValue(store.state.bench, path));
    if (path === 'place.station') await showStations(input as HTMLSelectElement);
    if (input.value !== value) input.value = value;
  }

  /** What is to be said of a draft, or nothing. */
  #problemOf(field: Field, path: FieldPath): string | undefined {
    const text = draftText(field, path);
    if (text === undefined || this.#unfinished.has(path)) return undefined;
    const read = readField(field, text, unitOf(field));
    return read.ok ? undefined : sayProblem(field, read.problem, manner());
  }

  #showProblem(input: Answerable, words: string | undefined): void {
    const place = document.getElementById(`${input.id}-error`);
    if (!place || place.textContent === (words ?? '')) return;
    place.hidden = words === undefined;
    place.textContent = words ?? '';
    if (words === undefined) input.removeAttribute('aria-invalid');
    else input.setAttribute('aria-invalid', 'true');
    const hint = document.getElementById(`${input.id}-hint`);
    const said = [...(words === undefined ? [] : [place]), ...(hint ? [hint] : [])].map(({ id }) => id);
    if (said.length > 0) input.setAttribute('aria-describedby', said.join(' '));
    else input.removeAttribute('aria-describedby');
  }

  /** The same words once more at the figures, each a way to its field. */
  #showProblems(problems: readonly { readonly id: string; readonly words: string }[]): void {
    const box = this.querySelector<HTMLElement>('[data-errors]');
    const said = problems.map(({ words }) => words).join();
    if (!box || said === this.#said) return;
    this.#said = said;
    box.hidden = problems.length === 0;
    this.toggleAttribute('data-faulty', problems.length > 0);
    box.querySelector('ul')?.replaceChildren(
      ...problems.map(({ id, words }) => {
        const item = document.createElement('li');
        const way = document.createElement('a');
        way.href = `#${id}`;
        way.textContent = words;
        way.addEventListener('click', (event) => {
          const field = document.getElementById(id);
          if (!field) return;
          event.preventDefault();
          field.closest('details')?.setAttribute('open', '');
          field.focus();
        });
        item.append(way);
        return item;
      }),
    );
  }
}

/** The stations of the region that the bench stands in. */
async function showStations(select: HTMLSelectElement): Promise<void> {
  const { stations } = await loadRegion(store.state.bench.place.region);
  const there = [...select.options].map(({ value }) => value);
  if (there.join() === stations.map(({ id }) => id).join()) return;
  select.replaceChildren(
    ...stations.map(({ id, name }) => {
      const option = document.createElement('option');
      option.value = id;
      option.textContent = name;
      return option;
    }),
  );
}
