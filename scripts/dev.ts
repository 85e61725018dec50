/** Serves the guide while its pages are edited: `npm run dev -- [--region ID] [--port N]`. */
import { ensureFonts } from './fonts.ts';
import { readOptions, run, runTask, TaskProblem } from './steps.ts';

await runTask(async () => {
  const values = readOptions({ region: { type: 'string' }, port: { type: 'string' } });
  await ensureFonts();
  const { code } = await run('astro', ['dev', ...(values.port ? ['--port', values.port] : [])], {
    show: true,
    env: values.region ? { REGION: values.region } : {},
  });
  if (code !== 0) throw new TaskProblem(`astro dev ended with ${code}.`);
});
