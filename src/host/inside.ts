import { existsSync, lstatSync, realpathSync } from 'node:fs';
import { dirname, isAbsolute, relative, resolve, sep } from 'node:path';

/** Whether a path is a folder or lies in it; one whose name merely begins the same does not. */
export function isInside(path: string, folder: string): boolean {
  const way = relative(folder, path);
  return way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Real path of the nearest folder at or above a path that exists. */
export function nearestReal(path: string): string {
  let folder = path;
  while (!existsSync(folder) && folder !== dirname(folder)) folder = dirname(folder);
  return realpathSync(folder);
}

/**
 * Whether a path that reads as one inside of a folder leads out of it by a link. What reads as one outside leads where the
 * user says. What is not there yet counts by the folder that it would be in.
 */
export function leadsOut(path: string, folder: string): boolean {
  const absolute = resolve(folder, path);
  return isInside(absolute, resolve(folder)) && !isInside(nearestReal(absolute), realpathSync(folder));
}

/** Whether a link stands at a path, whatever it leads to. */
export function isLink(path: string): boolean {
  return lstatSync(path, { throwIfNoEntry: false })?.isSymbolicLink() === true;
}
