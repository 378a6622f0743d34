import fc from 'fast-check';
import { expect, it } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { shardsOf } from '../../../src/rules/engine/evidence-shards.ts';
import { runs } from '../../property-runs.ts';

const { documents } = loadFolders(['profiles']).registry;

it('puts every document into one shard, and a trial into that of its filament', () => {
  const shards = shardsOf(documents, 4);
  expect([...shards.keys()].sort()).toEqual(documents.map(({ source }) => source.path).sort());
  const filaments = new Map(
    documents.filter(({ kind }) => kind === 'filament').map(({ id, source }) => [id, source.path]),
  );
  for (const { kind, written, source } of documents) {
    const filament = kind === 'trial' ? filaments.get((written as { filament: string }).filament) : undefined;
    if (filament !== undefined) expect(shards.get(source.path)).toBe(shards.get(filament));
  }
});

it('does not depend on the order of the files', () => {
  const shuffled = fc.shuffledSubarray([...documents], { minLength: documents.length });
  fc.assert(
    fc.property(shuffled, fc.integer({ min: 1, max: 9 }), (order, count) => {
      expect(new Map([...shardsOf(order, count)].sort())).toEqual(
        new Map([...shardsOf(documents, count)].sort()),
      );
    }),
    { numRuns: runs(20) },
  );
});

it('gives each shard some of the ladders', () => {
  const shards = shardsOf(documents, 3);
  const ladders = documents.filter(({ written }) => (written as { method?: string }).method === 'flowLadder');
  expect(new Set(ladders.map(({ source }) => shards.get(source.path))).size).toBe(3);
});
