/** Steady conduction with constant conductivity. Lengths in m, conductivities in W/(m·K). */

/** Heat resistance of a flat layer per area [m²·K/W]: thickness / conductivity. */
export const slabResistance = (thickness: number, conductivity: number): number => thickness / conductivity;

/**
 * Heat resistance through the wall of a tube [K/W]: ln(D/d) / (2 π L k), with outside and inside diameter (or
 * radius, but both the same).
 */
export const tubeResistance = (
  outside: number,
  inside: number,
  conductivity: number,
  length: number,
): number => Math.log(outside / inside) / (2 * Math.PI * length * conductivity);

/**
 * Shape factor from a pipe to the plane surface of the ground that it is buried in [m]: S = 2 π L / acosh(2 z / D),
 * with z the depth of its axis; the heat flow is S k ΔT. Holds for a pipe much longer than deep.
 */
export const pipeToPlaneShape = (diameter: number, depth: number, length: number): number =>
  (2 * Math.PI * length) / Math.acosh((2 * depth) / diameter);
