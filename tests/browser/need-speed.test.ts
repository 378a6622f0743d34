import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shellWords } from '../../scripts/docs/shell-words.ts';
import { runCommand, unwrapped } from '../run-command.ts';
import { startChromium } from './chromium.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const lantern = 'pairings/workshop/brackwater/lantern/hs-0.4/ashgrove/stagecraft-pla.html';
const steeple = 'pairings/workshop/tollwick/steeple/hs-0.4/ashgrove/stagecraft-pla.html';

describe('"Do I need the speed?" in a browser, opened as files', { tags: 'browser' }, () => {
  let folder: string;
  let browser: Browser;
  const complaints: string[] = [];
  beforeAll(async () => {
    folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-need-')));
    const { status, err } = await runCommand(root, ['site', '--out', join(folder, 'site')]);
    if (status !== 0) throw new Error(`site ended with ${status}: ${err}`);
    browser = await startChromium();
    // On a clean clone this reduces the trials of the demo first.
  }, 600_000);
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true });
  });

  async function opened(asked: string, page?: Page): Promise<Page> {
    const shown = page ?? (await browser.newPage());
    shown.on('console', (message) => complaints.push(message.text()));
    shown.on('pageerror', (error) => complaints.push(error.message));
    const pairings = new URLSearchParams(
      [lantern, steeple].map((each): [string, string] => ['pairing', each]),
    );
    await shown.goto(`${pathToFileURL(join(folder, 'site/compare.html')).href}#${pairings}${asked}`);
    await shown.locator('#need-form').waitFor();
    return shown;
  }

  /** Every row of the figures, as the command writes it between bars. */
  const rowsOf = (page: Page): Promise<string[]> =>
    page
      .locator('.need-figures tbody tr')
      .evaluateAll((rows) => rows.map((row) => [...row.children].map((cell) => cell.textContent).join('|')));

  async function printedFor(page: Page): Promise<{ readonly answer: string; readonly rows: string[] }> {
    const words = shellWords((await page.locator('#need-figures pre').textContent()) ?? '').slice(2);
    const { status, out } = await runCommand(root, [...words, '--format', 'markdown']);
    expect(status).toBe(0);
    const cells = (line: string) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.replace(/[*\\]/g, '').trim());
    return {
      answer: unwrapped(out),
      rows: out
        .split('\n')
        .filter((line) => line.startsWith('|'))
        .map((line) => cells(line).join('|')),
    };
  }

  it('answers with the sentence and the figures of the command, whatever the sliders stand at', async () => {
    const page = await opened('');
    expect(await page.getByLabel('Job', { exact: true }).inputValue()).toBe('mask-rack');
    const before = await page.locator('#need-told').textContent();
    await page.getByRole('slider', { name: 'Share of the melt flow limit' }).focus();
    for (let steps = 0; steps < 40; steps++) await page.keyboard.press('ArrowLeft');
    await page.getByRole('slider', { name: 'Layer height' }).focus();
    for (let steps = 0; steps < 4; steps++) await page.keyboard.press('ArrowRight');
    await page.getByLabel('Jobs that pay for the machine').fill('2000');
    await page.getByLabel('Worth of a saved hour').fill('38,50');
    await page.getByLabel('Price of tollwick/steeple').fill('3990');
    await page.getByLabel('Power, an hour').fill('0.06');
    const told = (await page.locator('#need-told').textContent()) ?? '';
    expect(told).not.toBe(before);
    expect(new URL(page.url()).hash).toContain(
      '&job=mask-rack&layer=0.24&share=60&jobs=2000&price2=3990&hour=38%2C50&power=0.06',
    );
    expect(await page.locator('#need-figures caption').textContent()).toBe(
      'Job mask-rack (Mask rack, three pegs), policy workshop, layers of 0.24 mm, 60 % of the melt flow',
    );

    const { answer, rows } = await printedFor(page);
    expect(answer).toContain(told);
    const shown = (await rowsOf(page)).filter((row) => row.includes('|'));
    expect(shown.length).toBeGreaterThan(30);
    expect(shown.filter((row) => !rows.includes(row))).toEqual([]);
    expect(shown).toContain('machine price|1580 EUR claimed|3990 EUR assumed');
    expect(shown.find((row) => row.startsWith('pays, an hour at 38.50 EUR'))).toMatch(/after \d+ jobs$/);
    expect(await page.locator('#need .unreal').textContent()).toContain('Simulated readings');

    const again = await opened(new URL(page.url()).hash.replace(/^.*(?=&job=)/, ''));
    expect(await rowsOf(again)).toEqual(await rowsOf(page));
    expect(await again.getByLabel('Worth of a saved hour').inputValue()).toBe('38,50');
    await again.getByRole('button', { name: 'As the job and the house rules say' }).click();
    expect(await again.locator('#need-told').textContent()).toBe(before);
    await again.close();
    await page.close();
    expect(complaints).toEqual([]);
  });

  it('goes to the layers of another job when that is chosen, and says what it cannot read at its field', async () => {
    const page = await opened('&job=mask-rack&layer=0.3&hour=much');
    expect(await page.locator('#need-hour-wrong').textContent()).toBe('Not read, so it does not count.');
    expect(await page.getByLabel('Worth of a saved hour').getAttribute('aria-invalid')).toBe('true');
    await page.getByLabel('Job', { exact: true }).selectOption('prop-bottle');
    expect(await page.locator('output[for="need-layer"]').textContent()).toBe('0.3 mm, as the job has it');
    expect(new URL(page.url()).hash).not.toContain('layer');
    await page.close();
  });

  it('keeps the rules of access, light and dark, on a telephone and a desk, with targets of 44 px', async () => {
    const context = await browser.newContext({ bypassCSP: true });
    const page = await context.newPage();
    for (const [width, colorScheme] of [
      [400, 'dark'],
      [400, 'light'],
      [1280, 'dark'],
      [3840, 'light'],
    ] as const) {
      await page.setViewportSize({ width, height: 900 });
      await page.emulateMedia({ colorScheme });
      await opened('&share=50&jobs=100', page);
      await page.evaluate(axe.source);
      const run =
        "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] })";
      const results: AxeResults = await page.evaluate(run);
      expect
        .soft(results.violations.map(({ id, nodes }) => [id, ...nodes.map(({ html }) => html)]))
        .toEqual([]);
      expect.soft(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
      const sizes = await page
        .locator('#need-form :is(input, select, button)')
        .evaluateAll((all) =>
          all.map((each) => each.getBoundingClientRect()).map((box) => Math.min(box.width, box.height)),
        );
      expect.soft(Math.min(...sizes)).toBeGreaterThanOrEqual(44);
    }
    await context.close();
  });

  it('prints what was asked with its answer, without the form', async () => {
    const page = await opened('&share=50');
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('#need-form').isVisible()).toBe(false);
    expect(await page.locator('#need-told').isVisible()).toBe(true);
    expect(await page.locator('#need-figures caption').textContent()).toContain('50 % of the melt flow');
    await page.close();
  });

  it('loads nothing from elsewhere, whatever the address names', async () => {
    const page = await browser.newPage();
    const asked: string[] = [];
    page.on('request', (request) => asked.push(request.url()));
    const named = ['https://example.org/x.html', 'pairings/../../secret.html', '../secret.html', lantern];
    const hash = new URLSearchParams(named.map((each): [string, string] => ['pairing', each]));
    await page.goto(`${pathToFileURL(join(folder, 'site/compare.html')).href}#${hash}`);
    await page.locator('#need-form').waitFor();
    const scripts = asked.filter((url) => url.endsWith('--compare.js') || url.endsWith('secret.html'));
    expect(scripts).toEqual([
      pathToFileURL(join(folder, 'site', lantern.replace('.html', '--compare.js'))).href,
    ]);
    expect(asked.every((url) => url.startsWith(pathToFileURL(folder).href))).toBe(true);
    await page.close();
  });
});
