import { findProfile, type UnknownProfile } from '../registry/find-profile.ts';
import type { Registry } from '../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../result.ts';
import { type LikelyPairings, likelyPairings } from '../tables/derive/likely-pairings.ts';
import { counted } from '../text/words.ts';

/** Which tables an export is to hold. */
interface AskedTables {
  /** Whether it is to hold any. */
  readonly tables: boolean;
  /** House rules that they follow; unless given every one's. */
  readonly policy?: string;
  /** Tables that are derived at most without a policy that is named: a hundred take some seconds. */
  readonly most?: number;
}

/** What tables are asked for. Problems: an unknown policy, so many pairings and policies that it would take hours. */
export function exportPairings(
  registry: Registry,
  { tables, policy, most = 20_000 }: AskedTables,
): Result<LikelyPairings, UnknownProfile<'policy'> | Problem<'tooManyTables'>> {
  if (!tables) return success({ requests: [], isCut: false });
  if (policy === undefined) {
    const pairings = likelyPairings(registry, { most });
    const count = pairings.requests.length;
    if (count <= most) return success(pairings);
    return refusal(
      'tooManyTables',
      `Tables of ${count} pairings under ${counted(registry.policy.size, 'policy', 'policies')} would take hours`,
      'Name the house rules that count with --policy, or leave the tables out with --no-tables.',
    );
  }
  const named = findProfile(registry, 'policy', policy);
  return named.ok ? success(likelyPairings(registry, { policy })) : named;
}
