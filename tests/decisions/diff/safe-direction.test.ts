import { describe, expect, it, test } from 'vitest';
import { placesWithSense, senseOf } from '../../../src/decisions/diff/safe-direction.ts';
import { shapes } from '../../../src/registry/generated/shapes.ts';
import { kinds } from '../../../src/registry/kind.ts';
import type { QuantityShape, Shape } from '../../../src/registry/shape.ts';

/** Whether the schema of a kind has a place such as `hotEnds[].nozzles[].diameter`. */
function exists(shape: Shape, place: string): boolean {
  let current: Shape | undefined = shape;
  for (const step of place.split('.')) {
    if (current?.type !== 'object') return false;
    current = current.properties[step.replace('[]', '')];
    if (step.endsWith('[]')) current = current?.type === 'list' ? current.items : undefined;
  }
  return current !== undefined;
}

describe.each(kinds)('of a %s', (kind) => {
  test('each place with a sense is one that the schema has', () => {
    expect(placesWithSense(kind).filter((place) => !exists(shapes[kind], place))).toEqual([]);
  });
});

describe('where no sense is laid down', () => {
  const quantity = (form: 'single' | 'range'): QuantityShape => ({
    type: 'quantity',
    dimension: 'speed',
    form,
  });

  it('takes a range for a window, a quantity for fixed and a word for a note', () => {
    expect(senseOf('machine', 'new.range', quantity('range'))).toBe('window');
    expect(senseOf('machine', 'new.speed', quantity('single'))).toBe('fixed');
    expect(senseOf('machine', 'name', null)).toBe('note');
  });

  it('takes every number of a job for a figure', () => {
    expect(senseOf('job', 'layers', quantity('single'))).toBe('figure');
  });
});
