import axe, { type AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { startChromium } from './chromium.ts';
import { demoPages, type WrittenPage } from './written-pages.ts';

const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What the rules of axe find on a page, each with the elements that it is about. */
async function violations(page: Page, html: string): Promise<string[]> {
  await page.setContent(html);
  await page.evaluate(axe.source);
  const run = `axe.run(document, { runOnly: ${JSON.stringify(tags)} })`;
  const results: AxeResults = await page.evaluate(run);
  return results.violations.map(({ id, help, nodes }) =>
    [id, help, ...nodes.map((node) => node.html)].join('\n'),
  );
}

describe('pages in a browser', { tags: 'browser' }, () => {
  let browser: Browser;
  let page: Page;
  let pages: WrittenPage[];
  beforeAll(async () => {
    browser = await startChromium();
    page = await browser.newPage();
    pages = await demoPages('workshop');
    // On a clean clone this reduces the trials of the demo first.
  }, 120_000);
  afterAll(async () => {
    await browser?.close();
  });

  it('are those of every pairing, and their index', () => {
    const paths = pages.map(({ path }) => path);
    expect(paths).toContain('index.html');
    expect(paths.length).toBeGreaterThan(12);
  });

  it('are refused where they break a rule of access', async () => {
    const grey = '<main><h1>Limits</h1><p style="color: #aaa">40 mm/s</p></main>';
    const html = `<!DOCTYPE html><html lang="en"><title>Limits</title><body>${grey}</body></html>`;
    expect(await violations(page, html)).toEqual([expect.stringMatching(/^color-contrast/)]);
  });

  it('keep the rules of access', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    for (const { path, html } of pages) {
      expect.soft(await violations(page, html), path).toEqual([]);
    }
  });

  it('keep them on a dark screen too', async () => {
    await page.setViewportSize({ width: 1280, height: 900 });
    await page.emulateMedia({ colorScheme: 'dark' });
    for (const { path, html } of pages.filter((_, index) => index % 4 === 0)) {
      expect.soft(await violations(page, html), path).toEqual([]);
    }
    const ground = await page.evaluate('getComputedStyle(document.body).backgroundColor');
    await page.emulateMedia({ colorScheme: null });
    expect(ground).toBe('rgb(17, 17, 17)');
  });

  it('need no sideways scrolling on a screen 400 px wide', async () => {
    await page.setViewportSize({ width: 400, height: 800 });
    for (const { path, html } of pages) {
      await page.setContent(html);
      expect.soft(await page.evaluate('document.documentElement.scrollWidth'), path).toBe(400);
    }
  });
});
