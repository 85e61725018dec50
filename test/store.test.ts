import { describe, expect, it } from 'vitest';
import { startBench } from '../calculators/bench/start.ts';
import { Store, keys, type Storage } from '../site/widgets/store.ts';

const example = startBench('estermark', 'lowfield');

/** The browser's storage, as far as the store uses it. */
class Drawer implements Storage {
  readonly kept = new Map<string, string>();
  getItem(key: string): string | null {
    return this.kept.get(key) ?? null;
  }
  setItem(key: string, text: string): void {
    this.kept.set(key, text);
  }
}

const open = (storage?: Storage, fields = 'today') =>
  new Store({ storage, example, system: 'metric', fields });

describe('the one bench of the site', () => {
  it('starts as the example, with nothing set and nothing to undo', () => {
    const store = open(new Drawer());
    expect(store.state.bench).toEqual(example);
    expect(store.untouched).toBe(true);
    expect(store.canUndo).toBe(false);
    expect(store.found).toBe('nothing');
  });

  it('keeps what was given, and which fields those were, for the next visit', () => {
    const drawer = new Drawer();
    open(drawer).give({ 'cable.length': 30, 'loop.pipe': 'drain-75' });
    const later = open(drawer);
    expect(later.found).toBe('bench');
    expect(later.state.bench.cable.length).toBe(30);
    expect(later.state.bench.loop.pipe).toBe('drain-75');
    expect(later.state.set).toEqual(['cable.length', 'loop.pipe']);
    expect(later.state.bench.frame).toEqual(example.frame);
  });

  it('keeps wrong answers as they were typed, beside the last that could be used', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'cable.length': 30 });
    store.draft('cable.length', '30 kg');
    const later = open(drawer);
    expect(later.state.drafts).toEqual({ 'cable.length': { text: '30 kg', system: 'metric' } });
    expect(later.state.bench.cable.length).toBe(30);
    later.give({ 'cable.length': 31 });
    expect(later.state.drafts).toEqual({});
  });

  it('undoes step by step: typing on in one field is one step, leaving it ends the step', () => {
    const store = open(new Drawer());
    for (const length of [3, 30, 30.5]) store.give({ 'cable.length': length });
    store.endStep();
    store.give({ 'cable.length': 40 });
    store.give({ 'frame.length': 8 });
    store.undo();
    expect(store.state.bench.frame.length).toBe(example.frame.length);
    expect(store.state.bench.cable.length).toBe(40);
    store.undo();
    expect(store.state.bench.cable.length).toBe(30.5);
    store.undo();
    expect(store.state.bench).toEqual(example);
    expect(store.untouched).toBe(true);
    store.undo();
    expect(store.state.bench).toEqual(example);
  });

  it('undoes a fresh start and a bench taken from a file, even after a reload', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'cable.length': 30 });
    store.draft('pots.count', 'many');
    store.take({ ...example, cable: { ...example.cable, length: 12 } }, ['cable.length']);
    expect(store.state).toMatchObject({ origin: 'file', set: ['cable.length'], drafts: {} });
    store.reset();
    expect(store.untouched).toBe(true);
    const later = open(drawer);
    later.undo();
    expect(later.state.bench.cable.length).toBe(12);
    later.undo();
    expect(later.state.bench.cable.length).toBe(30);
    expect(later.state.drafts['pots.count']?.text).toBe('many');
  });

  it('remembers the units apart from the bench: a fresh start does not change them', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.choose('us');
    store.reset();
    expect(open(drawer).system).toBe('us');
  });

  it('goes on where storage is missing, forbidden or full, and says that it does not keep', () => {
    const forbidden: Storage = {
      getItem: () => {
        throw new Error('forbidden');
      },
      setItem: () => {
        throw new Error('forbidden');
      },
    };
    const full: Storage = {
      getItem: () => null,
      setItem: () => {
        throw new Error('full');
      },
    };
    for (const storage of [undefined, forbidden, full]) {
      const store = open(storage);
      store.give({ 'cable.length': 30 });
      expect(store.state.bench.cable.length).toBe(30);
      expect(store.keeps).toBe(false);
      store.undo();
      expect(store.state.bench).toEqual(example);
    }
    const store = open(new Drawer());
    store.give({ 'cable.length': 30 });
    expect(store.keeps).toBe(true);
  });

  it.each([
    '{"format":1',
    'null',
    '[]',
    '"bench"',
    '{"bench":{"cable":5},"set":[],"drafts":{},"origin":"file"}',
  ])('puts %s aside and starts from the example', (text) => {
    const drawer = new Drawer();
    drawer.setItem(keys.bench, text);
    const store = open(drawer);
    expect(store.state.bench).toEqual(example);
    expect(store.found).toBe('unreadable');
    expect(drawer.getItem(keys.unread)).toContain(text.slice(1, 5));
  });

  it('gives fields that an older guide did not know the example’s values, and asks to look the rest through', () => {
    const drawer = new Drawer();
    open(drawer, 'yesterday').give({ 'cable.length': 30 });
    const kept = JSON.parse(drawer.getItem(keys.bench) ?? '') as { bench: Record<string, unknown> };
    delete kept.bench['mix'];
    kept.bench['garden'] = { gnomes: 3 };
    drawer.setItem(keys.bench, JSON.stringify(kept));
    const store = open(drawer);
    expect(store.found).toBe('older-bench');
    expect(store.state.bench.mix).toEqual(example.mix);
    expect(store.state.bench).not.toHaveProperty('garden');
    expect(store.state.bench.cable.length).toBe(30);
  });

  it('follows another tab', () => {
    const drawer = new Drawer();
    const [one, two] = [open(drawer), open(drawer)];
    let told = 0;
    two.subscribe(() => told++);
    one.give({ 'cable.length': 30 });
    two.changedElsewhere(keys.bench);
    expect(two.state.bench.cable.length).toBe(30);
    expect(told).toBe(1);
    two.changedElsewhere('something of another site');
    expect(told).toBe(1);
  });
});
