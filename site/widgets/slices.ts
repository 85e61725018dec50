/**
 * Work of the page in small slices, so that a key or a click is never kept waiting: first the page shows what the reader
 * did, then comes what follows from it. A newer change ends what is left of an older one.
 */

/**
 * Steps of work, with a chance to breathe at each `yield`. Where much of the page has changed, `yield 'show'` waits until
 * that is on the screen: two such changes in one picture would keep a key waiting twice as long.
 */
export type Steps = Generator<'show' | undefined, void>;

/** What is to be done: in one go, or step by step. */
export type Work = (() => Steps) | (() => void);

/** How long a slice may take, of the 50 ms after which a reader feels that a page is busy (W3C Long Tasks) [ms]. */
const longest = 6;

/** Not every browser has it, and the compiler does not know it yet (WICG Prioritized Task Scheduling). */
const { scheduler } = globalThis as { scheduler?: { yield?: () => Promise<void> } };

const breath = (): Promise<void> => scheduler?.yield?.() ?? new Promise((resolve) => setTimeout(resolve));

/** The next picture of the page is on its way to the screen; a page that nobody sees makes none. */
const painted = (): Promise<void> =>
  new Promise((resolve) => {
    const soon = () => setTimeout(resolve);
    if (document.hidden) soon();
    else requestAnimationFrame(soon);
  });

interface Waiting {
  readonly steps: Steps;
  readonly done: () => void;
}

let waiting: readonly Waiting[] = [];
let running = false;
/** Something has changed that has to be on the screen before anything else is done. */
let unseen = false;

async function run(): Promise<void> {
  running = true;
  let began = performance.now();
  while (unseen || waiting.length > 0) {
    if (unseen || performance.now() - began > longest) {
      const wait = unseen ? painted : breath;
      unseen = false;
      await wait();
      began = performance.now();
      continue;
    }
    const [first] = waiting;
    try {
      const step = first?.steps.next();
      unseen ||= step?.value === 'show';
      if (step?.done === false) continue;
    } catch (problem) {
      reportError(problem);
    }
    waiting = waiting.filter((work) => work !== first);
    first?.done();
  }
  running = false;
}

function* steps(work: Work): Steps {
  const more = work();
  if (more) yield* more;
}

/** Has this done after what waits already. The promise is kept when it is done, and never where it was dropped. */
export function inSlices(work: Work): Promise<void> {
  return new Promise((done) => {
    waiting = [...waiting, { steps: steps(work), done }];
    if (!running) void run();
  });
}

/** Drops what waits, and begins again when the reader has seen what he did. */
export function startOver(): void {
  waiting = [];
  unseen = true;
}
