import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import { findDataPath } from '../address.ts';
import type { CataloguedPairing } from '../catalogued-pairing.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';
import { type PackedPairings, unpackPairings } from '../data/packed-pairings.ts';
import { loadingOnce, loadScript } from './load-script.ts';

declare global {
  var meltboundsCatalogue: CatalogueData | undefined;
  var meltboundsFind: Record<string, PackedPairings> | undefined;
  var meltboundsJobs: readonly JobFigures[] | undefined;
  var meltboundsPairings: Record<string, ComparedPairing> | undefined;
}

/** What the site knows of its registry; nothing where its data did not load. */
export function pageData(): CatalogueData | null {
  return globalThis.meltboundsCatalogue ?? null;
}

/** The jobs of the registry, on the page of the comparison; none where they did not load. */
export function comparedJobs(): readonly JobFigures[] {
  return globalThis.meltboundsJobs ?? [];
}

/** Pairings under house rules, loaded when they are first asked for; null where they are not there. */
export const loadPairings = loadingOnce(
  async (policy: string): Promise<readonly CataloguedPairing[] | null> => {
    const data = pageData();
    if (data === null || !data.policies.includes(policy)) return null;
    await loadScript(findDataPath(policy));
    const packed = globalThis.meltboundsFind?.[policy];
    return packed === undefined ? null : unpackPairings(packed, data);
  },
);

/** What is to be compared of a pairing, loaded when it is first asked for; null where it is not there. */
export const loadPairing = loadingOnce(async (page: string): Promise<ComparedPairing | null> => {
  await loadScript(page.replace(/\.html$/, '--compare.js'));
  return globalThis.meltboundsPairings?.[page] ?? null;
});
