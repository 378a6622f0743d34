import { browserScript, scriptsModule } from './browser-script.ts';
import { leanWorker } from './lean-worker.ts';

const folder = 'src/site/client/bench';

/** The scripts of the bench page as a module of the program. */
export async function benchScriptsModule(): Promise<string> {
  return scriptsModule(folder, {
    benchScript: await browserScript(`${folder}/bench-page.ts`),
    benchWorkerScript: await browserScript(`${folder}/bench-worker.ts`, [await leanWorker()]),
    offlineScript: await browserScript(`${folder}/bench-offline.ts`),
  });
}
