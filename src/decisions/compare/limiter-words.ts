import type { TimeLimiter } from './job-estimate.ts';

/** What limits a print, in words. */
export const limiterWords: Readonly<Record<TimeLimiter, string>> = {
  melt: 'melt flow',
  traction: 'traction of the drive',
  motion: 'motion',
  cooling: 'cooling',
  machine: 'the machine',
  quality: 'surface quality',
  policy: 'house caps',
  handling: 'handling',
};
