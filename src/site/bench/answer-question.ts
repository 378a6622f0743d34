import { entriesOfSheet } from './dropped-sheet.ts';
import { intervalAdvice } from './interval-advice.ts';
import { judgeDraft } from './judge-draft.ts';
import { measuredRuns } from './measured.ts';
import { nextStep, planDraft, planWords } from './plan-draft.ts';
import type { BenchAnswers, BenchQuestion } from './questions.ts';
import { reduceDraft } from './reduce-draft.ts';
import type { BenchSession } from './session.ts';

/** Answers a question of the bench page; where that takes long it stops now and then, so that a newer one can be heard. */
export function* answerQuestion(
  session: BenchSession,
  question: BenchQuestion,
): Generator<undefined, BenchAnswers[BenchQuestion['ask']]> {
  switch (question.ask) {
    case 'plan':
      return planDraft(session, question.asked);
    case 'known':
      return {
        measured: measuredRuns(session, question.asked),
        plan: planWords(session, question.asked),
      };
    case 'reduce':
      return reduceDraft(session, question.draft);
    case 'advise': {
      const next = nextStep(session, question.draft);
      yield;
      return { next, advice: yield* intervalAdvice(session, question.draft) };
    }
    case 'judge':
      return judgeDraft(session, question.draft);
    case 'sheet':
      return entriesOfSheet(question.draft, question.bytes);
    default:
      return question satisfies never;
  }
}
