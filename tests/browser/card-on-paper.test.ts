import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatTableAsHtml } from '../../src/tables/card/table-as-html.ts';
import { longTable, roomyTable } from '../tables/card/long-table.ts';
import { startChromium } from './chromium.ts';
import { pagesOnPaper } from './paper.ts';
import { demoPages, type WrittenPage } from './written-pages.ts';

/** How many pages a page takes on paper, and how many its card and what is behind it take alone. */
async function laidOut(page: Page, html: string) {
  const alone = async (left: string) => {
    await page.setContent(html);
    const style = await page.addStyleTag({ content: `${left} { display: none; }` });
    const pages = await pagesOnPaper(page);
    await style.dispose();
    return pages;
  };
  return { whole: await alone('.none'), card: await alone('.behind'), behind: await alone('.card') };
}

/** The width and height of A4 between margins of 10 mm, at 96 dpi, in px. */
const sheet = { width: Math.floor(((210 - 20) / 25.4) * 96), height: Math.floor(((297 - 20) / 25.4) * 96) };

/** Names of what sticks out of its own box in the card, or out of the sheet. */
const stickingOut = `[...document.querySelectorAll('.card, .card *')]
  .filter((each) => each.scrollWidth > Math.ceil(each.getBoundingClientRect().width) + 1
    || each.getBoundingClientRect().right > innerWidth + 1)
  .map((each) => each.className + ' ' + each.textContent)`;

async function expectOneSheet(page: Page, { path, html }: WrittenPage): Promise<void> {
  const { whole, card, behind } = await laidOut(page, html);
  expect.soft(card, path).toBe(1);
  expect.soft(whole, path).toBe(card + behind);
  await page.setContent(html);
  expect.soft(await page.evaluate(stickingOut), path).toEqual([]);
  // A browser makes the whole page smaller where anything on it is too wide for the paper.
  expect.soft(await page.evaluate('document.documentElement.scrollWidth'), path).toBe(sheet.width);
}

describe('the card on paper', { tags: 'browser' }, () => {
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

  it('is one page of A4 for every pairing of the demo under each policy, with the long form from page 2', async () => {
    const pages = (await demoPages()).filter(({ path }) => path !== 'index.html');
    expect(pages.length).toBeGreaterThan(24);
    for (const each of pages) await expectOneSheet(page, each);
  });

  it('is one page however long names, warnings and lists get', async () => {
    await expectOneSheet(page, { path: 'the longest', html: formatTableAsHtml(longTable()) });
  });

  it('is one page in large letters too, which short names get', async () => {
    const html = formatTableAsHtml(roomyTable());
    expect(html).toContain('class="card unreal roomy"');
    await expectOneSheet(page, { path: 'the longest roomy one', html });
  });

  it.each([longTable, roomyTable])('is one page in the widest letters too (%o)', async (table) => {
    const html = formatTableAsHtml(table()).replaceAll('somebody wrote more', 'WWWWWWWWW WWWWWWW WWWW');
    const { card, whole, behind } = await laidOut(page, html);
    expect({ card, whole }).toEqual({ card: 1, whole: 1 + behind });
  });

  it('would be more if it held everything', async () => {
    const html = formatTableAsHtml(longTable()).replace(
      '<p class="dangers">',
      `${'<p>One more line.</p>'.repeat(60)}<p class="dangers">`,
    );
    expect((await laidOut(page, html)).card).toBeGreaterThan(1);
  });
});
