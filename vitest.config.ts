import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/reductions-folder.ts', 'tests/bundled-cli.ts'],
    setupFiles: ['tests/reduce-once.ts'],
    testTimeout: 60_000,
    // The default leaves one processor idle, which is half of a small machine.
    maxWorkers: '100%',
  },
});
