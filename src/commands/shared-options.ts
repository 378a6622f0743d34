import { InvalidArgumentError, Option } from 'commander';

/** `--registry DIR`, repeatable: later registries rest on earlier ones, the last is the team's own. */
export function registryOption(): Option {
  return new Option(
    '--registry <folder>',
    'folder or installed package with a registry; may be repeated, each builds on those before it',
  )
    .argParser((folder: string, earlier: readonly string[]) => [...earlier, folder])
    .default([], 'those that package.json names, else profiles in this folder');
}

/** `--today DATE`, for a report that does not depend on the clock. */
export function todayOption(): Option {
  return new Option('--today <date>', 'date to use as today, YYYY-MM-DD (default: today, UTC)').argParser(
    (text: string) => {
      const day = new Date(`${text}T00:00:00Z`);
      if (Number.isNaN(day.getTime()) || day.toISOString().slice(0, 10) !== text) {
        throw new InvalidArgumentError('write a date as YYYY-MM-DD, for instance 2026-11-25.');
      }
      return text;
    },
  );
}

/** `--policy ID`, where a policy only says by which rule to decide. */
export function rulePolicyOption(): Option {
  return new Option(
    '--policy <id>',
    'house rules whose decision rule counts (default: the only ones of the registry, else guarded acceptance)',
  );
}

/** The forms of an answer: those that people read, and JSON for programs. */
const answerFormats = ['text', 'json', 'markdown'] as const;

export type AnswerFormat = (typeof answerFormats)[number];

export function formatOption(description: string): Option {
  return new Option('--format <format>', description).choices(answerFormats).default('text');
}

/** The forms of one table on standard output. */
export const tableFormats = ['text', 'markdown', 'csv', 'json', 'html', 'xlsx'] as const;

export type TableFormat = (typeof tableFormats)[number];

/** The forms of a plan. */
export const planFormats = ['text', 'json', 'markdown', 'csv', 'trial'] as const;

export type PlanFormat = (typeof planFormats)[number];
