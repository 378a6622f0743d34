import type { ProfileDiff } from '../../decisions/diff/diff-profile.ts';
import { type CellMove, isFall, type TablesDiff } from '../../decisions/diff/diff-tables.ts';
import type { ProfileChange } from '../../decisions/diff/profile-changes.ts';
import { isSameValue } from '../../decisions/diff/same-value.ts';
import { counted } from '../../text/words.ts';
import { settingText, tableNameText } from './change-text.ts';

/** The first items of a list, and how many there are besides. */
interface Shortened<Item> {
  readonly shown: readonly Item[];
  readonly hidden: number;
}

function shorten<Item>(items: readonly Item[], most: number): Shortened<Item> {
  return { shown: items.slice(0, most), hidden: Math.max(0, items.length - most) };
}

/** The most serious changes of a profile first; what only says more about the same value is counted, not shown. */
export function tellingChanges(
  { changes }: ProfileDiff,
  most: number,
): Shortened<ProfileChange> & { notes: number } {
  const telling = changes.filter(isTelling);
  const byBump = (['major', 'minor', 'patch'] as const).flatMap((bump) =>
    telling.filter((change) => change.bump === bump),
  );
  return { ...shorten(byBump, most), notes: changes.length - telling.length };
}

function isTelling({ dimension, base, head, bump }: ProfileChange): boolean {
  return (dimension !== null || bump !== 'patch') && !isSameValue(base, head);
}

/** The biggest move of each table, those of the tables that move most first. */
export function biggestMoves({ moves }: TablesDiff, most: number): Shortened<CellMove> {
  const tables = new Set<string>();
  const biggest = moves.filter((move) => {
    const name = tableNameText(move);
    return !tables.has(name) && tables.add(name).size > 0;
  });
  const { shown } = shorten(biggest, most);
  return { shown, hidden: moves.length - shown.length };
}

/** Settings that differ, each once with the number of tables that it stands in. */
export function settingLines({ settings }: TablesDiff, most: number): Shortened<string> {
  const counts = new Map<string, number>();
  for (const setting of settings) {
    const text = settingText(setting);
    counts.set(text, (counts.get(text) ?? 0) + 1);
  }
  const lines = [...counts].map(([text, count]) => `${text}, in ${counted(count, 'table')}`);
  return shorten(lines, most);
}

/** `38 cells of 4 tables move, 30 of them slower; 1 new table; 2 tables gone.` */
export function tablesText({ added, removed, moves }: TablesDiff): string {
  const tables = new Set(moves.map(tableNameText)).size;
  const slower = moves.filter(isFall).length;
  const parts = [
    moves.length === 0
      ? 'No cell of a table moves'
      : `${counted(moves.length, 'cell')} of ${counted(tables, 'table')} ${moves.length === 1 ? 'moves' : 'move'}, ${slower === 0 ? 'none' : slower} of them slower`,
    ...(added.length === 0 ? [] : [counted(added.length, 'new table')]),
    ...(removed.length === 0 ? [] : [`${counted(removed.length, 'table')} gone`]),
  ];
  return `${parts.join('; ')}.`;
}

/** What has become of a profile: `1.0.0 → 2.0.0, major`. */
export function statusText({ status, version, bump, neededVersion, isBumpEnough }: ProfileDiff): string {
  const { base, head } = version;
  if (status === 'added') return head === null ? 'new' : `new, ${head}`;
  if (status === 'removed') return base === null ? 'gone' : `gone, was ${base}: a major change`;
  if (status === 'unjudged') return 'cannot be judged: it has errors of form';
  if (base === null) return 'changed';
  const moved = base === head ? `still ${base}` : `${base} → ${head}`;
  const due = bump === null ? 'says the same' : `a ${bump} change`;
  return isBumpEnough ? `${moved}, ${due}` : `${moved}, ${due}: needs ${neededVersion}`;
}

/** `2 profiles differ: a major change.` */
export function headlineText(profiles: readonly ProfileDiff[], bump: string | null): string {
  if (profiles.length === 0) return 'nothing differs';
  const verb = profiles.length === 1 ? 'differs' : 'differ';
  const change = bump === null ? '' : `, a ${bump} change`;
  return `${counted(profiles.length, 'profile')} ${verb}${change}`;
}
