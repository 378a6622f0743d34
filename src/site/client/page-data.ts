import type { JobFigures } from '../../decisions/compare/compare-figures.ts';
import type { ComparedPairing } from '../compare/compared-pairing.ts';
import type { CatalogueData } from '../data/catalogue-data.ts';

declare global {
  var meltboundsCatalogue: CatalogueData | undefined;
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

/** Loads what is to be compared of a pairing; null where it is not there. A page opened as a file can load scripts alone. */
export function loadPairing(page: string): Promise<ComparedPairing | null> {
  const known = globalThis.meltboundsPairings?.[page];
  if (known !== undefined) return Promise.resolve(known);
  return new Promise((resolve) => {
    const script = document.createElement('script');
    script.src = page
      .replace(/\.html$/, '--compare.js')
      .split('/')
      .map(encodeURIComponent)
      .join('/');
    script.addEventListener('load', () => resolve(globalThis.meltboundsPairings?.[page] ?? null));
    script.addEventListener('error', () => resolve(null));
    document.head.append(script);
  });
}
