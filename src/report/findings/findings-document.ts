import type { AcknowledgedFinding, Finding } from '../../registry/finding.ts';
import {
  type Block,
  code,
  type Document,
  type Fact,
  facts,
  type Section,
  section,
} from '../../text/document.ts';
import { quiet, type Style, styled, type Text } from '../../text/inline.ts';
import { sourceFrame } from './source-frame.ts';
import { type Summary, summaryText } from './summary.ts';

/** Gives the text of a file, for showing the line of a finding; undefined where it could not be read. */
export type TextOf = (file: string) => string | undefined;

interface FindingsDocument extends Document {
  readonly answer: Text;
  /** Its blocks: one section per finding. */
  readonly sections: readonly Section[];
}

/**
 * Findings for people: how many there are, then each with its place, the line itself, what is wrong, why, what to do;
 * behind them those that are acknowledged, where they are given.
 */
export function findingsDocument(
  findings: readonly Finding[],
  summary: Summary,
  textOf: TextOf,
  acknowledged: readonly AcknowledgedFinding[] = [],
): FindingsDocument {
  const sections = [
    ...findings.map((finding) => findingSection(finding, textOf)),
    ...acknowledged.map((finding) => acknowledgedSection(finding, textOf)),
  ];
  const answer = [styled(summaryStyle(summary), summaryText(summary))];
  return { title: null, answer, blocks: sections, sections };
}

function summaryStyle({ errors, warnings }: Summary): Style {
  if (errors > 0) return 'error';
  return warnings > 0 ? 'warning' : 'good';
}

/** A finding with its place as the heading. */
export function findingSection(finding: Finding, textOf: TextOf): Section {
  const { file, line, column, severity, rule } = finding;
  const heading = [`${file}:${line}:${column} `, styled(severity, severity), ' ', quiet(rule)];
  return section(heading, [...frameBlocks(finding, textOf), facts(...proseOf(finding))]);
}

/** What a reviewer has accepted, with the reason in the place of a remedy. */
function acknowledgedSection(finding: AcknowledgedFinding, textOf: TextOf): Section {
  const { file, line, column, severity, rule, message, until, reason } = finding;
  const heading = [`${file}:${line}:${column} `, quiet(`acknowledged ${severity} ${rule}`)];
  const accepted = [['found', message] as const, ['reason', reason] as const, ['until', until] as const];
  return section(heading, [...frameBlocks(finding, textOf), facts(...accepted)]);
}

function frameBlocks(finding: Finding, textOf: TextOf): Block[] {
  const text = textOf(finding.file);
  const frame = text === undefined ? null : sourceFrame(text, finding);
  if (frame === null) return [];
  const number = String(finding.line);
  return [code(`${number} | ${frame.line}\n${' '.repeat(number.length)} | ${frame.marker}`)];
}

/** What, why and what to do. */
function proseOf({ message, allowed, source, help }: Finding): Fact[] {
  const all: readonly (readonly [name: string, text: string | null])[] = [
    ['wrong', message],
    ['allowed', allowed],
    ['because', source],
    ['fix', help],
  ];
  return all.flatMap(([name, text]) => (text === null ? [] : [[name, text] as const]));
}
