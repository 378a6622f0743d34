import { mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { startChromium } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** One of each kind of page of the demo registry. */
const kinds = [
  ...[
    'index.html',
    'compare.html',
    'machines.html',
    'trials.html',
    'quirks.html',
    'rules.html',
    'untabled.html',
  ],
  'pairings/workshop/brackwater/lantern/hs-0.6/ashgrove/stagecraft-pla.html',
  'machines/emberlow/hearth.html',
  'filaments/ashgrove/stagecraft-pla.html',
  'trials/hearth-rigging-abs-255.html',
  'sources/crawford-1998.html',
  'policies/workshop.html',
  'polymers/PLA.html',
  'jobs/prop-bottle.html',
  'rules/plausibility/heater-for-flow.html',
];

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const run =
    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })";
  const results: AxeResults = await page.evaluate(run);
  return results.violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)].join('\n'));
}

describe('the catalogue in a browser, opened as files', { tags: 'browser' }, () => {
  let folder: string;
  let browser: Browser;
  let page: Page;
  const address = (path: string) => pathToFileURL(join(folder, path)).href;
  beforeAll(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-catalogue-')));
    const { status, err } = await runCommand(root, ['site', '--out', join(folder, 'site')]);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    folder = join(folder, 'site');
    browser = await startChromium();
    // axe is put into the page from outside, which the policy of the page would refuse.
    page = await (await browser.newContext({ bypassCSP: true })).newPage();
    // On a clean clone this reduces the trials of the demo first.
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(join(folder, '..'), { recursive: true });
  });

  it.each(kinds)(
    '%s keeps the rules of access, light and dark, and needs no sideways scrolling',
    async (path) => {
      for (const [width, colorScheme] of [
        [400, 'light'],
        [1280, 'dark'],
        [3840, 'light'],
      ] as const) {
        await page.emulateMedia({ colorScheme });
        await page.setViewportSize({ width, height: 900 });
        await page.goto(address(path));
        expect.soft(await page.evaluate('document.documentElement.scrollWidth'), `${width}`).toBe(width);
        if (width < 3840) expect.soft(await violations(page), `${width} ${colorScheme}`).toEqual([]);
      }
    },
  );

  it('applies its style under its own policy, and asks for nothing but its files', async () => {
    const strict = await browser.newPage();
    const asked: string[] = [];
    const complaints: string[] = [];
    strict.on('request', (request) => asked.push(request.url()));
    strict.on('console', (message) => complaints.push(message.text()));
    await strict.goto(address(kinds[0] ?? ''));
    await strict.getByRole('link', { name: 'Trials', exact: true }).click();
    expect(await strict.title()).toBe('Trials');
    expect(await strict.evaluate("getComputedStyle(document.querySelector('nav ul')).listStyleType")).toBe(
      'none',
    );
    expect(asked.filter((url) => !url.startsWith(pathToFileURL(folder).href))).toEqual([]);
    expect(complaints).toEqual([]);
    await strict.close();
  });

  it('answers a question by target, keeps it in the address, and compares what is chosen', async () => {
    const strict = await browser.newPage();
    const complaints: string[] = [];
    strict.on('console', (message) => complaints.push(message.text()));
    strict.on('pageerror', (error) => complaints.push(error.message));
    await strict.goto(address('index.html'));
    await strict.getByLabel('House rules').first().selectOption('workshop');
    await strict.getByLabel('Flow at least').fill('25');
    await strict.getByLabel('Nozzle at most').fill('230');
    await strict.getByLabel('Basis at least').selectOption('measured');
    const found = strict.locator('#found').filter({ hasText: /^\d+ pairings hold all that is asked$/ });
    await found.waitFor();
    const flows = await strict.locator('#pairings table').first().locator('tbody strong').allTextContents();
    expect(flows.map(Number)).toEqual(flows.map(Number).toSorted((one, other) => other - one));
    expect(flows.every((flow) => Number(flow) >= 25)).toBe(true);

    const count = await found.textContent();
    const again = await browser.newPage();
    await again.goto(strict.url());
    await again.locator('#found').waitFor();
    expect(await again.locator('#found').textContent()).toBe(count);
    expect(await again.getByLabel('Flow at least').inputValue()).toBe('25');
    await again.close();

    const boxes = strict.locator('input[name="pairing"]');
    await boxes.nth(0).focus();
    await strict.keyboard.press('Space');
    await boxes.nth(2).check();
    const list = strict.getByRole('link', { name: 'List (CSV)' });
    const [download] = await Promise.all([strict.waitForEvent('download'), list.click()]);
    expect(download.suggestedFilename()).toBe('pairings.csv');
    expect(
      readFileSync(await download.path(), 'utf8')
        .trim()
        .split('\r\n'),
    ).toHaveLength(flows.length + 1);
    await strict.getByRole('link', { name: 'Compare 2 pairings' }).click();
    const table = strict.locator('.compared');
    await table.waitFor();
    expect(await table.locator('thead a').count()).toBe(2);
    expect(await table.locator('.unequal').count()).toBeGreaterThan(0);
    expect(await strict.locator('figure svg').count()).toBeGreaterThan(0);
    const csv = await strict.getByRole('link', { name: 'Numbers (CSV)' }).first().getAttribute('href');
    expect(decodeURIComponent(csv ?? '')).toMatch(
      /^data:text\/csv;charset=utf-8,mark,name,commanded flow \(mm³\/s\)/,
    );
    expect(complaints).toEqual([]);
    // The same in a page where axe may look.
    await page.setViewportSize({ width: 400, height: 900 });
    await page.goto(strict.url());
    await page.locator('.compared').waitFor();
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(400);
    expect(await violations(page)).toEqual([]);
    await strict.close();
  });

  it('finds by name with a slip of the keys, and by the words of a quirk', async () => {
    const strict = await browser.newPage();
    await strict.goto(address('index.html'));
    const search = strict.getByLabel('Search:');
    await search.fill('stagcraft pla');
    await strict.locator('#matches').getByRole('link', { name: 'Stagecraft PLA', exact: true }).click();
    expect(await strict.title()).toBe('Stagecraft PLA (filament)');
    await strict.goto(`${address('index.html')}#search=chamber+50+min`);
    await strict.locator('#matches a').first().waitFor();
    expect(await strict.locator('#matches a').allTextContents()).toContain('Hearth');
    await strict.close();
  });

  it('has no dead form where no script runs', async () => {
    const context = await browser.newContext({ javaScriptEnabled: false });
    const still = await context.newPage();
    await still.goto(address('index.html'));
    expect(await still.locator('#find').isVisible()).toBe(false);
    expect(await still.locator('.pairings').first().isVisible()).toBe(true);
    await context.close();
  });

  it('prints the card of a pairing on its first page, without the ways to other pages', async () => {
    await page.emulateMedia({ media: 'print' });
    await page.goto(address('pairings/workshop/brackwater/lantern/hs-0.6/ashgrove/stagecraft-pla.html'));
    expect(await page.locator('nav').first().isVisible()).toBe(false);
    expect(await page.evaluate("document.querySelector('.card').getBoundingClientRect().top")).toBeLessThan(
      5,
    );
    await page.emulateMedia({ media: null });
  });
});
