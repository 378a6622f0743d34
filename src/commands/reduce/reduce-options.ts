import { Option } from 'commander';
import type { Fact } from '../../bench/facts/fact.ts';
import { allFacts, methodNames } from '../../bench/method-facts.ts';
import { groupedBy } from '../../registry/grouped-by.ts';
import { decimalOption, workbookSheetOption } from '../reading-options.ts';

/** `--plot FILE.svg`, `--plot -`, `--no-plot`. */
export function plotOptions(): Option[] {
  return [
    new Option(
      '--plot <file>',
      'write the plot as an SVG picture, such as ladder.svg, or - to print it in characters (default in a terminal)',
    ),
    new Option('--no-plot', 'print no plot in a terminal'),
  ];
}

/** Options that only a machine with a filament needs. */
export function pairingOptions(): Option[] {
  return [
    new Option(
      '--nozzle <id>',
      'nozzle, such as hs-0.6 (machine and filament; default: the one with ladders at most temperatures)',
    ),
    new Option(
      '--at <temperature>',
      'nozzle temperature to give the limit at, such as "235 Cel", may be repeated (machine and filament)',
    ).argParser((text: string, earlier: readonly string[] | undefined) => [...(earlier ?? []), text]),
    new Option('--extrapolate', 'answer --at outside of the tested temperatures too, and mark the answer'),
  ];
}

/** Options that only a bare bench sheet needs; a trial of the registry holds them itself. */
export function sheetOptions(): Option[] {
  return [
    new Option('--method <name>', 'bench method of a bare sheet, where its columns do not tell it').choices(
      methodNames,
    ),
    decimalOption(),
    workbookSheetOption(),
    ...[...factsByFlag()].map(
      ([flag, facts]) => new Option(`--${flag} <value>`, `${facts.map(flagText).join('; ')} (bare sheet)`),
    ),
  ];
}

/** The facts that an option states, by its flag. */
export function factsByFlag(): ReadonlyMap<string, readonly Fact[]> {
  return groupedBy(allFacts, ({ flag }) => flag);
}

function flagText({ what, example }: Fact): string {
  return `${what}, such as "${example}"`;
}
