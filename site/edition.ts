import packageFile from '../package.json' with { type: 'json' };

/**
 * The edition of the guide's figures, printed wherever figures are printed. The date is the day on which a figure or a
 * formula last changed, and not the day of the build, so that the same guide built twice is the same guide.
 */
export const edition = { number: packageFile.version, date: '2026-11-25' } as const;
