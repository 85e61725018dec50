import type { Celsius } from '../quantities/temperature.ts';
import { within } from '../range.ts';
import type { Conductor } from '../tables/conductors.ts';
import type { RuleSet } from '../tables/rule-sets.ts';
import { startUpTable } from '../tables/start-up.ts';

/** The circuit that feeds a heating cable. The cable is a plain resistance: its power factor is one. */

/** Current [A] of a power [W] at a voltage [V]. */
export const currentOf = (power: number, voltage: number): number => power / voltage;

/**
 * What the breaker and the conductors must be good for [A]: the heating load times the rule set's factor for loads that
 * run for hours, and the other load on the circuit, which is counted the same way, as it may well run all night.
 */
export const circuitCurrent = (rules: RuleSet, heating: number, other: number): number =>
  rules.continuousLoad.value * (heating + other);

/** The smallest standard breaker [A] that may carry these currents [A]; null where the rule set lists none so large. */
export function smallestBreaker(rules: RuleSet, heating: number, other: number): number | null {
  // A millionth of slack, so that 16 A × 1.25 is a 20 A breaker whatever the last bit says.
  const least = circuitCurrent(rules, heating, other) * (1 - 1e-6);
  return rules.breakers.value.find((size) => size >= least) ?? null;
}

/** Temperature coefficient of the resistance of copper at 20 °C [1/K]: IEC 60287. */
const copperCoefficient = 0.00393;

/** Temperature that PVC-insulated conductors may reach in service [°C]: 70 (IEC 60502, from memory). */
export const serviceTemperature: Celsius = 70;

/** What a drop depends on: resistance per length [Ω/m] of one conductor, and the temperature that it is given for [°C]. */
export type Wire = Pick<Conductor, 'resistance' | 'at'>;

/** Resistance per length of one conductor [Ω/m] at t [°C], from the temperature at which its table gives it. */
export function conductorResistance(conductor: Wire, t: Celsius): number {
  const at = (temperature: Celsius): number => 1 + copperCoefficient * (temperature - 20);
  return (conductor.resistance * at(t)) / at(conductor.at);
}

/*
 * Voltage drops [V]. `length` is one way [m]. The conductors are taken as hot as they may get: 70 °C, or the temperature of
 * their table where that is higher. For conductors up to 16 mm² (6 AWG) the reactance adds nothing to speak of.
 */

/** Resistance of one conductor over the length of the feeder [Ω], hot. */
const oneWay = (conductor: Wire, length: number): number =>
  length * conductorResistance(conductor, Math.max(serviceTemperature, conductor.at));

/** Two wires, there and back: 2 I R. */
export const voltageDrop = (conductor: Wire, length: number, current: number): number =>
  2 * current * oneWay(conductor, length);

/**
 * Three wires, two legs and a neutral of the same size between them (split phase, 120/240 V): what is lost to the load on one
 * leg, I R + (I − I′) R with the currents I of that leg and I′ of the other. The neutral carries only their difference: evenly
 * loaded legs lose half of what two wires would, and an idle other leg makes it two wires.
 */
export const threeWireDrop = (conductor: Wire, length: number, current: number, other: number): number =>
  (2 * current - other) * oneWay(conductor, length);

/** Three phases, evenly loaded: √3 I R from line to line, with the current in each line. */
export const threePhaseDrop = (conductor: Wire, length: number, current: number): number =>
  Math.sqrt(3) * current * oneWay(conductor, length);

/**
 * The voltage that is lost in fact, as a share of the full voltage [1]. `drop` is reckoned as tables do, with the current
 * that the load would take at the full voltage; a load of fixed resistance takes less at the end of its feeder, so that
 * u / (1 + u) is lost of the u reckoned (Ohm’s law, two resistances in series).
 */
export const settledDrop = (drop: number): number => drop / (1 + drop);

/**
 * Power that a constant-wattage cable gives, as a share of what it gives at the full voltage [1], where the share `drop` of
 * the voltage is lost on the way [1], 0 to 1: (1 − u)², as power goes with the square of the voltage at a fixed resistance
 * (Joule’s law, P = U²/R). Not for a self-regulating cable, whose resistance falls as it gets colder: it makes up for a part.
 */
export function powerShareAfterDrop(drop: number): number {
  within('share of the voltage that is lost [1]', drop, 0, 1);
  return (1 - drop) ** 2;
}

/**
 * The same where the cable takes `power` [W] at `voltage` [V] and the feeder has `resistance` [Ω] there and back.
 */
export const shareOfPower = (power: number, voltage: number, resistance: number): number =>
  powerShareAfterDrop(settledDrop((power * resistance) / voltage ** 2));

/** Whether the rules accept this kind of ground-fault protection for a heating cable on a bench. */
export const acceptsProtection = (rules: RuleSet, protection: 'people' | 'equipment' | 'none'): boolean =>
  protection !== 'none' && rules.groundFault.value.includes(protection);

const foot = 0.3048;
const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

/** The coldest start of that table [°C]: −20 °F. */
export const coldestStart: Celsius = celsius(startUpTable.temperatures[0]);

/** Share of its rating that a breaker of that table may carry [1]. */
const breakerShare = 0.8;

/** Place of x between the values of a rising list: index of the lower one and the share of the way to the next. */
function between(list: readonly number[], x: number): { index: number; share: number } {
  let index = 0;
  while (index < list.length - 2 && x > list[index + 1]!) index++;
  return { index, share: (x - list[index]!) / (list[index + 1]! - list[index]!) };
}

/**
 * By how much a self-regulating cable draws more as it starts than its label says [1], from the table of
 * `tables/start-up.ts`, straight lines between its classes and temperatures.
 *
 * @param powerPerLength on the label, at 10 °C [W/m]; a class beyond the table counts as its nearest one
 * @param t of cable and surroundings when it is switched on [°C]; above 10 °C counts as 10 °C
 * @throws OutOfRange below −28.9 °C (−20 °F), the coldest of the table
 */
export function startUpRatio(powerPerLength: number, t: Celsius): number {
  const { classes, temperatures, longest, voltage, breaker } = startUpTable;
  const [, , warmest] = temperatures.map(celsius) as [number, number, number];
  within('temperature at start-up [°C]', t, coldestStart, Number.MAX_VALUE);
  const ratio = (row: number, column: number): number =>
    (breakerShare * breaker * voltage) / (longest[row]![column]! * classes[row]!);
  const first = classes[0];
  const last = classes[classes.length - 1]!;
  const rating = Math.min(Math.max(powerPerLength * foot, first), last);
  const cold = between(temperatures.map(celsius), Math.min(t, warmest));
  const kind = between(classes, rating);
  const along = (row: number): number =>
    ratio(row, cold.index) * (1 - cold.share) + ratio(row, cold.index + 1) * cold.share;
  return along(kind.index) * (1 - kind.share) + along(kind.index + 1) * kind.share;
}
