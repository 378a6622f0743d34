import type { Profile } from '../../registry/profile.ts';
import { isSameValue } from './same-value.ts';

/** What may be said about a record afterwards without changing it. */
const remarks: ReadonlySet<string> = new Set(['operator', 'notice', 'fieldNotes', 'acknowledged']);

/**
 * Keys of a trial that differ, other than remarks: its readings, and what a reduction of them rests on. The readings
 * of a sheet beside it differ when a byte of it does, line ends aside.
 */
export function changedRecordKeys(base: Profile<'trial'>, head: Profile<'trial'>): string[] {
  const before = new Map<string, unknown>(Object.entries(base.data));
  const after = new Map<string, unknown>(Object.entries(head.data));
  const keys = new Set([...before.keys(), ...after.keys()].filter((key) => !remarks.has(key)));
  const changed = [...keys].filter((key) => !isSameValue(before.get(key), after.get(key)));
  const sheetDiffers = sheetDigest(base) !== sheetDigest(head) && !changed.includes('observations');
  return [...changed, ...(sheetDiffers ? ['observations'] : [])];
}

function sheetDigest({ attachment }: Profile<'trial'>): string | null {
  return attachment?.ok ? attachment.source.digest : null;
}
