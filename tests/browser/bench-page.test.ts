import { cpSync, mkdirSync, mkdtempSync, readFileSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { methodNames } from '../../src/bench/method-facts.ts';
import { draftForm } from '../../src/site/bench/draft-form.ts';
import { runCommand } from '../run-command.ts';
import { keptRecords } from '../site/bench/kept-records.ts';
import { type BegunRun, beginLadder, readings, typeLadder } from './bench-steps.ts';
import { startChromium } from './chromium.ts';
import { type ServedFolder, serveFolder } from './serve-folder.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** A pairing of the demo registry that no bench has run yet. */
const untested: BegunRun = {
  machine: 'tollwick/steeple',
  filament: 'ashgrove/stagecraft-petg',
  nozzle: 'hs-0.4',
};

describe('the bench page in a browser', { tags: 'browser' }, () => {
  let folder: string;
  let browser: Browser;
  let served: ServedFolder;
  const contexts: BrowserContext[] = [];
  beforeAll(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-bench-')));
    cpSync(join(root, 'profiles'), join(folder, 'profiles'), { recursive: true });
    cpSync(join(root, 'schema'), join(folder, 'schema'), { recursive: true });
    writeFileSync(join(folder, 'package.json'), JSON.stringify({ meltbounds: { webEditor } }));
    const { status, err } = await runCommand(folder, ['site', '--out', 'site']);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    served = await serveFolder(join(folder, 'site'));
    browser = await startChromium();
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    await served?.close();
    rmSync(folder, { recursive: true });
  });

  /** A page with a store of its own, and what it complains about. */
  async function newPage(options: Parameters<Browser['newContext']>[0] = {}) {
    const context = await browser.newContext(options);
    contexts.push(context);
    const page = await context.newPage();
    const complaints: string[] = [];
    page.on('console', (message) => complaints.push(message.text()));
    page.on('pageerror', (error) => complaints.push(error.message));
    return { page, context, complaints };
  }

  /** Waits until all that was typed is reduced and judged. */
  async function judged(page: Page): Promise<void> {
    await page.locator('#bench-limit[aria-busy="false"]').waitFor();
    await page.locator('#bench-files:not([inert]) #bench-verdict').waitFor();
  }

  it('takes a pairing from nothing to files that the program finds nothing wrong with', async () => {
    const { page, complaints } = await newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(`${served.address}index.html`);
    await page.getByRole('link', { name: 'Bench', exact: true }).click();
    await beginLadder(page, untested);
    await page.getByText('Facts of the run').click();
    await page.getByLabel('Operator').fill('Bench team');
    await page.getByLabel('Batch').fill('26-1102');
    await page.getByLabel('Relative humidity').fill('45 %');
    await typeLadder(page, 47);
    await judged(page);
    expect(await page.locator('#bench-verdict').textContent()).toBe('No problems found.');
    const limit = (await page.locator('#bench-limit').textContent()) ?? '';
    const day = await page.getByLabel('Date').inputValue();

    const paths = await page.locator('.files code').allTextContents();
    expect(paths).toHaveLength(3);
    for (const [place, path] of paths.entries()) {
      const downloading = page.waitForEvent('download');
      await page.locator('.files li').nth(place).getByRole('link', { name: 'Download' }).click();
      const download = await downloading;
      expect(path.endsWith(download.suggestedFilename())).toBe(true);
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      await download.saveAs(join(folder, path));
    }
    const profiles = paths.filter((path) => path.endsWith('.yaml'));
    const checked = await runCommand(folder, ['check', ...profiles, '--today', day]);
    expect(checked).toMatchObject({ status: 0, out: expect.stringContaining('no problems found') });
    const id = /([^/]+)\.yaml$/.exec(paths[0] ?? '')?.[1] ?? '';
    const reduced = await runCommand(folder, ['reduce', id, '--no-plot']);
    const [, value, interval] =
      /^Melt flow limit ([\d.]+ mm³\/s), 95 % interval ([\d.–]+ mm³\/s)/.exec(reduced.out) ?? [];
    expect(limit).toContain(`${value} 95 % interval ${interval}`);

    // The sheet that the page has written is read by it again, and written with the same bytes.
    const sheet = join(folder, paths[1] ?? '');
    await page.getByLabel('A sheet from a file').setInputFiles(sheet);
    await page.getByText(/^The sheet stands here now/).waitFor();
    await judged(page);
    const again = page.waitForEvent('download');
    await page.locator('.files li').nth(1).getByRole('link', { name: 'Download' }).click();
    const copy = await (await again).path();
    expect(readFileSync(copy)).toEqual(readFileSync(sheet));
    expect(asked.filter((url) => !url.startsWith(served.address) && !url.startsWith('data:'))).toEqual([]);
    expect(complaints).toEqual([]);
  });

  it('opens a new file in the web editor that the registry names', async () => {
    const { page } = await newPage();
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    await judged(page);
    const link = page.locator('.files li').first().getByRole('link', { name: 'Open in the web editor' });
    const { origin, searchParams } = new URL((await link.getAttribute('href')) ?? '');
    expect(origin).toBe('https://code.example');
    expect(searchParams.get('filename')).toMatch(/^profiles\/trials\/\d{4}\/steeple-stagecraft-petg-245/);
    expect(searchParams.get('value')).toContain('kind: trial\n');
  });

  it('shows the limit at once after each reading, goes on with Enter, and brings back with Undo', async () => {
    const { page } = await newPage();
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    await typeLadder(page, 47);
    const limit = page.locator('#bench-limit');
    await judged(page);
    const before = await limit.textContent();
    const first = readings(page).first();
    await first.fill('2.00');
    await expect.poll(() => limit.textContent(), { timeout: 10_000 }).not.toBe(before);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => limit.textContent(), { timeout: 10_000 }).toBe(before);
    expect(await first.inputValue()).not.toBe('2.00');
    await first.focus();
    await page.keyboard.press('Enter');
    expect(await page.locator(':focus').getAttribute('id')).toBe(
      await readings(page).nth(1).getAttribute('id'),
    );
    await first.fill('three');
    await page.getByText('This is no number.').waitFor();
    expect(await first.getAttribute('aria-invalid')).toBe('true');
  });

  it('shows the limit within 0.3 s after a reading, as the median of nine', async () => {
    const { page } = await newPage();
    await page.addInitScript(`
      globalThis.delays = [];
      let typed = 0;
      addEventListener('input', () => { typed = performance.now(); }, true);
      addEventListener('DOMContentLoaded', () =>
        new MutationObserver((changes) => {
          if (typed === 0 || !changes.some(({ target }) => target.id === 'bench-limit')) return;
          delays.push(performance.now() - typed);
          typed = 0;
        }).observe(document.body, { childList: true, subtree: true }));
    `);
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    await typeLadder(page, 47);
    await judged(page);
    await page.evaluate('void (delays.length = 0)');
    const limit = page.locator('#bench-limit');
    for (let step = 1; step <= 9; step++) {
      const before = await limit.textContent();
      await readings(page)
        .first()
        .fill(step % 2 === 1 ? '3.20' : '3.36');
      await expect.poll(() => limit.textContent(), { timeout: 10_000 }).not.toBe(before);
      await judged(page);
    }
    const delays = await page.evaluate<number[]>('delays');
    expect(delays).toHaveLength(9);
    expect(delays.toSorted((one, other) => one - other)[4]).toBeLessThan(300);
  });

  it.each([...methodNames])('begins a run of %s', async (method) => {
    const { page, complaints } = await newPage();
    await page.goto(`${served.address}bench.html`);
    await page.getByLabel('Method').selectOption(method);
    await page.getByLabel('Machine').selectOption('emberlow/hearth');
    await page.getByLabel('Filament').selectOption('quillmere/rigging-abs');
    await page.getByRole('button', { name: 'Begin' }).click();
    await readings(page).first().waitFor();
    await judged(page);
    await page.getByText('The plan: what to expect').click();
    expect(await page.locator('#bench-plan h3').count()).toBeGreaterThan(1);
    expect(await page.locator('#bench-verdict').textContent()).toMatch(/^\d+ finding|^No problems/);
    expect(complaints).toEqual([]);
  });

  it('lets nobody lose the other’s readings where one run is open on two pages', async () => {
    const { page, context } = await newPage();
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    const other = await context.newPage();
    await other.goto(page.url());
    await readings(other).first().waitFor();
    await page.getByText('open on another page').waitFor();
    await readings(page).nth(0).fill('3,36');
    await readings(other).nth(1).fill('3,35');
    await expect.poll(() => readings(other).nth(0).inputValue(), { timeout: 10_000 }).toBe('3,36');
    await expect.poll(() => readings(page).nth(1).inputValue(), { timeout: 10_000 }).toBe('3,35');
    // Of two texts in one field the later counts, on both pages and on the disk.
    await readings(page).nth(3).focus();
    await readings(other).nth(0).fill('3,34');
    await expect.poll(() => readings(page).nth(0).inputValue(), { timeout: 10_000 }).toBe('3,34');
    await readings(other).nth(1).focus();
    await readings(page).nth(1).fill('3,33');
    await readings(other).nth(2).focus();
    await expect.poll(() => readings(other).nth(1).inputValue(), { timeout: 10_000 }).toBe('3,33');
    await page.reload();
    await readings(page).first().waitFor();
    expect(await readings(page).nth(0).inputValue()).toBe('3,34');
    expect(await readings(page).nth(1).inputValue()).toBe('3,33');
  });

  it('opens without a network once it was opened with one, and reduces', async () => {
    const lent = await serveFolder(join(folder, 'site'));
    const { page, context } = await newPage();
    await page.goto(`${lent.address}bench.html`);
    await beginLadder(page, untested);
    await readings(page).nth(0).fill('3,36');
    await page.getByText(/^saved on this device/).waitFor();
    await page.evaluate('navigator.serviceWorker.ready.then(() => null)');
    await lent.close();
    await context.setOffline(true);
    await expect.poll(() => page.locator('#bench-keeping').textContent()).toMatch(/^saved .* · offline$/);
    await page.reload();
    await readings(page).first().waitFor();
    expect(await readings(page).nth(0).inputValue()).toBe('3,36');
    await typeLadder(page, 47);
    await page.locator('#bench-limit strong').waitFor();
    await page.getByRole('link', { name: 'Other runs' }).click();
    await beginLadder(page, { ...untested, machine: 'brackwater/lantern', nozzle: 'hs-0.6' });
  });

  it.each([
    ['there is no store', 'Object.defineProperty(globalThis, "indexedDB", { value: undefined });'],
    [
      'the store does not open',
      'IDBFactory.prototype.open = () => { throw new DOMException("no", "SecurityError"); };',
    ],
    [
      'the store is full',
      'IDBObjectStore.prototype.put = () => { throw new DOMException("full", "QuotaExceededError"); };',
    ],
  ])('goes on in memory where %s, says so, and hands out the file', async (_, script) => {
    const { page } = await newPage();
    await page.addInitScript(script);
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    await readings(page).nth(0).fill('3,36');
    await page.getByText(/^Not saved on this device: /).waitFor();
    const downloading = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Everything typed (draft)' }).click();
    const file = await (await downloading).path();
    expect(readFileSync(file, 'utf8')).toContain('3,36');

    const { page: elsewhere } = await newPage();
    await elsewhere.goto(`${served.address}bench.html`);
    await elsewhere.getByLabel('A draft from a file').setInputFiles(file);
    await readings(elsewhere).first().waitFor();
    expect(await readings(elsewhere).nth(0).inputValue()).toBe('3,36');
  });

  it('goes on saving after the browser has closed its store under the page', async () => {
    const { page, context } = await newPage();
    await page.goto(`${served.address}bench.html`);
    await beginLadder(page, untested);
    await page.getByText(/^saved on this device/).waitFor();
    // Another page that wants a later version of the store has this one closed.
    const other = await context.newPage();
    await other.goto(`${served.address}index.html`);
    await other.evaluate(
      "new Promise((resolve) => { indexedDB.deleteDatabase('meltbounds-bench').onsuccess = () => resolve(null); })",
    );
    await page.getByText(/^Not saved on this device: the browser has closed its store/).waitFor();
    await readings(page).nth(0).fill('3,36');
    await page.getByText(/^saved on this device/).waitFor({ timeout: 10_000 });
    const downloading = page.waitForEvent('download');
    await page.getByRole('link', { name: 'Everything typed (draft)' }).click();
    expect(readFileSync(await (await downloading).path(), 'utf8')).toContain('3,36');
    await page.reload();
    await readings(page).first().waitFor();
    expect(await readings(page).nth(0).inputValue()).toBe('3,36');
  });

  it.each([
    [400, 'light'],
    [1280, 'dark'],
  ] as const)(
    'keeps the rules of access at %i px, %s, and its targets are large',
    async (width, colorScheme) => {
      const { page } = await newPage({ bypassCSP: true, colorScheme, viewport: { width, height: 900 } });
      await page.goto(`${served.address}bench.html`);
      await page.getByRole('button', { name: 'Begin' }).waitFor();
      expect(await violations(page)).toEqual([]);
      await beginLadder(page, untested);
      await typeLadder(page, 47);
      await readings(page).nth(2).fill('x');
      await judged(page);
      for (const summary of await page.locator('#bench > section > details > summary').all())
        await summary.click();
      expect(await violations(page)).toEqual([]);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      const targets = page.locator(
        '#bench input, #bench button, #bench select, #bench summary, #bench .chosen a, #bench figcaption a, #bench-known a',
      );
      const low = await targets.evaluateAll((all) =>
        all
          .filter((each) => each.checkVisibility() && each.getBoundingClientRect().height < 44)
          .map((each) => each.outerHTML),
      );
      expect(low).toEqual([]);
    },
  );

  it('opens the drafts that older versions of the page left on the device', async () => {
    const { page, complaints } = await newPage();
    for (let form = 1; form <= draftForm; form++) {
      const { version, records } = keptRecords(form);
      // A page without the script of the bench, so that the store is the one that the older page made.
      await page.goto(`${served.address}rules.html`);
      await page.evaluate(`new Promise((resolve, reject) => {
        const opening = indexedDB.open('meltbounds-bench', ${version});
        opening.onupgradeneeded = () => opening.result.createObjectStore('entries', { keyPath: ['draft', 'key'] });
        opening.onerror = () => reject(opening.error);
        opening.onsuccess = () => {
          const writing = opening.result.transaction('entries', 'readwrite');
          for (const record of ${JSON.stringify(records)}) writing.objectStore('entries').put(record);
          writing.oncomplete = () => { opening.result.close(); resolve(null); };
        };
      })`);
      await page.goto(`${served.address}bench.html`);
      await page.getByRole('button', { name: 'Go on' }).click();
      await readings(page).nth(19).waitFor();
      expect(await readings(page).first().inputValue()).toBe('3,36');
      expect(await readings(page).nth(19).inputValue()).toBe('2,47');
      await judged(page);
      expect(await page.locator('#bench-limit').textContent()).toContain('45 mm³/s');
      await page.evaluate("indexedDB.deleteDatabase('meltbounds-bench')");
    }
    expect(complaints).toEqual([]);
  });

  it('says what it needs where it is opened as a file', async () => {
    const { page } = await newPage();
    await page.goto(pathToFileURL(join(folder, 'site/bench.html')).href);
    expect(await page.locator('#bench-needs').isVisible()).toBe(true);
    expect(await page.getByRole('button').count()).toBe(0);
  });
});

const webEditor = {
  newFile: 'https://code.example/team/registry/new/main?filename={path}&value={text}',
  editFile: 'https://code.example/team/registry/edit/main/{path}',
};

async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const run =
    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })";
  const results: AxeResults = await page.evaluate(run);
  return results.violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)].join('\n'));
}
