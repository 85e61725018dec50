import type { Bench, FieldPath } from './bench/fields.ts';
import type { QuantityName } from './quantities/quantity.ts';
import type { ValueIn } from './quantities/temperature.ts';
import type { Region, Station } from './region.ts';
import type { Citation } from './sources.ts';

/** Everything that a calculator may look at: one bench where it stands. */
export interface Situation {
  readonly bench: Bench;
  readonly region: Region;
  readonly station: Station;
}

/** A result; with a range where it rests on an uncertain input. Base units. */
export interface Figure<Q extends QuantityName = QuantityName> {
  readonly value: ValueIn<Q>;
  readonly low?: ValueIn<Q>;
  readonly high?: ValueIn<Q>;
  /** On which side of `value` the answer lies, where what is published ends there. */
  readonly beyond?: 'below' | 'above';
  /** What a reader is told in place of the number, where a number alone would mislead: "never within ten days". */
  readonly words?: Sentence;
}

export interface Warning {
  /** Stable name of the reason, such as "turns-touch". */
  readonly code: string;
  /** `stop`: not to be built so. `care`: may be built, read this first. */
  readonly level: 'stop' | 'care';
  /** A sentence in plain words. Quantities in it are written by `say`, in the reader's units. */
  readonly text: Sentence;
}

/**
 * Words with quantities in them, kept apart until it is known who reads: the site and the worksheet write the
 * numbers in the reader's units.
 */
export type Sentence = readonly (string | Amount | Phrase)[];

/** Words inside a sentence that are said by themselves, such as the name of a part: a language puts them where it likes. */
export interface Phrase {
  readonly phrase: Sentence;
}

/** A quantity inside a sentence, in the base unit. */
export interface Amount {
  readonly value: number;
  /** Where it is a figure with a range, so that it is rounded as that figure is. */
  readonly low?: number;
  readonly high?: number;
  readonly quantity: QuantityName;
}

export const amount = <Q extends QuantityName>(value: ValueIn<Q>, quantity: Q): Amount => ({
  value,
  quantity,
});

/** A figure inside a sentence, said as it is shown by itself. */
export const figureAmount = (
  { value, low, high }: Pick<Figure, 'value' | 'low' | 'high'>,
  quantity: QuantityName,
): Amount => ({
  value,
  ...(low === undefined || high === undefined ? {} : { low, high }),
  quantity,
});

const placed = (part: Amount | Sentence | string): Amount | Phrase => {
  if (typeof part === 'string') return { phrase: [part] };
  return 'quantity' in part ? part : { phrase: part };
};

/**
 * A sentence with its quantities and its phrases in place: sentence`The gap is ${amount(0.02, 'size')}.` Every place takes
 * part in the sentence as a whole, so that it can be said in another order in another language.
 */
export const sentence = (
  words: readonly string[],
  ...parts: readonly (Amount | Sentence | string)[]
): Sentence =>
  words.flatMap((word, index) => {
    const part = parts[index];
    return [...(word === '' ? [] : [word]), ...(part === undefined ? [] : [placed(part)])];
  });

/** Every quantity in a sentence, those of its phrases too. */
export const amountsOf = (text: Sentence): Amount[] =>
  text.flatMap((part) =>
    typeof part === 'string' ? [] : 'phrase' in part ? amountsOf(part.phrase) : [part],
  );

/** A reason not to build it so. */
export const stop = (code: string, text: Sentence): Warning => ({ code, level: 'stop', text });

/** Something to read before building it so. */
export const care = (code: string, text: Sentence): Warning => ({ code, level: 'care', text });

export interface FigureDeclaration {
  readonly label: string;
  readonly quantity: QuantityName;
  /** The letter that the formula uses, in TeX. */
  readonly symbol?: string;
  readonly explain: string;
}

/** A column of a table: numbers of one quantity, or words where it has none. */
export interface ColumnDeclaration {
  readonly label: string;
  readonly quantity?: QuantityName;
  /** What stands where there is no value, such as "not within ten days"; nothing where this is left out. */
  readonly empty?: string;
}

