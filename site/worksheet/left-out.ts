/** What a reader may leave out of a worksheet; cautions, limits and reasons against building are never among it. */
export const leftOutNames = ['drawings', 'buying', 'log', 'notes'] as const;

export type LeftOut = (typeof leftOutNames)[number];
