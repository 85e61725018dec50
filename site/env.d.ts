/// <reference types="astro/client" />

interface ImportMetaEnv {
  /** The region that the guide is built for. */
  readonly REGION: string;
  /** Names the fields of the bench that this version of the guide knows. */
  readonly FIELDS: string;
}

interface ImportMeta {
  readonly env: ImportMetaEnv;
}
