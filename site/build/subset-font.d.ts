/** The part of subset-font 2.9 that the guide uses; it brings no types of its own. */
declare module 'subset-font' {
  interface SubsetOptions {
    readonly targetFormat?: 'sfnt' | 'truetype' | 'woff' | 'woff2';
    /** Tags of the OpenType features to keep; all when left out. */
    readonly keepFeatures?: string[];
    readonly noHinting?: boolean;
    /** Tags of whole tables to leave out. */
    readonly dropTables?: string[];
  }
  /** The font cut down to the characters of the text. */
  export default function subsetFont(
    font: Uint8Array,
    text: string,
    options?: SubsetOptions,
  ): Promise<Uint8Array>;
}
