import { keepForOffline } from './offline.ts';
import { stripKey, type StripWords } from './strip-words.ts';

/**
 * The one script of every page, kept small: what needs a script is shown, paper unfolds what is folded, the guide is
 * kept for use offline, and the strip says what it last said. All else is in main.ts, which pages with calculators
 * bring along and other pages load when the reader's own bench or units show on them, or when the strip is used.
 */

for (const element of document.querySelectorAll<HTMLElement>('[data-needs-script]')) element.hidden = false;

// Paper has nothing to unfold; not every browser unfolds it by the style sheet.
const unfolded = new Set<HTMLDetailsElement>();
globalThis.addEventListener('beforeprint', () => {
  for (const details of document.querySelectorAll<HTMLDetailsElement>('details:not([open])')) {
    details.open = true;
    unfolded.add(details);
  }
});
globalThis.addEventListener('afterprint', () => {
  for (const details of unfolded) details.open = false;
  unfolded.clear();
});

const loadMain = () => import('./main.ts');

/** What the strip said last, on whatever page that was; undefined for a reader who has changed nothing. */
function lastWords(): StripWords | undefined {
  try {
    return (JSON.parse(localStorage.getItem(stripKey) ?? 'null') as StripWords | null) ?? undefined;
  } catch {
    return undefined;
  }
}

function sayAgain(strip: Element, { whose, name, own, result, undo, redo, system }: StripWords): void {
  const write = (selector: string, words: string) => {
    const element = strip.querySelector(selector);
    if (element) element.textContent = words;
  };
  write('[data-whose]', whose);
  write('[data-bench-name]', name);
  write('[data-filled]', String(own));
  write('[data-figure]', result);
  for (const bar of strip.querySelectorAll('progress')) bar.value = own;
  for (const [selector, can] of [
    ['[data-undo]', undo],
    ['[data-redo]', redo],
  ] as const)
    for (const button of strip.querySelectorAll<HTMLButtonElement>(selector)) button.disabled = !can;
  for (const radio of strip.querySelectorAll<HTMLInputElement>('input[name="units"]'))
    radio.checked = radio.value === system;
}

const live = document.querySelector('bench-calculator, [data-bench-tools], [data-worksheet-tools]') !== null;
const strip = document.querySelector('.bench-strip');
if (!live) {
  const words = lastWords();
  if (words && strip) sayAgain(strip, words);
  const shows = document.querySelector('main :is([data-figure], [data-given], [data-base], [data-drawing])');
  if ((words && shows) || location.hash.startsWith('#b=')) void loadMain();
  const wake = (event: Event) => {
    const { target, type } = event;
    if (!(target instanceof HTMLElement) || !target.matches('button, input')) return;
    strip?.removeEventListener(type, wake);
    void loadMain().then(() => target.dispatchEvent(new Event(type, { bubbles: true })));
  };
  strip?.addEventListener('click', (event) => {
    if (event.target instanceof HTMLButtonElement) wake(event);
  });
  strip?.addEventListener('change', wake);
}

if (import.meta.env.PROD)
  globalThis.addEventListener('load', () => {
    void keepForOffline().catch((problem: unknown) => {
      // The guide works without; the next visit tries again.
      console.warn(problem);
    });
  });
