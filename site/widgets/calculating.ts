import { answerOf, type Working } from '../../calculators/answering.ts';
import { handingOver, type Ask, type Say } from './asking.ts';

/**
 * Works figures out apart from the page, in a worker: a winter takes most of a second, in which the page would answer
 * no key. Where a browser starts no worker, the page loads this very file and works with it as it can.
 */

/** Every calculator, each in a file of its own, so that only those are loaded that a page shows. */
const files = import.meta.glob<Working>('../../calculators/questions/*.ts', {
  import: 'default',
  query: '?figures',
});

async function load(id: string): Promise<Working> {
  const file = files[`../../calculators/questions/${id}.ts`];
  if (!file) throw new Error(`no calculator ${id}`);
  return file();
}

/** Those that follow a bench through time, the quickest first; they come after all others, which are quicker still. */
const throughTime = ['settings', 'warm-up', 'outage', 'tonight', 'night', 'season'];

const quickestFirst = (ids: readonly string[]): string[] =>
  ids.toSorted((one, other) => throughTime.indexOf(one) - throughTime.indexOf(other));

/** Lets in what has been asked meanwhile. A timer would wait for some milliseconds each time. */
const { port1: waker, port2: bell } = new MessageChannel();
const asleep: (() => void)[] = [];
waker.onmessage = () => asleep.shift()?.();
const breath = (): Promise<void> =>
  new Promise((resolve) => {
    asleep.push(resolve);
    bell.postMessage(null);
  });

/** How often the progress of a trial is told, and what was asked meanwhile is let in [ms]. */
const tellEvery = 30;

/** Gives what answers to each ask; the answers go to `say`. */
function calculatingFor(say: Say): (ask: Ask) => void {
  let newest = 0;
  async function answers({ turn, ids, situation }: Extract<Ask, { kind: 'answers' }>): Promise<void> {
    newest = turn;
    for (const id of quickestFirst(ids)) {
      const calculator = await load(id);
      await breath();
      if (turn !== newest) return;
      say({ kind: 'answer', turn, id, answer: answerOf(calculator, situation) });
    }
  }
  let newestTrial = 0;
  async function trial({ turn, situation }: Extract<Ask, { kind: 'try' }>): Promise<void> {
    newestTrial = turn;
    const [{ headlinesOf, howSure, benchesTried: of }, night, watts] = await Promise.all([
      import('../../calculators/bench/how-sure.ts'),
      load('night'),
      load('watts'),
    ]);
    const none = { kind: 'tried', turn, done: 0, of, sure: null } as const;
    const headlines = headlinesOf(answerOf(night, situation).figures, answerOf(watts, situation).figures);
    if (!headlines) {
      say(none);
      return;
    }
    try {
      const trying = howSure(situation, headlines);
      let told = performance.now();
      for (let step = trying.next(); ; step = trying.next()) {
        if (step.done === true) {
          say({ kind: 'tried', turn, done: of, of, sure: step.value });
          return;
        }
        if (performance.now() - told < tellEvery) continue;
        say({ kind: 'tried', turn, ...step.value });
        await breath();
        if (turn !== newestTrial) return;
        told = performance.now();
      }
    } catch (problem) {
      if (!(problem instanceof RangeError)) throw problem;
      say(none);
    }
  }
  function take(ask: Ask): Promise<unknown> {
    switch (ask.kind) {
      case 'ready':
        return Promise.all(ask.ids.map(load));
      case 'answers':
        return answers(ask);
      case 'try':
        return trial(ask);
      case 'stop':
        newestTrial = 0;
        return Promise.resolve();
    }
  }
  return (ask) =>
    void take(ask).catch((problem: unknown) => {
      say({ kind: 'fault', words: String(problem) });
    });
}

/** How a worker hears and speaks; the types of the project are those of a page. */
interface WorkerScope {
  onmessage: ((event: MessageEvent<Ask>) => void) | null;
  postMessage: Say;
}

if ('document' in globalThis)
  document.dispatchEvent(new CustomEvent(handingOver, { detail: calculatingFor }));
else {
  const scope = globalThis as unknown as WorkerScope;
  const take = calculatingFor((said) => {
    scope.postMessage(said);
  });
  scope.onmessage = ({ data }) => {
    take(data);
  };
}

export type CalculatingFor = typeof calculatingFor;
