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
  /** Names the fields of the bench that this version of the guide knows. */
  readonly FIELDS: string;
}

interface ImportMeta {
  readonly env: ImportMetaEnv;
}
