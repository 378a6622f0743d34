import { readFileSync } from 'node:fs';
import writeFileAtomic from 'write-file-atomic';
import { groupedChangelog } from './release/changelog-groups.ts';

const path = 'CHANGELOG.md';

await writeFileAtomic(path, groupedChangelog(readFileSync(path, 'utf8')));
