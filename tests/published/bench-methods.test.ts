import { expect, test } from 'vitest';
import { cylinderLeft } from '../../src/bench/drying-curve/drying-shape.ts';
import { reduceSoundLevel } from '../../src/bench/sound-level/reduce-sound-level.ts';
import { observationsOf, resultOf } from '../bench/observations-of.ts';

const survey = (soundLevel: number[], backgroundLevel: number) =>
  reduceSoundLevel(observationsOf({ distance: soundLevel.map(() => 1000), soundLevel }), {
    backgroundLevel,
    roomCorrection: 0,
  });

test('a background 6 dB below takes 1.26 dB off', () => {
  // ISO 3744:2010 and ISO 3746:2010, background correction K1 = -10 lg(1 - 10^(-0.1·6)) = 1.26 dB (formula from memory).
  expect(resultOf(survey([50, 50, 50], 44), 'soundLevel').value).toBeCloseTo(50 - 1.26, 2);
});

test('a background more than 10 dB below takes nothing off', () => {
  // ISO 3746:2010, background correction: none above 10 dB (from memory).
  expect(resultOf(survey([50, 50, 50], 39.9), 'soundLevel').value).toBe(50);
});

test('over a floor the sound power level is 7.98 dB above the level at 1 m', () => {
  // ISO 3744:2010, hemisphere S = 2·π·r², 10 lg(S/1 m²) at 1 m (formula from memory).
  const power = resultOf(survey([50, 50, 50], 20), 'soundPower').value;
  expect(10 * Math.log10(power / 1e-12) - 50).toBeCloseTo(7.98, 2);
});

test('half of the water has left a cylinder at D·t/a² = 0.0631', () => {
  // Crank, The Mathematics of Diffusion, 2nd ed. 1975, section 5.3, time of half sorption of a cylinder (from memory).
  expect(cylinderLeft(0.0631 * 2.404825558 ** 2)).toBeCloseTo(0.5, 3);
});
