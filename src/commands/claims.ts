import { Command, Option } from 'commander';
import { writeClaimsJson } from '../decisions/claims/claims-as-json.ts';
import { writeClaimsMarkdown } from '../decisions/claims/claims-as-markdown.ts';
import { writeClaimsText } from '../decisions/claims/claims-as-text.ts';
import { judgeClaims } from '../decisions/claims/judge-claims.ts';
import { loadRegistry } from '../host/load-registry.ts';
import { registryFolders } from '../host/registry-folders.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { registryOption } from './shared-options.ts';

interface ClaimsOptions {
  readonly format: keyof typeof writers;
  readonly registry: readonly string[];
}

const writers = { text: writeClaimsText, json: writeClaimsJson, markdown: writeClaimsMarkdown } as const;

export function claimsCommand(cli: CliContext, exit: Exit): Command {
  return new Command('claims')
    .summary('hold what the sheet of a machine claims against what was measured')
    .description(
      'Holds every claim of a machine but its price against what was measured: held, not reached (by how much), untested, or not reachable in principle, with the conditions of each test.',
    )
    .argument('<machine>', 'id of the machine, such as brackwater/lantern')
    .addOption(
      new Option('--format <format>', 'form of the result').choices(Object.keys(writers)).default('text'),
    )
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds claims brackwater/lantern
  meltbounds claims tollwick/steeple --format markdown > steeple-claims.md

Exit status: 0 judged, whatever has become of the claims, 2 it cannot be judged.`,
    )
    .action((machine: string, { format, registry: asked }: ClaimsOptions) => {
      const folders = registryFolders(asked, cli.cwd);
      if (!folders.ok) return exit.cannotRun(folders.error);
      const { registry } = loadRegistry(folders.value, cli.cwd);
      const report = judgeClaims(registry, machine);
      if (!report.ok) return exit.cannotRun(report.error);
      cli.out(writers[format](report.value));
    });
}
