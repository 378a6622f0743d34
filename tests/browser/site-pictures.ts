import type { Browser, Page } from 'playwright-core';
import { beginLadder, typeLadder } from './bench-steps.ts';

/** A page of the catalogue of the demo registry, as a reader has it before them. */
interface PicturedPage {
  /** Where the picture is kept, from the root of the project; what `docs/figures/pages/` holds is for tests and not in the package. */
  readonly file: string;
  /** From the root of the site. */
  readonly address: string;
  /** Of the window, in px. */
  readonly size: { readonly width: number; readonly height: number };
  /** What is done on the page before it is looked at. */
  readonly prepare?: (page: Page) => Promise<void>;
}

const pairing = (machine: string) =>
  encodeURIComponent(`pairings/workshop/${machine}/hs-0.4/ashgrove/stagecraft-pla.html`);

const large = { width: 1280, height: 900 };
const small = { width: 1000, height: 560 };

/** The six pages whose pictures are kept, by their names. */
export const picturedPages = {
  find: {
    file: 'docs/figures/site-find.png',
    address: 'index.html#policy=workshop&flow=25&temperature=230&basis=measured',
    size: large,
  },
  pairing: {
    file: 'docs/figures/site-pairing.png',
    address: 'pairings/workshop/brackwater/lantern/hs-0.6/ashgrove/stagecraft-pla.html',
    size: large,
  },
  compare: {
    file: 'docs/figures/pages/compare.png',
    address: `compare.html#pairing=${pairing('brackwater/lantern')}&pairing=${pairing('tollwick/steeple')}&job=mask-rack&layer=0.24&share=60&jobs=2000`,
    size: small,
    prepare: async (page) => {
      await page.locator('#need-figures figure').waitFor();
      // What stands above would move it by parts of a pixel.
      const above = page.locator('nav, body > header, #compare > :not(#need)');
      await above.evaluateAll((all) => {
        for (const each of all) each.setAttribute('hidden', '');
      });
    },
  },
  trial: {
    file: 'docs/figures/pages/trial.png',
    address: 'trials/hearth-rigging-abs-255.html',
    size: small,
  },
  machine: { file: 'docs/figures/pages/machine.png', address: 'machines/emberlow/hearth.html', size: small },
  bench: {
    file: 'docs/figures/pages/bench.png',
    address: 'bench.html',
    size: small,
    prepare: async (page) => {
      await beginLadder(page, {
        ...{ machine: 'tollwick/steeple', filament: 'ashgrove/stagecraft-petg', nozzle: 'hs-0.4' },
      });
      await typeLadder(page, 45);
      await page.locator('#bench-limit[aria-busy="false"]').waitFor();
      await page.locator('#bench-advice[aria-busy="false"]').waitFor();
      await page.locator('#bench-files:not([inert]) #bench-verdict').waitFor();
      await page.locator('#bench-plot figure').waitFor();
      await page.evaluate('scrollTo(0, 0)');
    },
  },
} as const satisfies Readonly<Record<string, PicturedPage>>;

export type PictureName = keyof typeof picturedPages;

/** Opens a page as its picture shows it, on a site at a loopback address with a slash at its end, always at the same moment. */
export async function openPictured(browser: Browser, site: string, name: PictureName): Promise<Page> {
  const { address, size, prepare }: PicturedPage = picturedPages[name];
  const context = await browser.newContext({
    ...{ viewport: size, locale: 'en-GB', timezoneId: 'UTC', colorScheme: 'light' },
  });
  const page = await context.newPage();
  await page.clock.install({ time: new Date('2026-06-01T12:00:00Z') });
  await page.goto(site + address);
  await page.evaluate('document.fonts.ready');
  await prepare?.(page);
  return page;
}

/** What a page looks like, as PNG. */
export async function pictureOf(page: Page): Promise<Buffer> {
  return page.screenshot({ animations: 'disabled', caret: 'hide', scale: 'css' });
}

/** Letters, digits and signs of the pages, those of other fonts among them. */
const sample = 'The quick brown fox jumps over the lazy dog 0123456789 mm³/s mm² °C ≥ ± − → · × %';

/** Widths of a sample in the fonts of the pages, in px: two machines where they are the same have the same fonts. */
export async function fontWidths(page: Page): Promise<number[]> {
  const widths = await page.evaluate<number[]>(`(() => {
    const context = document.createElement('canvas').getContext('2d');
    const family = getComputedStyle(document.body).fontFamily;
    const fonts = ['16px ' + family, 'bold 16px ' + family, '16px "Liberation Mono", "Courier New", monospace'];
    return fonts.map((font) => {
      context.font = font;
      return context.measureText(${JSON.stringify(sample)}).width;
    });
  })()`);
  return widths.map((width) => Math.round(100 * width) / 100);
}

/** The widths on the machine that drew the pictures. */
export const fontsFile = 'docs/figures/pages/fonts.json';
