import type { Answer, Situation } from '../../calculators/calculator.ts';
import { handingOver, type Ask, type Said, type Tried } from './asking.ts';
import type { CalculatingFor } from './calculating.ts';
import { calculatingFile, ownScript } from './own-script.ts';

/**
 * The page's end of what calculates for it: a worker, so that the page has time for the reader. Where the browser
 * starts none, the same file is loaded into the page.
 */

type Hear = (id: string, answer: Answer) => void;

let turn = 0;
let hear: Hear = () => undefined;
let fail: (problem: Error) => void = reportError;

let trial = 0;
let hearTried: (tried: Tried) => void = () => undefined;

function heard(said: Said): void {
  if (said.kind === 'fault') fail(new Error(said.words));
  else if (said.kind === 'tried') {
    if (said.turn === trial) hearTried(said);
  } else if (said.turn === turn) hear(said.id, said.answer);
}

let post: ((ask: Ask) => void) | undefined;
/** What was asked last of each kind: until the worker is heard from, it may have to be asked again on the page. */
const last = new Map<Ask['kind'], Ask>();

/** Calculates on the page itself. */
function startHere(): void {
  post = undefined;
  const begin = (event: Event): void => {
    post = (event as CustomEvent<CalculatingFor>).detail(heard);
    for (const ask of last.values()) post(ask);
  };
  document.addEventListener(handingOver, begin, { once: true });
  import(/* @vite-ignore */ calculatingFile).catch((problem: unknown) => {
    fail(problem as Error);
  });
}

function start(): void {
  try {
    const worker = new Worker(ownScript('calculating'), { type: 'module' });
    let works = false;
    worker.addEventListener('message', ({ data }: MessageEvent<Said>) => {
      works = true;
      heard(data);
    });
    worker.addEventListener('error', (event) => {
      // An older browser, or one that is told to, starts no worker of this kind.
      if (works) return;
      event.preventDefault();
      worker.terminate();
      startHere();
    });
    post = (ask) => {
      worker.postMessage(ask);
    };
  } catch {
    startHere();
  }
}

let started = false;

function send(ask: Ask): void {
  last.set(ask.kind, ask);
  if (!started) {
    started = true;
    start();
  }
  post?.(ask);
}

/** Gets these calculators ready, so that the first answer does not wait for their files. */
export function readyAnswers(ids: readonly string[]): void {
  if (!started) send({ kind: 'ready', ids });
}

/**
 * Asks for the answers of these calculators for one bench. Each is told as it comes, the quickest first; of what was
 * asked before, nothing more is told.
 */
export function askAnswers(ids: readonly string[], situation: Situation, tell: Hear): void {
  hear = tell;
  send({ kind: 'answers', turn: ++turn, ids, situation });
}

/** Has many benches like this one tried; is told how far that has come, and in the end what came of it. */
export function tryBenches(situation: Situation, tell: (tried: Tried) => void): void {
  hearTried = tell;
  last.delete('stop');
  send({ kind: 'try', turn: ++trial, situation });
}

/** Ends that trial. */
export function stopTrying(): void {
  trial++;
  last.delete('try');
  send({ kind: 'stop' });
}

/** What to do when figures cannot be worked out, as when a file does not arrive. */
export function whenFailing(act: (problem: Error) => void): void {
  fail = act;
}
