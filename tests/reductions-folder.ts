import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { TestProject } from 'vitest/node';

declare module 'vitest' {
  interface ProvidedContext {
    /** Where the test files of one run put down the trials that they have reduced. */
    readonly reductions: string;
  }
}

/** A folder for the time of one run: the code may be another in the next. */
export default function reductionsFolder(project: TestProject): () => void {
  const provided = () => {
    const folder = mkdtempSync(join(tmpdir(), 'meltbounds-reductions-'));
    project.provide('reductions', folder);
    return folder;
  };
  const folders = [provided()];
  project.onTestsRerun(() => {
    folders.push(provided());
  });
  return () => {
    for (const folder of folders) rmSync(folder, { recursive: true, force: true });
  };
}
