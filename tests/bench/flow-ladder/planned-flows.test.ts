import fc from 'fast-check';
import { expect, it } from 'vitest';
import { plannedFlows } from '../../../src/bench/flow-ladder/planned-flows.ts';

it('goes from well below the expected range to beyond it', () => {
  const { size, flows } = plannedFlows(40, { low: 30, high: 50 }, 144);
  expect(size).toBe(5);
  expect(flows[0]).toBe(15);
  expect(flows.at(-1)).toBe(60);
});

it('ends where heater or drive end', () => {
  const { flows } = plannedFlows(40, { low: 30, high: 50 }, 45);
  expect(flows.at(-1)).toBe(44);
});

const expected = fc.record({
  value: fc.double({ min: 1, max: 200, noNaN: true }),
  spread: fc.double({ min: 1.05, max: 2.5, noNaN: true }),
  highest: fc.double({ min: 2, max: 400, noNaN: true }),
});

it('always rises in even steps of 1, 2 or 5, past the range or up to what is possible', () => {
  fc.assert(
    fc.property(expected, ({ value, spread, highest }) => {
      const cap = Math.max(highest, value);
      const range = { low: value / spread, high: value * spread };
      const { size, flows } = plannedFlows(value, range, cap);
      expect(['1', '2', '5']).toContain(size.toExponential().replace(/e.*/, ''));
      flows.slice(1).forEach((flow, index) => {
        expect(flow - (flows[index] ?? 0)).toBeCloseTo(size, 9);
      });
      expect(flows.length).toBeLessThanOrEqual(22);
      expect(flows.at(-1)).toBeLessThanOrEqual(cap * (1 + 1e-9) + (cap > range.high * 1.2 ? size : 0));
      expect(flows[0]).toBeLessThan(range.low);
    }),
  );
});
