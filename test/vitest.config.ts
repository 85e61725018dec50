import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Tests whose file ends so look at the built site, so they need a build. */
const builtTests = 'test/**/*.built.test.ts';

export default defineConfig({
  root,
  test: {
    allowOnly: false,
    projects: [
      {
        root,
        test: { name: 'source', include: ['test/**/*.test.ts'], exclude: [builtTests], allowOnly: false },
      },
      {
        root,
        test: {
          name: 'built',
          include: [builtTests],
          allowOnly: false,
          // A browser starts, loads pages and answers on two shared cores.
          testTimeout: 60_000,
          hookTimeout: 60_000,
        },
      },
    ],
  },
});
