import { allFields } from '../../calculators/bench/all-fields.ts';
import { benchAddress } from '../../content/link.ts';
import { fileName, saveFile } from './files.ts';
import { announce, notice } from './notice.ts';
import { follow } from './following.ts';
import { guideAddress, onlyHere } from './guide-address.ts';
import { loadRegion, regionIds } from './place.ts';
import { progressWords } from './progress-words.ts';
import { store } from './the-store.ts';

/** The tools of the bench page: several benches, file, link, fresh start. Reading and writing files is loaded when it is first used. */

/** Larger files are not bench files; an export has some ten thousand bytes. */
const largestFile = 200_000;

const part = (selector: string): HTMLElement => {
  const found = document.querySelector<HTMLElement>(selector);
  if (!found) throw new Error(`the bench page lacks ${selector}`);
  return found;
};

const shown = part('[data-link-shown]') as HTMLInputElement;
const problems = part('[data-file-problems]');
const reset = part('[data-reset]') as HTMLButtonElement;

function showProgress(): void {
  const { set, origin, drafts } = store.state;
  part('[data-progress]').textContent = progressWords({
    set: set.length,
    of: allFields.length,
    origin,
    wrong: Object.keys(drafts).length,
    keeps: store.keeps,
  });
  reset.disabled = store.untouched;
  // The link on show is the link to the bench on show.
  if (!part('.link-shown').hidden) shown.value = linkToBench();
}

const linkToBench = (): string => benchAddress(guideAddress(), store.state.bench, store.state.set);

const benches = part('[data-benches]') as HTMLSelectElement;
const bin = part('[data-bin]');

/** A name that no other bench has: “Mine”, “Mine 2”, “Mine 3”. */
function freeName(name: string): string {
  const taken = new Set([store.state.bench.identity.name, ...store.others]);
  let free = name;
  for (let next = 2; taken.has(free); next++) free = `${name} ${next}`;
  return free;
}

function showBenches(): void {
  const { name } = store.state.bench.identity;
  const names = [store.untouched ? `${name} (example)` : name, ...store.others];
  const there = [...benches.options].map(({ text }) => text);
  if (there.join('\n') !== names.join('\n'))
    benches.replaceChildren(...names.map((words, index) => new Option(words, String(index))));
  benches.value = '0';
  (part('[data-delete]') as HTMLButtonElement).disabled = store.untouched;
  bin.hidden = store.deleted.length === 0;
  bin.querySelector('span')?.replaceChildren(
    ...store.deleted.map((deleted, index) => {
      const button = document.createElement('button');
      button.type = 'button';
      button.className = 'quiet';
      button.textContent = deleted;
      button.addEventListener('click', () => {
        store.restore(index);
        announce(`“${deleted}” is back.`);
      });
      return button;
    }),
  );
}

benches.addEventListener('change', () => {
  store.open(Number(benches.value) - 1);
  announce(`This is now “${store.state.bench.identity.name}”.`);
});

async function begin(): Promise<void> {
  const name = freeName('My bench');
  await store.begin(name);
  announce(`“${name}” has the usual values. Put yours in.`);
  nameField().select();
}

const nameField = (): HTMLInputElement => {
  const field = document.querySelector<HTMLInputElement>('input[name="identity.name"]');
  if (!field) throw new Error('the bench page lacks the field of the name');
  field.closest('details')?.setAttribute('open', '');
  field.focus();
  return field;
};

part('[data-new]').addEventListener('click', () => void begin());
part('[data-copy]').addEventListener('click', () => {
  const name = freeName(store.state.bench.identity.name);
  store.copy(name);
  announce(`This is now the copy, “${name}”.`);
});
part('[data-rename]').addEventListener('click', () => {
  nameField().select();
});
part('[data-delete]').addEventListener('click', () => {
  const { name } = store.state.bench.identity;
  store.delete();
  notice('deleted', `“${name}” was deleted.`, [
    {
      words: 'Undo: bring it back',
      take: () => {
        store.restore(0);
      },
    },
  ]);
});

async function exportBench(): Promise<void> {
  const { writeBenchFile } = await import('../../content/bench-file.ts');
  const { bench, set } = store.state;
  saveFile(`${fileName(bench.identity.name)}.yaml`, 'text/yaml', writeBenchFile(bench, store.system, set));
  announce('The bench was saved as a file.');
}

function showFileProblems(lines: readonly string[]): void {
  problems.hidden = lines.length === 0;
  problems.querySelector('ul')?.replaceChildren(
    ...lines.map((line) => {
      const item = document.createElement('li');
      item.textContent = line;
      return item;
    }),
  );
  if (lines.length > 0) problems.focus();
}

async function importBench(file: File): Promise<void> {
  if (file.size > largestFile) {
    showFileProblems([
      `${file.name} has ${Math.round(file.size / 1000)} kB. A bench file has at most ${largestFile / 1000} kB: this is another file.`,
    ]);
    return;
  }
  const [{ readBenchFile }, regions, text] = await Promise.all([
    import('../../content/bench-file.ts'),
    Promise.all(regionIds.map(loadRegion)),
    file.text(),
  ]);
  const read = readBenchFile(text, file.name, regions);
  if (!read.ok) {
    showFileProblems(read.problems.map((one) => one.text));
    return;
  }
  showFileProblems([]);
  const given = allFields.map(({ path }) => path).filter((path) => !read.assumed.includes(path));
  const back = store.take(read.bench, given);
  notice('file', `This is now the bench of the file ${file.name}, “${read.bench.identity.name}”.`, [
    {
      words: 'Undo: back to the bench before',
      take: back,
    },
  ]);
}

async function copyLink(): Promise<void> {
  part('.link-shown').hidden = false;
  shown.value = linkToBench();
  try {
    await navigator.clipboard.writeText(shown.value);
    announce('The link was copied.');
  } catch {
    // The browser does not let pages copy; the link stands there, marked, for copying by hand.
    shown.focus();
    shown.select();
  }
}

part('[data-export]').addEventListener('click', () => void exportBench());
part('[data-link]').addEventListener('click', () => void copyLink());
reset.addEventListener('click', () => {
  store.reset();
  notice('reset', 'All fields are the example’s again.', [
    {
      words: 'Undo: back to my bench',
      take: () => {
        store.undo();
      },
    },
  ]);
});
part('[data-import]').addEventListener('change', (event) => {
  const input = event.target as HTMLInputElement;
  const [file] = input.files ?? [];
  if (file) void importBench(file);
  // So that the same file, put right, can be opened again.
  input.value = '';
});
follow(showProgress);
follow(showBenches);
showProgress();
showBenches();
part('[data-only-here]').hidden = !onlyHere();
