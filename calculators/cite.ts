import type { SourceId } from './sources.ts';

/** Where a number or a formula stands: the publication and the place in it. */
export interface Citation {
  readonly source: SourceId;
  /** Table, equation, clause or page. */
  readonly at: string;
}

/** Cites by key: what is worked out in a browser then carries no list of publications along. */
export const cite = (source: SourceId, at: string): Citation => ({ source, at });
