import { mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { startChromium } from './chromium.ts';
import { largestDifference, tolerated } from './compare-pictures.ts';
import { type ServedFolder, serveFolder } from './serve-folder.ts';
import {
  fontsFile,
  fontWidths,
  openPictured,
  type PictureName,
  picturedPages,
  pictureOf,
} from './site-pictures.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
// The keys of an object are texts to the compiler.
const names = Object.keys(picturedPages) as PictureName[];
const kept = (name: PictureName) => readFileSync(join(root, picturedPages[name].file));

describe('the pictures of the catalogue that the documents keep', { tags: 'browser' }, () => {
  let folder: string;
  let browser: Browser;
  let served: ServedFolder;
  let hasSameFonts: boolean;
  beforeAll(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-pictures-')));
    const { status, err } = await runCommand(root, ['site', '--out', join(folder, 'site')]);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    served = await serveFolder(join(folder, 'site'));
    browser = await startChromium();
    const page = await openPictured(browser, served.address, 'find');
    hasSameFonts =
      JSON.stringify(await fontWidths(page)) ===
      JSON.stringify(JSON.parse(readFileSync(join(root, fontsFile), 'utf8')));
    await page.context().close();
    // On a clean clone this reduces the trials of the demo first.
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    await served?.close();
    rmSync(folder, { recursive: true });
  });

  it.for(names)('%s is what a reader sees', async (name, { skip }) => {
    if (!hasSameFonts) skip('The fonts of this machine are others than those of the pictures.');
    const page = await openPictured(browser, served.address, name);
    const seen = await pictureOf(page);
    await page.context().close();
    const difference = largestDifference(kept(name), seen);
    if (difference > tolerated) keepSeen(name, seen);
    expect(
      difference,
      `${name}: look at out/pictures/${name}.png; npm run site-pictures draws them anew`,
    ).toBeLessThanOrEqual(tolerated);
  });

  it.each([
    [
      'a block that has moved by 3 px',
      "Object.assign(document.querySelector('#pairings').style, { position: 'relative', top: '3px' })",
    ],
    ['a colour that has changed', "document.documentElement.style.setProperty('--touch', '#545400')"],
    [
      'one digit that is another',
      "(() => { const value = document.querySelector('#pairings strong'); value.textContent = value.textContent.replace(/\\d$/, (digit) => String((Number(digit) + 5) % 10)); })()",
    ],
    ['a line that is not there', "document.querySelector('#pairings tbody tr').remove()"],
  ])('%s is noticed, whatever the fonts', async (_, change) => {
    const page = await openPictured(browser, served.address, 'find');
    const before = await pictureOf(page);
    expect(largestDifference(before, await pictureOf(page))).toBe(0);
    await page.evaluate(change);
    expect(largestDifference(before, await pictureOf(page))).toBeGreaterThan(tolerated);
    await page.context().close();
  });

  it('another size is another picture', () => {
    expect(largestDifference(kept('find'), kept('trial'))).toBeGreaterThan(tolerated);
  });

  it('are small', () => {
    const sizes = names.map((name) => statSync(join(root, picturedPages[name].file)).size);
    expect(sizes.reduce((sum, size) => sum + size)).toBeLessThan(600_000);
  });
});

/** What was seen, for whoever looks into a difference. */
function keepSeen(name: PictureName, seen: Uint8Array): void {
  mkdirSync(join(root, 'out/pictures'), { recursive: true });
  writeFileSync(join(root, `out/pictures/${name}.png`), seen);
}
