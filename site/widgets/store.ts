import type { Bench, FieldPath } from '../../calculators/bench/fields.ts';
import type { UnitSystem } from '../../calculators/quantities/quantity.ts';
import type { FieldValue } from '../../calculators/bench/read-field.ts';
import { withValues } from '../bench-value.ts';
import { own } from './own-key.ts';

/**
 * The one bench of the whole site: what the reader has set, kept in the reader's own browser. Base units inside.
 * Nothing here knows a page; the page is told of each change and shows it.
 */

/** A wrong answer as it was typed, with the system of units that it was typed in. Never cleared, only corrected. */
export interface Draft {
  readonly text: string;
  readonly system: UnitSystem;
}

type Drafts = Readonly<Partial<Record<FieldPath, Draft>>>;

/** One state of the bench. What is not in `set` is the example's, or, of a bench taken from a file, assumed. */
export interface BenchState {
  readonly bench: Bench;
  readonly set: readonly FieldPath[];
  readonly drafts: Drafts;
  readonly origin: 'example' | 'file';
}

/** What is written to the browser's storage. */
interface Kept extends BenchState {
  readonly format: 1;
  /** Names the fields that the bench was checked against. */
  readonly fields: string;
}

/** The part of the browser's storage that is used; every call may throw where storage is forbidden. */
export type Storage = Pick<globalThis.Storage, 'getItem' | 'setItem'>;

export const keys = {
  bench: own,
  before: `${own}.before`,
  after: `${own}.after`,
  units: `${own}.units`,
  paper: `${own}.paper`,
  /** The reader's other benches. */
  shelf: `${own}.shelf`,
  /** The benches that were deleted last. */
  bin: `${own}.bin`,
  /** What could not be read, so that nothing is lost. */
  unread: `${own}.unread`,
} as const;

/** How many states can be gone back to. */
const steps = 30;

/** How many deleted benches can be had back. */
const binned = 5;

/** A bench that is put away, with its own steps back and forth. */
interface Shelved {
  readonly state: BenchState;
  readonly before: readonly BenchState[];
  readonly after: readonly BenchState[];
}

export type Paper = 'a4' | 'letter';

interface Options {
  /** Undefined where the browser has none or forbids its use. */
  readonly storage: Storage | undefined;
  readonly example: Bench;
  /** The bench of usual values that a new bench begins with, in the region of the guide. */
  readonly fresh: () => Promise<Bench>;
  /** The units of a region, the paper that its printers hold, and its money. */
  readonly customs: (region: string) => {
    readonly units: UnitSystem;
    readonly paper: Paper;
    readonly currency?: string;
  };
  /** Names the fields that this version of the guide knows. */
  readonly fields: string;
  /** Calls back when the browser has time to write; left out, everything is written at once. */
  readonly whenIdle?: (write: () => void) => void;
}

/** What was found in storage when the page was opened. */
export type Found = 'nothing' | 'bench' | 'older-bench' | 'unreadable';

const isRecord = (thing: unknown): thing is Record<string, unknown> =>
  typeof thing === 'object' && thing !== null && !Array.isArray(thing);

/** Whether this has the shape of a state; whether its values make sense is asked of the fields, and only when needed. */
const isState = (thing: unknown): thing is BenchState =>
  isRecord(thing) &&
  isRecord(thing['bench']) &&
  Object.values(thing['bench']).every(isRecord) &&
  Array.isArray(thing['set']) &&
  isRecord(thing['drafts']) &&
  (thing['origin'] === 'example' || thing['origin'] === 'file');

/** The kept bench over the example, group by group, so that a field that is new to this version has a value. */
function overExample(example: Bench, kept: Bench): Bench {
  // What was kept may come from another version of the guide: any group may be missing.
  const groupsKept: Readonly<Record<string, object | undefined>> = kept;
  const groups = Object.entries(example).map(([group, values]) => {
    const known = Object.entries(groupsKept[group] ?? {}).filter(([name]) => name in values);
    return [group, { ...values, ...Object.fromEntries(known) }];
  });
  return Object.fromEntries(groups) as Bench;
}

