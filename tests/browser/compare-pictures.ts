import pixelmatch from 'pixelmatch';
import { PNG } from 'pngjs';

/** Side of the window in which differences are counted, in px: about a digit. */
const side = 16;

/** Pixels of a window that may differ: what two versions of a font engine make of the same letter. */
export const tolerated = 10;

/**
 * The most pixels in any window of 16 × 16 px in which two pictures (PNG) differ, but for the smoothed edges of letters and lines; all
 * of them where their sizes differ. So a digit counts as much on a large page as on a small one.
 */
export function largestDifference(one: Uint8Array, other: Uint8Array): number {
  const [a, b] = [one, other].map((picture) => PNG.sync.read(Buffer.from(picture)));
  if (a === undefined || b === undefined || a.width !== b.width || a.height !== b.height) return side ** 2;
  return pixelmatch(a.data, b.data, null, a.width, a.height, { threshold: 0.1, windowSize: side });
}
