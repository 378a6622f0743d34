import type { Page } from 'playwright-core';

/** How many pages of paper a page takes, as the sheet of its own style asks for. */
export async function pagesOnPaper(page: Page): Promise<number> {
  return pageCount(await page.pdf({ preferCSSPageSize: true }));
}

/**
 * The number of pages of a PDF whose page objects are not compressed, as browsers write it (ISO 32000-1, 7.7.3: a tree of
 * nodes of `/Type /Pages`, of which the root has the largest `/Count`, with leaves of `/Type /Page`).
 */
export function pageCount(pdf: Uint8Array): number {
  const text = Buffer.from(pdf).toString('latin1');
  const leaves = [...text.matchAll(/\/Type\s*\/Page(?![A-Za-z])/g)].length;
  const counts = [...text.matchAll(/\/Type\s*\/Pages\b[^>]*?\/Count\s+(\d+)/g)].map(([, count]) =>
    Number(count),
  );
  if (leaves === 0 || Math.max(...counts) !== leaves) {
    throw new Error(`The PDF has ${leaves} page objects, but its tree counts ${counts.join(', ')}`);
  }
  return leaves;
}
