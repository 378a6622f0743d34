import { browserScript, scriptsModule } from './browser-script.ts';

const folder = 'src/site/client';

/** The scripts of the catalogue, of its first page and of the comparison, as a module of the program. */
export async function siteScriptModule(): Promise<string> {
  return scriptsModule(folder, {
    siteScript: await browserScript(`${folder}/catalogue.ts`),
    compareScript: await browserScript(`${folder}/compare-page.ts`),
  });
}
