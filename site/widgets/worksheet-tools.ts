import { edition } from '../edition.ts';
import { fileName, saveFile } from './files.ts';
import { guideAddress, onlyHere } from './guide-address.ts';
import { manner } from './manner.ts';
import { announce } from './notice.ts';
import { situationOf } from './place.ts';
import { store } from './the-store.ts';

/** Draws the reader's own worksheet, in the browser. The PDF maker is large and is loaded when it is asked for. */

const button = document.querySelector<HTMLButtonElement>('[data-draw]');
const state = document.querySelector<HTMLElement>('[data-draw-state]');
const base = guideAddress();

function say(words: string): void {
  if (state) state.textContent = words;
  announce(words);
}

async function font(face: string): Promise<Uint8Array> {
  const response = await fetch(new URL(`fonts/inter-${face}.ttf`, base));
  if (!response.ok) throw new Error(`the font of the worksheet could not be loaded (${response.status})`);
  return new Uint8Array(await response.arrayBuffer());
}

async function draw(): Promise<void> {
  const [{ drawWorksheet }, { answer }, { allFields }, { benchAddress }, regular, bold, situation] =
    await Promise.all([
      import('../worksheet/worksheet.ts'),
      import('../../calculators/index.ts'),
      import('../../calculators/bench/all-fields.ts'),
      import('../../content/link.ts'),
      font('regular'),
      font('bold'),
      situationOf(store.state.bench),
    ]);
  const { bench, set } = store.state;
  const pdf = await drawWorksheet({
    situation,
    answers: answer(situation),
    manner: manner(),
    paper: store.paper,
    fonts: { regular, bold },
    // A code on paper that leads to this very machine is of no use; the region says where its guide is.
    link: benchAddress(onlyHere() ? situation.region.guide : base, bench, set),
    version: edition,
    assumed: allFields.map(({ path }) => path).filter((path) => !set.includes(path)),
  });
  saveFile(`worksheet-${fileName(bench.identity.name)}.pdf`, 'application/pdf', new Uint8Array(pdf));
}

/** Says which answers of the reader the worksheet could not use, as they are wrong so far. */
function leftOut(): string {
  const drafts = Object.values(store.state.drafts).map((draft) => `“${draft.text}”`);
  if (drafts.length === 0) return '';
  return ` It does not have ${drafts.join(', ')}: that cannot be used yet, and the value before it was taken. Mend it on the page of your bench and draw again.`;
}

const papers = [...document.querySelectorAll<HTMLInputElement>('input[name="paper"]')];

function showPaper(): void {
  for (const radio of papers) radio.checked = radio.value === store.paper;
}

for (const radio of papers)
  radio.addEventListener('change', () => {
    store.choosePaper(radio.value === 'letter' ? 'letter' : 'a4');
  });
store.subscribe(showPaper);
showPaper();

button?.addEventListener('click', () => {
  button.disabled = true;
  say('Drawing the worksheet…');
  draw()
    .then(() => {
      say(`The worksheet was drawn and saved as a file.${leftOut()}`);
    })
    .catch((problem: unknown) => {
      console.error(problem);
      say(
        `The worksheet could not be drawn: ${problem instanceof Error ? problem.message : 'something went wrong'}. Your bench is as it was.`,
      );
    })
    .finally(() => {
      button.disabled = false;
    });
});
