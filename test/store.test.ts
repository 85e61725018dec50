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

/** What two regions are used to; any other is like the first. */
const customs = (region: string) =>
  region === 'tallow'
    ? ({ units: 'us', paper: 'letter' } as const)
    : ({ units: 'metric', paper: 'a4' } as const);

const open = (storage?: Storage, fields = 'today') =>
  new Store({
    storage,
    example,
    fresh: () => Promise.resolve(startBench('estermark', 'lowfield')),
    customs,
    fields,
  });

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

  it('undoes a fresh start, even after a reload', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'cable.length': 30 });
    store.draft('pots.count', 'many');
    store.reset();
    expect(store.untouched).toBe(true);
    const later = open(drawer);
    later.undo();
    expect(later.state.bench.cable.length).toBe(30);
    expect(later.state.drafts['pots.count']?.text).toBe('many');
  });

  it('does again what was undone, until something else is done', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'cable.length': 30 });
    store.give({ 'frame.length': 8 });
    store.undo();
    store.undo();
    const later = open(drawer);
    expect(later.canRedo).toBe(true);
    later.redo();
    expect(later.state.bench.cable.length).toBe(30);
    later.redo();
    expect(later.state.bench.frame.length).toBe(8);
    expect(later.canRedo).toBe(false);
    later.undo();
    later.give({ 'frame.length': 9 });
    expect(later.canRedo).toBe(false);
    later.redo();
    expect(later.state.bench.frame.length).toBe(9);
    later.undo();
    expect(later.state.bench.frame.length).toBe(example.frame.length);
  });

  it('takes a bench from a file without losing one’s own, and takes that back', () => {
    const other = { ...example, cable: { ...example.cable, length: 12 } };
    const newcomer = open(new Drawer());
    const back = newcomer.take(other, ['cable.length']);
    expect(newcomer.state).toMatchObject({ origin: 'file', set: ['cable.length'], drafts: {} });
    expect(newcomer.others).toEqual([]);
    back();
    expect(newcomer.untouched).toBe(true);

    const owner = open(new Drawer());
    owner.give({ 'cable.length': 30, 'identity.name': 'Mine' });
    const backToMine = owner.take(other, ['cable.length']);
    expect(owner.state.bench.cable.length).toBe(12);
    expect(owner.others).toEqual(['Mine']);
    backToMine();
    expect(owner.state.bench.cable.length).toBe(30);
    expect(owner.others).toEqual([]);
  });

  it('keeps several benches, each with its own steps, through reloads', async () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'identity.name': 'North' });
    store.give({ 'cable.length': 30 });
    await store.begin('South');
    expect(store.state.set).toEqual(['identity.name']);
    expect(store.state.origin).toBe('file');
    expect(store.canUndo).toBe(false);
    store.copy('South, longer');
    store.give({ 'frame.length': 9 });
    expect(store.others).toEqual(['South', 'North']);

    const later = open(drawer);
    expect(later.state.bench.identity.name).toBe('South, longer');
    later.open(1);
    expect(later.state.bench.identity.name).toBe('North');
    expect(later.others).toEqual(['South, longer', 'South']);
    later.undo();
    expect(later.state.bench.cable.length).toBe(example.cable.length);
    later.open(0);
    expect(later.state.bench.frame.length).toBe(9);
  });

  it('deletes a bench and brings it back with its steps, even after a reload', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'identity.name': 'North' });
    store.give({ 'cable.length': 30 });
    store.delete();
    expect(store.untouched).toBe(true);
    const later = open(drawer);
    expect(later.deleted).toEqual(['North']);
    later.restore(0);
    expect(later.deleted).toEqual([]);
    expect(later.state.bench.cable.length).toBe(30);
    later.undo();
    expect(later.state.bench.cable.length).toBe(example.cable.length);
  });

  it('has the units and the paper of the bench’s region, until the reader chooses', () => {
    const drawer = new Drawer();
    const store = open(drawer);
    store.give({ 'place.region': 'tallow' });
    expect([store.system, store.paper]).toEqual(['us', 'letter']);
    store.choose('metric');
    store.choosePaper('a4');
    expect([store.system, store.paper]).toEqual(['metric', 'a4']);
    const later = open(drawer);
    later.give({ 'place.region': 'estermark' });
    later.give({ 'place.region': 'tallow' });
    expect([later.system, later.paper]).toEqual(['metric', 'a4']);
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

  describe('where the browser says when it is idle', () => {
    const idling = (storage?: Storage) => {
      const idle: (() => void)[] = [];
      const store = new Store({
        storage,
        example,
        fresh: () => Promise.resolve(example),
        customs,
        fields: 'today',
        whenIdle: (write) => idle.push(write),
      });
      return { store, idle };
    };

    it('writes nothing before, then one thing at a time, the newest of each', () => {
      const drawer = new Drawer();
      const { store, idle } = idling(drawer);
      store.give({ 'cable.length': 30 });
      store.give({ 'cable.length': 31 });
      expect(drawer.kept.size).toBe(0);
      expect(store.state.bench.cable.length).toBe(31);
      idle.shift()?.();
      expect(drawer.kept.size).toBe(1);
      while (idle.length > 0) idle.shift()?.();
      const later = open(drawer);
      expect(later.state.bench.cable.length).toBe(31);
      later.undo();
      expect(later.state).toEqual({ ...store.state, bench: example, set: [] });
    });

    it('loses nothing where the reader leaves at once, and nothing to another tab', () => {
      const drawer = new Drawer();
      const { store } = idling(drawer);
      store.give({ 'cable.length': 30 });
      store.writeAll();
      expect(open(drawer).state.bench.cable.length).toBe(30);
      store.give({ 'cable.length': 32 });
      store.changedElsewhere(keys.units);
      expect(store.state.bench.cable.length).toBe(32);
    });

    it('says that nothing is kept as soon as it is known', () => {
      const { store, idle } = idling(undefined);
      let told = 0;
      store.subscribe(() => told++);
      store.give({ 'cable.length': 30 });
      expect(told).toBe(1);
      while (idle.length > 0) idle.shift()?.();
      expect(store.keeps).toBe(false);
      expect(told).toBe(2);
    });
  });
});
