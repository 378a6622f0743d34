import { Command, InvalidArgumentError, Option } from 'commander';
import { severities } from '../../registry/finding.ts';
import { reportFormats } from '../../report/report-formats.ts';
import type { Shard } from '../../rules/engine/evidence-shards.ts';
import type { CliContext } from '../cli-context.ts';
import type { Exit } from '../exit.ts';
import { rememberOption } from '../open-memory.ts';
import { registryOption, todayOption } from '../shared-options.ts';
import type { CheckOptions } from './run-check.ts';

export function checkCommand(cli: CliContext, exit: Exit): Command {
  return new Command('check')
    .summary('check profiles: form, units, references, provenance, evidence, physics')
    .description(
      'Checks profiles and prints what is wrong, where, and how to fix it. Without a path it checks the registry in this folder.',
    )
    .argument('[paths...]', 'files or folders to check, or - for a profile on standard input')
    .addOption(new Option('--format <format>', 'form of the report').choices(reportFormats).default('text'))
    .addOption(
      new Option('--fail-on <severity>', 'lowest severity that makes the exit status 1')
        .choices(severities)
        .default('error'),
    )
    .option('--quiet', 'report errors only; the summary counts all')
    .option('--acknowledged', 'list what reviewers have acknowledged, too; the summary counts it anyway')
    .option(
      '--changed <commit>',
      'report only what git sees changed since a commit or branch, and what depends on it',
    )
    .addOption(
      new Option(
        '--shard <part>',
        'report one part of all there is to check, such as 3/16, for machines that share the work',
      )
        .argParser(readShard)
        .conflicts(['fix']),
    )
    .addOption(
      new Option('--watch', 'check again whenever a file changes, until it is stopped').conflicts([
        'fix',
        'changed',
        'shard',
      ]),
    )
    .option(
      '--fix',
      'first fix spelling of units, numbers and dates, conditions left out and order of keys in the files',
    )
    .option('--all', 'report on every registry that was read, not only on the last one')
    .option('--stdin-path <file>', 'with -: the file that standard input stands in for')
    .addOption(registryOption())
    .addOption(todayOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds check
  meltbounds check profiles/filaments/ashgrove/stagecraft-pla.yaml
  meltbounds check --fix
  meltbounds check --acknowledged
  meltbounds check - --stdin-path profiles/jobs/mask-rack.yaml < edited.yaml
  meltbounds check --changed main --fail-on warning
  meltbounds check --shard 3/16
  meltbounds check --watch
  meltbounds check --registry meltbounds --registry profiles
  meltbounds check --format json profiles > findings.json
  meltbounds check --format sarif > findings.sarif
  meltbounds check --format codeQuality > quality.json
  meltbounds check --format junit > junit.xml
  meltbounds check --format markdown > summary.md
  meltbounds check --format html > findings.html

Exit status: 0 no problems found; 1 problems found; 2 no profiles found, or they cannot be read.`,
    )
    .action(async (paths: string[], options: CheckOptions, command: Command) => {
      const { runCheck } = await import('./run-check.ts');
      return runCheck(paths, options, command.parent?.version() ?? '', cli, exit);
    });
}

/** Shards beyond this many would be smaller than one filament of any registry. */
const mostShards = 10_000;

function readShard(written: string): Shard {
  const [, number, of] = /^([1-9]\d{0,4})\/([1-9]\d{0,4})$/.exec(written) ?? [];
  const shard = { number: Number(number), of: Number(of) };
  if (shard.number <= shard.of && shard.of <= mostShards) return shard;
  throw new InvalidArgumentError('write PART/PARTS, for instance 3/16.');
}
