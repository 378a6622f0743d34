import { percent } from './markdown-table.ts';
import type { Outcome } from './planted-registry.ts';
import { type Tally, tallies } from './tally.ts';

/** An aim counts as reached where the lower end of the interval lies no more than this below it. */
const slack = 0.05;

/** Prints what became of the slips, kind by kind. */
export function printTable(outcomes: readonly Outcome[]): void {
  const { passing, refused, all } = tallies(outcomes);
  console.log(
    line(['kind', 'planted', 'form', 'caught', 'low', 'high', 'aim', 'errors', 'rank', 'in 3', 'brings', '']),
  );
  for (const tally of [...passing, all]) console.log(cells(tally));
  if (refused.length > 0) console.log('\nrefused by the form already');
  for (const tally of refused) console.log(cells(tally));
}

/** Prints every slip that nothing names, with what it brings. */
export function printMissed(outcomes: readonly Outcome[]): void {
  list('missed', outcomes.filter(isMissed));
}

/** Prints every slip that is named behind others, or by many findings. */
export function printLate(outcomes: readonly Outcome[]): void {
  const isLate = ({ rank, brought }: Outcome) => rank !== null && (rank > 1 || brought.length > 2);
  list('late', outcomes.filter(isLate));
}

function isMissed({ rank, byForm, slip }: Outcome, _: number, all: readonly Outcome[]): boolean {
  if (rank !== null) return false;
  return !byForm || all.every((other) => other.slip.kind !== slip.kind || other.byForm);
}

function cells(tally: Tally): string {
  const { name, planted, refusedByForm, caught, interval, aim, errors, medianRank, inFirstThree } = tally;
  const reached =
    aim === null ? '' : interval[0] >= aim - slack ? 'reached' : caught >= aim ? 'too few' : 'MISSED';
  return line([
    ...[name, String(planted), String(refusedByForm), percent(caught), ...interval.map(percent)],
    ...[aim === null ? '' : percent(aim), percent(errors), String(medianRank ?? '-'), percent(inFirstThree)],
    ...[tally.findings.toFixed(1), reached],
  ]);
}

function line([name = '', ...rest]: readonly string[]): string {
  return name.padEnd(36) + rest.map((text) => text.padStart(9)).join('');
}

function list(word: string, outcomes: readonly Outcome[]): void {
  for (const { slip, rank, brought } of outcomes) {
    const { kind, file, pointer, before, after, adoption } = slip;
    const stage = adoption === undefined ? '' : ` (${adoption.stage})`;
    console.log(
      `${word}: ${kind}${stage}: ${file} ${pointer}: ${before.trim().slice(0, 60)} -> ${after.slice(0, 120)}${rank === null ? '' : ` rank ${rank}`}`,
    );
    for (const finding of brought.slice(0, 5))
      console.log(
        `    ${finding.severity} ${finding.rule} ${finding.file} ${finding.pointer}: ${finding.message}`,
      );
  }
}
