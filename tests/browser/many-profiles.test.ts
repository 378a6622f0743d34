import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { sampleRegistry } from '../sample-registry.ts';
import { startChromium } from './chromium.ts';
import { serveFolder } from './serve-folder.ts';

const copies = 60;

/** The sample registry with many machines and filaments, of which nobody has tested most with each other. */
function manyProfiles(folder: string): string {
  const { read, write, cwd } = sampleRegistry(folder);
  const wren = read('machines/plumstead/wren.yaml');
  const clover = read('filaments/oakhollow/clover-petg.yaml');
  for (let number = 1; number <= copies; number++) {
    const named = (text: string, id: string) =>
      text.replace(`id: ${id}`, `id: ${id}-${number}`).replace(/^name: (.*)$/m, `name: $1 No. ${number}`);
    write(`machines/plumstead/wren-${number}.yaml`, named(wren, 'plumstead/wren'));
    write(`filaments/oakhollow/clover-petg-${number}.yaml`, named(clover, 'oakhollow/clover-petg'));
  }
  return cwd;
}

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const results: AxeResults = await page.evaluate(
    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })",
  );
  return results.violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)].join('\n'));
}

describe('the catalogue of many machines and filaments', { tags: 'browser' }, () => {
  let folder: string;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const address = (path: string) => pathToFileURL(join(folder, 'public', path)).href;
  const boxOf = (name: string) => page.getByRole('combobox', { name });
  beforeAll(async () => {
    folder = manyProfiles(realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-many-'))));
    const { status, err } = await runCommand(folder, ['site', '--out', 'public']);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    browser = await startChromium();
    context = await browser.newContext({ bypassCSP: true, viewport: { width: 400, height: 900 } });
    page = await context.newPage();
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  it('names what would hold a question if it were measured, in parts, and leads to the bench', async () => {
    await page.goto(`${address('index.html')}#flow=5`);
    const heading = page.locator('#untested');
    await heading.waitFor();
    expect(await heading.textContent()).toMatch(/^\d+ pairings would hold it if the limit were measured$/);
    const rows = page.locator('#untested ~ section').last().locator('tbody tr');
    expect(await rows.count()).toBe(50);
    await page.getByRole('button', { name: 'Show more' }).last().click();
    expect(await rows.count()).toBeGreaterThan(50);
    expect(await page.evaluate('document.activeElement.id')).toBe('untested');
    expect(await rows.first().locator('td a').first().getAttribute('href')).toMatch(
      /^bench\.html#machine=plumstead%2Fwren(?:-\d+)?&nozzle=[a-z0-9.-]+&filament=oakhollow%2F/,
    );
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(400);
  });

  it('puts pairings beside each other that are found by typing, and takes them away', async () => {
    await page.goto(address('compare.html'));
    const box = boxOf('Add a pairing');
    await box.fill('daisy wren hs-0.6');
    const options = page.locator('.choice [role="option"]');
    await options.first().waitFor();
    expect(await violations(page)).toEqual([]);
    expect(await options.first().getAttribute('aria-selected')).toBe('true');
    await page.keyboard.press('Enter');
    await page.locator('.compared').waitFor();
    expect(new URLSearchParams(new URL(page.url()).hash.slice(1)).getAll('pairing')).toEqual([
      'pairings/house/plumstead/wren/hs-0.6/oakhollow/daisy-pla.html',
    ]);
    expect(await box.inputValue()).toBe('');
    await page.getByRole('button', { name: 'remove plumstead/wren/hs-0.6/oakhollow/daisy-pla' }).click();
    await page.locator('.compared').waitFor({ state: 'detached' });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(400);
  });

  it('begins a run for one of many machines, by keys alone', async () => {
    const served = await serveFolder(join(folder, 'public'));
    await page.goto(`${served.address}bench.html#machine=plumstead/wren-7&filament=oakhollow/clover-petg-9`);
    const machine = boxOf('Machine');
    await machine.waitFor();
    expect(await machine.inputValue()).toBe('Wren No. 7 (plumstead/wren-7)');
    expect(await boxOf('Filament').inputValue()).toMatch(/\(oakhollow\/clover-petg-9\)$/);
    await machine.focus();
    await page.keyboard.type('no 4');
    await page.locator('.choice [role="option"]').first().waitFor();
    expect(
      await page
        .getByText(/^\d+ found\.$|type on/)
        .first()
        .isVisible(),
    ).toBe(true);
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('ArrowUp');
    const active = await machine.getAttribute('aria-activedescendant');
    expect(await page.locator(`[id="${active}"]`).textContent()).toBe('Wren No. 4 (plumstead/wren-4)');
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Enter');
    expect(await page.locator('input[name="machine"]').inputValue()).toBe('plumstead/wren-4');
    await page.keyboard.type('zzz');
    await page.keyboard.press('Escape');
    expect(await machine.inputValue()).toBe('Wren No. 4 (plumstead/wren-4)');
    expect(await page.locator('#start-nozzle option').count()).toBeGreaterThan(1);
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(400);
    await served.close();
  });
});
