import { tableCautions } from '../../knowledge/cautions.ts';
import { flowText } from '../../prediction/prediction-text.ts';
import { alignedCells, type GridColumn } from '../../text/text-grid.ts';
import type { MatchResult } from './match-registry.ts';
import { type PairingMatch, type Verdict, verdicts, verdictText } from './match-verdict.ts';

/** One sign a verdict, told apart without colour. */
const signs: Readonly<Record<Verdict, string>> = { suits: '+', limited: '~', unsuitable: 'x' };

/** A match for a terminal: the grid, its legend, and every reason that is not plain suitability. */
export function writeMatchText(result: MatchResult): string {
  const lines = [
    ...(result.ranked === null ? matrix(result) : ranking(result.ranked, result.matches)),
    '',
    `Legend: ${verdicts.map((verdict) => `${signs[verdict]} ${verdictText[verdict]}`).join(', ')}; a number is the melt flow in mm3/s, measured (> where the ladder ended before its limit) or in brackets expected.`,
    ...result.matches.flatMap((match) => reasonLines(match, result.ranked !== null)),
    '',
    ...tableCautions.map((caution) => `Caution: ${caution}`),
  ];
  return `${lines.join('\n')}\n`;
}

function matrix({ machines, filaments, matches }: MatchResult): string[] {
  const columns: GridColumn[] = [
    { heading: 'filament', align: 'left' },
    ...machines.map((heading): GridColumn => ({ heading, align: 'left' })),
  ];
  const rows = filaments.map((filament) => [
    filament,
    ...machines.map((machine) =>
      cell(matches.find((match) => match.machine === machine && match.filament === filament)),
    ),
  ]);
  return gridLines(columns, rows);
}

function cell(match: PairingMatch | undefined): string {
  if (match === undefined) return '';
  return `${signs[match.verdict]} ${shortFlow(match)}`.trimEnd();
}

function shortFlow({ flow }: PairingMatch): string {
  if (flow === null) return '';
  const number = Number(flow.value.toPrecision(3));
  if (flow.basis === 'expected') return `(${number})`;
  return flow.isLowerBound ? `>${number}` : String(number);
}

function ranking(filament: string, matches: readonly PairingMatch[]): string[] {
  const columns: GridColumn[] = [
    { heading: '', align: 'right' },
    { heading: filament, align: 'left' },
    { heading: 'verdict', align: 'left' },
    { heading: 'nozzle', align: 'left' },
    { heading: 'melt flow', align: 'right' },
    { heading: 'basis', align: 'left' },
  ];
  const rows = matches.map((match, index) => [
    String(index + 1),
    match.machine,
    `${signs[match.verdict]} ${verdictText[match.verdict]}`,
    match.nozzle,
    match.flow === null ? '' : `${match.flow.isLowerBound ? '>' : ''}${flowText(match.flow.value)}`,
    match.flow?.basis ?? '',
  ]);
  return gridLines(columns, rows);
}

function gridLines(columns: readonly GridColumn[], rows: readonly (readonly string[])[]): string[] {
  return alignedCells(columns, rows).map((row) => row.join('  ').trimEnd());
}

/** A ranking shows what speaks for a pairing too, the matrix only what speaks against it. */
function reasonLines({ machine, filament, verdict, reasons }: PairingMatch, all: boolean): string[] {
  const told = reasons.filter((reason) => all || reason.verdict !== 'suits');
  if (told.length === 0) return [];
  return [
    '',
    `${filament} on ${machine}: ${verdictText[verdict]}`,
    ...told.map((reason) => `  ${signs[reason.verdict]} ${reason.text}`),
  ];
}
