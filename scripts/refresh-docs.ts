import { mkdtempSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import writeFileAtomic from 'write-file-atomic';
import { documentPaths, projectFolder, readDocument } from './docs/documents.ts';
import { runDocument } from './docs/run-document.ts';
import { refreshed } from './docs/shown-output.ts';

// Runs the commands of the documents and writes what they print today into the blocks below them.
// Give paths such as `docs/tutorial.md` to refresh these only.
const wanted = process.argv.slice(2);

for (const path of documentPaths().filter((each) => wanted.length === 0 || wanted.includes(each))) {
  const text = readDocument(path);
  const folder = realpathSync(mkdtempSync(join(tmpdir(), 'meltbounds-docs-')));
  const { outputs, failures } = await runDocument(text, folder);
  rmSync(folder, { recursive: true });
  for (const failure of failures) console.error(`${path}, ${failure}`);
  // From the end, so that the places of the blocks before stay right.
  const now = outputs
    .toReversed()
    .reduce(
      (changed, { block, printed }) =>
        changed.slice(0, block.start) + refreshed(block.text, printed) + changed.slice(block.end),
      text,
    );
  if (now !== text) await writeFileAtomic(`${projectFolder}${path}`, now);
  console.log(`${path}: ${outputs.length} outputs, ${now === text ? 'all current' : 'refreshed'}`);
  if (failures.length > 0) process.exitCode = 1;
}
