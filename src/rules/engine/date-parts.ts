import type { Source } from '../../registry/generated/documents.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Path } from '../../registry/shape.ts';

/** A date of a source as CSL-JSON writes it: year, then month and day if known. */
export interface SourceDate {
  readonly name: 'issued' | 'accessed';
  readonly path: Path;
  readonly parts: readonly number[];
}

export function sourceDates(profile: AnyProfile): SourceDate[] {
  if (profile.kind !== 'source') return [];
  return [dateOf(profile.data, 'issued'), dateOf(profile.data, 'accessed')].filter((date) => date !== null);
}

/** The date as ISO 8601 writes it, as far as it is known: `2026`, `2026-03` or `2026-03-12`. */
export function isoText(parts: readonly number[]): string {
  const [year = 0, ...rest] = parts;
  return [String(year).padStart(4, '0'), ...rest.map((part) => String(part).padStart(2, '0'))].join('-');
}

/** Whether the parts are a day, a month or a year of the Gregorian calendar. */
export function isCalendarDate([year = 1, month = 1, day = 1]: readonly number[]): boolean {
  const date = new Date(Date.UTC(2000, month - 1, day));
  date.setUTCFullYear(year, month - 1, day);
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day;
}

function dateOf(source: Source, name: 'issued' | 'accessed'): SourceDate | null {
  const parts = source[name]?.['date-parts'][0];
  return parts === undefined ? null : { name, path: [name, 'date-parts', 0], parts };
}
