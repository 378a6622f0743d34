import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadFolders } from '../../src/host/load-registry.ts';
import { formatSite } from '../../src/site/format-site.ts';
import { testDay } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';

/** The files of the catalogue of the sample registry, by their paths. */
export function sampleSite(change: (registry: ReturnType<typeof sampleRegistry>) => void = () => {}) {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-site-')));
  try {
    change(sampleRegistry(folder));
    const { registry } = loadFolders(['profiles'], folder);
    return new Map([...formatSite(registry, testDay)].map(({ path, text }) => [path, text]));
  } finally {
    rmSync(folder, { recursive: true });
  }
}
