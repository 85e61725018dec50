import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Tests whose file ends so look at the built site, so they need a build. */
const builtTests = 'test/**/*.built.test.ts';

const common = { allowOnly: false, setupFiles: ['test/support/seed.ts'] };

export default defineConfig({
  root,
  test: {
    ...common,
    // Left to itself the runner keeps one core for itself, which has nothing to do while the tests run.
    maxWorkers: 2,
    projects: [
      {
        root,
        test: {
          ...common,
          name: 'source',
          include: ['test/**/*.test.ts'],
          exclude: [builtTests],
          // What they test keeps no state that one file could leave behind for another, and starting anew costs seconds.
          isolate: false,
          // Laws are tried on many benches, perhaps on a busy machine.
          testTimeout: 60_000,
        },
      },
      {
        root,
        test: {
          ...common,
          name: 'built',
          include: [builtTests],
          // A browser starts, loads pages and answers on two shared cores.
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
