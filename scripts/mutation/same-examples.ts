import fc from 'fast-check';

// A mutant that dies in one run and lives in the next tells nothing.
fc.configureGlobal({ numRuns: 25, seed: 15 });
