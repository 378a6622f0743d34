import { wilsonInterval } from '../wilson-interval.ts';
import type { AlteredCount } from './count-altered.ts';
import type { HonestCount } from './count-honest.ts';

const percent = (share: number) => `${(100 * share).toFixed(1)} %`;

function shareText(found: number, all: number): string {
  const [low, high] = wilsonInterval(found, all);
  return `${percent(all === 0 ? 0 : found / all)} (${percent(low)} to ${percent(high)})`;
}

/** Errors and warnings in honest sheets of a method, and by which rule. */
export function honestTable(counted: HonestCount, lists: boolean): string {
  const { method, sheets, withError, withWarning, byRule, found } = counted;
  return [
    `${method}: ${sheets} honest sheets`,
    `  with an error    ${String(withError).padStart(4)}  ${shareText(withError, sheets)}`,
    `  with a warning   ${String(withWarning).padStart(4)}  ${shareText(withWarning, sheets)}`,
    ...[...byRule].map(([rule, count]) => `    ${rule.padEnd(34)}${count}`),
    ...(lists ? found.map((line) => `    ${line}`) : []),
  ].join('\n');
}

/** Altered readings of a method that were found, by what was altered. */
export function alteredTable({ method, kinds }: AlteredCount, lists: boolean): string {
  return [
    method,
    ...[...kinds].flatMap(([kind, { planted, found, atBest, byRule, missed }]) => [
      `  ${kind.padEnd(38)}${String(found).padStart(4)} of ${String(planted).padEnd(5)}${shareText(found, planted).padEnd(28)}${atBest === null ? '' : `at best ${percent(atBest / planted)}  `}${[...byRule].map(([rule, count]) => `${rule} ${count}`).join(', ')}`,
      ...(lists ? missed.map((line) => `    missed: ${line}`) : []),
    ]),
  ].join('\n');
}
