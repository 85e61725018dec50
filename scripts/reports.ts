/** Writes what the calculators say of the example benches into test/reports/, and tells which lines have changed. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { changedLines } from './report-words.ts';
import { reportsOfExamples } from './report-files.ts';
import { runTask } from './steps.ts';

await runTask(() => {
  for (const { file, lines } of reportsOfExamples()) {
    const before = existsSync(file) ? readFileSync(file, 'utf8').trimEnd().split('\n') : [];
    const changes = changedLines(before, lines);
    mkdirSync(new URL('.', file), { recursive: true });
    writeFileSync(file, `${lines.join('\n')}\n`);
    console.log(
      `${file.pathname}: ${changes.length === 0 ? 'nothing has changed' : `${changes.length} lines`}`,
    );
    for (const change of changes) console.log(`  ${change}`);
  }
  return Promise.resolve();
});
