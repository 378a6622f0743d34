import { Command, InvalidArgumentError, Option } from 'commander';
import { type ComparisonRequest, comparePairings } from '../decisions/compare/compare-pairings.ts';
import { formatComparisonAsJson } from '../decisions/compare/comparison-as-json.ts';
import { comparisonDocument } from '../decisions/compare/comparison-document.ts';
import { loadRegistry } from '../host/load-registry.ts';
import type { FittedRequest } from '../knowledge/pairing.ts';
import { type Problem, type Result, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import type { Money } from '../units/canonical.ts';
import { formatDocument } from '../units/format-document.ts';
import { parseMoney } from '../units/parse-quantity.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { type AnswerFormat, formatOption, registryOption } from './shared-options.ts';
import { usage } from './usage.ts';

interface CompareOptions {
  readonly policy?: string;
  readonly jobs?: number;
  readonly hourValue?: Money;
  readonly format: AnswerFormat;
  readonly registry: readonly string[];
}

export function compareCommand(cli: CliContext, exit: Exit): Command {
  return new Command('compare')
    .summary('compare pairings on a job: time, what limits it, money')
    .description(
      'Answers "do I need the speed?": the time that a job takes on each pairing, what limits it, the speed really reached, and what a saved hour costs. The others are compared with the first pairing.',
    )
    .argument('<job>', 'id of the job, such as mask-rack')
    .argument(
      '<pairings...>',
      'MACHINE:NOZZLE+FILAMENT each, such as brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla; without :NOZZLE one with a measured limit, else the first that fits',
    )
    .option('--policy <id>', 'house rules to apply (default: the only ones of the registry)')
    .addOption(
      new Option(
        '--jobs <number>',
        'such jobs over which the difference of price is spread; gives the price of a saved hour',
      ).argParser(readJobs),
    )
    .addOption(
      new Option(
        '--hour-value <money>',
        'what an hour is worth, such as "38 EUR"; gives the jobs after which a dearer machine pays',
      ).argParser(readMoney),
    )
    .addOption(formatOption('form of the comparison'))
    .addOption(registryOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds compare mask-rack brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop
  meltbounds compare mask-rack ferrywright/skiff+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop --jobs 2000
  meltbounds compare mask-rack brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop --hour-value "38 EUR"

Exit status: 0 compared, 2 cannot be compared.`,
    )
    .action((job: string, pairings: readonly string[], options: CompareOptions) => {
      const asked: FittedRequest[] = [];
      for (const written of pairings) {
        const pairing = readPairing(written);
        if (!pairing.ok) return exit.cannotRun(pairing.error);
        asked.push(pairing.value);
      }
      const loaded = loadRegistry(options.registry, cli.cwd);
      if (!loaded.ok) return exit.cannotRun(loaded.error);
      const { registry } = loaded.value;
      const compared = comparePairings(registry, { job, pairings: asked, ...chosen(options) });
      if (!compared.ok) return exit.cannotRun(compared.error);
      cli.out(
        options.format === 'json'
          ? formatComparisonAsJson(compared.value)
          : formatDocument(comparisonDocument(compared.value), options.format, cli),
      );
    });
}

function chosen({
  policy,
  jobs,
  hourValue,
}: CompareOptions): Pick<ComparisonRequest, 'policy' | 'jobs' | 'hourValue'> {
  return {
    ...(policy !== undefined && { policy }),
    ...(jobs !== undefined && { jobs }),
    ...(hourValue !== undefined && { hourValue }),
  };
}

function readMoney(written: string): Money {
  const money = parseMoney(written);
  if (!money.ok) throw new InvalidArgumentError(`${money.error.message}. ${money.error.help}`);
  if (!(money.value.amount > 0)) throw new InvalidArgumentError('an hour must be worth more than 0.');
  return money.value;
}

function readJobs(written: string): number {
  if (!/^[1-9]\d{0,8}$/.test(written)) {
    throw new InvalidArgumentError('write a whole number from 1 to 999999999, for instance 2000.');
  }
  return Number(written);
}

/** Reads `MACHINE:NOZZLE+FILAMENT` or `MACHINE+FILAMENT`, such as `brackwater/lantern:hs-0.6+ashgrove/stagecraft-pla`. */
function readPairing(written: string): Result<FittedRequest, Problem<'usage'>> {
  const [, machine, nozzle, filament] = /^([^:+\s]+)(?::([^:+\s]+))?\+([^:+\s]+)$/.exec(written) ?? [];
  if (machine === undefined || filament === undefined) {
    return usage(
      `"${quote(written)}" is not a pairing`,
      'Write MACHINE:NOZZLE+FILAMENT, for instance brackwater/lantern:hs-0.6+ashgrove/stagecraft-pla; the nozzle may be left out.',
    );
  }
  return success({ machine, filament, ...(nozzle !== undefined && { nozzle }) });
}
