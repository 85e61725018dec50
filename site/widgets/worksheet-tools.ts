import type { Manner } from '../../calculators/quantities/show.ts';
import type { PaperName } from '../worksheet/layout.ts';
import { leftOutNames, type LeftOut } from '../worksheet/left-out.ts';
import { edition } from '../edition.ts';
import { fileName, saveFile } from './files.ts';
import { follow } from './following.ts';
import { guideAddress, onlyHere } from './guide-address.ts';
import { manner } from './manner.ts';
import { announce } from './notice.ts';
import { situationOf } from './place.ts';
import { store } from './the-store.ts';
import { loadWords } from './words.ts';
import { languageOf } from '../../content/language-of.ts';

/**
 * Shows the reader's own worksheet, and makes its PDF, in the browser. What draws it is large and is loaded when it is
 * asked for.
 */

const buttons = [...document.querySelectorAll<HTMLButtonElement>('[data-show], [data-draw]')];
const state = document.querySelector<HTMLElement>('[data-draw-state]');
const preview = document.querySelector<HTMLElement>('[data-preview]');
const print = document.querySelector<HTMLAnchorElement>('[data-print]');
const papers = [...document.querySelectorAll<HTMLInputElement>('input[name="paper"]')];
const parts = [...document.querySelectorAll<HTMLInputElement>('input[name="part"]')];
const languages = [...document.querySelectorAll<HTMLInputElement>('input[name="language"]')];
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

let loaded: Promise<{ regular: Uint8Array; bold: Uint8Array }> | undefined;

/** The two faces, fetched once; a failure may be tried again. */
async function fonts(): Promise<{ regular: Uint8Array; bold: Uint8Array }> {
  loaded ??= Promise.all([font('regular'), font('bold')]).then(([regular, bold]) => ({ regular, bold }));
  try {
    return await loaded;
  } catch (error) {
    loaded = undefined;
    throw error;
  }
}

/** The parts that the reader has unticked. */
const leaveOut = (): LeftOut[] =>
  leftOutNames.filter((name) => parts.some(({ value, checked }) => value === name && !checked));

/** How the sheet says things: in the language chosen, which that of the pages need not be. */
async function mannerOfSheet(): Promise<Manner> {
  const { locale, words: _, ...rest } = manner();
  const chosen = languages.find(({ checked }) => checked)?.value ?? languageOf(locale);
  const tag = languageOf(locale) === chosen ? locale : chosen;
  const words = await loadWords(tag);
  return { ...rest, locale: tag, ...(words ? { words } : {}) };
}

/** What the worksheet of the bench on the pages is made from. */
async function sheetInput() {
  const [{ answer }, { allFields }, { benchAddress }, faces, situation, said] = await Promise.all([
    import('../../calculators/index.ts'),
    import('../../calculators/bench/all-fields.ts'),
    import('../../content/link.ts'),
    fonts(),
    situationOf(store.state.bench),
    mannerOfSheet(),
  ]);
  const { bench, set } = store.state;
  const paper: PaperName = store.paper;
  return {
    situation,
    answers: answer(situation),
    manner: said,
    paper,
    fonts: faces,
    // A code on paper that leads to this very machine is of no use; the region says where its guide is.
    link: benchAddress(onlyHere() ? situation.region.guide : base, bench, set),
    version: edition,
    assumed: allFields.map(({ path }) => path).filter((path) => !set.includes(path)),
    leaveOut: leaveOut(),
  };
}

/** The address of the PDF that is ready to be printed, let go when there is another. */
let ready: string | undefined;

function offerPrint(pdf: Uint8Array<ArrayBuffer>): void {
  if (ready !== undefined) URL.revokeObjectURL(ready);
  ready = URL.createObjectURL(new Blob([pdf], { type: 'application/pdf' }));
  if (!print) return;
  print.href = ready;
  print.hidden = false;
}

async function show(): Promise<string> {
  const [sheet, input] = await Promise.all([import('../worksheet/on-screen.ts'), sheetInput()]);
  const pages = await sheet.pagesOnScreen(input, document);
  preview?.replaceChildren(...pages);
  if (preview) preview.hidden = false;
  offerPrint(new Uint8Array(await sheet.drawWorksheet(input)));
  return `The worksheet is shown below: ${pages.length} sides.`;
}

async function save(): Promise<string> {
  const [{ drawWorksheet }, input] = await Promise.all([import('../worksheet/on-screen.ts'), sheetInput()]);
  const pdf = new Uint8Array(await drawWorksheet(input));
  saveFile(`worksheet-${fileName(input.situation.bench.identity.name)}.pdf`, 'application/pdf', pdf);
  return 'The worksheet was drawn and saved as a file.';
}

/** Says which answers of the reader the worksheet could not use, as they are wrong so far. */
function notUsed(): string {
  const drafts = Object.values(store.state.drafts).map((draft) => `“${draft.text}”`);
  if (drafts.length === 0) return '';
  return ` It does not have ${drafts.join(', ')}: that cannot be used yet, and the value before it was taken. Mend it on the page of your bench and draw again.`;
}

function work(task: () => Promise<string>): void {
  for (const button of buttons) button.disabled = true;
  say('Drawing the worksheet…');
  task()
    .then((words) => {
      say(`${words}${notUsed()}`);
    })
    .catch((problem: unknown) => {
      console.error(problem);
      say(
        `The worksheet could not be drawn: ${problem instanceof Error ? problem.message : 'something went wrong'}. Your bench is as it was.`,
      );
    })
    .finally(() => {
      for (const button of buttons) button.disabled = false;
    });
}

/** What is shown follows what is chosen. */
function showAgain(): void {
  if (preview && !preview.hidden) work(show);
}

function showPaper(): void {
  for (const radio of papers) radio.checked = radio.value === store.paper;
}

for (const radio of papers)
  radio.addEventListener('change', () => {
    store.choosePaper(radio.value === 'letter' ? 'letter' : 'a4');
    showAgain();
  });
for (const box of [...parts, ...languages]) box.addEventListener('change', showAgain);
follow(showPaper);
showPaper();

for (const button of buttons)
  button.addEventListener('click', () => {
    work(button.dataset['show'] === undefined ? save : show);
  });
