import { reducingOnce } from '../../bench/reducing-once.ts';
import { unknownId } from '../../knowledge/pairing.ts';
import { compareText } from '../../registry/finding.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { failure, type Result, success } from '../../result.ts';
import { matchPairing } from './match-pairing.ts';
import { type PairingMatch, verdicts } from './match-verdict.ts';

/** What is to be matched; everything unless named. */
export interface MatchRequest {
  readonly filament?: string;
  readonly machine?: string;
}

/** Machines against filaments. */
export interface MatchResult {
  /** The filament that machines are ranked for, if one was named. */
  readonly ranked: string | null;
  readonly machines: readonly string[];
  readonly filaments: readonly string[];
  /** Row by row, filament after filament; ranked ones the best first. */
  readonly matches: readonly PairingMatch[];
}

/**
 * Judges which machines suit which filaments, with every reason. For one filament the machines come ranked: what suits
 * first, then what was measured, then the higher flow. The error is a sentence for the user: an unknown id, nothing to
 * match.
 */
export function matchRegistry(registry: Registry, request: MatchRequest = {}): Result<MatchResult, string> {
  const machines = chosen(registry, 'machine', request.machine);
  if (!machines.ok) return machines;
  const filaments = chosen(registry, 'filament', request.filament);
  if (!filaments.ok) return filaments;
  const reduce = reducingOnce(registry);
  const matches = filaments.value.flatMap((filament) =>
    machines.value.flatMap((machine) => {
      const pair = { machine: registry.machine.get(machine), filament: registry.filament.get(filament) };
      if (pair.machine === undefined || pair.filament === undefined) return [];
      return matchPairing(registry, pair.machine, pair.filament, reduce) ?? [];
    }),
  );
  const isRanked = request.filament !== undefined;
  return success({
    ranked: request.filament ?? null,
    machines: machines.value,
    filaments: filaments.value,
    matches: isRanked ? matches.toSorted(betterMatch) : matches,
  });
}

function chosen(
  registry: Registry,
  kind: 'machine' | 'filament',
  asked: string | undefined,
): Result<readonly string[], string> {
  const ids = idsOf(registry, kind).toSorted(compareText);
  if (asked !== undefined) {
    return registry[kind].has(asked) ? success([asked]) : failure(unknownId(kind, asked, ids));
  }
  return ids.length === 0 ? failure(`The registry holds no ${kind}; add one under ${kind}s/.`) : success(ids);
}

function betterMatch(a: PairingMatch, b: PairingMatch): number {
  return (
    verdicts.indexOf(a.verdict) - verdicts.indexOf(b.verdict) ||
    strength(a) - strength(b) ||
    (b.flow?.value ?? 0) - (a.flow?.value ?? 0) ||
    compareText(a.machine, b.machine)
  );
}

function strength({ flow }: PairingMatch): number {
  if (flow === null) return 2;
  return flow.basis === 'measured' ? 0 : 1;
}
