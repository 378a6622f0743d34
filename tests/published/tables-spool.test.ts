import { expect, it } from 'vitest';
import { findPairing } from '../../src/knowledge/pairing.ts';
import { spoolRows } from '../../src/tables/derive/spool-rows.ts';
import { registryWith, pairing as request } from '../tables/derive/pairing-with.ts';

// Common practice, no source: a spool of 1 kg of PLA, 1.24 g/cm3 and 1.75 mm, holds some 335 m, and lasts 2.04 h at
// 110 mm3/s. The sample filament is such a spool.
it('the conditions of a table give the usual length and duration of a kilogram of PLA', () => {
  const pairing = findPairing(registryWith({}), request);
  if (!pairing.ok) throw new Error(pairing.error);
  const rows = spoolRows(pairing.value, 110);
  expect(rows.map(({ name, window, unit }) => [name, window?.low, unit])).toEqual([
    ['spoolLength', 335, 'm'],
    ['spoolDuration', 2.03, 'h'],
  ]);
  // 1000 g / (1.24 g/cm3 * 110 mm3/s) = 7331 s = 2.0365 h: 2.04 h to the nearest hundredth, 2.03 h on the safe side.
  expect(Math.abs((rows[1]?.window?.low ?? 0) - 2.04)).toBeLessThanOrEqual(0.01 + 1e-12);
});
