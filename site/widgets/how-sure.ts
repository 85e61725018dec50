import type { HowSure } from '../../calculators/bench/how-sure.ts';
import type { Bench } from '../../calculators/bench/fields.ts';
import { howSureDrawing } from '../drawing/how-sure.ts';
import { svgElement } from '../drawing/svg.ts';
import { stopTrying, tryBenches } from './answers.ts';
import { follow } from './following.ts';
import { manner } from './manner.ts';
import { announce } from './notice.ts';
import { situationOf } from './place.ts';
import { tableRows, type Column } from './table-rows.ts';
import { store } from './the-store.ts';

/** Tries many benches like the reader's, on request, and shows what they come to. */

function part(name: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-how-sure] [data-sure-${name}]`);
  if (!found) throw new Error(`the page lacks the part ${name} of how sure it is`);
  return found;
}

const whose = part('whose');
const tryIt = part('try') as HTMLButtonElement;
const stop = part('stop') as HTMLButtonElement;
const state = part('state');
const bar = document.querySelector<HTMLProgressElement>('[data-how-sure] progress');
const sheets = [...document.querySelectorAll<HTMLElement>('[data-sure-drawing]')];
const tables = [...document.querySelectorAll<HTMLElement>('[data-sure-table]')];

/** What is shown: nothing as long as the page shows what the build made of the example. */
let shown: { readonly bench: Bench; readonly sure: HowSure } | undefined;

function showTried(sure: HowSure): void {
  const how = manner();
  for (const body of tables) {
    const name = body.dataset['sureTable'] as keyof HowSure['tables'];
    const columns = JSON.parse(body.dataset['columns'] ?? '[]') as Column[];
    body.replaceChildren(...tableRows(sure.tables[name].rows, columns, how));
  }
  for (const sheet of sheets) {
    const drawing = howSureDrawing({ sure, manner: how, width: Number(sheet.dataset['sureDrawing']) });
    const id = sheet.querySelector('title')?.id.replace(/-title$/u, '') ?? 'how-sure';
    sheet.replaceChildren(svgElement(drawing, id, document));
  }
}

/** Says whose ranges these are, and greys them where they are no longer those of the bench as it is. */
function showWhose(): void {
  const { bench } = store.state;
  const present = shown ? shown.bench === bench : store.untouched;
  whose.textContent = present
    ? shown && !store.untouched
      ? 'These are the ranges of your bench.'
      : 'These are the ranges of the example bench.'
    : shown
      ? 'These ranges are of your bench as it was before the last change. Try again for those of now.'
      : 'These are still the ranges of the example bench. Press the button for those of yours.';
  for (const element of [...tables, ...sheets]) element.toggleAttribute('data-behind', !present);
}

function working(is: boolean): void {
  tryIt.disabled = is;
  stop.disabled = !is;
}

async function begin(): Promise<void> {
  working(true);
  const { bench } = store.state;
  state.textContent = 'Beginning';
  if (bar) bar.value = 0;
  announce('Trying benches like yours.');
  tryBenches(await situationOf(bench), ({ done, of, sure }) => {
    if (bar) bar.value = done;
    state.textContent = `${done} of ${of} tried`;
    if (sure === undefined) return;
    working(false);
    if (sure === null) {
      state.textContent = 'This bench lies outside the range that the published laws hold for: no ranges.';
      // Were nothing said, the ranges below would be taken for those of this bench.
      whose.textContent = shown
        ? 'There are no ranges of your bench as it is now. What stands below is of an earlier one.'
        : 'There are no ranges of your bench. What stands below is of the example.';
      announce(`${state.textContent} ${whose.textContent}`);
      return;
    }
    shown = { bench, sure };
    showTried(sure);
    showWhose();
    announce('All benches are tried: the ranges of your bench are there.');
  });
}

function end(): void {
  stopTrying();
  working(false);
  state.textContent = `Stopped after ${bar?.value ?? 0}; nothing has changed`;
  announce('Stopped.');
  tryIt.focus();
}

tryIt.addEventListener('click', () => void begin());
stop.addEventListener('click', end);
follow(() => {
  if (shown) showTried(shown.sure);
  showWhose();
});
showWhose();
// From here on a press of it is heard.
tryIt.disabled = false;
