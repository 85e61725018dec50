/**
 * The text of a logger's file. Most are UTF-8; spreadsheets also save UTF-16 with a mark at its head, and programs of
 * old the one-byte code of western Windows, in which alone their sign of degrees can be read.
 */
export function textOf(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  if (first === 0xfe && second === 0xff) return new TextDecoder('utf-16be').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
