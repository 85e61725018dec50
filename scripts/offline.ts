import { createHash } from 'node:crypto';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { forHosts } from '../site/hosts.ts';
import { bookFile } from './book.ts';
import { root } from './steps.ts';

/** The file of the service worker, at the top of the guide: it may only serve what lies below it. */
export const workerFile = 'sw.js';

/** Hexadecimal digits of SHA-256 that name a content: 64 bits. */
const hashDigits = 16;

/** What is not kept for use without a network: examples to be looked at once, the guide over again as a PDF, and
 * what speaks to hosts. */
const left = ['worksheets/', bookFile, ...forHosts];

/** The address of a file from the top of the guide: that of a page is its folder. */
const addressOf = (file: string): string => file.replace(/(^|\/)index\.html$/u, '$1');

/** The words of another language than that of the guide are fetched when someone asks for a worksheet in it. */
async function otherWords(folder: string, files: readonly string[]): Promise<ReadonlySet<string>> {
  const [, language = 'en'] =
    /<html lang="([a-z]+)/u.exec(await readFile(join(folder, 'index.html'), 'utf8')) ?? [];
  return new Set(files.filter((file) => file.startsWith('words/') && file !== `words/${language}.json`));
}

/** The address of every file that is kept, with the hash of its content, in order. */
export async function keptFiles(folder: string): Promise<Readonly<Record<string, string>>> {
  const found = (await readdir(folder, { recursive: true, withFileTypes: true }))
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .filter((file) => file !== workerFile && !left.some((start) => file.startsWith(start)))
    .sort();
  const others = await otherWords(folder, found);
  const hashes = found
    .filter((file) => !others.has(file))
    .map(async (file) => {
      const hash = createHash('sha256').update(await readFile(join(folder, file)));
      return [addressOf(file), hash.digest('hex').slice(0, hashDigits)] as const;
    });
  return Object.fromEntries(await Promise.all(hashes));
}

/** Writes the service worker of a built guide, which names all its files: the last step of a build. */
export async function writeServiceWorker(folder: string): Promise<void> {
  const source = await readFile(join(root, 'site/offline/service-worker.js'), 'utf8');
  const files = JSON.stringify(await keptFiles(folder));
  await writeFile(join(folder, workerFile), `const files = ${files};\n\n${source}`);
}
