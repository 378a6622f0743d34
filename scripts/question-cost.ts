import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { gzipSync } from 'node:zlib';
import type { Browser } from 'playwright-core';
import { loadFolders } from '../src/host/load-registry.ts';
import type { Registry } from '../src/registry/registry.ts';
import { dataPath, findDataPath, scriptPath, searchPath } from '../src/site/address.ts';
import { type CataloguedPairing, cataloguedPairing } from '../src/site/catalogued-pairing.ts';
import { questionFiles } from '../src/site/format-site.ts';
import { worthAPage } from '../src/site/worth-a-page.ts';
import { type RandomSource, randomSource } from '../src/statistics/random.ts';
import { deriveTables } from '../src/tables/derive/derive-tables.ts';
import { startChromium } from '../tests/browser/chromium.ts';

// Usage: npm run question-cost -- FOLDER; what a question by target costs a reader of the catalogue of a registry: bytes and time.
/** How long the script of the page takes to answer another figure, ms. */
const answerTime = `(() => {
  const field = document.querySelector('#ask-flow');
  const begun = performance.now();
  field.value = '22';
  field.dispatchEvent(new Event('input', { bubbles: true }));
  return new Promise((resolve) => requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - begun))));
})()`;

const [folder] = process.argv.slice(2);
if (folder === undefined) {
  console.error('Usage: npm run question-cost -- FOLDER, for instance: out/scale/profiles');
  process.exit(2);
}
const { registry } = loadFolders([folder]);
const { fitted, policies } = worthAPage(registry);
const [policy = ''] = policies;
const pairings = fitted.flatMap((each) => {
  const request = { ...each, policy };
  const table = deriveTables(registry, request, { judgesEvidence: false });
  return table.ok ? [cataloguedPairing(registry, request, table.value)] : [];
});
const { uniform } = randomSource('question-cost');
const altered = pairings.map((pairing) => alteredPairing(pairing, uniform));
console.log(
  `${registry.profiles.length} profiles, ${pairings.length} pairings with a page by the house rules ${policy}.`,
);
const browser = await startChromium();
for (const [what, shown] of [
  ['as they are', pairings],
  ['each figure another', altered],
] as const)
  console.log(`Pairings ${what}: ${await costOf(registry, shown, browser)}`);
await browser.close();

/** In a registry that is made of copies figures repeat, which no real one does: each limit with its interval a little different. */
function alteredPairing(pairing: CataloguedPairing, uniform: RandomSource['uniform']): CataloguedPairing {
  const limits = pairing.limits.map((limit) => {
    const factor = 0.7 + 0.6 * uniform();
    const times = (value: number) => Number((value * factor).toPrecision(3));
    const { interval } = limit;
    return {
      ...limit,
      value: times(limit.value),
      interval:
        interval === null
          ? null
          : {
              low: times(interval.low * (1 - 0.02 * uniform())),
              high: times(interval.high * (1 + 0.02 * uniform())),
            },
    };
  });
  const { value = 1, interval = null } = limits.at(-1) ?? {};
  return { ...pairing, limits, largestFlow: { ...pairing.largestFlow, limit: value, interval } };
}

async function costOf(
  registry: Registry,
  shown: readonly CataloguedPairing[],
  browser: Browser,
): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'meltbounds-question-'));
  const sizes = new Map<string, number>();
  try {
    for (const { path, text } of questionFiles({ registry, pairings: shown, policies: [policy] })) {
      sizes.set(path, gzipSync(text).length);
      mkdirSync(dirname(join(folder, path)), { recursive: true });
      writeFileSync(join(folder, path), text);
    }
    const size = (...paths: string[]) =>
      `${Math.ceil(paths.reduce((sum, path) => sum + (sizes.get(path) ?? 0), 0) / 1000)} kB`;
    const page = await browser.newPage();
    const opened = performance.now();
    await page.goto(`${pathToFileURL(join(folder, 'index.html')).href}#flow=20&temperature=235`);
    await page.locator('#found').waitFor();
    const answered = performance.now();
    await page.getByLabel('Flow at least').fill('25');
    await page.locator('#count').filter({ hasText: 'all that is asked' }).waitFor();
    const drawn = Number(await page.evaluate(answerTime));
    const searched = performance.now();
    await page.getByLabel('Search:').fill('stagecraft petg');
    await page.locator('#matches a').first().waitFor();
    const found = performance.now();
    const count = await page.locator('#found').textContent();
    await page.close();
    return [
      `${size(dataPath, findDataPath(policy))} of data gzipped for a question (${size(scriptPath)} of script), ${size(searchPath)} for a search`,
      `answer ${seconds(answered - opened)} after the page is opened, ${seconds(drawn)} after a figure is typed, search ${seconds(found - searched)} with its data`,
      String(count),
    ].join('; ');
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function seconds(milliseconds: number): string {
  return `${(milliseconds / 1000).toFixed(2)} s`;
}
