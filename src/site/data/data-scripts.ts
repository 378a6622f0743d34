import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { compactJsonText } from '../../text/json-text.ts';
import { besidePage, dataPath, findDataPath, jobsPath, searchPath } from '../address.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import type { SiteFile } from '../site-file.ts';
import type { CatalogueData } from './catalogue-data.ts';
import type { PackedPairings } from './packed-pairings.ts';
import type { SearchData } from './search-data.ts';

// Pages that are opened as files can load nothing but scripts, so the data for the script of the site are scripts too.

/** What the script knows on every page that has it. */
export function catalogueScript(data: CatalogueData): SiteFile {
  return { path: dataPath, text: scriptOf('meltboundsCatalogue', data) };
}

/** What is searched once somebody types. */
export function searchScript(data: SearchData): SiteFile {
  return { path: searchPath, text: scriptOf('meltboundsSearch', data) };
}

/** The pairings under one of the house rules, which a question by target goes over. */
export function findScript(packed: PackedPairings): SiteFile {
  return { path: findDataPath(packed.policy), text: memberScript('meltboundsFind', packed.policy, packed) };
}

/** What the comparison shows of a pairing, to be loaded where it is asked for. */
export function comparedScript(compared: ComparedPairing): SiteFile {
  const text = memberScript('meltboundsPairings', compared.page, compared);
  return { path: besidePage(compared.page, '--compare.js'), text };
}

/** A value as a script that puts it into a global object under a name. */
function memberScript(target: string, name: string, value: unknown): string {
  const start = `globalThis.${target} = globalThis.${target} || {};\n`;
  return start + scriptOf(`${target}[${compactJsonText(name)}]`, value);
}

/** The jobs that a comparison may be asked about. */
export function jobsScript(jobs: readonly JobFigures[]): SiteFile {
  return { path: jobsPath, text: scriptOf('meltboundsJobs', jobs) };
}

/** A value as a script that sets a global name. It is safe inside and outside of a page. */
export function scriptOf(target: string, value: unknown): string {
  return `globalThis.${target} = ${compactJsonText(value).replaceAll('<', '\\u003c')};\n`;
}