export class Store {
  readonly #options: Options;
  readonly #listeners = new Set<() => void>();
  #state: BenchState;
  #before: BenchState[] = [];
  /** What was undone and not yet done again, the next one last. */
  #after: BenchState[] = [];
  #shelf: Shelved[] = [];
  #bin: Shelved[] = [];
  /** What the reader chose; until then the customs of the bench's region hold. */
  #system: UnitSystem | undefined;
  #paper: Paper | undefined;
  /** The field that the last step changed: going on typing in it is the same step. */
  #open: FieldPath | undefined;
  #found: Found = 'nothing';
  /** False as soon as the browser refuses to keep something. */
  #keeps = true;
  /** What is still to be written, by key: the newest of each. */
  readonly #unwritten = new Map<string, unknown>();

  constructor(options: Options) {
    this.#options = options;
    this.#state = this.#start();
    this.#load();
  }

  get state(): BenchState {
    return this.#state;
  }

  /** The bench of the guide, before anyone has changed it. */
  get example(): Bench {
    return this.#options.example;
  }

  get system(): UnitSystem {
    return this.#system ?? this.#customs.units;
  }

  get paper(): Paper {
    return this.#paper ?? this.#customs.paper;
  }

  /** What prices and costs of the bench are in: the money of its region. */
  get currency(): string | undefined {
    return this.#customs.currency;
  }

