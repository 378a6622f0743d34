import type { ProfileDiff } from '../../decisions/diff/diff-profile.ts';
import type { CellMove, TablesDiff } from '../../decisions/diff/diff-tables.ts';
import type { ProfileChange } from '../../decisions/diff/profile-changes.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { originBlocks } from '../../knowledge/origin.ts';
import type { Finding } from '../../registry/finding.ts';
import {
  type Block,
  type Column,
  cautions,
  type Document,
  leftColumns,
  list,
  paragraph,
  type Section,
  section,
  table,
} from '../../text/document.ts';
import { styled } from '../../text/inline.ts';
import { capitalised, counted } from '../../text/words.ts';
import { findingSection } from '../findings/findings-document.ts';
import { fittingSections } from '../fitting-sections.ts';
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

/** How much of each sort of thing is shown; the rest is counted. */
export interface DiffLimits {
  readonly profiles: number;
  /** Of one profile. */
  readonly changes: number;
  readonly findings: number;
  /** Longest text about profiles, and about findings, in characters of Markdown. */
  readonly length: number;
}

/** On a terminal a comparison shows everything but the many changes of one profile. */
const usualLimits: DiffLimits = {
  profiles: Number.POSITIVE_INFINITY,
  changes: 20,
  findings: Number.POSITIVE_INFINITY,
  length: Number.POSITIVE_INFINITY,
};

const mostMoves = 10;
const mostSettings = 10;

/** Longest text of a stranger that a cell shows, in characters. */
const longestCell = 120;

/**
 * A comparison for people: each profile with its bump and values, the tables, then what is to be fixed. Where no limits
 * are given, it shows all but the changes of one profile beyond the twentieth.
 */
export function diffDocument(
  { diff, base, head, textOf }: DiffReport,
  lowered: Partial<DiffLimits> = {},
): Document {
  const limits = { ...usualLimits, ...lowered };
  const { profiles, tables, bump, origin, findings } = diff;
  const sections = profiles.map((profile) => profileSection(profile, limits));
  const listed = fittingSections(sections, { sections: limits.profiles, length: limits.length });
  return {
    title: `${base} → ${head}`,
    answer: `${capitalised(headlineText(profiles, bump))}.`,
    blocks: [
      ...originBlocks(origin),
      ...listed.shown,
      ...(listed.hidden === 0 ? [] : [paragraph(`And ${counted(listed.hidden, 'profile')} more.`)]),
      ...(profiles.length === 0 ? [] : [tablesSection(tables)]),
      ...(findings.length === 0 ? [] : [findingsSection(findings, limits, textOf)]),
      ...(profiles.length === 0 ? [] : [cautions(tableCautions)]),
    ],
  };
}

function findingsSection(
  findings: readonly Finding[],
  limits: DiffLimits,
  textOf: DiffReport['textOf'],
): Section {
  const sections = findings.map((finding) => findingSection(finding, textOf));
  const { shown, hidden } = fittingSections(sections, { sections: limits.findings, length: limits.length });
  return section(`${counted(findings.length, 'problem')} to fix`, [
    ...shown,
    ...(hidden === 0 ? [] : [paragraph(`And ${hidden} more.`)]),
  ]);
}

/** What whoever prints by tables that are slower now has to hear. */
export const slowerTables = 'Tables made by the old version are too fast, or gone.';

const changeColumns = [
  ...leftColumns('bump', 'what'),
  { heading: 'old', align: 'right' },
  { heading: 'new', align: 'right' },
  { heading: 'by', align: 'right' },
  ...leftColumns('basis'),
] as const satisfies readonly Column[];

function profileSection(profile: ProfileDiff, limits: DiffLimits): Section {
  const { shown, hidden, notes } = tellingChanges(profile, limits.changes);
  const status = statusText(profile);
  const blocks: Block[] = [
    ...(shown.length === 0 ? [] : [table(wrapped(changeColumns, 1, 2, 3, 5), shown.map(changeCells))]),
    ...(hidden === 0 ? [] : [paragraph(`And ${counted(hidden, 'change')} more.`)]),
    ...(profile.slowsTables ? [paragraph(slowerTables)] : []),
    ...(notes === 0 ? [] : [paragraph(`${counted(notes, 'change')} of notes, names, sources or intervals.`)]),
  ];
  return section(
    [`${profile.kind} ${profile.id}: `, profile.isBumpEnough ? status : styled('error', status)],
    blocks,
  );
}

function wrapped(columns: readonly Column[], ...wrapping: readonly number[]): Column[] {
  return columns.map((column, index) => ({ ...column, wraps: wrapping.includes(index) }));
}

function changeCells(change: ProfileChange): string[] {
  const { base, head, dimension, bump } = change;
  const sides = [sideText(base, dimension), sideText(head, dimension)];
  return [bump, changeName(change), ...sides, moveText(change), basisText(change)].map(shortCell);
}

function tablesSection(tables: TablesDiff): Section {
  const { shown, hidden } = biggestMoves(tables, mostMoves);
  const moves: Block[] = [
    paragraph('The biggest move of each table:'),
    table(wrapped(leftColumns('table', 'cell', 'old', 'new', 'by'), 0, 1, 2, 3), shown.map(moveCells)),
  ];
  return section('Tables', [
    paragraph(tablesText(tables)),
    ...(shown.length === 0 ? [] : moves),
    ...(hidden === 0 ? [] : [paragraph(`And ${counted(hidden, 'cell')} more.`)]),
    ...settingBlocks(tables),
  ]);
}

function settingBlocks(tables: TablesDiff): Block[] {
  const { shown, hidden } = settingLines(tables, mostSettings);
  if (shown.length === 0) return [];
  const rest = hidden === 0 ? [] : [`and ${hidden} more`];
  return [paragraph('Settings that differ:'), list([...shown.map(shortCell), ...rest])];
}

function moveCells(move: CellMove): string[] {
  const { base, head } = move;
  const cells = [tableNameText(move), cellText(move), rowText(base, head), rowText(head, base)];
  return [...cells, cellMoveText(move)].map(shortCell);
}

function shortCell(value: string): string {
  return value.length > longestCell ? `${value.slice(0, longestCell)}…` : value;
}