/** A table of answers, such as one row for each outside temperature. */
export interface TableDeclaration {
  /** Its caption. */
  readonly label: string;
  readonly explain: string;
  /** From left to right; the first names the row. */
  readonly columns: Readonly<Record<string, ColumnDeclaration>>;
}

/** What a cell holds, in the base unit of its column; null where the question does not arise in that row. */
export type Cell = number | Sentence | null;

export interface Table {
  readonly rows: readonly Readonly<Record<string, Cell>>[];
}

/** Lines through time. */
export interface CurveDeclaration {
  readonly label: string;
  readonly explain: string;
  readonly series: Readonly<Record<string, { readonly label: string; readonly quantity: QuantityName }>>;
}

export interface Curve {
  /** Seconds from the start, rising. */
  readonly times: readonly number[];
  /** Time of day at the start [s after midnight]. */
  readonly clock: number;
  /** Values at these times, in the base unit; a series that this bench does not have is left out. */
  readonly series: Readonly<Record<string, readonly number[]>>;
}

/** A formula behind the figures. Its letters are the symbols of the figures, or said in its words. */
export interface FormulaDeclaration {
  readonly tex: string;
  /** What the formula says, in words, for those who skip formulas and those who cannot see them. */
  readonly words: string;
  readonly cites: readonly Citation[];
}

/**
 * A calculator answers one question of the grower about one bench. From this one declaration come the form, the
 * read-out, the worksheet rows, the figures in JSON and the reference page.
 */
export interface Calculator<Id extends string = string, Names extends string = string> {
  /** Group of its figures in JSON and anchor on pages. Never renamed. */
  readonly id: Id;
  /** The question, in the reader's words. */
  readonly question: string;
  /** What it answers, in a sentence. */
  readonly summary: string;
  /** The fields of the bench that it reads, most important first. A form shows the first few, then the rest. */
  readonly reads: readonly FieldPath[];
  readonly figures: Readonly<Record<Names, FigureDeclaration>>;
  readonly tables?: Readonly<Record<string, TableDeclaration>>;
  readonly curves?: Readonly<Record<string, CurveDeclaration>>;
  readonly formulas: readonly FormulaDeclaration[];
  readonly cites: readonly Citation[];
  /** Cautions that stand beside these figures wherever they are shown. */
  readonly cautions: readonly CautionId[];
  /** A figure is null where the question does not arise, such as the mix of a loop of plain water. */
  readonly compute: (situation: Situation) => Answer<Names>;
}

/** What a calculator gives back for one bench. */
export interface Answer<Names extends string = string> {
  readonly figures: Readonly<Record<Names, Figure | null>>;
  /** By the names of the declaration, where it has tables and curves. */
  readonly tables?: Readonly<Record<string, Table>>;
  readonly curves?: Readonly<Record<string, Curve>>;
  readonly warnings: readonly Warning[];
}

type Declared = Readonly<Record<string, FigureDeclaration>>;

/** A calculator as it is written: what `compute` gives back has the names and the quantities of the figures declared. */
type Written<Id extends string, Figures extends Declared> = Omit<
  Calculator<Id, keyof Figures & string>,
  'figures' | 'compute'
> & {
  readonly figures: Figures;
  readonly compute: (situation: Situation) => Omit<Answer, 'figures'> & {
    readonly figures: { readonly [Name in keyof Figures]: Figure<Figures[Name]['quantity']> | null };
  };
};

/**
 * Ties the figures in the declaration to those that `compute` gives back: a name that is missing does not compile, and
 * neither does a temperature difference where a temperature is declared.
 */
export const calculator = <const Id extends string, const Figures extends Declared>(
  declaration: Written<Id, Figures>,
): Calculator<Id, keyof Figures & string> => declaration;

/** The cautions of the guide; their words are in `cautions.ts`. */
export type CautionId = keyof typeof import('./cautions.ts').cautions;
