// Draws the pictures of the catalogue that are kept under docs/figures/, from the demo registry, and notes the fonts they are drawn in.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import writeFileAtomic from 'write-file-atomic';
import { syncFolder } from '../src/host/writing/sync-folder.ts';
import { formatSite, loadRegistry } from '../src/index.ts';
import { startChromium } from '../tests/browser/chromium.ts';
import { serveFolder } from '../tests/browser/serve-folder.ts';
import {
  fontsFile,
  fontWidths,
  openPictured,
  type PictureName,
  picturedPages,
  pictureOf,
} from '../tests/browser/site-pictures.ts';

/** The day on which evidence is judged, so that the pictures do not depend on the clock. */
const today = '2026-06-01';

const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'meltbounds-pictures-'));
const browser = await startChromium();
try {
  const loaded = loadRegistry(['profiles'], root);
  if (!loaded.ok) throw new Error(loaded.error.message);
  const files = formatSite(loaded.value.registry, today);
  const written = await syncFolder(files, join(folder, 'site'), 'site', folder);
  if (!written.ok) throw new Error(written.error.message);
  const served = await serveFolder(join(folder, 'site'));
  // The keys of an object are texts to the compiler.
  for (const name of Object.keys(picturedPages) as PictureName[]) {
    const page = await openPictured(browser, served.address, name);
    await writeFileAtomic(join(root, picturedPages[name].file), await pictureOf(page));
    if (name === 'find')
      await writeFileAtomic(join(root, fontsFile), `[${(await fontWidths(page)).join(', ')}]\n`);
    await page.context().close();
  }
  await served.close();
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
