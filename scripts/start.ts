/**
 * Builds the guide for the default region with the worksheets of the example benches, and serves it on this machine:
 * `npm start -- [--region ID] [--port N] [--host ADDRESS]`.
 */
import { join, relative } from 'node:path';
import { buildGuide, outFolder } from './build.ts';
import { serveFolder } from './serve.ts';
import { readOptions, root, runTask, TaskProblem } from './steps.ts';

const usualPort = 4321;
/** How many ports above the first are tried when it is taken. */
const tries = 50;

function portOf(written: string | undefined): number {
  if (written === undefined) return usualPort;
  const port = Number(written);
  if (Number.isInteger(port) && port >= 0 && port <= 65_535) return port;
  throw new TaskProblem(`--port must be a whole number from 0 to 65535. Found: ${written}`);
}

/** Waits for Ctrl-C, or for whoever started this to end it. */
const untilStopped = () =>
  new Promise<void>((done) => {
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => done());
  });

await runTask(async () => {
  const values = readOptions({
    region: { type: 'string' },
    port: { type: 'string' },
    host: { type: 'string' },
  });
  const port = portOf(values.port);
  const { worksheets } = await buildGuide({ region: values.region });
  const serving = await serveFolder({
    folder: outFolder,
    port,
    // A port that was asked for is that one or an error.
    tries: values.port === undefined ? tries : 0,
    ...(values.host === undefined ? {} : { host: values.host }),
  });
  console.log(`\nThe guide:      ${serving.address}`);
  for (const file of worksheets) {
    console.log(`A worksheet:    ${join(relative(process.cwd(), root), relative(root, file))}`);
    console.log(`                ${serving.address}${relative(outFolder, file)}`);
  }
  console.log('\nCtrl-C ends it.');
  await untilStopped();
  await serving.close();
  console.log('\nEnded.');
});
