import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runCommand } from '../run-command.ts';
import { startChromium } from './chromium.ts';
import { pagesOnPaper } from './paper.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** The width and height of A4 between margins of 15 mm, at 96 dpi, in px. */
const sheet = { width: Math.floor(((210 - 30) / 25.4) * 96), height: Math.floor(((297 - 30) / 25.4) * 96) };

/** What a sheet of paper would cut off on its right. */
const cutOff = `[...document.querySelectorAll('body *')]
  .filter((each) => each.getBoundingClientRect().right > innerWidth + 1)
  .map((each) => each.tagName + ' ' + each.textContent.slice(0, 40))`;

/** Drawings that would be torn apart between two pages. */
const torn = `[...document.querySelectorAll('svg')]
  .filter((each) => getComputedStyle(each.closest('figure') ?? each).breakInside !== 'avoid')
  .length`;

describe('the test report on paper', { tags: 'browser' }, () => {
  let browser: Browser;
  let page: Page;
  beforeAll(async () => {
    browser = await startChromium();
    page = await browser.newPage({ viewport: sheet });
    await page.emulateMedia({ media: 'print' });
  });
  afterAll(async () => {
    await browser?.close();
  });

  it.each(['lantern-stagecraft-pla-230', 'stagecraft-pla-26-0131-diameter', 'lantern-sound'])(
    'of %s is some pages of A4, with nothing cut off and no drawing torn',
    async (trial) => {
      const { status, out } = await runCommand(root, ['report', trial, '--format', 'html']);
      expect(status).toBe(0);
      await page.setContent(out);
      expect(await page.evaluate(cutOff)).toEqual([]);
      expect(await page.evaluate(torn)).toBe(0);
      expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(sheet.width);
      const pages = await pagesOnPaper(page);
      expect(pages).toBeGreaterThanOrEqual(2);
      expect(pages).toBeLessThanOrEqual(8);
    },
  );
});
