import type { Problem } from '../result.ts';

/** Why a command that waits for changes cannot go on, by the code of the system. */
export function cannotWatch(code: string): Problem {
  return {
    code: 'cannotWatch',
    message: `--watch cannot see any longer when files change (${code})`,
    help: 'Check that the folders are there and that the system lets so many be watched, or run the command again after each change.',
  };
}

export const nobodyWatches: Problem = {
  code: 'noChanges',
  message: '--watch cannot see when files change here',
  help: 'Leave it out, and run the command again after each change.',
};
