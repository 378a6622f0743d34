import { findingsOf } from './check-sheet.ts';
import { honestSheets } from './honest-sheets.ts';
import type { SheetCount, SimulatedMethod } from './sheet-arguments.ts';

/** What the check finds in honest sheets. */
export interface HonestCount {
  readonly method: SimulatedMethod;
  readonly sheets: number;
  readonly withError: number;
  /** With a warning and no error. */
  readonly withWarning: number;
  /** Sheets by the rule that finds something in them. */
  readonly byRule: ReadonlyMap<string, number>;
  /** What was found where, a line a sheet. */
  readonly found: readonly string[];
}

/** Checks honest sheets of a method and counts those in which something is found. */
export function countHonest(asked: SheetCount): HonestCount {
  const sheets = honestSheets(asked);
  const byRule = new Map<string, number>();
  const found: string[] = [];
  let [withError, withWarning] = [0, 0];
  for (const { kind, number, sheet } of sheets) {
    const findings = findingsOf(sheet);
    if (findings.length === 0) continue;
    if (findings.some(({ severity }) => severity === 'error')) withError++;
    else withWarning++;
    for (const rule of new Set(findings.map((each) => each.rule)))
      byRule.set(rule, (byRule.get(rule) ?? 0) + 1);
    found.push(
      `${kind}, ${number}: ${findings.map(({ rule, message }) => `${rule} ${message}`).join(' | ')}`,
    );
  }
  return { method: asked.method, sheets: sheets.length, withError, withWarning, byRule, found };
}
