/**
 * Coefficients of the equations for liquid water at 0.1 MPa: IAPWS SR6-08(2011), as held in an open
 * implementation of that release. Letters and indices are those of the release.
 */
export const liquidWater = {
  /** Specific gas constant [J/(kg·K)]. */
  R: 461.51805,
  /** Terms in alpha = 10 / (593 − T): coefficient and exponent, i = 1 … 10; i = 4 does not exist. */
  a: {
    1: [-1.661470539e5, 4],
    2: [2.70878164e6, 5],
    3: [-1.557191544e8, 7],
    /** A constant, without exponent. */
    5: [1.93763157e-2, 0],
    6: [6.74458446e3, 4],
    7: [-2.22521604e5, 5],
    8: [1.00231247e8, 7],
    9: [-1.63552118e9, 8],
    10: [8.32299658e9, 9],
  },
  /** Terms in beta = 10 / (T − 232): coefficient and exponent. */
  b: {
    1: [-8.237426256e-1, 2],
    2: [1.908956353, 3],
    3: [-2.017597384, 4],
    4: [8.546361348e-1, 5],
    5: [5.78545292e-3, 1],
    6: [-1.53195665e-2, 2],
    7: [3.11337859e-2, 3],
    8: [-4.23546241e-2, 4],
    9: [3.38713507e-2, 5],
    10: [-1.19946761e-2, 6],
  },
  c3: -8.983025854,
  /** Viscosity [µPa·s]: sum of factor × (T/300 K)^exponent. */
  viscosity: [
    [280.68, -1.9],
    [511.45, -7.7],
    [61.131, -19.6],
    [0.45903, -40],
  ],
  /** Thermal conductivity [W/(m·K)]: sum of factor × (T/300 K)^exponent. */
  conductivity: [
    [1.663, -1.15],
    [-1.7781, -3.4],
    [1.1567, -6],
    [-0.432115, -7.6],
  ],
} as const;
