import fc from 'fast-check';
import { expect, it } from 'vitest';
import { pieceFor } from '../../../src/bench/flow-ladder/piece-length.ts';

it('feeds 1100 mm of PLA for a scale of 0.01 g', () => {
  const piece = pieceFor(0.01, 0.00124, 1.75, 20);
  expect(piece.length).toBe(1100);
  expect(piece.mass).toBeCloseTo(3.281, 3);
});

it('feeds at least 400 mm, however fine the scale', () => {
  expect(pieceFor(0.0001, 0.00124, 1.75, 20).length).toBe(400);
});

it('takes at least 5 s at the fastest step', () => {
  expect(pieceFor(0.0001, 0.00124, 1.75, 120).length).toBe(600);
});

it('keeps the step of the scale below 0.5 % of a piece that lacks a third of its mass', () => {
  const filament = fc.record({
    resolution: fc.double({ min: 0.0001, max: 0.1, noNaN: true }),
    density: fc.double({ min: 0.0008, max: 0.003, noNaN: true }),
    diameter: fc.constantFrom(1.75, 2.85, 3),
  });
  fc.assert(
    fc.property(filament, ({ resolution, density, diameter }) => {
      const { length, mass } = pieceFor(resolution, density, diameter, 20);
      expect(resolution / (mass * (2 / 3))).toBeLessThan(0.005);
      expect(length % 50).toBe(0);
    }),
  );
});
