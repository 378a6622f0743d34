import { resolve, sep } from 'node:path';
import { Command, Option } from 'commander';
import type { Finding, Severity } from '../registry/finding.ts';
import { loadRegistryWith } from '../registry/load-registry.ts';
import { jsonReport } from '../report/json-report.ts';
import { summarise } from '../report/summary.ts';
import { textReport } from '../report/text-report.ts';
import { checkRegistry } from '../rules/check-registry.ts';
import { checkTarget } from './check-target.ts';
import type { Finish } from './finish.ts';
import { registryOption, todayOption } from './shared-options.ts';
import { exitStatus, type Surroundings } from './surroundings.ts';

interface CheckOptions {
  readonly format: 'text' | 'json';
  readonly failOn: Severity;
  readonly registry: readonly string[];
  readonly today?: string;
}

const severities: readonly Severity[] = ['error', 'warning', 'note'];

export function checkCommand(surroundings: Surroundings, finish: Finish): Command {
  return new Command('check')
    .summary('check profiles: form, units, references, provenance, evidence')
    .description(
      'Checks profiles and prints what is wrong, where, and how to mend it. Without a path it checks the registry in this folder.',
    )
    .argument('[paths...]', 'files or folders to check')
    .addOption(
      new Option('--format <format>', 'form of the report').choices(['text', 'json']).default('text'),
    )
    .addOption(
      new Option('--fail-on <severity>', 'lowest severity that makes the exit status 1')
        .choices(severities)
        .default('error'),
    )
    .addOption(registryOption())
    .addOption(todayOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds check
  meltbounds check profiles/filaments/ashgrove/stagecraft-pla.yaml
  meltbounds check --format json profiles > findings.json

Exit status: 0 nothing to mend, 1 findings, 2 nothing found to check or it cannot be read.`,
    )
    .action((paths: string[], options: CheckOptions) => {
      const target = checkTarget(paths, options.registry, surroundings.cwd);
      if (!target.ok) return finish.cannotRun(target.error);
      const { folders, loose, only } = target.value;
      const loaded = loadRegistryWith(folders, loose, surroundings.cwd);
      const wanted = (file: string) => only === null || isWithin(resolve(surroundings.cwd, file), only);
      const profiles = loaded.files.filter(wanted).length;
      if (profiles === 0) return finish.cannotRun('There is no profile (.yaml) to check here.');
      const today = options.today ?? surroundings.today();
      const findings = checkRegistry(loaded, { today }).filter(({ file }) => wanted(file));
      const summary = summarise(findings, profiles);
      surroundings.out(
        options.format === 'json'
          ? jsonReport(findings, summary)
          : textReport(findings, summary, {
              colour: surroundings.colour,
              textOf: (file) => loaded.texts.get(file),
            }),
      );
      finish.with(fails(findings, options.failOn) ? exitStatus.findings : exitStatus.clean);
    });
}

function isWithin(file: string, folders: readonly string[]): boolean {
  return folders.some((folder) => file === folder || file.startsWith(folder + sep));
}

function fails(findings: readonly Finding[], failOn: Severity): boolean {
  const worst = severities.slice(0, severities.indexOf(failOn) + 1);
  return findings.some(({ severity }) => worst.includes(severity));
}
