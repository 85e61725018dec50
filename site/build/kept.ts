import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import process from 'node:process';
import { deserialize, serialize } from 'node:v8';
import type { Situation } from '../../calculators/calculator.ts';
import { answer, calculators, type Answers } from '../../calculators/index.ts';

/**
 * What one process of a build has worked out, kept for the other: pages and worksheets show the same bench, and are made
 * side by side. A build names the folder, one of its own for each state of the calculators; without it nothing is kept.
 */
const folder = (): string | undefined => process.env['KEPT_ANSWERS'];

/** Hexadecimal digits of SHA-256 that name a situation: 64 bits. */
const hashDigits = 16;

/** The result of some work on a bench, as it was kept, or else worked out now and kept. */
export function kept<Result>(name: string, situation: Situation, work: () => Result): Result {
  const where = folder();
  if (where === undefined) return work();
  const hash = createHash('sha256').update(JSON.stringify(situation)).digest('hex').slice(0, hashDigits);
  const file = join(where, `${hash}-${name}`);
  if (existsSync(file)) return deserialize(readFileSync(file)) as Result;
  const result = work();
  mkdirSync(where, { recursive: true });
  // Whole or not at all, as another process may be reading.
  const part = `${file}.${process.pid}.part`;
  writeFileSync(part, serialize(result));
  renameSync(part, file);
  return result;
}

/** The same as `answer`, each of them kept. */
export function keptAnswers(situation: Situation): Answers {
  const answers = answer(situation);
  const all: Partial<Record<keyof Answers, unknown>> = {};
  for (const { id } of calculators) {
    Object.defineProperty(all, id, {
      enumerable: true,
      configurable: true,
      get() {
        const value = kept(id, situation, () => answers[id]);
        Object.defineProperty(all, id, { value, enumerable: true });
        return value;
      },
    });
  }
  return all as Answers;
}
