import { own } from './own-key.ts';
import type { UnitSystem } from '../../calculators/quantities/quantity.ts';

/** What the strip under the masthead says, kept so that pages without calculators need not work it out again. */
export interface StripWords {
  readonly whose: string;
  readonly name: string;
  /** How many fields are the reader's own. */
  readonly own: number;
  readonly result: string;
  readonly undo: boolean;
  readonly redo: boolean;
  readonly system: UnitSystem;
}

/** Where it is kept in the browser's storage. */
export const stripKey = `${own}.strip`;
