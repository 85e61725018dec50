import { parentPort } from 'node:worker_threads';
import { BadInput } from './command.ts';
import { loadRegions } from './content-files.ts';
import { makeWorksheet, type MadeWorksheet, type WorksheetJob } from './make-worksheet.ts';

/** How one worksheet of many ended. */
export type Outcome =
  | { readonly ok: true; readonly made: MadeWorksheet }
  /** Why there is no worksheet, in words. */
  | { readonly ok: false; readonly reason: string };

/** A thread that makes the worksheets that it is handed, one at a time; see `scripts/worksheets.ts`. */
const regions = loadRegions();

parentPort?.on('message', (job: WorksheetJob) => {
  makeWorksheet(job, regions)
    .then((made): Outcome => ({ ok: true, made }))
    .catch((error: unknown): Outcome => {
      if (error instanceof BadInput) return { ok: false, reason: error.message };
      // A fault of ours in one bench must not take the others' worksheets away; it is told with its trace.
      const trace = error instanceof Error ? (error.stack ?? error.message) : String(error);
      return { ok: false, reason: `This is a fault of the command, not of the bench: ${trace}` };
    })
    .then((outcome) => parentPort?.postMessage(outcome))
    .catch((error: unknown) => {
      throw error;
    });
});
