import type { QuantityName } from './quantity.ts';

/*
 * A temperature level says where on the scale, a temperature difference how far apart. Both are numbers, in °C and in K,
 * and mistaking one for the other is the classic slip of this trade: it is off by 32 in °F and by 273.15 in K. So the
 * two are types. A plain number passes for either, so that formulas stay as they are written in books; what a field, a
 * law or a figure has declared as the one is refused by the compiler where the other is meant. Arithmetic makes a plain
 * number again.
 */
declare const kind: unique symbol;

/** A temperature level [°C]. */
export type Celsius = number & { readonly [kind]?: 'level' };

/** A difference of temperatures [K]. */
export type Kelvins = number & { readonly [kind]?: 'difference' };

/** What a value of this quantity is to the compiler. */
export type ValueIn<Q extends QuantityName> = [Q] extends ['temperature']
  ? Celsius
  : [Q] extends ['temperatureDifference']
    ? Kelvins
    : number;
