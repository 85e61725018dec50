/** What is wrong with one place of a file, for people and for programs. */
export interface Problem {
  readonly file: string;
  /** Counted from 1. What is missing is missed at the line of the group that should hold it. */
  readonly line: number;
  /** The name with its group, "frame.length"; empty where the file as a whole is meant. */
  readonly field: string;
  /** What stands there; empty where nothing does. */
  readonly found: string;
  /** What may stand there, in words. */
  readonly allowed: string;
  /** All of it in one or two sentences. */
  readonly text: string;
}

/** Longer than this, what was found is cut in the message: a line of a screen. */
const longestFound = 60;

const cut = (text: string): string =>
  text.length > longestFound ? `${text.slice(0, longestFound - 1)}…` : text;

/** Puts a problem together; `words` say what must be true, without a full stop. */
export function problem(parts: Omit<Problem, 'text'>, words: string): Problem {
  const { file, line, field, found } = parts;
  const place = [file, `line ${line}`, ...(field === '' ? [] : [field])].join(', ');
  const sentence = words.endsWith('?') ? words : `${words}.`;
  const shown = found === '' ? '' : ` Found: ${cut(found)}`;
  return { ...parts, text: `${place}: ${sentence}${shown}` };
}
