import type { Readable, Writable } from 'node:stream';
import { confirm, isCancel, select, text } from '@clack/prompts';
import type { Answer, Asker } from './asker.ts';

/** Value that stands for an open answer in a list; no choice of a schema has blanks. */
const openValue = ' open ';

/** Asks at a terminal; the questions go to `output`, so that a program may read standard output. */
export function terminalAsker(input: Readable, output: Writable): Asker {
  return {
    text: async ({ message, example, suggestion, problem }) =>
      answerOf(
        await text({
          message,
          placeholder: `${example === '' ? '' : `${example} is an example; `}Enter leaves it open`,
          initialValue: suggestion,
          validate: (value) =>
            value === undefined || value === '' ? undefined : (problem(value) ?? undefined),
          input,
          output,
        }),
      ),
    choose: async ({ message, choices, open }) =>
      answerOf(
        await select({
          message,
          options: [
            ...choices.map((choice) => ({ value: choice, label: choice })),
            ...(open === null ? [] : [{ value: openValue, label: open }]),
          ],
          maxItems: 12,
          input,
          output,
        }),
      ),
    confirm: async (message) => {
      const answer = await confirm({ message, initialValue: false, input, output });
      return isCancel(answer) ? 'stopped' : answer;
    },
  };
}

function answerOf(answer: unknown): Answer {
  if (isCancel(answer)) return 'stopped';
  const given = typeof answer === 'string' ? answer : '';
  return { text: given === '' || given === openValue ? null : given };
}
