import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { groupedChangelog } from './release/changelog-groups.ts';
import { beforeFirstStable, lockOfVersion } from './release/release-version.ts';

// `npm run version` moves the changesets into CHANGELOG.md, by group, and the version of the package and of its lock file with
// them. Before 1.0.0 it stays below 1.0.0 whatever they ask for, but for `npm run version -- --first-stable`.
const isFirstStable = process.argv.includes('--first-stable');

const read = (path: string) => readFileSync(path, 'utf8');
const versionNow = () => (JSON.parse(read('package.json')) as { version: string }).version;
const before = versionNow();

for (const name of isFirstStable ? [] : readdirSync('.changeset').filter((file) => file.endsWith('.md'))) {
  const path = join('.changeset', name);
  const kept = beforeFirstStable(read(path), before);
  if (kept !== read(path)) await writeFileAtomic(path, kept);
}
const { status } = spawnSync('npx', ['--no-install', 'changeset', 'version'], { stdio: 'inherit' });
if (status === 0) {
  await writeFileAtomic('CHANGELOG.md', groupedChangelog(read('CHANGELOG.md')));
  await writeFileAtomic('package-lock.json', lockOfVersion(read('package-lock.json'), versionNow()));
  process.stdout.write(`${before} → ${versionNow()}: read CHANGELOG.md, then commit.\n`);
} else process.exitCode = 1;
