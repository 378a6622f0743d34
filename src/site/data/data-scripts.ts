import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { compactJsonText } from '../../text/json-text.ts';
import { besidePage, dataPath, jobsPath } from '../address.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import type { SiteFile } from '../site-file.ts';
import type { CatalogueData } from './catalogue-data.ts';

// Pages that are opened as files can load nothing but scripts, so the data for the script of the site are scripts too.

/** What the script knows on every page that has it. */
export function catalogueScript(data: CatalogueData): SiteFile {
  return { path: dataPath, text: scriptOf('meltboundsCatalogue', data) };
}

/** What the comparison shows of a pairing, to be loaded where it is asked for. */
export function comparedScript(compared: ComparedPairing): SiteFile {
  const start = 'globalThis.meltboundsPairings = globalThis.meltboundsPairings || {};\n';
  const place = `meltboundsPairings[${compactJsonText(compared.page)}]`;
  return { path: besidePage(compared.page, '--compare.js'), text: start + scriptOf(place, compared) };
}

/** The jobs that a comparison may be asked about. */
export function jobsScript(jobs: readonly JobFigures[]): SiteFile {
  return { path: jobsPath, text: scriptOf('meltboundsJobs', jobs) };
}

/** A value as a script that sets a global name. It is safe inside and outside of a page. */
export function scriptOf(target: string, value: unknown): string {
  return `globalThis.${target} = ${compactJsonText(value).replaceAll('<', '\\u003c')};\n`;
}
