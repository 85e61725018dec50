/**
 * Longest self-regulating cable on one breaker at 120 V [ft], by its class and by the temperature at which it is
 * switched on: one maker's printed table (manual seen, address withheld). A trade example; the cable's own sheet rules.
 * Breakers may be loaded to 80 %, so a length L on a breaker of B amperes tells that the cable draws 0.8 · B · 120 / L
 * watts per foot as it starts.
 */
export const startUpTable = {
  /** V */
  voltage: 120,
  /** Class of the cable: its output at 50 °F [W/ft]. */
  classes: [3, 5, 8, 10],
  /** Temperature at start-up [°F]. */
  temperatures: [-20, 0, 50],
  /** Longest length on a 15 A breaker [ft]: a row for each class, a column for each temperature. */
  breaker: 15,
  longest: [
    [205, 230, 325],
    [135, 155, 225],
    [90, 100, 145],
    [75, 85, 115],
  ],
} as const;
