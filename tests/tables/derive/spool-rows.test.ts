import { expect, it } from 'vitest';
import { findPairing } from '../../../src/knowledge/pairing.ts';
import { spoolRows } from '../../../src/tables/derive/conditions/spool-rows.ts';
import { registryWith, pairing as request } from './pairing-with.ts';

// Common practice, no source: a spool of 1 kg of PLA, 1.24 g/cm3 and 1.75 mm, holds some 335 m, and lasts 3.73 h at
// 60 mm3/s. The sample filament is such a spool.
it('the conditions of a table give the usual length and duration of a kilogram of PLA', () => {
  const pairing = findPairing(registryWith({}), request);
  if (!pairing.ok) throw new Error(pairing.error.message);
  const rows = spoolRows(pairing.value, 60);
  expect(rows.map(({ name, window, unit }) => [name, window?.low, unit])).toEqual([
    ['spoolLength', 335, 'm'],
    ['spoolDuration', 3.73, 'h'],
  ]);
  // 1000 g / (1.24 g/cm3 * 60 mm3/s) = 13 441 s = 3.7336 h: 3.73 h to the nearest hundredth and on the safe side.
  expect(Math.abs((rows[1]?.window?.low ?? 0) - 3.7336)).toBeLessThanOrEqual(0.01);
});
