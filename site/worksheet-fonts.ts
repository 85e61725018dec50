import { readFile } from 'node:fs/promises';

/** Where the faces of the worksheet are made before the guide is built. */
const folder = new URL('.cache/fonts/', `file://${process.cwd()}/`);

/** A file of the worksheet's faces, for the copy that a browser draws with. */
export async function worksheetFont(file: string): Promise<Uint8Array<ArrayBuffer>> {
  try {
    return new Uint8Array(await readFile(new URL(file, folder)));
  } catch (cause) {
    throw new Error(`The face ${file} of the worksheet has not been made. Run: node scripts/fonts.ts`, {
      cause,
    });
  }
}
