import { randomSource } from '../../src/statistics/random.ts';
import { alterations, copies } from './alter-sheet.ts';
import { copiedTrial, findingsOf } from './check-sheet.ts';
import { type HonestSheet, honestSheets } from './honest-sheets.ts';
import type { SheetCount, SimulatedMethod } from './sheet-arguments.ts';
import type { Sheet } from './sheet-text.ts';

interface KindCount {
  readonly planted: number;
  readonly found: number;
  /** Alterations by the rule that finds them first. */
  readonly byRule: ReadonlyMap<string, number>;
  /** A line for each that was not found. */
  readonly missed: readonly string[];
}

/** What the check finds of what was done to honest sheets. */
export interface AlteredCount {
  readonly method: SimulatedMethod;
  readonly kinds: ReadonlyMap<string, KindCount>;
}

/** Alters honest sheets of a method, one reading each, and counts what the check finds that it did not find before. */
export function countAltered(asked: SheetCount, only: string): AlteredCount {
  const sheets = honestSheets(asked).map((honest) => ({ honest, known: rulesIn(honest.sheet) }));
  const kinds = new Map<string, KindCount>();
  for (const [kind, alter] of Object.entries(alterations)) {
    if (!kind.includes(only)) continue;
    const counted = new Counter();
    for (const { honest, known } of sheets) {
      const altered = alter(honest.sheet, randomSource(`${kind} ${honest.number}`));
      if (altered !== null) counted.add(honest, altered.what, known, findingsOf(altered.sheet));
    }
    kinds.set(kind, counted.result());
  }
  for (const [kind, copy] of Object.entries(copies)) {
    if (!kind.includes(only)) continue;
    const counted = new Counter();
    for (const { honest, known } of sheets) {
      counted.add(honest, kind, known, findingsOf(copy(honest.sheet), copiedTrial(honest.sheet)));
    }
    kinds.set(kind, counted.result());
  }
  return { method: asked.method, kinds };
}

function rulesIn(sheet: Sheet): ReadonlySet<string> {
  return new Set(findingsOf(sheet).map(({ rule }) => rule));
}

class Counter {
  private planted = 0;
  private found = 0;
  private readonly byRule = new Map<string, number>();
  private readonly missed: string[] = [];

  add(
    { kind, number }: HonestSheet,
    what: string,
    known: ReadonlySet<string>,
    findings: readonly { readonly rule: string }[],
  ): void {
    this.planted += 1;
    const first = findings.find(({ rule }) => !known.has(rule));
    if (first === undefined) {
      this.missed.push(`${kind}, ${number}: ${what}`);
    } else {
      this.found += 1;
      this.byRule.set(first.rule, (this.byRule.get(first.rule) ?? 0) + 1);
    }
  }

  result(): KindCount {
    const { planted, found, byRule, missed } = this;
    return { planted, found, byRule, missed };
  }
}