  get #customs() {
    return this.#options.customs(this.#state.bench.place.region);
  }

  /** The reader's other benches, by name, the last one used first. */
  get others(): readonly string[] {
    return this.#shelf.map(({ state }) => state.bench.identity.name);
  }

  /** The deleted benches that can be had back, by name, the last one first. */
  get deleted(): readonly string[] {
    return this.#bin.map(({ state }) => state.bench.identity.name);
  }

  get found(): Found {
    return this.#found;
  }

  /** Whether the browser keeps the bench until the next visit. */
  get keeps(): boolean {
    return this.#keeps;
  }

  get canUndo(): boolean {
    return this.#before.length > 0;
  }

  get canRedo(): boolean {
    return this.#after.length > 0;
  }

  /** Whether everything shown is still the example's. */
  get untouched(): boolean {
    const { set, drafts, origin } = this.#state;
    return origin === 'example' && set.length === 0 && Object.keys(drafts).length === 0;
  }

  /** Calls back after every change, whether made here or in another tab. */
  subscribe(listener: () => void): void {
    this.#listeners.add(listener);
  }

  /** The reader's answer to one field or to several that belong together; a draft of them is settled by it. */
  give(values: Readonly<Partial<Record<FieldPath, FieldValue>>>): void {
    const paths = Object.keys(values) as FieldPath[];
    const drafts = Object.fromEntries(
      Object.entries(this.#state.drafts).filter(([path]) => !paths.includes(path as FieldPath)),
    );
    this.#change(
      {
        ...this.#state,
        bench: withValues(this.#state.bench, values),
        set: [...new Set([...this.#state.set, ...paths])],
        drafts,
      },
      paths[0],
    );
  }

  /** Keeps an answer that cannot be used, as it was typed. The bench keeps the last answer that could be used. */
  draft(path: FieldPath, text: string): void {
    const draft = { text, system: this.system };
    this.#change({ ...this.#state, drafts: { ...this.#state.drafts, [path]: draft } }, path);
  }

  /** Ends the step: what is typed next, even in the same field, can be undone by itself. */
  endStep(): void {
    this.#open = undefined;
  }

  /**
   * Takes a whole bench, from a file or a link. A bench of the reader's own is put away for it, never lost.
   * @returns what takes it back: the bench before is the present one again
   */
  take(bench: Bench, set: readonly FieldPath[]): () => void {
    const state: BenchState = { bench, set, drafts: {}, origin: 'file' };
    if (this.untouched) {
      this.#change(state);
      return () => {
        this.undo();
      };
    }
    this.#putAway();
    this.#takeUp({ state, before: [], after: [] });
    return () => {
      this.delete();
    };
  }

  /** Goes on with another of the reader's benches, told by its place in `others`; the present one is put away. */
  open(index: number): void {
    const next = this.#shelf[index];
    if (!next) return;
    this.#shelf.splice(index, 1);
    this.#putAway();
    this.#takeUp(next);
  }

  /** Puts the present bench away and goes on with a copy of it, under another name. */
  copy(name: string): void {
    const { bench, set } = this.#state;
    const state = {
      ...this.#state,
      bench: withValues(bench, { 'identity.name': name }),
      set: [...new Set<FieldPath>([...set, 'identity.name'])],
    };
    this.#putAway();
    this.#takeUp({ state, before: [], after: [] });
  }

  /** Puts the present bench away and begins one of usual values under this name, as an empty file would be. */
  async begin(name: string): Promise<void> {
    const bench = withValues(await this.#options.fresh(), { 'identity.name': name });
    this.#putAway();
    this.#takeUp({
      state: { bench, set: ['identity.name'], drafts: {}, origin: 'file' },
      before: [],
      after: [],
    });
  }

  /** Deletes the present bench and goes on with the one used before it, or with the example. `restore` brings it back. */
  delete(): void {
    this.#bin = [this.#present, ...this.#bin].slice(0, binned);
    this.#takeUp(this.#shelf.shift() ?? { state: this.#start(), before: [], after: [] });
  }

  /** Takes up a deleted bench again, told by its place in `deleted`. */
  restore(index: number): void {
    const next = this.#bin[index];
    if (!next) return;
    this.#bin.splice(index, 1);
    this.#putAway();
    this.#takeUp(next);
  }

  /** Back to the example. The present bench can be had back with undo. */
  reset(): void {
    this.#change(this.#start());
  }

  /** Back to what was before the last step; nothing happens where there is none. */
  undo(): void {
    this.#step(this.#before, this.#after);
  }

  /** Does again what was undone last; nothing happens where there is none, or where something else was done since. */
  redo(): void {
    this.#step(this.#after, this.#before);
  }

  /** The reader's choice of units, for every page. */
  choose(system: UnitSystem): void {
    if (system === this.#system) return;
    this.#system = system;
    this.#keep(keys.units, system);
    this.#tell();
  }

  /** The reader's choice of paper, for every worksheet. */
  choosePaper(paper: Paper): void {
    this.#paper = paper;
    this.#keep(keys.paper, paper);
  }

  /** Keeps what a page has to say to other pages; the bench does not hang on it. */
  leave(key: string, words: unknown): void {
    this.#keep(key, words);
  }

  /** Puts right what an older version of the guide has kept, without a step of its own. */
  mend(state: BenchState): void {
    this.#state = state;
    this.#keepState();
    this.#tell();
  }

  /** Another tab has written to the storage under this key. */
  changedElsewhere(key: string | null): void {
    if (key !== null && !Object.values<string>(keys).includes(key)) return;
    this.#open = undefined;
    this.writeAll();
    this.#load();
    this.#tell();
  }

  #start(): BenchState {
    return { bench: this.#options.example, set: [], drafts: {}, origin: 'example' };
  }

  get #present(): Shelved {
    return { state: this.#state, before: this.#before, after: this.#after };
  }

  /** The example needs no place on the shelf: it is always there. */
  #putAway(): void {
    if (!this.untouched) this.#shelf = [this.#present, ...this.#shelf];
  }

  #takeUp({ state, before, after }: Shelved): void {
    this.#state = state;
    this.#before = [...before];
    this.#after = [...after];
    this.#open = undefined;
    this.#keep(keys.shelf, this.#shelf);
    this.#keep(keys.bin, this.#bin);
    this.#keepSteps();
    this.#keepState();
    this.#tell();
  }

  #change(next: BenchState, path?: FieldPath): void {
    if (path === undefined || path !== this.#open || this.#after.length > 0) {
      this.#before = [...this.#before, this.#state].slice(-steps);
      this.#after = [];
      this.#keepSteps();
    }
    this.#open = path;
    this.#state = next;
    this.#keepState();
    this.#tell();
  }

  /** Takes the last state of one list in place of the present one, which goes on the other. */
  #step(from: BenchState[], to: BenchState[]): void {
    const next = from.pop();
    if (!next) return;
    to.push(this.#state);
    this.#state = next;
    this.#open = undefined;
    this.#keepSteps();
    this.#keepState();
    this.#tell();
  }

  #keepSteps(): void {
    this.#keep(keys.before, this.#before);
    this.#keep(keys.after, this.#after);
  }

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }

  #keep(key: string, thing: unknown): void {
    const { whenIdle } = this.#options;
    const first = this.#unwritten.size === 0;
    this.#unwritten.set(key, thing);
    if (!whenIdle) this.writeAll();
    else if (first) whenIdle(this.#writeNext);
  }

  /** Writes one thing at a time: a browser has a few milliseconds to spare, not many. */
  readonly #writeNext = (): void => {
    const [next] = this.#unwritten;
    if (!next) return;
    this.#write(...next);
    if (this.#unwritten.size > 0) this.#options.whenIdle?.(this.#writeNext);
  };

  /** Writes at once what is still to be written, as when the reader leaves. */
  writeAll(): void {
    for (const next of this.#unwritten) this.#write(...next);
  }

  #write(key: string, thing: unknown): void {
    this.#unwritten.delete(key);
    const kept = this.#keeps;
    try {
      this.#options.storage?.setItem(key, JSON.stringify(thing));
      if (!this.#options.storage) this.#keeps = false;
    } catch {
      this.#keeps = false;
    }
    if (kept && !this.#keeps && this.#options.whenIdle) this.#tell();
  }

  #keepState(): void {
    const kept: Kept = { format: 1, fields: this.#options.fields, ...this.#state };
    this.#keep(keys.bench, kept);
  }

  /** What is kept under a key: undefined where there is nothing; what cannot be read is put aside, not lost. */
  #read(key: string): unknown {
    let text: string | null = null;
    try {
      text = this.#options.storage?.getItem(key) ?? null;
      return text === null ? undefined : (JSON.parse(text) as unknown);
    } catch (problem) {
      if (text === null || !(problem instanceof SyntaxError)) this.#keeps = false;
      else this.#putAside(text);
      return undefined;
    }
  }

  #readSteps(key: string): BenchState[] {
    const states = this.#read(key);
    return Array.isArray(states) ? states.filter(isState) : [];
  }

  #readBenches(key: string): Shelved[] {
    const benches = this.#read(key);
    if (!Array.isArray(benches)) return [];
    const steps = (list: unknown) => (Array.isArray(list) ? list.filter(isState) : []);
    return benches
      .filter(isRecord)
      .flatMap(({ state, before, after }) =>
        isState(state) ? [{ state: this.#known(state), before: steps(before), after: steps(after) }] : [],
      );
  }

  /** The state with the example's values for what this version of the guide has in addition. */
  #known({ bench, set, drafts, origin }: BenchState): BenchState {
    return { bench: overExample(this.#options.example, bench), set, drafts, origin };
  }

  #putAside(text: string): void {
    this.#found = 'unreadable';
    this.#keep(keys.unread, text);
  }

  #load(): void {
    const units = this.#read(keys.units);
    if (units === 'metric' || units === 'us') this.#system = units;
    const paper = this.#read(keys.paper);
    if (paper === 'a4' || paper === 'letter') this.#paper = paper;
    this.#shelf = this.#readBenches(keys.shelf);
    this.#bin = this.#readBenches(keys.bin);
    this.#before = this.#readSteps(keys.before);
    this.#after = this.#readSteps(keys.after);
    const kept = this.#read(keys.bench);
    if (kept === undefined) {
      this.#state = this.#start();
      return;
    }
    if (!isState(kept)) {
      this.#putAside(JSON.stringify(kept));
      this.#state = this.#start();
      return;
    }
    this.#state = this.#known(kept);
    this.#found = (kept as Kept).fields === this.#options.fields ? 'bench' : 'older-bench';
  }
}
