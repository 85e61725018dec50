/** What this project uses of subset-font, which brings no types. */
declare module 'subset-font' {
  export default function subsetFont(
    font: Uint8Array,
    letters: string,
    options?: {
      readonly targetFormat?: 'sfnt' | 'truetype' | 'woff' | 'woff2';
      readonly keepFeatures?: readonly string[];
      readonly noHinting?: boolean;
      readonly dropTables?: readonly string[];
    },
  ): Promise<Uint8Array>;
}
