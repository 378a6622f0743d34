import { fedTrial } from '../../decisions/plan/fed-trial.ts';
import { planDocument } from '../../decisions/plan/plan-document.ts';
import { planNextPiece } from '../../decisions/plan/plan-next-piece.ts';
import { planTrial } from '../../decisions/plan/plan-trial.ts';
import { type Problem, type Result, success } from '../../result.ts';
import { formatHtmlBlock } from '../../text/format-html.ts';
import { documentInPrint, inPrint } from '../../units/in-print.ts';
import { parseQuantity } from '../../units/parse-quantity.ts';
import type { Draft, EntryContent, RunAsked } from './draft.ts';
import { trialFiles, trialIn } from './draft-files.ts';
import { entriesOfPlan } from './draft-of-plan.ts';
import type { BenchSession } from './session.ts';

/** A run that was laid out. */
interface PlannedDraft {
  readonly entries: readonly EntryContent[];
}

/** Lays out a run as `meltbounds plan` does. Problems: those of the plan, or a temperature that cannot be read. */
export function planDraft(session: BenchSession, asked: RunAsked): Result<PlannedDraft, Problem> {
  const planned = planOf(session, asked);
  return planned.ok ? success({ entries: entriesOfPlan(planned.value, asked) }) : planned;
}

/** What the plan says besides its rows, as HTML: what to expect, how to go about it, what to take care of. */
export function planWords(session: BenchSession, asked: RunAsked): string | null {
  const planned = planOf(session, asked);
  if (!planned.ok) return null;
  const { blocks } = documentInPrint(planDocument({ ...planned.value, rows: [], nextStep: '' }));
  const words = blocks.filter((block) => block.kind !== 'paragraph' || block.text !== '');
  return words.map((block) => formatHtmlBlock(block, 3).markup).join('\n');
}

function planOf({ today, withFiles, reduceKnown }: BenchSession, asked: RunAsked) {
  const { machine, filament, method, nozzle, subject, temperature } = asked;
  const degrees = temperature === null ? null : parseQuantity(temperature, 'temperature');
  if (degrees !== null && !degrees.ok) return degrees;
  return planTrial(
    withFiles([]).registry,
    {
      ...{ machine, filament, method, today },
      ...(nozzle !== null && { nozzle }),
      ...(subject !== null && { subject }),
      ...(degrees !== null && { nozzleTemperature: degrees.value.value }),
    },
    reduceKnown,
  );
}

/** The piece of a flow ladder to feed next, or that feeding may stop. */
export interface NextStep {
  readonly answer: string;
  readonly why: readonly string[];
  /** What is to be set, in the order of the given columns; null where feeding may stop. */
  readonly given: readonly string[] | null;
  readonly hints: readonly string[];
}

/** What `meltbounds plan --after` says of a flow ladder; null for other methods, and where the readings do not do. */
export function nextStep(session: BenchSession, draft: Draft): NextStep | null {
  const { machine, filament, method, policy } = draft.head.asked;
  if (method !== 'flowLadder') return null;
  const files = trialFiles(session, draft);
  const { registry } = session.withFiles([files.trial, files.sheet]);
  const trial = trialIn(registry, files);
  if (trial === undefined) return null;
  const { today } = session;
  const begun = fedTrial(trial, { machine, filament, today, ...(policy !== null && { policy }) });
  if (!begun.ok || !begun.value.ok) return null;
  const { request, fed } = begun.value.value;
  const planned = planNextPiece(registry, request, fed, session.reduceKnown);
  if (!planned.ok || !planned.value.ok) return null;
  const { answer = '', sections, rows } = planned.value.value;
  const [row] = rows;
  return {
    answer: inPrint(answer),
    why: sections.filter(({ heading }) => heading === 'Why').flatMap(({ items }) => items.map(inPrint)),
    given: row?.given.map(String) ?? null,
    hints: row?.hints ?? [],
  };
}
