import { reducingOnce } from '../../bench/reducing-once.ts';
import { type ChosenRule, chooseRule } from '../../knowledge/decision-rule.ts';
import { type Origin, originOf } from '../../knowledge/origin.ts';
import { verdicts } from '../../knowledge/suitability/suitability.ts';
import { findProfile, type UnknownProfile } from '../../registry/find-profile.ts';
import { compareText } from '../../registry/finding.ts';
import { kindFolders } from '../../registry/kind.ts';
import { idsOf, type Registry } from '../../registry/registry.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { matchPairing } from './match-pairing.ts';
import type { PairingMatch } from './match-verdict.ts';

/** What is to be matched; everything unless named. */
export interface MatchRequest {
  /** Today's date, YYYY-MM-DD: what profiles acknowledge, they acknowledge until a date. */
  readonly today: string;
  readonly filament?: string;
  readonly machine?: string;
  /** Id of the policy whose decision rule counts; by default the only one of the registry. */
  readonly policy?: string;
}

/** Machines against filaments. */
export interface MatchResult {
  /** The filament that machines are ranked for, if one was named. */
  readonly ranked: string | null;
  /** By which rule flows are compared with claims. */
  readonly decision: ChosenRule;
  readonly machines: readonly string[];
  readonly filaments: readonly string[];
  /** Row by row, filament after filament; ranked ones the best first. */
  readonly matches: readonly PairingMatch[];
  /** What of it is simulated or invented. */
  readonly origin: Origin;
}

/** Why there is nothing to match: an unknown id, or a registry without machines or filaments. */
export type MatchProblem =
  | UnknownProfile<'machine' | 'filament' | 'policy'>
  | Problem<'noMachine' | 'noFilament'>;

/**
 * Judges which machines suit which filaments, with every reason. For one filament the machines come ranked: what suits
 * first, then what was measured, then the higher flow.
 */
export function matchRegistry(registry: Registry, request: MatchRequest): Result<MatchResult, MatchProblem> {
  const machines = chosen(registry, 'machine', request.machine);
  if (!machines.ok) return machines;
  const filaments = chosen(registry, 'filament', request.filament);
  if (!filaments.ok) return filaments;
  const decision = chooseRule(registry, request.policy);
  if (!decision.ok) return decision;
  const { rule } = decision.value;
  const context = { registry, today: request.today, rule, reduce: reducingOnce(registry) };
  const matches = filaments.value.flatMap((filament) =>
    machines.value.flatMap((machine) => {
      const pair = { machine: registry.machine.get(machine), filament: registry.filament.get(filament) };
      if (pair.machine === undefined || pair.filament === undefined) return [];
      return matchPairing(pair.machine, pair.filament, context) ?? [];
    }),
  );
  const isRanked = request.filament !== undefined;
  const ofKind = (kind: 'machine' | 'filament', ids: readonly string[]) => ids.map((id) => ({ kind, id }));
  return success({
    ranked: request.filament ?? null,
    decision: decision.value,
    machines: machines.value,
    filaments: filaments.value,
    matches: isRanked ? matches.toSorted(betterMatch) : matches,
    origin: originOf(registry, {
      profiles: [...ofKind('machine', machines.value), ...ofKind('filament', filaments.value)],
      trials: matches.flatMap(({ flow }) => flow?.trials ?? []),
    }),
  });
}

function chosen(
  registry: Registry,
  kind: 'machine' | 'filament',
  asked: string | undefined,
): Result<readonly string[], MatchProblem> {
  if (asked !== undefined) {
    const named = findProfile(registry, kind, asked);
    return named.ok ? success([asked]) : named;
  }
  const ids = idsOf(registry, kind).toSorted(compareText);
  if (ids.length > 0) return success(ids);
  const code = kind === 'machine' ? 'noMachine' : 'noFilament';
  return refusal(code, `The registry holds no ${kind}`, `Add one under ${kindFolders[kind]}/.`);
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
