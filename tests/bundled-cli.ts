import type { TestProject } from 'vitest/node';
import { bundleCli } from '../scripts/bundle/bundle-cli.ts';

/** The command line as users get it, for the tests that run it in a process of its own. */
export default async function bundledCli(project: TestProject): Promise<void> {
  await bundleCli('out');
  project.onTestsRerun(() => bundleCli('out'));
}
