import { describe, expect, it } from 'vitest';
import { beadArea, flowAtSpeed, speedAtFlow } from '../../src/physics/bead.ts';
import {
  filamentArea,
  filamentFeed,
  filamentLength,
  spoolDuration,
} from '../../src/physics/filament-geometry.ts';

describe('bead', () => {
  it('of a 0.2 mm layer and a 0.45 mm line has 0.0814159 mm²', () => {
    // Geometry: 0.2 * 0.25 + pi * 0.01.
    expect(beadArea(0.2, 0.45)).toBeCloseTo(0.0814159, 7);
  });

  it('at 75 mm³/s and 0.45 mm line is laid at 921.2 mm/s', () => {
    // 75/0.0814159.
    expect(speedAtFlow(75, beadArea(0.2, 0.45))).toBeCloseTo(921.2, 1);
  });

  it.each([
    [0.44, 0.05],
    [0.45, 0.03],
    [0.46, 0.03],
    [0.47, 0.03],
  ])(
    'of 0.2 mm layers and %d mm line at 75 mm³/s is laid around 900 mm/s, within a share of %d',
    (width, share) => {
      // Common practice, no source: 75 mm³/s is called "around 900 mm/s" at 0.2 mm layers and the line widths of a 0.4 mm nozzle.
      expect(Math.abs(speedAtFlow(75, beadArea(0.2, width)) / 900 - 1)).toBeLessThan(share);
    },
  );

  it('of an outer contour at 675 mm/s takes about 75 % of 75 mm³/s', () => {
    // Common practice, no source: the outer contour at 75 % of the top speed, 900 -> 675 mm/s.
    expect(flowAtSpeed(675, beadArea(0.2, 0.46)) / 75).toBeCloseTo(0.75, 2);
  });
});

describe('filament', () => {
  it.each([
    [1.75, 2.405281875],
    [2.85, 6.379396582],
    [3.0, 7.068583471],
  ])('of %d mm has %d mm²', (diameter, area) => {
    // Geometry: pi d²/4, recomputed in 25 digits.
    expect(filamentArea(diameter)).toBeCloseTo(area, 8);
  });

  it('of 1.75 mm is fed at 24.95 mm/s for 60 mm³/s', () => {
    // 60/2.405281875.
    expect(filamentFeed(60, 1.75)).toBeCloseTo(24.95, 2);
  });

  it.each([
    [1.75, 32.57],
    [3.0, 11.08],
  ])('of %d mm is fed at %d mm/s for the 282 cm³/h of a fast printhead', (diameter, feed) => {
    // Go & Hart, Fast desktop-scale extrusion additive manufacturing, Additive Manufacturing 18 (2017) 276-284, abstract
    // (282 cm³/h from memory; the feed recomputed).
    expect(filamentFeed(282_000 / 3600, diameter)).toBeCloseTo(feed, 2);
  });
});

describe('spool of 1 kg PLA, 1.75 mm', () => {
  it('is about 335 m long', () => {
    // Common practice, no source: "about 330 to 335 m". Density 1.24 g/cm³.
    expect(filamentLength(1000, 1.24e-3, 1.75) / 1000).toBeCloseTo(335.3, 1);
  });

  it('lasts 3.73 h at 60 mm³/s', () => {
    // 1000/(1.24e-3 * 60)/3600.
    expect(spoolDuration(1000, 1.24e-3, 60) / 3600).toBeCloseTo(3.73, 2);
  });
});
