import { type ComparisonRequest, comparePairings } from '../decisions/compare/compare-pairings.ts';
import { formatComparisonAsJson } from '../decisions/compare/comparison-as-json.ts';
import { comparisonDocument } from '../decisions/compare/comparison-document.ts';
import type { FittedRequest } from '../knowledge/pairing.ts';
import { type Problem, type Result, success } from '../result.ts';
import { quote } from '../text/quote.ts';
import type { Fraction, Millimetres, Money } from '../units/canonical.ts';
import { formatDocument } from '../units/format-document.ts';
import type { CliContext } from './cli-context.ts';
import type { Exit } from './exit.ts';
import { openRegistry, type RegistryOptions } from './open-registry.ts';
import type { AnswerFormat } from './shared-options.ts';
import { usage } from './usage.ts';

export interface CompareOptions extends RegistryOptions {
  readonly policy?: string;
  readonly layerHeight?: Millimetres;
  readonly meltShare?: Fraction;
  readonly jobs?: number;
  readonly price?: Readonly<Record<string, Money>>;
  readonly hourValue?: Money;
  readonly power?: Money;
  readonly wear?: Money;
  readonly labour?: Money;
  readonly format: AnswerFormat;
}

export async function runCompare(
  job: string,
  pairings: readonly string[],
  options: CompareOptions,
  cli: CliContext,
  exit: Exit,
): Promise<void> {
  const asked: FittedRequest[] = [];
  for (const written of pairings) {
    const pairing = readPairing(written);
    if (!pairing.ok) return exit.cannotRun(pairing.error);
    asked.push(pairing.value);
  }
  const opened = await openRegistry(cli, options);
  if (!opened.ok) return exit.cannotRun(opened.error);
  const { registry, trust } = opened.value;
  const compared = comparePairings(registry, { job, pairings: asked, ...chosen(options) });
  if (!compared.ok) return exit.cannotRun(compared.error);
  const trusted = trust(cli.today());
  if (!trusted.ok) return exit.cannotRun(trusted.error);
  cli.out(
    options.format === 'json'
      ? formatComparisonAsJson(compared.value)
      : formatDocument(comparisonDocument(compared.value), options.format, cli),
  );
}

function chosen(options: CompareOptions): Omit<ComparisonRequest, 'job' | 'pairings'> {
  const { policy, layerHeight, meltShare, jobs, price, hourValue, power, wear, labour } = options;
  return {
    hourlyCosts: {
      ...(power !== undefined && { power }),
      ...(wear !== undefined && { wear }),
      ...(labour !== undefined && { labour }),
    },
    ...(policy !== undefined && { policy }),
    ...(layerHeight !== undefined && { layerHeight }),
    ...(meltShare !== undefined && { meltShare }),
    ...(jobs !== undefined && { jobs }),
    ...(price !== undefined && { prices: price }),
    ...(hourValue !== undefined && { hourValue }),
  };
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
