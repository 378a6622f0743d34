import type { MethodName } from '../../src/bench/method-facts.ts';
import type { ReducedResult } from '../../src/bench/reduction.ts';
import type { EvidenceContext } from '../../src/evidence/evidence-context.ts';
import { evidenceHits } from '../../src/evidence/standing.ts';
import type { Hit } from '../../src/registry/hit.ts';
import { loadFiles } from '../../src/registry/load-files.ts';
import type { AnyProfile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { failure, success } from '../../src/result.ts';
import { type Edit, textsAfter } from '../rules/edited-sample.ts';
import { sorrelLadder, sorrelTrial, sorrelWith } from '../rules/second-profiles.ts';
import { testDay } from '../run-command.ts';

/** The sample registry after some edits. */
export function registryAfter(edits: readonly Edit[]): Registry {
  return loadFiles([{ folder: '', texts: textsAfter(edits) }]).registry;
}

/** Sorrel PLA with a property, and a trial of it by a method. */
export function sorrelMeasured(method: MethodName, keys: string): readonly Edit[] {
  return [
    sorrelWith(keys),
    sorrelLadder(),
    ...(method === 'flowLadder'
      ? []
      : [{ in: sorrelTrial, from: 'method: flowLadder', to: `method: ${method}` }]),
  ];
}

/** A registry whose trials are taken to give these results, whatever their readings are; none where they give nothing. */
export function contextWith(registry: Registry, results: readonly ReducedResult[] | null): EvidenceContext {
  return {
    registry,
    today: testDay,
    reduce: (id) =>
      results === null
        ? failure([])
        : success({ method: registry.trial.get(id)!.data.method, results, warnings: [] }),
  };
}

/** A limit with its 95 % interval, in canonical units; open ends where the readings do not bracket it. */
export function limitOf(
  quantity: string,
  dimension: ReducedResult['dimension'],
  value: number,
  [low, high]: readonly [number | null, number | null],
): ReducedResult {
  return { quantity, dimension, value, interval: { low, high, coverage: 0.95 }, censored: null };
}

/** What a rule about evidence finds in Sorrel PLA, or in another profile, of what a trial gives. */
export function hitsIn(
  rule: Parameters<typeof evidenceHits>[0],
  edits: readonly Edit[],
  results: readonly ReducedResult[] | null,
  profileIn: (registry: Registry) => AnyProfile | undefined = ({ filament }) =>
    filament.get('oakhollow/sorrel-pla'),
): Hit[] {
  const registry = registryAfter(edits);
  return [...evidenceHits(rule, profileIn(registry)!, contextWith(registry, results))];
}
