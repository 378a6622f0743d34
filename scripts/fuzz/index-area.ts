import { loadFiles } from '../../src/registry/load-files.ts';
import { readRegistryIndex } from '../../src/registry/mirror/read-registry-index.ts';
import { formatRegistryIndexAsJson, indexRegistry } from '../../src/registry/mirror/registry-index.ts';
import { verifyIndex } from '../../src/registry/mirror/verify-index.ts';
import { sampleTexts } from '../../tests/sample-texts.ts';
import { type FuzzArea, must, mustBeSafe } from './fuzz-area.ts';

const texts = sampleTexts();
const whole = formatRegistryIndexAsJson(indexRegistry(loadFiles([{ folder: 'profiles', texts }])));

/** An index of a registry, as a mirror holds it. */
export const indexArea: FuzzArea = {
  name: 'indexes',
  share: 0.25,
  seeds: [whole],
  take: (text) => {
    const read = readRegistryIndex(text);
    if (!read.ok) {
      mustBeSafe(`${read.error.message} ${read.error.help}`);
      must(read.error.message.length < 2000, 'a message without an end');
      return false;
    }
    for (const { path } of read.value) {
      must(!path.startsWith('/') && !path.split('/').includes('..'), `leads out of the registry: ${path}`);
    }
    const differences = verifyIndex(read.value, [...texts.keys()], (path) => (texts.has(path) ? path : null));
    must(differences.length >= read.value.length, 'an entry was passed over');
    return true;
  },
};
