/** Puts every file into the house style, and mends what the linter can mend by itself. */
import { run, runTask, TaskProblem } from './steps.ts';

await runTask(async () => {
  const linter = await run('eslint', ['--config', 'scripts/eslint.config.js', '--fix', '.'], { show: true });
  const formatter = await run('prettier', ['--write', '--log-level', 'warn', '.'], { show: true });
  if (linter.code !== 0 || formatter.code !== 0) throw new TaskProblem('Some of it needs a hand: see above.');
});
