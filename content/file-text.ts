/** A file that somebody else has read: from the disk, or into a build. */
export interface FileText {
  /** Its path, or its name. */
  readonly file: string;
  readonly text: string;
}

/** What a file is called in other files: its name without folders and ending. */
export const idOf = (file: string): string => (file.split(/[/\\]/u).at(-1) ?? '').replace(/\.ya?ml$/u, '');
