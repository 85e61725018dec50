/**
 * Published numbers of aqueous propylene and ethylene glycol.
 */

/**
 * A two-dimensional polynomial: value = Σᵢ Σⱼ C[i][j] (T − temperature)^i (x − massShare)^j, with T in K and x the
 * share of glycol by mass.
 */
export interface MixCoefficients {
  /** Centre of the polynomials in temperature [K]. */
  readonly temperature: number;
  /** Centre of the polynomials in the share by mass [1]. */
  readonly massShare: number;
  /** Freezing temperature [K], a polynomial in x alone. */
  readonly freezing: readonly number[];
  /** [kg/m³] */
  readonly density: readonly (readonly number[])[];
  /** [J/(kg·K)] */
  readonly heatCapacity: readonly (readonly number[])[];
  /** [W/(m·K)] */
  readonly conductivity: readonly (readonly number[])[];
  /** Natural logarithm of the dynamic viscosity in Pa·s. */
  readonly logViscosity: readonly (readonly number[])[];
}

/**
 * Å. Melinder, Properties of Secondary Working Fluids for Indirect Systems, 2nd edition, IIR 2010, as held in an open
 * library of fluid properties. By mass; 0 to 0.6, from the freezing point to 100 °C.
 */
export const mixCoefficients = {
  propylene: {
    temperature: 305.8583,
    massShare: 0.307031,
    freezing: [259.9, -66.31, -109.4, -228.3, -340.9, 146.5],
    density: [
      [1018.0, 76.04, -24.98, -155.0, -113.1, 234.2],
      [-0.5406, -0.945, 0.27, 2.829, -2.221, 0.0],
      [-0.002666, 0.005541, -0.004018, -0.007175, 0.0, 0.0],
      [1.347e-5, -1.343e-5, 3.376e-5, 0.0, 0.0, 0.0],
    ],
    heatCapacity: [
      [3882.0, -1304.0, -1598.0, 353.9, 5000.0, -4959.0],
      [2.699, 5.07, 0.9534, 31.02, -71.35, 0.0],
      [-0.001659, -0.004752, 0.1167, -0.295, 0.0, 0.0],
      [-1.032e-5, 0.0001522, -0.000487, 0.0, 0.0, 0.0],
    ],
    conductivity: [
      [0.4513, -0.4795, 0.2076, -0.09083, -0.05952, 0.2104],
      [0.0007955, -0.001678, 0.001563, -0.002518, -0.003605, 0.0],
      [3.482e-8, 8.941e-6, -4.615e-5, 6.543e-5, 0.0, 0.0],
      [-5.966e-9, 1.493e-8, 9.897e-8, 0.0, 0.0, 0.0],
    ],
    logViscosity: [
      [-6.224055, 3.328, 0.5453, -3.9, -1.587, 35.64],
      [-0.03045, -0.03984, -0.00086, 0.1054, 0.04475, 0.0],
      [0.0002525, 0.0004332, -0.0001593, -0.001589, 0.0, 0.0],
      [-1.399e-6, -1.86e-6, -4.465e-7, 0.0, 0.0, 0.0],
    ],
  },
  ethylene: {
    temperature: 304.878,
    massShare: 0.308462,
    freezing: [257.9, -80.8, -133.4, -72.93, 100.6, 11.4],
    density: [
      [1034.0, 131.1, 0.749, -106.2, -96.23, 489.1],
      [-0.4781, -0.6876, 0.7855, 1.229, -7.211, 0.0],
      [-0.002692, 0.004805, -0.003995, -0.01153, 0.0, 0.0],
      [4.725e-6, 1.69e-6, 4.982e-5, 0.0, 0.0, 0.0],
    ],
    heatCapacity: [
      [3737.0, -1799.0, -993.3, 2610.0, 1537.0, -16180.0],
      [2.93, 10.46, 3.516, -1.189, -42.72, 0.0],
      [-0.004675, -0.04147, 0.05109, -0.1643, 0.0, 0.0],
      [-1.389e-5, 1.847e-5, -0.0007138, 0.0, 0.0, 0.0],
    ],
    conductivity: [
      [0.472, -0.4286, 0.1747, 0.03017, -0.1322, 0.2678],
      [0.0008903, -0.001473, 0.0006814, -0.002412, 0.002555, 0.0],
      [-1.058e-6, 1.059e-5, -3.612e-5, 4.004e-5, 0.0, 0.0],
      [-2.789e-9, -1.142e-8, 2.365e-8, 0.0, 0.0, 0.0],
    ],
    logViscosity: [
      [-6.437255, 2.471, 0.03328, 1.659, 3.089, -18.65],
      [-0.0255, -0.01171, 0.01086, 0.003157, 0.01831, 0.0],
      [0.0001782, 0.0001052, 0.0001051, 0.0004063, 0.0, 0.0],
      [-7.669e-7, -1.634e-6, -6.475e-6, 0.0, 0.0, 0.0],
    ],
  },
} as const satisfies Record<string, MixCoefficients>;

/** A row of the printed table: mass %, volume %, freezing point [°C]. */
export type FreezingRow = readonly [massPercent: number, volumePercent: number, freezing: number];

/**
 * ASHRAE Handbook Fundamentals 2001, chapter 21, freezing points of aqueous glycols: mass %, volume % (of the
 * mix, concentrate and water measured at about 20 °C), freezing point [°C].
 */
export const freezingTable = {
  propylene: [
    [0, 0, 0],
    [5, 4.8, -1.6],
    [10, 9.6, -3.3],
    [15, 14.5, -5.1],
    [20, 19.4, -7.1],
    [25, 24.4, -9.6],
    [30, 29.4, -12.7],
    [35, 34.4, -16.4],
    [40, 39.6, -21.1],
    [45, 44.7, -26.7],
    [50, 49.9, -33.5],
    [55, 55, -41.6],
    [60, 60, -51.1],
  ],
  ethylene: [
    [0, 0, 0],
    [5, 4.4, -1.4],
    [10, 8.9, -3.2],
    [15, 13.6, -5.4],
    [20, 18.1, -7.8],
    [25, 22.9, -10.7],
    [30, 27.7, -14.1],
    [35, 32.6, -17.9],
    [40, 37.5, -22.3],
    [45, 42.5, -27.5],
    [50, 47.6, -33.8],
    [55, 52.7, -41.1],
    [60, 57.8, -48.3],
  ],
} as const satisfies Record<string, readonly FreezingRow[]>;
