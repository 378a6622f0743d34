import { readdirSync, readFileSync } from 'node:fs';
import { defineConfig } from 'vitest/config';

/** Every file of tests, or in `--mode thorough` those that hold properties. */
function filesFor(mode: string): string[] {
  if (mode !== 'thorough') return ['tests/**/*.test.ts'];
  return readdirSync('tests', { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.test.ts'))
    .map((name) => `tests/${name.replaceAll('\\', '/')}`)
    .filter((path) => readFileSync(path, 'utf8').includes("from 'fast-check'"));
}

export default defineConfig(({ mode }) => ({
  test: {
    include: filesFor(mode),
    globalSetup: ['tests/reductions-folder.ts', 'tests/bundled-cli.ts'],
    setupFiles: ['tests/reduce-once.ts', 'tests/property-runs.ts'],
    testTimeout: 60_000,
    hookTimeout: 60_000,
    tags: [
      {
        name: 'long',
        description:
          'Counts, fuzzes or starts programs for seconds: `npm run test:long` runs it, `npm test` does not',
        timeout: 600_000,
      },
      {
        name: 'exhaustive',
        description:
          'Starts thousands of programs, for an hour or more: `npm run test:exhaustive` runs it, nothing else does',
        timeout: 1_800_000,
      },
      {
        name: 'browser',
        description:
          'Looks at pages with the Chromium of the system: `npm run test:browser` runs it, `npm test` does not',
        timeout: 300_000,
      },
    ],
    // Loading the program anew for each of hundreds of files takes longer than most of their tests.
    isolate: false,
    // The default leaves one processor idle, which is half of a small machine.
    maxWorkers: '100%',
  },
}));
