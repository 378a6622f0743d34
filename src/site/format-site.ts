import { jobFigures } from '../decisions/compare/compare-pairings.ts';
import type { Registry } from '../registry/registry.ts';
import { besidePage, compareScriptPath, rootPages, scriptPath, stylePath } from './address.ts';
import { type BenchOptions, benchFiles, unpackedScript } from './bench/bench-files.ts';
import type { Catalogue } from './catalogue.ts';
import { catalogueJson } from './data/catalogue-as-json.ts';
import { catalogueData } from './data/catalogue-data.ts';
import { catalogueScript, findScript, jobsScript, searchScript } from './data/data-scripts.ts';
import { packPairings } from './data/packed-pairings.ts';
import { searchData } from './data/search-data.ts';
import { compareScript, siteScript } from './generated/site-script.ts';
import { madePages } from './made-pages.ts';
import { comparePage } from './pages/compare-page.ts';
import { homePage } from './pages/home-page.ts';
import { listFiles } from './pages/list-pages.ts';
import { profileFiles } from './pages/profile-page.ts';
import { ruleFiles } from './pages/rule-pages.ts';
import { sourceFiles } from './pages/source-page.ts';
import { untabledFiles } from './pages/untabled-pages.ts';
import type { SiteEntry, SiteFile } from './site-file.ts';
import { noSiteMemory, type SiteMemory } from './site-memory.ts';
import { siteStyle } from './site-style.ts';
import { worthAPage } from './worth-a-page.ts';

/** How a catalogue is written besides what its registry says. */
interface SiteOptions {
  /** How the bench page names files; by default those of a registry in the folder `profiles`. */
  readonly bench?: BenchOptions;
  /** House rules under which pairings have pages; none: all of them. */
  readonly policies?: readonly string[];
}

/**
 * The catalogue of a registry, file by file: pages that can be read without script, and the data beside them. The same
 * registry gives the same bytes on the same day. `today` is the day by which evidence is judged, YYYY-MM-DD.
 */
export function* formatSite(
  registry: Registry,
  today: string,
  options: SiteOptions = {},
): Generator<SiteFile> {
  for (const entry of siteEntries(registry, today, options, noSiteMemory)) if ('text' in entry) yield entry;
}

/** The same where a memory may know of files that stand already as they would be written. */
export function* siteEntries(
  registry: Registry,
  today: string,
  { bench = usualBench, policies: asked = [] }: SiteOptions,
  memory: SiteMemory,
): Generator<SiteEntry> {
  const { fitted, isCut, policies } = worthAPage(registry, asked);
  const made = yield* madePages(registry, { today, memory, fitted, policies });
  const catalogue: Catalogue = { registry, ...made, policies, isCut };
  yield* pagesOf(catalogue);
  yield* questionFiles(catalogue);
  yield comparePage();
  yield { path: besidePage(rootPages.home, '.json'), text: catalogueJson(catalogue.pairings) };
  yield jobsScript([...registry.job.values()].map(jobFigures));
  yield { path: compareScriptPath, text: unpackedScript(compareScript) };
  yield* benchFiles(registry, bench);
}

/** The first page with all that it loads, by which a question by target is answered. */
export function* questionFiles(catalogue: Omit<Catalogue, 'omitted' | 'isCut'>): Generator<SiteFile> {
  const { registry, pairings, policies } = catalogue;
  yield homePage(catalogue);
  yield { path: stylePath, text: siteStyle.trimStart() };
  yield { path: scriptPath, text: unpackedScript(siteScript) };
  const data = catalogueData(registry, policies);
  yield catalogueScript(data);
  for (const policy of policies) {
    const own = pairings.filter((pairing) => pairing.policy === policy);
    yield findScript(packPairings(policy, own, data));
  }
  yield searchScript(searchData(registry));
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
  for (const source of registry.source.values()) yield* sourceFiles(source, registry);
  yield* ruleFiles();
  yield* listFiles(catalogue);
  yield* untabledFiles(catalogue);
}
