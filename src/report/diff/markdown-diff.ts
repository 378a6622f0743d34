import type { ProfileDiff } from '../../decisions/diff/diff-profile.ts';
import type { CellMove, TablesDiff } from '../../decisions/diff/diff-tables.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import type { Finding } from '../../registry/finding.ts';
import { escapeMarkdown } from '../../text/markdown.ts';
import { counted } from '../../text/words.ts';
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
  type Shortened,
  settingLines,
  shorten,
  statusText,
  tablesText,
  tellingChanges,
} from './diff-digest.ts';
import type { DiffReport } from './diff-report.ts';

/** First line of every report, by which the comment that an earlier one was posted as is found again. */
const diffMarker = '<!-- meltbounds diff -->';

/** A comment stays short: what is not shown is counted. */
const most = { profiles: 20, changes: 10, moves: 10, settings: 10, findings: 20 } as const;

/** A comparison as a comment on a pull request. Whatever profiles say is shown as text and nothing else. */
export function markdownDiff({ diff, base, head }: DiffReport): string {
  const { profiles, tables, bump, findings } = diff;
  const listed = fitting(profiles.map(profileBlock));
  const blocks = [
    diffMarker,
    `### ${text(base)} → ${text(head)}: ${headlineText(profiles, bump)}`,
    ...(findings.length === 0 ? [] : [findingsBlock(findings)]),
    ...listed.shown,
    ...(listed.hidden === 0 ? [] : [`and ${counted(listed.hidden, 'profile')} more.`]),
    ...(profiles.length === 0 ? [] : [tablesBlock(tables), tableCautions.map(text).join(' ')]),
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** Longest text about profiles, in characters: code hosts refuse comments of 65 536. */
const longestProfiles = 40_000;

function fitting(blocks: readonly string[]): Shortened<string> {
  let length = 0;
  const shown = blocks.slice(0, most.profiles).filter((block) => {
    length += block.length;
    return length <= longestProfiles;
  });
  return { shown, hidden: blocks.length - shown.length };
}

function findingsBlock(findings: readonly Finding[]): string {
  const { shown, hidden } = shorten(findings, most.findings);
  return [
    `**${counted(findings.length, 'thing')} to fix**`,
    '',
    ...shown.map(({ file, line, message, help }) =>
      `- ${text(file)}, line ${line}: ${text(message)}. ${text(help ?? '')}`.trimEnd(),
    ),
    ...(hidden === 0 ? [] : [`- and ${hidden} more`]),
  ].join('\n');
}

function profileBlock(profile: ProfileDiff): string {
  const { shown, hidden, notes } = tellingChanges(profile, most.changes);
  const rows = shown.map((change) => [
    changeName(change),
    sideText(change.base, change.dimension),
    sideText(change.head, change.dimension),
    moveText(change),
    basisText(change),
    change.bump,
  ]);
  return [
    `**${profile.kind} ${text(profile.id)}**: ${text(statusText(profile))}`,
    ...(rows.length === 0 ? [] : [table(['what', 'old', 'new', 'by', 'basis', 'bump'], rows)]),
    ...(hidden === 0 ? [] : [`and ${counted(hidden, 'change')} more.`]),
    ...(profile.slowsTables ? ['Tables made by the old version are too fast, or gone.'] : []),
    ...(notes === 0 ? [] : [`${counted(notes, 'change')} of notes, names, sources or intervals.`]),
  ].join('\n\n');
}

function tablesBlock(tables: TablesDiff): string {
  const { shown, hidden } = biggestMoves(tables, most.moves);
  if (shown.length === 0) return [`**Tables**: ${tablesText(tables)}`, ...settingsBlock(tables)].join('\n\n');
  const rest = hidden === 0 ? [] : [`and ${counted(hidden, 'cell')} more.`];
  const heading = `**Tables**: ${tablesText(tables)} The biggest move of each:`;
  return [
    heading,
    table(['table', 'cell', 'old', 'new', 'by'], shown.map(moveCells)),
    ...rest,
    ...settingsBlock(tables),
  ].join('\n\n');
}

function settingsBlock(tables: TablesDiff): string[] {
  const { shown, hidden } = settingLines(tables, most.settings);
  if (shown.length === 0) return [];
  const rest = hidden === 0 ? [] : [`- and ${hidden} more`];
  return [['Settings that differ:', '', ...shown.map((line) => `- ${cell(line)}`), ...rest].join('\n')];
}

function moveCells(move: CellMove): string[] {
  const { base, head } = move;
  return [tableNameText(move), cellText(move), rowText(base, head), rowText(head, base), cellMoveText(move)];
}

function table(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const lines = [headings, headings.map(() => '---'), ...rows.map((row) => row.map(cell))];
  return lines.map((row) => `| ${row.join(' | ')} |`).join('\n');
}

/** Longest text of a stranger that a cell shows, in characters. */
const longestCell = 120;

function cell(value: string): string {
  return text(value.length > longestCell ? `${value.slice(0, longestCell)}…` : value);
}

/** Text of a profile, shown as text and nothing else. */
function text(value: string): string {
  return escapeMarkdown(value.replaceAll('->', '→'));
}
