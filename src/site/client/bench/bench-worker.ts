import { answerQuestion } from '../../bench/answer-question.ts';
import type { BenchQuestion } from '../../bench/questions.ts';
import { type BenchSession, startSession } from '../../bench/session.ts';
import type { WorkerAnswer, WorkerMessage } from './worker-calls.ts';

// The worker of the bench page: it calculates, so that the page stays quick under the fingers.
let session: BenchSession | null = null;
const newest = new Map<BenchQuestion['ask'], number>();

addEventListener('message', ({ data }: MessageEvent<WorkerMessage>) => {
  if ('start' in data) {
    session = startSession(data.start.parts, data.start.places, data.start.today);
    newest.clear();
    return;
  }
  newest.set(data.question.ask, data.number);
  void answer(data.number, data.question);
});

/** Answers step by step; a question that a newer one of its kind has replaced is given up. */
async function answer(number: number, question: BenchQuestion): Promise<void> {
  const asked = session;
  if (asked === null) return;
  try {
    const steps = answerQuestion(asked, question);
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return send({ number, answer: step.value });
      await pause();
      if (newest.get(question.ask) !== number || session !== asked) return send({ number, answer: null });
    }
  } catch (error) {
    send({ number, fault: error instanceof Error ? error.message : String(error) });
  }
}

function send(answered: WorkerAnswer): void {
  postMessage(answered);
}

/** Lets what has arrived meanwhile be heard. */
function pause(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}
