import type { Answers } from '../../calculators/index.ts';
import type { QuantityName } from '../../calculators/quantities/quantity.ts';
import { showQuantity } from '../../calculators/quantities/show.ts';
import { drawings } from '../drawings.ts';
import { svgElement } from '../drawing/svg.ts';
import { follow } from './following.ts';
import { manner } from './manner.ts';
import { situationOf } from './place.ts';
import { store } from './the-store.ts';

/**
 * Where a page shows the example's invented night until the reader has readings: turns from one to the other, and puts
 * the example's drawings into the reader's units. The reader's own are drawn by the page, as all drawings are.
 */

/** Whether anything was read on the reader's bench. */
const hasReadings = (): boolean =>
  Object.values(store.state.bench.readings).some((value) => typeof value === 'number');

let drawnIn = document.documentElement.dataset['units'];

async function drawExample(): Promise<void> {
  const { system } = store;
  const told = document.querySelector<HTMLElement>('night-says')?.dataset['answers'];
  if (told === undefined || drawnIn === system) return;
  drawnIn = system;
  // These drawings look at the answers of the readings alone.
  const answers = { readings: JSON.parse(told) as Answers['readings'] } as Answers;
  const situation = await situationOf(store.example);
  for (const sheet of document.querySelectorAll<HTMLElement>('[data-night-drawing]')) {
    const name = sheet.dataset['nightDrawing'] as 'before-after' | 'residuals';
    const draw = await drawings[name].load();
    const width = Number(sheet.dataset['width']);
    const id = sheet.querySelector('title')?.id.replace(/-title$/u, '') ?? `night-${name}`;
    sheet.replaceChildren(svgElement(draw({ situation, answers, manner: manner(), width }), id, document));
  }
}

/** A figure in the text is of one night or the other: the page fills what is marked as a figure, or as a quantity. */
function showFigure(element: HTMLElement, own: boolean): void {
  const { nightFigure: name = '', example = '', quantity } = element.dataset;
  if (own === (element.dataset['figure'] !== undefined)) return;
  if (own) {
    delete element.dataset['base'];
    element.dataset['figure'] = name;
    element.textContent = '…';
    return;
  }
  delete element.dataset['figure'];
  element.dataset['base'] = example;
  element.textContent = showQuantity(Number(example), quantity as QuantityName, manner());
}

function show(): void {
  const own = hasReadings();
  for (const element of document.querySelectorAll<HTMLElement>('[data-night-figure]'))
    showFigure(element, own);
  // Without an example's night there is nothing to turn from.
  if (!document.querySelector('[data-night="example"]')) return;
  for (const element of document.querySelectorAll<HTMLElement>('[data-night]'))
    element.hidden = (element.dataset['night'] === 'own') !== own;
  if (!own) void drawExample();
}

follow(show);
show();
