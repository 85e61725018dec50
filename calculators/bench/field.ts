import type { QuantityName } from '../quantities/quantity.ts';
import type { ValueIn } from '../quantities/temperature.ts';

/**
 * The shapes that a field of the bench can have. Forms, file schema and JSON Schema are all read off these; none of
 * them asks which field it is drawing.
 */
interface Words {
  /** A noun phrase that also reads inside an error sentence; no unit, no colon. */
  readonly label: string;
  /** What it is, how to measure it, why it matters: one or two sentences. */
  readonly explain: string;
}

export interface NumberField extends Words {
  readonly shape: 'number';
  readonly quantity: QuantityName;
  /** Lowest and highest value that makes sense at all, in the base unit. */
  readonly from: number;
  readonly to: number;
  /** Taken when a file leaves the field out; null where leaving it out has a meaning of its own. */
  readonly start: number | null;
  /** What an empty field means; only fields that may be empty have it. */
  readonly empty?: string;
}

/** Picks a row of a table. */
export interface ChoiceField extends Words {
  readonly shape: 'choice';
  readonly options: Readonly<Record<string, { readonly label: string }>>;
  readonly start: string;
}

/** Free words of the grower. */
export interface TextField extends Words {
  readonly shape: 'text';
  readonly longest: number;
  readonly start: string;
  readonly required?: true;
}

/** Names a row that the region defines: the region itself, or one of its stations. */
export interface ReferenceField extends Words {
  readonly shape: 'reference';
  readonly to: 'region' | 'station';
  readonly start: string;
  readonly required: true;
}

export type Field = NumberField | ChoiceField | TextField | ReferenceField;

export interface FieldGroup {
  readonly label: string;
  readonly explain: string;
  readonly fields: Readonly<Record<string, Field>>;
}

/** The value that a field holds, in the base unit of its quantity. */
export type ValueOf<F extends Field> = F extends NumberField
  ? F extends { readonly empty: string }
    ? ValueIn<F['quantity']> | null
    : ValueIn<F['quantity']>
  : F extends ChoiceField
    ? keyof F['options'] & string
    : string;
