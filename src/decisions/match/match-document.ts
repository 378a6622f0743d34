import { tableCautions } from '../../knowledge/cautions.ts';
import { chosenRuleText, type DecisionRule } from '../../knowledge/decision-rule.ts';
import { basisWords, originBlocks } from '../../knowledge/origin.ts';
import { quirkSections } from '../../knowledge/quirk-words.ts';
import { type Verdict, verdicts } from '../../knowledge/suitability/suitability.ts';
import { flowText } from '../../prediction/prediction-text.ts';
import {
  type Block,
  cautions,
  type Document,
  leftColumns,
  list,
  paragraph,
  type Section,
  section,
  type Table,
  table,
} from '../../text/document.ts';
import { counted } from '../../text/words.ts';
import { rounded } from '../../units/rounded.ts';
import type { MatchResult } from './match-registry.ts';
import {
  type MatchFlow,
  type MatchReason,
  type PairingMatch,
  speaksAgainst,
  verdictText,
} from './match-verdict.ts';

/** One sign a verdict, told apart without colour. */
const signs: Readonly<Record<Verdict, string>> = { suits: '+', limited: '~', unsuitable: 'x' };

/** Verdicts for a narrow column. */
const shortVerdicts: Readonly<Record<Verdict, string>> = { ...verdictText, limited: 'with limits' };

/** A match for people: the best machine or how many pairings suit, the grid with its legend, then the reasons. */
export function matchDocument(result: MatchResult): Document {
  const { ranked, decision, matches, origin } = result;
  const blocks: Block[] = [
    ...originBlocks(origin),
    ...(isCompared(matches) ? [paragraph(`${chosenRuleText(decision)}: ${flowRules[decision.rule]}`)] : []),
    ranked === null ? matrix(result) : ranking(matches),
    paragraph(legend(ranked === null)),
    ...matches.flatMap((match) => reasonSection(match, ranked !== null)),
    ...(ranked === null ? [] : nextSteps(matches)),
    ...quirkSections(matches.flatMap(({ verdict, quirks }) => (verdict === 'unsuitable' ? [] : quirks))),
    cautions(tableCautions),
  ];
  return ranked === null
    ? { title: 'Machines and filaments', answer: countsText(matches), blocks }
    : { title: `Machines for ${ranked}`, answer: bestText(ranked, matches), blocks };
}

/** When a measured flow limits a pairing, by rule. */
const flowRules: Readonly<Record<DecisionRule, string>> = {
  guardedAcceptance:
    'a measured flow suits where even the lower end of its 95 % interval reaches half of what is claimed for the nozzle (a guard band of the expanded uncertainty; half is common practice, no source).',
  simpleAcceptance:
    'a measured flow suits where it reaches half of what is claimed for the nozzle, whatever its interval (half is common practice, no source).',
};

/** Whether a measured flow was compared with a claim. */
function isCompared(matches: readonly PairingMatch[]): boolean {
  return matches.some(({ flow, claim }) => flow?.basis === 'measured' && claim !== null);
}

/** `12 pairings: 8 suit, 3 suit with limits, 1 does not.` */
function countsText(matches: readonly PairingMatch[]): string {
  const [suiting = 0, limited = 0, unsuitable = 0] = verdicts.map(
    (verdict) => matches.filter((match) => match.verdict === verdict).length,
  );
  const does = (count: number, one: string, many: string) => `${count} ${count === 1 ? one : many}`;
  return `${counted(matches.length, 'pairing')}: ${does(suiting, 'suits', 'suit')}, ${does(limited, 'suits', 'suit')} with limits, ${does(unsuitable, 'does', 'do')} not.`;
}

