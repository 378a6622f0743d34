import { jobFigures } from '../decisions/compare/compare-pairings.ts';
import type { Registry } from '../registry/registry.ts';
import { deriveEach } from '../tables/derive/every-pairing.ts';
import { likelyPairings } from '../tables/derive/likely-pairings.ts';
import type { OmittedPairing } from '../tables/write/table-index.ts';
import { problemLine } from '../text/problem-text.ts';
import { besidePage, compareScriptPath, rootPages, scriptPath, stylePath } from './address.ts';
import { type BenchOptions, benchFiles, unpackedScript } from './bench/bench-files.ts';
import { type Catalogue, reductionsOf } from './catalogue.ts';
import { type CataloguedPairing, cataloguedPairing } from './catalogued-pairing.ts';
import { comparedPairing } from './compare/compared-pairing.ts';
import { catalogueJson } from './data/catalogue-as-json.ts';
import { catalogueData } from './data/catalogue-data.ts';
import { catalogueScript, comparedScript, jobsScript } from './data/data-scripts.ts';
import { compareScript, siteScript } from './generated/site-script.ts';
import { comparePage } from './pages/compare-page.ts';
import { homePage } from './pages/home-page.ts';
import { listFiles } from './pages/list-pages.ts';
import { pairingFiles } from './pages/pairing-page.ts';
import { profileFiles } from './pages/profile-page.ts';
import { ruleFiles } from './pages/rule-pages.ts';
import { sourceFiles } from './pages/source-page.ts';
import { trialFiles } from './pages/trial-page.ts';
import type { SiteFile } from './site-file.ts';
import { siteStyle } from './site-style.ts';

/**
 * The catalogue of a registry, file by file: pages that can be read without script, and the data beside them. The same
 * registry gives the same bytes on the same day. `today` is the day by which evidence is judged, YYYY-MM-DD; `bench` says how
 * the bench page names files, by default those of a registry in the folder `profiles`.
 */
export function* formatSite(
  registry: Registry,
  today: string,
  bench: BenchOptions = usualBench,
): Generator<SiteFile> {
  const reductionOf = reductionsOf(registry);
  const pairings: CataloguedPairing[] = [];
  const omitted: OmittedPairing[] = [];
  const { requests, isCut } = likelyPairings(registry);
  for (const { request, table } of deriveEach(registry, requests, today)) {
    if (table.ok) {
      pairings.push(cataloguedPairing(registry, request, table.value));
      yield* pairingFiles(request, table.value, { registry, reductionOf });
      yield comparedScript(comparedPairing(request, table.value, { registry, reductionOf }));
    } else omitted.push({ ...request, reason: problemLine(table.error) });
  }
  const catalogue: Catalogue = { registry, pairings, omitted, isCut, reductionOf };
  yield* pagesOf(catalogue);
  yield homePage(catalogue);
  yield comparePage();
  yield { path: besidePage(rootPages.home, '.json'), text: catalogueJson(pairings) };
  yield { path: stylePath, text: siteStyle.trimStart() };
  yield catalogueScript(catalogueData(catalogue));
  yield { path: scriptPath, text: unpackedScript(siteScript) };
  yield jobsScript([...registry.job.values()].map(jobFigures));
  yield { path: compareScriptPath, text: unpackedScript(compareScript) };
  yield* benchFiles(registry, bench);
}

const usualBench: BenchOptions = {
  setting: { folder: 'profiles', schemas: '../schema', webEditor: null },
  isOwn: () => true,
};

function* pagesOf(catalogue: Catalogue): Generator<SiteFile> {
  const { registry } = catalogue;
  const described = ['machine', 'filament', 'polymer', 'policy', 'job', 'addition'] as const;
  for (const kind of described)
    for (const profile of registry[kind].values()) yield* profileFiles(profile, catalogue);
  for (const trial of registry.trial.values()) yield* trialFiles(trial, catalogue);
  for (const source of registry.source.values()) yield* sourceFiles(source, registry);
  yield* ruleFiles();
  yield* listFiles(catalogue);
}
