import { defineConfig } from 'vitest/config';

/** The tests that are asked whether they notice a change: those of the room itself, and the published checks. */
export default defineConfig({
  test: {
    include: (process.env.MUTATION_TESTS ?? '').split(','),
    exclude: ['tests/units/quantity-schema.test.ts'],
    // Nothing may be remembered between two mutants, so `reduce-once.ts` stays out.
    setupFiles: ['scripts/mutation/same-examples.ts'],
    testTimeout: 60_000,
    tags: ['long', 'exhaustive', 'browser'].map((name) => ({ name })),
    isolate: false,
  },
});