/** The first of the ranked machines, unless even that one is unsuitable. */
function bestText(filament: string, [best]: readonly PairingMatch[]): string {
  if (best === undefined || best.verdict === 'unsuitable') return `No machine suits ${filament}.`;
  const limits = best.verdict === 'limited' ? ', with limits' : '';
  const flow = best.flow === null ? '' : `: ${longFlow(best)} ${flowBasis(best.flow)}`;
  return `${filament} suits ${best.machine} best${limits}, with nozzle ${best.nozzle}${flow}.`;
}

/** What to do with the best machine: measure the flow, or take the table. */
function nextSteps([best]: readonly PairingMatch[]): Block[] {
  if (best === undefined || best.verdict === 'unsuitable') return [];
  const pairing = `${best.machine} ${best.filament} --nozzle ${best.nozzle}`;
  return [
    paragraph(
      best.flow?.basis === 'measured'
        ? `Next: \`meltbounds tables ${pairing}\` gives the speeds.`
        : `Next: nobody has measured the flow; \`meltbounds plan ${pairing}\` lays out the ladder.`,
    ),
  ];
}

function matrix({ machines, filaments, matches }: MatchResult): Table {
  const columns = leftColumns('filament', ...machines);
  const rows = filaments.map((filament) => [
    filament,
    ...machines.map((machine) =>
      matrixCell(matches.find((match) => match.machine === machine && match.filament === filament)),
    ),
  ]);
  return table(columns, rows);
}

function matrixCell(match: PairingMatch | undefined): string {
  return match === undefined ? '' : `${signs[match.verdict]} ${shortFlow(match)}`.trimEnd();
}

/** A flow without its unit, which the legend gives. */
function shortFlow({ flow }: PairingMatch): string {
  if (flow === null) return '';
  const number = rounded(flow.value, 3);
  if (flow.basis === 'expected') return `(${number})`;
  return flow.isLowerBound ? `>${number}` : String(number);
}

function ranking(matches: readonly PairingMatch[]): Table {
  const rows = matches.map((match, index) => [
    index + 1,
    match.machine,
    `${signs[match.verdict]} ${shortVerdicts[match.verdict]}`,
    match.nozzle,
    longFlow(match),
    match.flow === null ? '' : flowBasis(match.flow),
  ]);
  return table(
    [
      { heading: '', align: 'right' },
      ...leftColumns('machine', 'verdict', 'nozzle'),
      { heading: 'melt flow', align: 'right' },
      { heading: 'basis', align: 'left', wraps: true },
    ],
    rows,
  );
}

function flowBasis({ basis, isSimulated }: MatchFlow): string {
  return basisWords(basis, isSimulated);
}

function longFlow({ flow }: PairingMatch): string {
  return flow === null ? '' : `${flow.isLowerBound ? 'at least ' : ''}${flowText(flow.value)}`;
}

function legend(isMatrix: boolean): string {
  const meanings = verdicts.map((verdict) => `${signs[verdict]} ${verdictText[verdict]}`).join(', ');
  const numbers =
    '; a number is the melt flow in mm³/s, measured (> where the ladder ended before its limit) or in brackets expected';
  return `Legend: ${meanings}${isMatrix ? numbers : `, ${toMind.sign} ${toMind.word}`}.`;
}

/** What suits and must be known all the same, such as a door to be opened, has a sign of its own. */
const toMind = { sign: '!', word: 'to mind' };

function markOf({ verdict, warning }: MatchReason): typeof toMind {
  if (verdict === 'suits' && warning !== undefined) return toMind;
  return { sign: signs[verdict], word: verdictText[verdict] };
}

/** A ranking shows what speaks for a pairing too, the matrix only what speaks against it. */
function reasonSection({ machine, filament, verdict, reasons }: PairingMatch, all: boolean): Section[] {
  const told = reasons.filter((reason) => all || speaksAgainst(reason));
  if (told.length === 0) return [];
  const items = told.map((reason) => ({
    mark: markOf(reason),
    text: reason.text,
  }));
  return [section(`${filament} on ${machine}: ${verdictText[verdict]}`, [list(items)])];
}
