import type { Readable, Writable } from 'node:stream';
import { autocomplete, confirm, isCancel, text } from '@clack/prompts';
import { printable } from '../text/printable.ts';
import type { Answer, Asker } from './asker.ts';

/** Value that stands for an open answer in a list; no choice of a schema has blanks. */
const openValue = ' open ';

/** Lines of a list that are seen at once. */
const mostSeen = 12;

/** Asks at a terminal; the questions go to `output`, so that a program may read standard output. */
export function terminalAsker(input: Readable, output: Writable): Asker {
  return {
    text: async ({ message, example, open, suggestion, problem }) =>
      answerOf(
        await text({
          // An example in the line of the answer would look like one that stands there already.
          message: [message, example === '' ? '' : `For example ${example}.`, open === null ? '' : `${open}.`]
            .filter((part) => part !== '')
            .map(printable)
            .join(' '),
          initialValue: printable(suggestion),
          validate: (value = '') =>
            value.trim() === ''
              ? open === null
                ? 'It cannot do without an answer.'
                : undefined
              : (problem(value) ?? undefined),
          input,
          output,
        }),
      ),
    choose: async ({ message, choices, open }) =>
      answerOf(
        await autocomplete({
          message: printable(message),
          options: [
            ...choices.map((choice) => ({ value: choice, label: printable(choice) })),
            ...(open === null ? [] : [{ value: openValue, label: open }]),
          ],
          filter: (typed, { value }) =>
            value === openValue || value.toLowerCase().includes(typed.trim().toLowerCase()),
          maxItems: mostSeen,
          input,
          output,
        }),
      ),
    confirm: async (message) => {
      const answer = await confirm({ message: printable(message), initialValue: false, input, output });
      return isCancel(answer) ? 'stopped' : answer;
    },
  };
}

function answerOf(answer: unknown): Answer {
  if (isCancel(answer)) return 'stopped';
  const given = typeof answer === 'string' ? answer.trim() : '';
  if (answer === openValue) return { text: null };
  return { text: given === '' ? null : given };
}
