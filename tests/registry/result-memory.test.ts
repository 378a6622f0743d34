import { describe, expect, it, vi } from 'vitest';
import { resultMemory } from '../../src/registry/result-memory.ts';
import { mapStore } from '../map-store.ts';

const question = (inputs: unknown, compute: () => unknown) => ({ kind: 'sum', name: 'one', inputs, compute });

describe('a memory of results', () => {
  it('computes a result once for the same inputs, in this run and in later ones', () => {
    const store = mapStore();
    const compute = vi.fn(() => ({ value: 0.1 + 0.2, ends: [null, 1e-300] }));
    const first = resultMemory(store, 'p1').recall(question([1], compute));
    const later = resultMemory(store, 'p1').recall(question([1], compute));
    expect(later).toEqual(first);
    expect(compute).toHaveBeenCalledTimes(1);
  });

  it('asks again for other inputs, another kind of result and another program', () => {
    const store = mapStore();
    const compute = vi.fn(() => 1);
    const memory = resultMemory(store, 'p1');
    memory.recall(question([1], compute));
    memory.recall(question([2], compute));
    memory.recall({ ...question([1], compute), kind: 'product' });
    resultMemory(store, 'p2').recall(question([1], compute));
    expect(compute).toHaveBeenCalledTimes(4);
  });

  it.each([
    ['cut', (entry: string) => entry.slice(0, -3)],
    ['changed', (entry: string) => entry.replace('41', '42')],
    ['empty', () => ''],
    ['text of another kind', () => 'not JSON\n{}\n'],
    ['without a line', () => '{"program":"p1"}'],
  ])('computes and replaces an entry that is %s', (_, broken) => {
    const store = mapStore();
    resultMemory(store, 'p1').recall(question([1], () => 41));
    const [key = '', entry = ''] = [...store.entries][0] ?? [];
    store.entries.set(key, broken(entry));
    expect(resultMemory(store, 'p1').recall(question([1], () => 41))).toBe(41);
    expect(store.entries.get(key)).toBe(entry);
  });

  it('finds out a result that somebody has changed with its digest, and names and replaces it', () => {
    const store = mapStore();
    resultMemory(store, 'p1').recall(question([1], () => 42));
    const [key = '', entry = ''] = [...store.entries][0] ?? [];
    const truth = resultMemory(store, 'p1');
    truth.recall(question([1], () => 41));
    expect(truth.differing('2026-06-01')).toEqual(['one']);
    expect(store.entries.get(key)).not.toBe(entry);
    const again = resultMemory(store, 'p1');
    again.recall(question([1], () => 41));
    expect(again.differing('2026-06-01')).toEqual([]);
  });

  it('computes at least one and at most three of the recalled results again, others on other days', () => {
    const store = mapStore();
    const inputs = Array.from({ length: 200 }, (_, index) => index);
    for (const input of inputs) resultMemory(store, 'p1').recall(question(input, () => input));
    const computedOn = (day: string) => {
      const again: number[] = [];
      const memory = resultMemory(store, 'p1');
      for (const input of inputs) memory.recall(question(input, () => again.push(input) && input));
      expect(memory.differing(day)).toEqual([]);
      return again;
    };
    expect(computedOn('2026-06-01')).toHaveLength(3);
    expect(computedOn('2026-06-01')).toEqual(computedOn('2026-06-01'));
    expect(computedOn('2026-06-02')).not.toEqual(computedOn('2026-06-01'));
    const one = resultMemory(store, 'p1');
    const compute = vi.fn(() => 5);
    one.recall(question(5, compute));
    one.differing('2026-06-01');
    expect(compute).toHaveBeenCalledTimes(1);
  });
});
