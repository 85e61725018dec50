/**
 * Thrown by a law or a property that is asked outside the range in which its source holds. Nothing is
 * extrapolated in silence: who calls either stays inside the range or answers this error.
 */
export class OutOfRange extends RangeError {
  override readonly name = 'OutOfRange';
  /** What was out of range, in words that read inside a sentence: "temperature of the water [°C]". */
  readonly quantity: string;
  readonly value: number;
  /** The lowest and the highest value allowed, in the unit that `quantity` names. */
  readonly from: number;
  readonly to: number;

  constructor(quantity: string, value: number, from: number, to: number) {
    super(`${quantity} is ${value}, outside ${from} to ${to}`);
    this.quantity = quantity;
    this.value = value;
    this.from = from;
    this.to = to;
  }
}

/** Throws `OutOfRange` unless from ≤ value ≤ to; NaN is never inside. */
export function within(quantity: string, value: number, from: number, to: number): void {
  if (!(value >= from && value <= to)) throw new OutOfRange(quantity, value, from, to);
}
