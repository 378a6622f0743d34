import { type AdoptingProfile, adoptingKind, adoptLimits } from '../../src/bench/adopt/adopt-limit.ts';
import { reduceTrial } from '../../src/bench/reduce-trial.ts';
import type { LoadedRegistry } from '../../src/registry/load-files.ts';
import type { Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { readYaml } from '../../src/registry/yaml/yaml-document.ts';
import { spanOfItem } from './key-spans.ts';
import type { Edits, Stage } from './slip.ts';

/** The edits with what rests on a trial at a stage: nothing, or what `--adopt` writes of its readings as they are now. */
export function withAdoption(
  edits: Edits,
  trialId: string,
  stage: Stage,
  load: (edits: Edits) => LoadedRegistry,
): Edits {
  const bare = withoutLimits(edits, trialId, load(edits).registry);
  return stage === 'nothingAdopted' ? bare : adopted(bare, trialId, load(bare).registry);
}

/** The edits without the statements that rest on a trial. */
export function withoutLimits(edits: Edits, trialId: string, { profiles }: Registry): Edits {
  const changed = new Map(edits);
  for (const profile of profiles) {
    const resting = [...statementsOf(profile)].filter(({ statement }) => statement.evidence === trialId);
    const { text, relativePath } = profile.source;
    // From the last to the first, so that what is left keeps its place.
    const bare = resting.reverse().reduce((now, { path }) => {
      const { document } = readYaml(now);
      const span = document === null ? null : spanOfItem(now, document, profile.originalPath(path));
      return span === null ? now : now.slice(0, span[0]) + now.slice(span[1]);
    }, text);
    if (bare !== text) changed.set(relativePath, bare);
  }
  return changed;
}

/** Nothing more where the readings give no limit, or no profile states it. */
function adopted(edits: Edits, trialId: string, registry: Registry): Edits {
  const trial = registry.trial.get(trialId);
  const reduction = trial === undefined ? null : reduceTrial(registry, trialId);
  if (trial === undefined || reduction === null || !reduction.ok) return edits;
  const profile = adoptingProfile(trial, adoptingKind(reduction.value), registry);
  if (profile === undefined) return edits;
  const text = adoptLimits(profile, trial, reduction.value);
  return text.ok ? new Map([...edits, [profile.source.relativePath, text.value]]) : edits;
}

function adoptingProfile(
  { data }: Profile<'trial'>,
  kind: AdoptingProfile['kind'] | null,
  registry: Registry,
): AdoptingProfile | undefined {
  if (kind === 'filament') return registry.filament.get(data.filament);
  return kind === 'machine' && data.machine !== undefined ? registry.machine.get(data.machine) : undefined;
}
