import { find, type SearchIndex } from '../search/index-of.ts';

/** The search page: the index is loaded when someone first types, and never leaves the browser. */

const box = document.querySelector<HTMLElement>('[data-search]');
const input = box?.querySelector('input');
const list = box?.querySelector('[data-found]');
const said = box?.querySelector('[data-search-said]');

/** More than these are not looked through. */
const most = 20;

let index: Promise<SearchIndex> | undefined;

async function load(address: string): Promise<SearchIndex> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`the index of the search could not be loaded (${response.status})`);
  return (await response.json()) as SearchIndex;
}

async function show(): Promise<void> {
  if (!box || !input || !list || !said) return;
  const question = input.value;
  // So that the way back from a finding leads to the same question.
  history.replaceState(
    history.state,
    '',
    question ? `?q=${encodeURIComponent(question)}` : location.pathname,
  );
  if (question.trim() === '') {
    list.replaceChildren();
    said.textContent = '';
    return;
  }
  index ??= load(box.dataset['index'] ?? '');
  let loaded: SearchIndex;
  try {
    loaded = await index;
  } catch (problem) {
    index = undefined;
    said.textContent = problem instanceof Error ? `Nothing can be found now: ${problem.message}.` : '';
    return;
  }
  if (question !== input.value) return;
  const { places: found, whole } = find(loaded, question);
  const count =
    found.length === 1
      ? '1 place'
      : `${found.length} places${found.length > most ? `, the first ${most} shown` : ''}`;
  said.textContent =
    found.length === 0
      ? 'Nothing found. Try a shorter word, or the beginning of one.'
      : whole
        ? count
        : `No place has all of these words. With some of them: ${count}`;
  list.replaceChildren(
    ...found.slice(0, most).flatMap((place) => {
      const finding = loaded.findings[place];
      if (!finding) return [];
      const [title, where, to] = finding;
      const item = document.createElement('li');
      const link = document.createElement('a');
      link.href = (box.dataset['top'] ?? '/') + to;
      link.textContent = title;
      const whereIs = document.createElement('span');
      whereIs.textContent = ` ${where}`;
      item.append(link, whereIs);
      return [item];
    }),
  );
}

if (input) {
  input.value = new URLSearchParams(location.search).get('q') ?? '';
  input.addEventListener('input', () => void show());
  // Down from the box into the list, and up and down in it; Enter opens the first finding.
  box?.addEventListener('keydown', (event) => {
    const links = [...box.querySelectorAll<HTMLAnchorElement>('[data-found] a')];
    const at = links.indexOf(document.activeElement as HTMLAnchorElement);
    if (event.key === 'Enter' && event.target === input) links[0]?.click();
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    const next = at + step < 0 ? input : links[at + step];
    if (!next) return;
    event.preventDefault();
    next.focus();
  });
  void show();
  input.focus();
}
