/** A name for a file, of letters and digits that every system takes: "North house, row 2" gives "north-house-row-2". */
export const fileName = (words: string): string =>
  words
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/[^a-z\d]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .slice(0, 60) || 'bench';

/** Hands the reader a file that was made on the page. */
export function saveFile(name: string, type: string, content: BlobPart): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([content], { type }));
  link.download = name;
  link.click();
  // The browser has taken the file by the time that this comes up.
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 60_000);
}
