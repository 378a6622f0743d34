import type { ReductionCurve } from '../../bench/reduction.ts';
import { figuresOfPairing } from '../../decisions/compare/figures-of-pairing.ts';
import type { PairingFigures } from '../../decisions/compare/pairing-figures.ts';
import { findPairing } from '../../knowledge/pairing.ts';
import type { Registry } from '../../registry/registry.ts';
import { cardView } from '../../tables/card/card-of-table.ts';
import type { FullRequest } from '../../tables/derive/every-pairing.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { headingWords } from '../../text/words.ts';
import type { Range } from '../../units/canonical.ts';
import { formatNumber } from '../../units/format-quantity.ts';
import { printedUnit } from '../../units/print-symbols.ts';
import { pairingPage } from '../address.ts';
import type { ReducedCatalogue } from '../catalogue.ts';

/** A property of a pairing in words; a condition is what a limit was found under. */
interface ComparedFact {
  readonly name: string;
  readonly value: string;
  readonly isCondition: boolean;
}

/** What a comparison shows of a pairing. */
export interface ComparedPairing {
  readonly page: string;
  readonly title: string;
  /** mm3/s */
  readonly flow: { readonly limit: number; readonly interval: Range | null };
  readonly facts: readonly ComparedFact[];
  /** The ladders that the limit at the temperature of the table rests on. */
  readonly ladders: readonly { readonly trial: string; readonly curve: ReductionCurve }[];
  /** What the time of jobs rests on; null where no time follows. */
  readonly figures: PairingFigures | null;
  /** Whether something of it is simulated or invented, in words; null where all is real. */
  readonly origin: string | null;
}

export function comparedPairing(
  request: FullRequest,
  table: SpeedTable,
  { registry, reductionOf }: ReducedCatalogue,
): ComparedPairing {
  const { limit, interval } = table.largestFlow;
  const card = cardView(table);
  return {
    page: pairingPage(request),
    title: `${request.filament} on ${request.machine}, ${request.nozzle}`,
    flow: { limit, interval },
    facts: [...conditions(request, table, registry), ...settings(card), ...speeds(table.rows, card)],
    ladders: table.largestFlow.trials.flatMap(({ id }) => {
      const reduced = reductionOf(id);
      return reduced.ok && reduced.value.method === 'flowLadder' && reduced.value.curve !== null
        ? [{ trial: id, curve: reduced.value.curve }]
        : [];
    }),
    figures: figuresOf(registry, request),
    origin: card.origin,
  };
}

function figuresOf(registry: Registry, request: FullRequest): PairingFigures | null {
  const pairing = findPairing(registry, request);
  const figures = pairing.ok ? figuresOfPairing(registry, pairing.value) : pairing;
  return figures.ok ? figures.value : null;
}

/** What a limit was found under: where it differs, limits cannot be compared as they stand. */
function conditions({ policy }: FullRequest, table: SpeedTable, registry: Registry): ComparedFact[] {
  const { trials, acceptedDeficit, basis } = table.largestFlow;
  const batches = trials.map(({ id }) => registry.trial.get(id)?.data.batch ?? 'not stated');
  const deficit =
    acceptedDeficit === null ? 'none' : `${formatNumber(100 * acceptedDeficit, { significantDigits: 3 })} %`;
  const named: readonly (readonly [string, string])[] = [
    ['House rules', policy],
    ['Nozzle temperature', `${formatNumber(table.temperatures.print, { significantDigits: 6 })} °C`],
    ['Nozzle diameter', `${table.nozzleDiameter} ${printedUnit('mm')}`],
    ['Basis', basis],
    ['Accepted deficit', deficit],
    ['Batch', [...new Set(batches)].join(', ') || 'none'],
    ['Measured', trials.map(({ date }) => date).join(', ') || 'never'],
  ];
  return named.map(([name, value]) => ({ name, value, isCondition: true }));
}

type Card = ReturnType<typeof cardView>;

function settings({ settings, besides }: Card): ComparedFact[] {
  return [...settings, ...besides].map(({ name, value, note }) => ({
    name,
    value: note === '' ? value : `${value} ${note}`,
    isCondition: false,
  }));
}

/** A feature with its speed at each layer height of the card, at the narrowest line, and what limits it there. */
function speeds(rows: SpeedTable['rows'], { layerHeights }: Card): ComparedFact[] {
  const narrowest = Math.min(...rows.map(({ lineWidth }) => lineWidth));
  const shown = rows.filter(
    ({ lineWidth, layerHeight }) => lineWidth === narrowest && layerHeights.includes(layerHeight),
  );
  return [...new Set(shown.map(({ feature }) => feature))].map((feature) => ({
    name: headingWords(feature),
    value: shown
      .filter((row) => row.feature === feature)
      .map(({ speed, layerHeight, bound }) => `${speed} mm/s at ${layerHeight} mm (${bound})`)
      .join(', '),
    isCondition: false,
  }));
}
