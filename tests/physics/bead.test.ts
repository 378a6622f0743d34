import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { beadArea, flowAtSpeed, isBeadFeasible, speedAtFlow } from '../../src/physics/bead.ts';

const size = fc.double({ min: 0.05, max: 3, noNaN: true });
const rate = fc.double({ min: 0.1, max: 2000, noNaN: true });

describe('beadArea', () => {
  it('is a circle where the line is as wide as the layer is high', () => {
    expect(beadArea(0.4, 0.4)).toBeCloseTo(Math.PI * 0.2 ** 2, 12);
  });

  it('lies between its half-round flanks alone and the rectangle around it', () => {
    fc.assert(
      fc.property(size, size, (height, extra) => {
        const area = beadArea(height, height + extra);
        expect(area).toBeLessThan(height * (height + extra));
        expect(area).toBeGreaterThan((Math.PI * height ** 2) / 4);
      }),
    );
  });
});

describe('isBeadFeasible', () => {
  it.each([
    [0.2, 0.45, true],
    [0.4, 0.4, true],
    [0.4, 0.3, false],
    [0, 0.4, false],
    [-0.2, 0.4, false],
  ])('layer height %d mm and line width %d mm: %s', (height, width, feasible) => {
    expect(isBeadFeasible(height, width)).toBe(feasible);
  });
});

describe('speedAtFlow', () => {
  it('undoes flowAtSpeed', () => {
    fc.assert(
      fc.property(rate, size, (speed, area) => {
        expect(speedAtFlow(flowAtSpeed(speed, area), area)).toBeCloseTo(speed, 8);
      }),
    );
  });
});
