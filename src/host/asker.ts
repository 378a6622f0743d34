/** An answer: text, `null` where the user leaves the place open, or `stopped` where they want no more of it. */
export type Answer = { readonly text: string | null } | 'stopped';

interface TextQuestion {
  readonly message: string;
  /** An answer to another case; empty for none. */
  readonly example: string;
  /** What Enter alone does, such as `Enter leaves it out`; null where there must be an answer. */
  readonly open: string | null;
  /** Offered as the answer, to be taken over or changed; empty for none. */
  readonly suggestion: string;
  /** What is wrong with an answer, or null. */
  readonly problem: (text: string) => string | null;
}

interface ChoiceQuestion {
  readonly message: string;
  readonly choices: readonly string[];
  /** What an open answer is called in the list; null where one of the choices must be taken. */
  readonly open: string | null;
}

/** Somebody who answers questions, one at a time. */
export interface Asker {
  readonly text: (question: TextQuestion) => Promise<Answer>;
  readonly choose: (question: ChoiceQuestion) => Promise<Answer>;
  readonly confirm: (message: string) => Promise<boolean | 'stopped'>;
}
