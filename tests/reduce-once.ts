import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { deserialize, serialize } from 'node:v8';
import { inject, vi } from 'vitest';
import writeFileAtomic from 'write-file-atomic';
import type * as ReduceTrial from '../src/bench/reduce-trial.ts';

type Reduce = typeof ReduceTrial.trialResults;

// Many tests, in many files, look at the same readings: in one run each trial is reduced once.
vi.mock('../src/bench/reduce-trial.ts', async (importOriginal) => {
  const original = await importOriginal<typeof ReduceTrial>();
  return { ...original, trialResults: remembering(original.trialResults) };
});

function remembering(reduce: Reduce): Reduce {
  const known = new Map<string, ReturnType<Reduce>>();
  return (registry, id) => {
    const trial = registry.trial.get(id);
    const filament = registry.filament.get(trial?.data.filament ?? '');
    // All that a reduction depends on.
    const key = digest(JSON.stringify([id, trial?.data, trial?.attachment, filament?.data]));
    const reduced = known.get(key) ?? sharedWithOtherFiles(key, () => reduce(registry, id));
    known.set(key, reduced);
    return reduced;
  };
}

function sharedWithOtherFiles(key: string, reduce: () => ReturnType<Reduce>): ReturnType<Reduce> {
  const file = join(inject('reductions'), key);
  if (existsSync(file)) return deserialize(readFileSync(file)) as ReturnType<Reduce>; // what was written below
  const reduced = reduce();
  writeFileAtomic.sync(file, serialize(reduced), { fsync: false });
  return reduced;
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
