// Draws the pictures of the catalogue that the documents show, from the demo registry: docs/figures/site-*.png.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { syncFolder } from '../src/host/writing/sync-folder.ts';
import { formatSite, loadRegistry } from '../src/index.ts';
import { startChromium } from '../tests/browser/chromium.ts';

/** The day on which evidence is judged, so that the pictures do not depend on the clock. */
const today = '2026-06-01';

const pictures = {
  find: 'index.html#policy=workshop&flow=25&temperature=230&basis=measured',
  pairing: 'pairings/workshop/brackwater/lantern/hs-0.6/ashgrove/stagecraft-pla.html',
} as const;

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'meltbounds-pictures-'));
const browser = await startChromium();
try {
  const loaded = loadRegistry(['profiles'], root);
  if (!loaded.ok) throw new Error(loaded.error.message);
  const files = [...formatSite(loaded.value.registry, today)].map(({ path, text }) => [path, text] as const);
  const written = await syncFolder(files, join(folder, 'site'), 'site', folder);
  if (!written.ok) throw new Error(written.error.message);
  const page = await browser.newPage({ viewport: { width: 1280, height: 1000 } });
  for (const [name, address] of Object.entries(pictures)) {
    await page.goto(`${pathToFileURL(join(folder, 'site')).href}/${address}`);
    await page.screenshot({ path: join(root, `docs/figures/site-${name}.png`) });
  }
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
