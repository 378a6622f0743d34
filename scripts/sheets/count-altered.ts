import { randomSource } from '../../src/statistics/random.ts';
import { type Alter, alterations, alteredShares, copies } from './alter-sheet.ts';
import { bestTest } from './best-test.ts';
import { copiedTrial, findingsOf } from './check-sheet.ts';
import { type HonestSheet, honestSheets } from './honest-sheets.ts';
import type { SheetCount, SimulatedMethod } from './sheet-arguments.ts';
import type { Sheet } from './sheet-text.ts';

interface KindCount {
  readonly planted: number;
  readonly found: number;
  /** What the best of tests finds, where that is known. */
  readonly atBest: number | null;
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

/** An honest sheet and the rules that find something in it. */
interface KnownSheet {
  readonly honest: HonestSheet;
  readonly known: ReadonlySet<string>;
}

/** Alters honest sheets of a method, one reading each, and counts what the check finds that it did not find before. */
export function countAltered(asked: SheetCount, only: string): AlteredCount {
  const sheets = honestSheets(asked).map((honest) => ({ honest, known: rulesIn(honest.sheet) }));
  const isAsked = ([kind]: readonly [string, unknown]) => kind.includes(only);
  const kinds = new Map([
    ...Object.entries(alterations)
      .filter(isAsked)
      .map(([kind, alter]) => [kind, countedAlteration(kind, alter, sheets)] as const),
    ...Object.entries(copies)
      .filter(isAsked)
      .map(([kind, copy]) => [kind, countedCopies(kind, copy, sheets)] as const),
  ]);
  return { method: asked.method, kinds };
}

function countedAlteration(kind: string, alter: Alter, sheets: readonly KnownSheet[]): KindCount {
  const share = shareOf(kind);
  const isFindable =
    share === undefined
      ? null
      : bestTest(
          sheets.map(({ honest }) => honest),
          share,
        );
  const counted = new Counter();
  for (const { honest, known } of sheets) {
    const altered = alter(honest.sheet, randomSource(`${kind} ${honest.number}`));
    if (altered === null) continue;
    counted.add(honest, altered.what, known, findingsOf(altered.sheet));
    if (isFindable !== null) counted.addAtBest(isFindable(honest, altered.sheet));
  }
  return counted.result();
}

function countedCopies(
  kind: string,
  copy: (sheet: Sheet) => Sheet,
  sheets: readonly KnownSheet[],
): KindCount {
  const counted = new Counter();
  for (const { honest, known } of sheets) {
    counted.add(honest, kind, known, findingsOf(copy(honest.sheet), copiedTrial(honest.sheet)));
  }
  return counted.result();
}

function shareOf(kind: string): number | undefined {
  return Object.entries(alteredShares).find(([name]) => name === kind)?.[1];
}

function rulesIn(sheet: Sheet): ReadonlySet<string> {
  return new Set(findingsOf(sheet).map(({ rule }) => rule));
}

class Counter {
  private planted = 0;
  private found = 0;
  private atBest: number | null = null;
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

  addAtBest(isFindable: boolean): void {
    this.atBest = (this.atBest ?? 0) + (isFindable ? 1 : 0);
  }

  result(): KindCount {
    const { planted, found, atBest, byRule, missed } = this;
    return { planted, found, atBest, byRule, missed };
  }
}
