import type { Command } from 'commander';
import { checkCommand } from './check/check.ts';
import { claimsCommand } from './claims.ts';
import type { CliContext } from './cli-context.ts';
import { compareCommand } from './compare.ts';
import { completionCommand } from './completion/completion.ts';
import { diffCommand } from './diff/diff.ts';
import { editorCommand } from './editor/editor.ts';
import type { Exit } from './exit.ts';
import { exportCommand } from './export/export.ts';
import { initCommand } from './init.ts';
import { matchCommand } from './match.ts';
import { migrateCommand } from './migrate.ts';
import { newCommand } from './new/new.ts';
import { planCommand } from './plan.ts';
import { reduceCommand } from './reduce/reduce.ts';
import { indexCommand } from './registry-index.ts';
import { reportCommand } from './report/report.ts';
import { rulesCommand } from './rules.ts';
import { siteCommand } from './site/site.ts';
import { tablesCommand } from './tables/tables.ts';

/** Makes a command with its options; what it does is loaded when it runs. */
export type MakeCommand = (cli: CliContext, exit: Exit) => Command;

/** The commands in the order of the help. */
export const commands: Readonly<Record<string, MakeCommand>> = {
  check: checkCommand,
  reduce: reduceCommand,
  tables: tablesCommand,
  init: initCommand,
  new: newCommand,
  diff: diffCommand,
  plan: planCommand,
  index: indexCommand,
  match: matchCommand,
  compare: compareCommand,
  claims: claimsCommand,
  site: siteCommand,
  export: exportCommand,
  report: reportCommand,
  migrate: migrateCommand,
  rules: rulesCommand,
  editor: editorCommand,
  completion: completionCommand,
};
