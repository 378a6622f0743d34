import { expect, it } from 'vitest';
import { loadFolders } from '../../../src/host/load-registry.ts';
import { sharedWithOtherPolymer } from '../../../src/rules/engine/shared-figures.ts';
import { sampleRegistry } from '../../sample-registry.ts';

const daisy = 'filaments/oakhollow/daisy-pla.yaml';
const clover = 'filaments/oakhollow/clover-petg.yaml';

/** What the sample PLA shares with copies of the sample PET-G whose density is that of the PLA, each with a bed of its own. */
function sharedWithCopies(count: number, bedOf: (copy: number) => string) {
  const registry = sampleRegistry();
  const text = registry.read(clover).replace('1.27 g/cm3', '1.24 g/cm3');
  for (let copy = 0; copy < count; copy++) {
    registry.write(
      `filaments/oakhollow/copy-${copy}.yaml`,
      text.replace('oakhollow/clover-petg', `oakhollow/copy-${copy}`).replace('70..80 Cel', bedOf(copy)),
    );
  }
  registry.edit(daisy, '200..235 Cel', '230..255 Cel');
  const loaded = loadFolders([`${registry.cwd}/profiles`]).registry;
  return sharedWithOtherPolymer(loaded.filament.get('oakhollow/daisy-pla')!, loaded);
}

it('filaments with the same figures throughout stand for one another', () => {
  expect(sharedWithCopies(20, () => '70..80 Cel')).toHaveLength(1);
  expect(sharedWithCopies(20, (copy) => `70..${80 + copy} Cel`)).toHaveLength(20);
});

it('a figure of more than a hundred kinds of filament is a round one', () => {
  expect(sharedWithCopies(110, (copy) => `70..${80 + copy} Cel`)).toEqual([]);
});
