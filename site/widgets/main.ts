import type { UnitSystem } from '../../calculators/quantities/quantity.ts';
import { say } from '../../calculators/say.ts';
import { BenchCalculator } from './bench-calculator.ts';
import { follow } from './following.ts';
import { manner } from './manner.ts';
import { announce, notice } from './notice.ts';
import { markChanged, showBench } from './page.ts';
import { inSlices } from './slices.ts';
import { store } from './the-store.ts';
import { loadWords } from './words.ts';

/**
 * Wakes what a page shows of the bench: every page with calculators brings it along, others load it when they need it
 * (every-page.ts). Everything large is loaded when it is first used.
 */

for (const button of document.querySelectorAll('[data-undo]'))
  button.addEventListener('click', () => {
    store.undo();
    announce(say(manner(), 'Last change undone.'));
  });

for (const button of document.querySelectorAll('[data-redo]'))
  button.addEventListener('click', () => {
    store.redo();
    announce(say(manner(), 'The change is made again.'));
  });

for (const radio of document.querySelectorAll<HTMLInputElement>('input[name="units"]'))
  radio.addEventListener('change', () => {
    store.choose(radio.value as UnitSystem);
    announce(
      say(manner(), radio.value === 'us' ? 'All figures in US units.' : 'All figures in metric units.'),
    );
  });

/** A link to a folded part, or to a field in it, unfolds it. */
function unfold(): void {
  const target = location.hash.length > 1 ? document.getElementById(location.hash.slice(1)) : null;
  const folded = target?.closest('details');
  if (!target || !folded || folded.open) return;
  folded.open = true;
  target.scrollIntoView({ block: 'center' });
}
unfold();
globalThis.addEventListener('hashchange', unfold);

store.subscribe(markChanged);
follow(showBench);
customElements.define('bench-calculator', BenchCalculator);

const built = document.documentElement.dataset['units'];
if (!store.untouched || store.system !== built) {
  markChanged();
  void inSlices(showBench);
  // In another language than English all is said again once its words are here.
  void loadWords(document.documentElement.lang)
    .then((words) => (words ? inSlices(showBench) : undefined))
    .catch(reportError);
}

if (store.found === 'unreadable')
  notice(
    'unreadable',
    say(
      manner(),
      'What this browser had kept of your bench could not be read. It was put aside and the example is shown.',
    ),
  );
if (store.found === 'older-bench') void import('./mend.ts').then(({ mendBench }) => mendBench());
if (location.hash.startsWith('#b=')) void import('./linked-bench.ts').then(({ readLink }) => readLink());
globalThis.addEventListener('hashchange', () => {
  if (location.hash.startsWith('#b=')) void import('./linked-bench.ts').then(({ readLink }) => readLink());
});
if (document.querySelector('[data-bench-tools]')) void import('./bench-tools.ts');
if (document.querySelector('[data-worksheet-tools]')) void import('./worksheet-tools.ts');
if (document.querySelector('[data-sure-try]')) void import('./how-sure.ts');
if (document.querySelector('logger-file')) void import('./logger-file.ts');
if (document.querySelector('night-says')) void import('./night.ts');
