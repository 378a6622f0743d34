import { createColors } from 'picocolors';
import type { ProfileDiff } from '../../decisions/diff/diff-profile.ts';
import type { CellMove, TablesDiff } from '../../decisions/diff/diff-tables.ts';
import type { ProfileChange } from '../../decisions/diff/profile-changes.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { printable } from '../../text/printable.ts';
import { alignedCells, type GridColumn } from '../../text/text-grid.ts';
import { counted } from '../../text/words.ts';
import { summarise } from '../findings/summary.ts';
import { textReport } from '../findings/text-report.ts';
import {
  basisText,
  cellMoveText,
  cellText,
  changeName,
  moveText,
  rowText,
  sideText,
  tableNameText,
} from './change-text.ts';
import {
  biggestMoves,
  headlineText,
  settingLines,
  statusText,
  tablesText,
  tellingChanges,
} from './diff-digest.ts';
import type { DiffReport } from './diff-report.ts';

const mostChanges = 20;
const mostMoves = 10;
const mostSettings = 10;

/** A comparison for people: each profile with its bump and values, the tables, then what is wrong. */
export function textDiff({ diff, base, head, colour, textOf }: DiffReport): string {
  const { profiles, tables, bump, findings } = diff;
  const colours = createColors(colour);
  const blocks = [
    colours.bold(`${printable(base)} -> ${printable(head)}: ${headlineText(profiles, bump)}.`),
    ...profiles.map((profile) => profileBlock(profile, colours)),
    ...(profiles.length === 0 ? [] : [tablesBlock(tables)]),
    ...(findings.length === 0
      ? []
      : [textReport(findings, summarise(findings, profiles.length), { colour, textOf }).trimEnd()]),
    ...(profiles.length === 0 ? [] : [tableCautions.join('\n')]),
  ];
  return `${blocks.join('\n\n')}\n`;
}

function profileBlock(profile: ProfileDiff, colours: ReturnType<typeof createColors>): string {
  const { shown, hidden, notes } = tellingChanges(profile, mostChanges);
  const status = statusText(profile);
  const heading = `${profile.kind} ${printable(profile.id)}`;
  const lines = grid(
    ['left', 'left', 'right', 'left', 'right', 'right', 'left'],
    shown.map((change) => [
      change.bump,
      changeName(change),
      ...sides(change),
      moveText(change),
      basisText(change),
    ]),
  );
  return [
    `${colours.bold(heading)}  ${profile.isBumpEnough ? status : colours.red(status)}`,
    ...lines,
    ...(hidden === 0 ? [] : [`  and ${counted(hidden, 'change')} more`]),
    ...(profile.slowsTables ? ['  tables made by the old version are too fast, or gone'] : []),
    ...(notes === 0 ? [] : [`  ${counted(notes, 'change')} of notes, names, sources or intervals`]),
  ].join('\n');
}

function sides({ base, head, dimension }: ProfileChange): string[] {
  return [sideText(base, dimension), '->', sideText(head, dimension)];
}

function tablesBlock(tables: TablesDiff): string {
  const { shown, hidden } = biggestMoves(tables, mostMoves);
  const lines = shown.flatMap((move) => [`  ${printable(tableNameText(move))}`, `    ${moveLine(move)}`]);
  const heading = shown.length === 0 ? [] : ['The biggest move of each table:'];
  const rest = hidden === 0 ? [] : [`  and ${counted(hidden, 'cell')} more`];
  return [`Tables: ${tablesText(tables)}`, ...heading, ...lines, ...rest, ...settingsBlock(tables)].join(
    '\n',
  );
}

function settingsBlock(tables: TablesDiff): string[] {
  const { shown, hidden } = settingLines(tables, mostSettings);
  if (shown.length === 0) return [];
  const rest = hidden === 0 ? [] : [`  and ${hidden} more`];
  return ['Settings that differ:', ...shown.map((line) => `  ${printable(line)}`), ...rest];
}

function moveLine(move: CellMove): string {
  const { base, head } = move;
  const share = cellMoveText(move);
  const text = `${cellText(move)}: ${rowText(base, head)} -> ${rowText(head, base)}`;
  return share === '' ? text : `${text}  ${share}`;
}

function grid(aligns: readonly GridColumn['align'][], rows: readonly (readonly string[])[]): string[] {
  const columns = aligns.map((align): GridColumn => ({ heading: '', align }));
  const safe = rows.map((row) => row.map(printable));
  return alignedCells(columns, safe)
    .slice(1)
    .map((row) => `  ${row.join('  ')}`.trimEnd());
}
