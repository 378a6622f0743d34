import { trialsOfPairing } from '../knowledge/trial-index.ts';
import type { Profile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { deriveTables } from '../tables/derive/derive-tables.ts';
import type { FullRequest } from '../tables/derive/every-pairing.ts';
import type { OmittedPairing } from '../tables/write/table-index.ts';
import { problemLine } from '../text/problem-text.ts';
import type { Catalogue } from './catalogue.ts';
import { type CataloguedPairing, cataloguedPairing } from './catalogued-pairing.ts';
import { comparedPairing } from './compare/compared-pairing.ts';
import { comparedScript } from './data/data-scripts.ts';
import { pairingFiles } from './pages/pairing-page.ts';
import { trialFiles } from './pages/trial-page.ts';
import type { SiteEntry, SiteFile } from './site-file.ts';
import type { SiteMemory } from './site-memory.ts';
import { siteReductions } from './site-reductions.ts';
import { fittedOf, unitInputs } from './unit-inputs.ts';
import type { WorthAPage } from './worth-a-page.ts';

interface AskedPages extends Pick<WorthAPage, 'fitted' | 'policies'> {
  readonly today: string;
  readonly memory: SiteMemory;
}

type Outcome =
  | { readonly pairing: CataloguedPairing; readonly reason?: never }
  | { readonly pairing?: never; readonly reason: string };

/**
 * The pages of trials and pairings, which take nearly all of the time: each is made by itself, so that what an earlier run has
 * made of the same can stand. A trial comes before its first pairing, since both need its curve. Returns what came of the pairings, by
 * house rules in the order in which they were asked for.
 */
export function* madePages(
  registry: Registry,
  { today, memory, fitted, policies }: AskedPages,
): Generator<SiteEntry, Pick<Catalogue, 'pairings' | 'omitted'>> {
  const inputs = unitInputs(registry, today);
  const { reductionOf, resultsOf } = siteReductions(registry);
  const shown = new Set<string>();
  const trialPage = (trial: Profile<'trial'>) => ({
    name: `trial ${trial.id}`,
    inputs: inputs.ofTrial(trial),
    *make() {
      yield* trialFiles(trial, { registry, reductionOf });
      return null;
    },
  });
  const outcomes = new Map<string, [FullRequest, Outcome][]>(policies.map((policy) => [policy, []]));
  for (const each of fitted) {
    const pairing = fittedOf(registry, each);
    for (const trial of pairing === null ? [] : trialsOfPairing(registry, pairing)) {
      if (!shown.has(trial.id)) yield* memory.recall(trialPage(trial));
      shown.add(trial.id);
    }
    for (const policy of policies) {
      const request = { ...each, policy };
      const outcome = yield* memory.recall({
        name: `pairing ${policy} ${each.machine} ${each.nozzle} ${each.filament}`,
        inputs: inputs.ofPairing(request),
        make: () => pairingPages(registry, request, today, { reductionOf, resultsOf }),
      });
      outcomes.get(policy)?.push([request, outcome]);
    }
  }
  for (const trial of registry.trial.values())
    if (!shown.has(trial.id)) yield* memory.recall(trialPage(trial));
  const all = [...outcomes.values()].flat();
  return {
    pairings: all.flatMap(([, { pairing }]) => pairing ?? []),
    omitted: all.flatMap(([request, { reason }]): OmittedPairing[] =>
      reason === undefined ? [] : [{ ...request, reason }],
    ),
  };
}

/** The files of a pairing, and what lists say of it; or why it has none. */
function* pairingPages(
  registry: Registry,
  request: FullRequest,
  today: string,
  { reductionOf, resultsOf }: ReturnType<typeof siteReductions>,
): Generator<SiteFile, Outcome> {
  const table = deriveTables(registry, request, { today, reduce: (_, trial) => resultsOf(trial) });
  if (!table.ok) return { reason: problemLine(table.error) };
  yield* pairingFiles(request, table.value, { registry, reductionOf });
  yield comparedScript(comparedPairing(request, table.value, { registry, reductionOf }));
  return { pairing: cataloguedPairing(registry, request, table.value) };
}
