import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { inSlices, startOver } from '../site/widgets/slices.ts';

/** The page gives its reader time between two pieces of its own work: in which order, and what is dropped. */

/** Pictures are made when the test says so. */
let pictures: (() => void)[] = [];
/** Lets everything run that needs no picture. */
const settle = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 20));
/** A screen makes pictures as long as someone waits for one. */
async function makePictures(): Promise<void> {
  while (pictures.length > 0) {
    for (const call of pictures.splice(0)) call();
    await settle();
  }
}

beforeEach(() => {
  pictures = [];
  vi.stubGlobal('document', { hidden: false });
  vi.stubGlobal('requestAnimationFrame', (call: () => void) => pictures.push(call));
});
afterEach(async () => {
  await makePictures();
  vi.unstubAllGlobals();
});

describe('work in slices', () => {
  it('is done in the order that it came in, whether in one go or step by step', async () => {
    const done: string[] = [];
    const first = inSlices(function* () {
      done.push('one');
      yield;
      done.push('two');
    });
    await Promise.all([first, inSlices(() => void done.push('three'))]);
    expect(done).toEqual(['one', 'two', 'three']);
  });

  it('waits, after a change, until the change itself is on the screen', async () => {
    const done: string[] = [];
    startOver();
    void inSlices(() => void done.push('what follows'));
    await settle();
    expect(done).toEqual([]);
    await makePictures();
    expect(done).toEqual(['what follows']);
  });

  it('drops what an older change had still to do', async () => {
    const done: string[] = [];
    startOver();
    void inSlices(() => void done.push('older'));
    startOver();
    void inSlices(() => void done.push('newer'));
    await settle();
    await makePictures();
    expect(done).toEqual(['newer']);
  });

  it('ends an older change in the middle of its work', async () => {
    const done: string[] = [];
    void inSlices(function* () {
      done.push('begun');
      startOver();
      yield;
      done.push('never');
    });
    await settle();
    await makePictures();
    expect(done).toEqual(['begun']);
  });

  it('shows what has changed much before it changes more', async () => {
    const done: string[] = [];
    void inSlices(function* () {
      done.push('a drawing');
      yield 'show';
      done.push('another');
    });
    await settle();
    expect(done).toEqual(['a drawing']);
    await makePictures();
    expect(done).toEqual(['a drawing', 'another']);
  });

  it('breathes where one piece takes long', async () => {
    const done: string[] = [];
    const long = (): void => {
      const until = performance.now() + 8;
      while (performance.now() < until);
    };
    const work = inSlices(function* () {
      long();
      yield;
      done.push('the rest');
    });
    done.push('a key');
    await work;
    expect(done).toEqual(['a key', 'the rest']);
  });

  it('goes on after a piece that fails, and says that it failed', async () => {
    const faults: unknown[] = [];
    vi.stubGlobal('reportError', (fault: unknown) => faults.push(fault));
    const done: string[] = [];
    await inSlices(() => {
      throw new Error('a drawing that cannot be drawn');
    });
    await inSlices(() => void done.push('the next'));
    expect(done).toEqual(['the next']);
    expect(faults).toEqual([new Error('a drawing that cannot be drawn')]);
  });

  it('needs no picture where nobody looks at the page', async () => {
    vi.stubGlobal('document', { hidden: true });
    const done: string[] = [];
    startOver();
    await inSlices(() => void done.push('done'));
    expect(done).toEqual(['done']);
  });
});
