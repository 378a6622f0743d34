import type { FuzzArea } from './fuzz-area.ts';
import { gitArea } from './git-area.ts';
import { indexArea } from './index-area.ts';
import { judgingArea, profileArea } from './profile-areas.ts';
import { quantityArea } from './quantity-area.ts';
import { readingArea, sheetArea } from './sheet-areas.ts';
import { templateArea } from './template-area.ts';

/** Every way in. The dear ones have a small share. */
export const fuzzAreas: readonly FuzzArea[] = [
  gitArea,
  indexArea,
  quantityArea,
  templateArea,
  sheetArea,
  readingArea,
  profileArea,
  judgingArea,
];
