import { Command, InvalidArgumentError, Option } from 'commander';
import type { Fraction, Millimetres, Money } from '../units/canonical.ts';
import { parseMoney, parseQuantity } from '../units/parse-quantity.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { rememberOption } from './open-memory.ts';
import type { CompareOptions } from './run-compare.ts';
import { formatOption, registryOption } from './shared-options.ts';

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
        '--layer-height <length>',
        'height of the layers above the first in place of that of the job, such as "0.3 mm"',
      ).argParser(readLayerHeight),
    )
    .addOption(
      new Option(
        '--melt-share <percent>',
        'share of the melt flow limits that is used, such as "60 %" (default: all that the house rules allow)',
      ).argParser(readMeltShare),
    )
    .addOption(
      new Option(
        '--jobs <number>',
        'number of jobs that pay for the difference in price; gives the price of a saved hour',
      ).argParser(readJobs),
    )
    .addOption(
      new Option(
        '--price <machine=money>',
        'price of a machine in place of the one that its profile states, such as "brackwater/lantern=1480 EUR"; counts as assumed; may be repeated',
      ).argParser(readPrice),
    )
    .addOption(
      new Option(
        '--hour-value <money>',
        'what a saved hour is worth, such as "38 EUR"; gives the number of jobs after which a more expensive machine pays off',
      ).argParser((written: string) => readMoney(written, 'an hour must be worth more than 0.')),
    )
    .addOption(costOption('power', '0.06 EUR'))
    .addOption(costOption('wear', '0.40 EUR'))
    .addOption(costOption('labour', '3 EUR'))
    .addOption(formatOption('form of the comparison'))
    .addOption(registryOption())
    .addOption(rememberOption())
    .addHelpText(
      'after',
      `
Examples:
  meltbounds compare mask-rack brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop
  meltbounds compare mask-rack ferrywright/skiff+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop --jobs 2000
  meltbounds compare mask-rack brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla tollwick/steeple:hs-0.4+ashgrove/stagecraft-pla --policy workshop --hour-value "38 EUR" --power "0.06 EUR" --wear "0.40 EUR"
  meltbounds compare mask-rack brackwater/lantern:hs-0.4+ashgrove/stagecraft-pla --policy workshop --layer-height "0.3 mm" --melt-share "60 %"

Exit status: 0 compared; 2 the command cannot run, for example because of an unknown id.`,
    )
    .action(async (job: string, pairings: readonly string[], options: CompareOptions) => {
      const { runCompare } = await import('./run-compare.ts');
      return runCompare(job, pairings, options, cli, exit);
    });
}

function costOption(name: string, example: string): Option {
  return new Option(
    `--${name} <money>`,
    `what an hour of printing costs in ${name}, such as "${example}"; without it, the figures of money leave it out`,
  ).argParser((written: string) => readMoney(written, 'an hour must cost more than 0.'));
}

function readMoney(written: string, tooLittle: string): Money {
  const money = parseMoney(written);
  if (!money.ok) throw new InvalidArgumentError(`${money.error.message}. ${money.error.help}`);
  if (!(money.value.amount > 0)) throw new InvalidArgumentError(tooLittle);
  return money.value;
}

function readLayerHeight(written: string): Millimetres {
  const height = parseQuantity(written, 'length');
  if (!height.ok) throw new InvalidArgumentError(`${height.error.message}. ${height.error.help}`);
  if (!(height.value.value > 0)) throw new InvalidArgumentError('a layer must be higher than 0 mm.');
  return height.value.value;
}

function readMeltShare(written: string): Fraction {
  const share = parseQuantity(written, 'ratio');
  if (!share.ok) throw new InvalidArgumentError(`${share.error.message}. ${share.error.help}`);
  const { value } = share.value;
  if (!(value > 0 && value <= 1)) throw new InvalidArgumentError('write more than 0 % and at most 100 %.');
  return value;
}

function readPrice(written: string, before: Readonly<Record<string, Money>> = {}): Record<string, Money> {
  const [, machine, price] = /^([^=]+)=(.*)$/.exec(written) ?? [];
  if (machine === undefined || price === undefined)
    throw new InvalidArgumentError('write MACHINE=MONEY, for instance "brackwater/lantern=1480 EUR".');
  return { ...before, [machine]: readMoney(price, 'a machine must cost more than 0.') };
}

function readJobs(written: string): number {
  if (!/^[1-9]\d{0,8}$/.test(written)) {
    throw new InvalidArgumentError('write a whole number from 1 to 999999999, for instance 2000.');
  }
  return Number(written);
}
