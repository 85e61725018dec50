/// <reference types="astro/client" />

interface ImportMetaEnv {
  /** The region that the guide is built for. */
  readonly REGION: string;
  /** The example bench of that region. */
  readonly EXAMPLE: import('./guide.ts').ExampleBench;
  /** Names the fields of the bench that this version of the guide knows. */
  readonly FIELDS: string;
}

interface ImportMeta {
  readonly env: ImportMetaEnv;
}
