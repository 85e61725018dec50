import type { AstroIntegration } from 'astro';

/**
 * Leaves the helper that loads ahead out of the scripts. With `modulePreload: false` it has nothing to do, and it would
 * be half of what each page loads. The style sheets of scripts would need it; no script here has one of its own.
 */
export const noPreloading = (): AstroIntegration => ({
  name: 'no-preloading',
  hooks: {
    'astro:config:setup': ({ updateConfig }) => {
      updateConfig({
        vite: {
          plugins: [
            {
              name: 'no-preloading',
              enforce: 'pre',
              load: {
                filter: { id: /^\0vite\/preload-helper\.js$/u },
                handler: () => 'export const __vitePreload = (load) => load();',
              },
            },
          ],
        },
      });
    },
  },
});
