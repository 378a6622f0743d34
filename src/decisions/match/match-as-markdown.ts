import { tableCautions } from '../../knowledge/cautions.ts';
import { flowText } from '../../prediction/prediction-text.ts';
import { escapeMarkdown, markdownList, markdownTable } from '../../text/markdown.ts';
import type { GridColumn } from '../../text/text-grid.ts';
import type { MatchResult } from './match-registry.ts';
import { type PairingMatch, verdictText } from './match-verdict.ts';

/** A match as Markdown: a table of verdicts in words, then every reason that is not plain suitability. */
export function writeMatchMarkdown(result: MatchResult): string {
  const parts = [
    `# ${result.ranked === null ? 'Machines and filaments' : `Machines for ${escapeMarkdown(result.ranked)}`}`,
    result.ranked === null ? matrix(result) : ranking(result.matches),
    ...result.matches.flatMap((match) => reasonParts(match, result.ranked !== null)),
    markdownList(tableCautions),
  ];
  return `${parts.join('\n\n')}\n`;
}

function matrix({ machines, filaments, matches }: MatchResult): string {
  const cell = (machine: string, filament: string) => {
    const match = matches.find((each) => each.machine === machine && each.filament === filament);
    return match === undefined ? '' : [verdictText[match.verdict], ...flowTexts(match)].join(', ');
  };
  return markdownTable(
    leftColumns('filament', ...machines.map(escapeMarkdown)),
    filaments.map((filament) => [filament, ...machines.map((machine) => cell(machine, filament))]),
  );
}

function ranking(matches: readonly PairingMatch[]): string {
  return markdownTable(
    leftColumns('machine', 'verdict', 'nozzle', 'melt flow'),
    matches.map((match) => [
      match.machine,
      verdictText[match.verdict],
      match.nozzle,
      flowTexts(match).join(''),
    ]),
  );
}

function leftColumns(...headings: readonly string[]): GridColumn[] {
  return headings.map((heading) => ({ heading, align: 'left' }));
}

function flowTexts({ flow }: PairingMatch): string[] {
  return flow === null
    ? []
    : [`${flow.isLowerBound ? 'at least ' : ''}${flowText(flow.value)} ${flow.basis}`];
}

function reasonParts({ machine, filament, verdict, reasons }: PairingMatch, all: boolean): string[] {
  const told = reasons.filter((reason) => all || reason.verdict !== 'suits');
  if (told.length === 0) return [];
  return [
    `## ${escapeMarkdown(`${filament} on ${machine}: ${verdictText[verdict]}`)}`,
    markdownList(told.map((reason) => `${verdictText[reason.verdict]}: ${reason.text}`)),
  ];
}
