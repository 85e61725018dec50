/**
 * Shares by volume of inhibited glycol that keep a mix liquid, and that keep a pipe from bursting though it turns to slush:
 * air temperature [°F], share against freezing and against bursting [%]. A table of the heating trade as a textbook for it
 * prints it, in whole per cent; the row for −40 °F was read from a damaged copy and agrees with its neighbours.
 */
export type BurstRow = readonly [fahrenheit: number, freeze: number, burst: number];

export const burstTable = {
  propylene: [
    [20, 18, 12],
    [10, 29, 20],
    [0, 36, 24],
    [-10, 42, 28],
    [-20, 46, 31],
    [-30, 50, 33],
    [-40, 55, 35],
    [-50, 57, 35],
    [-60, 60, 35],
  ],
  ethylene: [
    [20, 17, 12],
    [10, 26, 18],
    [0, 35, 23],
    [-10, 41, 27],
    [-20, 46, 30],
    [-30, 50, 31],
    [-40, 54, 31],
    [-50, 59, 31],
    [-60, 63, 31],
  ],
} as const satisfies Record<string, readonly BurstRow[]>;
