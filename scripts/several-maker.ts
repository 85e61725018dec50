/** Makes guides as it is told by `scripts/several.ts`, one after the other, and says of each that it is done. */
import { cp, mkdir, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { buildGuide } from './build.ts';
import type { Done, Order } from './several.ts';
import { root } from './steps.ts';

/** Folders of this process alone; pages that are made outside of the project would be put together in one for all. */
const made = join(root, '.cache', `made-${process.pid}`);
const kept = join(root, '.cache', `astro-${process.pid}`);

/** Puts a guide into its place when it is whole; until then the one before stays there. */
async function make({ options }: Order): Promise<void> {
  await buildGuide({ ...options, out: made });
  await rm(options.out, { recursive: true, force: true });
  await mkdir(dirname(options.out), { recursive: true });
  // A folder on another disk cannot be renamed.
  await rename(made, options.out).catch(() => cp(made, options.out, { recursive: true }));
  await rm(made, { recursive: true, force: true });
}

process.on('message', (order: Order) => {
  const say = (done: Done): void => void process.send?.(done);
  make(order).then(
    () => {
      say({ ok: true });
    },
    (error: unknown) => {
      say({ ok: false, wrong: error instanceof Error ? error.message : String(error) });
    },
  );
});

// Whoever gives the orders has none left, or is gone.
process.on('disconnect', () => process.exit());
process.on('SIGTERM', () => {
  void Promise.all([made, kept].map((path) => rm(path, { recursive: true, force: true }))).finally(() =>
    process.exit(),
  );
});
