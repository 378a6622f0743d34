import type { TimeHolder } from './job-estimate.ts';

/** What limits a print, in words. */
export const holderWords: Readonly<Record<TimeHolder, string>> = {
  melt: 'melt flow',
  motion: 'motion',
  cooling: 'cooling',
  machine: 'the machine',
  quality: 'surface quality',
  handling: 'handling',
};
