import { parseArgs } from 'node:util';
import { BadInput, runCommand, type Surroundings } from './command.ts';
import { catalogueOf, languages } from './content-files.ts';
import { allMessages, partOf, parts } from './messages.ts';

const help = `Says how far the guide is translated: which of its messages a language does not have yet, and which it has that
the guide no longer says.

  npm run languages               a line for each language and part
  npm run languages -- LANGUAGE   the messages that are missing, as lines to be filled in, with their places
  --part PART                     only those of ${parts.join(', ')}
  --help                          this text
`;

const quoted = (text: string): string => JSON.stringify(text);

/** The report of one language. */
function report(language: string, part: string | undefined): string {
  const { words, entries } = catalogueOf(language);
  const all = allMessages();
  const lines = parts
    .filter((one) => part === undefined || one === part)
    .flatMap((one) => {
      const mine = all.filter(({ file }) => partOf(file) === one);
      const missing = mine.filter(({ text }) => !Object.hasOwn(words, text));
      return [
        `# ${one}: ${mine.length - missing.length} of ${mine.length} messages`,
        ...missing.flatMap(({ text, file, line }) => [`# ${file}, line ${line}`, `${quoted(text)}:`]),
      ];
    });
  const said = new Set(all.map(({ text }) => text));
  const obsolete = entries.filter(({ message }) => !said.has(message));
  return `${[
    ...lines,
    ...obsolete.map(({ file, line, message }) => `# no longer said: ${file}, line ${line}: ${message}`),
  ].join('\n')}\n`;
}

/** A line for each part of each language. */
function summary(): string {
  const all = allMessages();
  return languages()
    .map((language) => {
      const { words } = catalogueOf(language);
      const counts = parts.map((one) => {
        const mine = all.filter(({ file }) => partOf(file) === one);
        const there = mine.filter(({ text }) => Object.hasOwn(words, text));
        return `${one} ${there.length} of ${mine.length}`;
      });
      return `${language}: ${counts.join(', ')}\n`;
    })
    .join('');
}

/** Reports on catalogues as `npm run languages` does; see the help above. */
export function languageReport(args: readonly string[], { write }: Surroundings): void {
  const { values, positionals } = parseArgs({
    args: [...args],
    strict: true,
    allowPositionals: true,
    options: { part: { type: 'string' }, help: { type: 'boolean' } },
  });
  const [language] = positionals;
  if (values.part !== undefined && !parts.some((one) => one === values.part))
    throw new BadInput(`--part must be ${parts.join(', ')}. Found: ${values.part}`);
  if (values.help) write(help);
  else write(language === undefined ? summary() : report(language, values.part));
}

if (import.meta.main) await runCommand(languageReport);
