// Kills the browser under the bench page at random moments, and counts the rows that are lost: npm run kill-browser -- 1000 [SEED]
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { syncFolder } from '../src/host/writing/sync-folder.ts';
import { formatSite, loadRegistry } from '../src/index.ts';
import { randomSource } from '../src/statistics/random.ts';
import { killsOf } from '../tests/browser/kill-browser.ts';
import { serveFolder } from '../tests/browser/serve-folder.ts';

const [asked = '10', seed = '1'] = process.argv.slice(2);
const root = fileURLToPath(new URL('..', import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'meltbounds-kills-'));
const { uniform } = randomSource(`kills ${seed}`);
const sum = { kills: 0, typed: 0, old: 0, lost: 0 };
try {
  const loaded = loadRegistry(['profiles'], root);
  if (!loaded.ok) throw new Error(loaded.error.message);
  const files = formatSite(loaded.value.registry, '2026-06-01');
  const written = await syncFolder(files, join(folder, 'site'), 'site', folder);
  if (!written.ok) throw new Error(written.error.message);
  const served = await serveFolder(join(folder, 'site'));
  for await (const { typed, old, lost } of killsOf(served.address, join(folder, 'profile'), uniform)) {
    sum.kills += 1;
    sum.typed += typed;
    sum.old += old;
    sum.lost += lost;
    if (lost > 0 || sum.kills % 10 === 0) console.log(JSON.stringify(sum));
    if (sum.kills >= Number(asked)) break;
  }
  await served.close();
} finally {
  rmSync(folder, { recursive: true, force: true });
}
console.log(
  `${sum.kills} kills, ${sum.typed} rows typed, ${sum.old} of them older than a second when the browser died, ${sum.lost} of these lost.`,
);
if (sum.lost > 0) process.exitCode = 1;
