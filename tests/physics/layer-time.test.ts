import { expect, it } from 'vitest';
import { speedAtLayerTime } from '../../src/physics/layer-time.ts';

it('spreads the path of a layer over its shortest time', () => {
  expect(speedAtLayerTime(600, 8)).toBe(75);
});
