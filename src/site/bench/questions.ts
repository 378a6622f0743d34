import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Problem, Result } from '../../result.ts';
import type { Draft, EntryContent, RunAsked } from './draft.ts';
import type { IntervalAdvice } from './interval-advice.ts';
import type { JudgedDraft } from './judge-draft.ts';
import type { MeasuredRun } from './measured.ts';
import type { NextStep } from './plan-draft.ts';
import type { ReducedDraft } from './reduce-draft.ts';
import type { RegistryPart } from './registry-part.ts';
import type { BenchPlaces } from './session.ts';

/** What the page hands to its worker once, before it asks. */
export interface SessionStart {
  readonly parts: readonly RegistryPart[];
  readonly places: BenchPlaces;
  readonly today: string;
}

/** What the page asks its worker. */
export type BenchQuestion =
  | { readonly ask: 'plan'; readonly asked: RunAsked }
  | { readonly ask: 'known'; readonly asked: RunAsked }
  | { readonly ask: 'reduce' | 'advise' | 'judge'; readonly draft: Draft }
  | { readonly ask: 'sheet'; readonly draft: Draft; readonly bytes: Uint8Array };

/** What the worker answers to each. */
export interface BenchAnswers {
  readonly plan: Result<{ readonly entries: readonly EntryContent[] }, Problem>;
  readonly known: { readonly measured: readonly MeasuredRun[]; readonly plan: string | null };
  readonly reduce: ReducedDraft;
  readonly advise: { readonly next: NextStep | null; readonly advice: IntervalAdvice | null };
  readonly judge: JudgedDraft;
  readonly sheet: Result<readonly EntryContent[], readonly BenchProblem[]>;
}
