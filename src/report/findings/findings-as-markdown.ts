import { type AcknowledgedFinding, type Finding, severities } from '../../registry/finding.ts';
import { paragraph } from '../../text/document.ts';
import { counted } from '../../text/words.ts';
import { formatDocument } from '../../units/format-document.ts';
import { fittingSections, type Room } from '../fitting-sections.ts';
import { findingsDocument, type TextOf } from './findings-document.ts';
import type { Summary } from './summary.ts';

/** First line of the report, by which a comment that an earlier check was posted as is found again. */
const checkMarker = '<!-- meltbounds check -->';

/** Code hosts refuse comments of 65 536 characters; in bytes a character can be three. */
const room: Room = { sections: 50, length: 20_000 };

/**
 * Findings as Markdown for the summary of a job or a comment: the most serious first, as many as there is room for, and how
 * many are left out.
 */
export function formatFindingsAsMarkdown(
  findings: readonly Finding[],
  summary: Summary,
  textOf: TextOf,
  acknowledged: readonly AcknowledgedFinding[] = [],
): string {
  const serious = severities.flatMap((severity) => findings.filter((each) => each.severity === severity));
  const { answer, sections } = findingsDocument(serious, summary, textOf, acknowledged);
  const { shown, hidden } = fittingSections(sections, room);
  const rest = hidden === 0 ? [] : [paragraph(`And ${counted(hidden, 'finding')} more.`)];
  const short = { title: 'Check of the profiles', answer, blocks: [...shown, ...rest] };
  return `${checkMarker}\n\n${formatDocument(short, 'markdown', { level: 3, aligned: false })}`;
}
