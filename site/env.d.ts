/// <reference types="astro/client" />

interface ImportMetaEnv {
  /** The region that the guide is built for. */
  readonly REGION: string;
  /** The example bench of that region. */
  readonly EXAMPLE: import('./guide.ts').ExampleBench;
  /** What people are used to in each region that the guide knows. */
  readonly CUSTOMS: Readonly<
    Record<
      string,
      | { readonly units: 'metric' | 'us'; readonly paper: 'a4' | 'letter'; readonly currency: string }
      | undefined
    >
  >;
  /** Where the whole guide lies as a PDF, from its top; empty where this build has none. */
  readonly BOOK: string;
  /** Address of the page on which readers choose a region, from the top of the host; empty where there is one region. */
  readonly CHOOSER: string;
  /** Whether this build draws a picture for previews of links. */
  readonly PREVIEW: boolean;
  /** Names the fields of the bench that this version of the guide knows. */
  readonly FIELDS: string;
}

interface ImportMeta {
  readonly env: ImportMetaEnv;
}

/** What `site/build/content-files.ts` has read of content: the regions and benches that this guide knows. */
declare module 'guide:known' {
  const known: {
    readonly regions: readonly import('../calculators/region.ts').Region[];
    readonly benches: readonly import('./guide.ts').ExampleBench[];
  };
  export default known;
}

/** The regions that this guide knows, each a small file that is loaded when a bench stands there. */
declare module 'guide:region-files' {
  const files: Readonly<
    Record<string, (() => Promise<import('../calculators/region.ts').Region>) | undefined>
  >;
  export default files;
}
