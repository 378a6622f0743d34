import { compareText } from '../../registry/finding.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import type { ReadDocument } from '../../registry/profile.ts';
import { isObject } from '../../registry/shape.ts';

/** One part of a check that several machines share. */
export interface Shard {
  /** From 1. */
  readonly number: number;
  readonly of: number;
}

/** What it takes to judge a document, in times of one without readings: a flow ladder is reduced by far the slowest. */
const cost = { plain: 1, trial: 5, flowLadder: 30 } as const;

/**
 * The shard of each document, by the path of its file. A filament and its trials, which are judged by the same reductions,
 * stay together; the heaviest go first, each to the shard that has the least to do.
 */
export function shardsOf(documents: readonly ReadDocument[], count: number): ReadonlyMap<string, number> {
  const groups = [...groupedBy(documents, groupOf)].map(([name, members]) => ({
    ...{ name, members },
    cost: members.reduce((sum, member) => sum + costOf(member), 0),
  }));
  const loads = Array.from({ length: count }, () => 0);
  const shards = new Map<string, number>();
  for (const group of groups.sort((a, b) => b.cost - a.cost || compareText(a.name, b.name))) {
    const lightest = loads.indexOf(Math.min(...loads));
    loads[lightest] = (loads[lightest] ?? 0) + group.cost;
    for (const { source } of group.members) shards.set(source.path, lightest + 1);
  }
  return shards;
}

function groupOf({ kind, id, written, source }: ReadDocument): string {
  if (kind === 'filament') return `filament ${id}`;
  const filament = kind === 'trial' && isObject(written) ? written.filament : null;
  return typeof filament === 'string' ? `filament ${filament}` : `file ${source.path}`;
}

function costOf({ kind, written }: ReadDocument): number {
  if (kind !== 'trial') return cost.plain;
  return isObject(written) && written.method === 'flowLadder' ? cost.flowLadder : cost.trial;
}
