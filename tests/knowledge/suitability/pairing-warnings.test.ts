import { expect, test } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { findFittedPairing } from '../../../src/knowledge/pairing.ts';
import { pairingReasons, pairingWarnings } from '../../../src/knowledge/suitability/pairing-warnings.ts';
import { nozzlesOf } from '../../../src/registry/nozzle.ts';

const { registry } = loadFolders(['profiles']);

function warnings(machine: string, filament: string, nozzle: string) {
  const pairing = findFittedPairing(registry, { machine, filament, nozzle });
  if (!pairing.ok) throw new Error(pairing.error.message);
  return pairingWarnings(registry, pairing.value);
}

test('fibres wear brass', () => {
  expect(warnings('brackwater/lantern', 'sallowfield/hinge-pp-gf30', 'br-0.4')).toContainEqual({
    code: 'nozzleWears',
    aspect: 'nozzleMaterial',
    verdict: 'unsuitable',
    text: 'Nozzle br-0.4 of brass is worn by glass (GF).',
  });
});

test('a closed chamber gets too warm for a filament that softens early, an open one does not', () => {
  expect(warnings('tollwick/steeple', 'ashgrove/stagecraft-pla', 'hs-0.6')).toContainEqual({
    code: 'chamberTooWarm',
    aspect: 'chamber',
    verdict: 'suits',
    text: 'The closed chamber warms up to about 52 Cel, the filament bears 40 Cel: open the door or the lid.',
  });
  const open = warnings('ferrywright/skiff', 'ashgrove/stagecraft-pla', 'br-0.4');
  expect(open.map(({ code }) => code)).not.toContain('chamberTooWarm');
});

test('whatever limits a pairing is a warning, the worst first', () => {
  for (const machine of registry.machine.values()) {
    for (const filament of registry.filament.values()) {
      for (const fitted of nozzlesOf(machine.data)) {
        const pairing = { machine, filament, ...fitted };
        const limits = pairingReasons(registry, pairing).filter(({ verdict }) => verdict !== 'suits');
        const found = pairingWarnings(registry, pairing);
        expect(limits.filter(({ warning }) => warning === undefined)).toEqual([]);
        const ranks = found.map(({ verdict }) => ['unsuitable', 'limited', 'suits'].indexOf(verdict));
        expect(ranks).toEqual(ranks.toSorted((a, b) => a - b));
      }
    }
  }
});
