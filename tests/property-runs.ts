import fc from 'fast-check';

/** How many examples a property is tried on: all that it asks for in `npm run test:properties`, a quarter otherwise. */
export function runs(asked: number): number {
  return process.env.MODE === 'thorough' ? asked : Math.ceil(asked / 4);
}

fc.configureGlobal({ numRuns: runs(100) });
