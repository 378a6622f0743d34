import { describe, expect, it } from 'vitest';
import { loadFolders } from '../../src/host/load-registry.ts';
import { type FittedRequest, findFittedPairing } from '../../src/knowledge/pairing.ts';

const { registry } = loadFolders(['profiles']);
const hearth = 'emberlow/hearth';
const nozzleOf = (request: FittedRequest, options = {}) => {
  const found = findFittedPairing(registry, request, options);
  return found.ok ? found.value.nozzle.id : found.error;
};

describe('a machine with two hot ends', () => {
  it('asks which one is meant, with their nozzles', () => {
    expect(nozzleOf({ machine: hearth, filament: 'ashgrove/stagecraft-pla' })).toEqual({
      code: 'severalHotEnds',
      message: 'emberlow/hearth has 2 hot ends that take ashgrove/stagecraft-pla',
      help: 'Name a nozzle: hs-0.6, wc-0.4, ru-0.6 in hot end "left"; right-hs-0.4 in hot end "right". With `--nozzle`, or behind the machine in `compare`.',
    });
  });

  it('does not ask where exactly one nozzle has a measured limit, one is named, or any will do', () => {
    expect(nozzleOf({ machine: hearth, filament: 'quillmere/rigging-abs' })).toBe('hs-0.6');
    const filament = 'ashgrove/stagecraft-pla';
    expect(nozzleOf({ machine: hearth, filament, nozzle: 'right-hs-0.4' })).toBe('right-hs-0.4');
    expect(nozzleOf({ machine: hearth, filament }, { anyNozzle: true })).toBe('hs-0.6');
  });
});

it('a machine with one hot end takes the measured nozzle, else the first', () => {
  expect(nozzleOf({ machine: 'tollwick/steeple', filament: 'ashgrove/stagecraft-petg' })).toBe('hs-0.4');
  expect(nozzleOf({ machine: 'brackwater/lantern', filament: 'ashgrove/stagecraft-petg' })).toBe('hs-0.6');
});
