import type { Celsius } from '../quantities/temperature.ts';

/** The ice point on the thermodynamic scale [K]: 0 °C, exact (SI Brochure, section 2.3.1). */
export const icePoint = 273.15;

/** A temperature level in kelvin, from degrees Celsius. Only laws that need an absolute temperature use it. */
export const kelvin = (celsius: Celsius): number => celsius + icePoint;
