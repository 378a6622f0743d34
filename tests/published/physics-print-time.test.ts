import { describe, expect, it } from 'vitest';
import { cornerSpeed } from '../../src/physics/corner.ts';
import { type PrintPath, pathTime, printTime } from '../../src/physics/print-time.ts';
import { speedProfile } from '../../src/physics/speed-profile.ts';

const stops: PrintPath = {
  length: 10_000,
  meanSegment: 10,
  speed: 200,
  acceleration: 1000,
  corner: null,
  pause: 0,
  place: 'allLayers',
};
const seconds = ({ cruise, ramps }: { readonly cruise: number; readonly ramps: number }) => cruise + ramps;

// Closed forms of motion with constant acceleration: OpenStax, University Physics vol. 1, section 3.4, x = v0 t + a t²/2
// and v² = v0² + 2 a x over each ramp.
describe('closed forms', () => {
  it('a triangle takes 2 sqrt(L/a): 1000 moves of 10 mm at 1000 mm/s² take 200 s', () => {
    expect(seconds(pathTime(stops))).toBeCloseTo(1000 * 2 * Math.sqrt(10 / 1000), 9);
  });

  it('a trapezoid takes L/v + v/a: 100 moves of 100 mm at 200 mm/s and 1000 mm/s² take 70 s', () => {
    expect(seconds(pathTime({ ...stops, meanSegment: 100 }))).toBeCloseTo(100 * (100 / 200 + 200 / 1000), 9);
  });

  it('a move that enters and leaves at v0 peaks at sqrt(v0² + aL) and takes 2 (peak - v0)/a', () => {
    const profile = speedProfile({
      length: 10,
      speed: 1000,
      acceleration: 1000,
      entrySpeed: 50,
      exitSpeed: 50,
    });
    expect(profile.peak).toBeCloseTo(Math.sqrt(50 ** 2 + 1000 * 10), 9);
    expect(seconds(profile)).toBeCloseTo((2 * (Math.sqrt(50 ** 2 + 1000 * 10) - 50)) / 1000, 12);
  });

  it('a sum of parts: paths, layer changes and waits', () => {
    const time = printTime({
      layers: 100,
      paths: new Map([['infill', stops]]),
      layerChange: 0.5,
      shortestLayerTime: 3,
    });
    // 200 s of moves are 2 s a layer, so that each of the 100 layers waits 1 s, with 99 changes of 0.5 s between them.
    expect(time.total).toBeCloseTo(200 + 100 * 1 + 99 * 0.5, 9);
  });
});

describe('OpenStax University Physics', () => {
  it('example 3.7: from 70.0 m/s down to 10.0 m/s at 1.50 m/s² takes 40.0 s', () => {
    const profile = speedProfile({
      length: 0.5 * (70_000 + 10_000) * 40,
      speed: 70_000,
      acceleration: 1500,
      entrySpeed: 70_000,
      exitSpeed: 10_000,
    });
    expect(seconds(profile)).toBeCloseTo(40, 9);
  });

  it('example 3.11: 200 m from 10.0 m/s, speeding up at 2.00 m/s², take 10.0 s', () => {
    const profile = speedProfile({
      length: 200_000,
      speed: 1e9,
      acceleration: 2000,
      entrySpeed: 10_000,
      exitSpeed: 1e9,
    });
    expect(seconds(profile)).toBeCloseTo(10, 9);
  });

  it('section 4.4: at 134.1 m/s a turn of 1.835 km takes 1 g (example, from memory)', () => {
    // A right-angled corner whose arc has this radius passes it at r (1/cos 45° - 1).
    const tolerance = 1_835_000 * (Math.SQRT2 - 1);
    expect(cornerSpeed({ deflection: 90, tolerance }, 9800) / 1000).toBeCloseTo(134.1, 1);
  });
});
