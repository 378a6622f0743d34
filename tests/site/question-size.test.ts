import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import type { CataloguedPairing } from '../../src/site/catalogued-pairing.ts';
import type { CatalogueData } from '../../src/site/data/catalogue-data.ts';
import { catalogueScript, findScript } from '../../src/site/data/data-scripts.ts';
import { packPairings } from '../../src/site/data/packed-pairings.ts';
import { randomSource } from '../../src/statistics/random.ts';

const { uniform } = randomSource('question-size');
const upTo = (count: number) => Math.floor(uniform() * count);
const word = () => Array.from({ length: 5 + upTo(5) }, () => String.fromCharCode(97 + upTo(26))).join('');

/** What a registry of ten thousand profiles holds: 500 machines, 1200 filaments, no name or figure like another. */
function tenThousand(): CatalogueData {
  return {
    policies: ['house'],
    machines: Array.from({ length: 500 }, () => ({
      ...{ id: `${word()}/${word()}`, name: word(), chamber: { enclosed: upTo(2) === 1, heated: false } },
      ...{ noise: 40 + upTo(200) / 10, price: { amount: upTo(5000), currency: 'EUR' } },
      nozzles: [0.4, 0.6, 0.8].map((diameter) => ({
        ...{ id: `hs-${diameter}`, diameter, material: 'hardenedSteel', feeds: 1.75 },
        claims: [{ flow: upTo(900) / 10, polymer: 'PLA', temperature: 200 + upTo(60) }],
      })),
    })),
    filaments: Array.from({ length: 1200 }, () => {
      const low = 190 + upTo(40);
      return {
        ...{ id: `${word()}/${word()}`, name: `${word()} ${word()}`, polymer: 'PLA', diameter: 1.75 },
        window: { low, high: low + 20 + upTo(30) },
      };
    }),
  };
}

function measured(data: CatalogueData): CataloguedPairing {
  const machine = data.machines[upTo(500)];
  const filament = data.filaments[upTo(1200)];
  const limits = Array.from({ length: 1 + upTo(4) }, (_, step) => {
    const value = 10 + upTo(600) / 10;
    const interval = { low: value - upTo(20) / 10, high: value + upTo(20) / 10 };
    return {
      temperature: 200 + 10 * step,
      value,
      interval,
      basis: 'measured',
      isSimulated: false,
      note: null,
    } as const;
  });
  const [
    { value: limit, ...flow } = {
      value: 0,
      interval: null,
      basis: 'measured',
      isSimulated: false,
      note: null,
    } as const,
  ] = limits;
  return {
    ...{ policy: 'house', machine: machine?.id ?? '', nozzle: 'hs-0.6', filament: filament?.id ?? '' },
    ...{ page: '', machineName: '', filamentName: '', polymer: 'PLA', nozzleDiameter: 0.6 },
    ...{ nozzleMaterial: '', chamber: { enclosed: false, heated: false }, noise: null, price: null },
    ...{ temperature: 200, largestFlow: { limit, ...flow }, limits, warnings: upTo(9) },
  };
}

it('a question to ten thousand profiles loads 300 kB at most, gzipped, however little repeats itself', () => {
  const data = tenThousand();
  const pairings = Array.from({ length: 6000 }, () => measured(data));
  const texts = [catalogueScript(data).text, findScript(packPairings('house', pairings, data)).text];
  const sizes = texts.map((text) => gzipSync(text).length);
  console.log(`gzipped, in bytes: ${sizes.join(' and ')}`);
  expect(sizes.reduce((sum, size) => sum + size)).toBeLessThan(300_000);
});
