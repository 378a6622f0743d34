import type { MethodName } from '../../bench/method.ts';
import { familiesOf } from '../../knowledge/families.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import type { Registry } from '../../registry/registry.ts';
import type { BenchPlan, PlanColumn, PlanRow } from './bench-plan.ts';
import { planCautions } from './plan-cautions.ts';
import type { PlanRequest } from './plan-request.ts';
import { freeTrialId } from './trial-id.ts';

/** What a method puts on its sheet; the rest is the same for all. */
export interface SheetContent {
  readonly method: MethodName;
  /** `Temperature sweep`. */
  readonly name: string;
  /** Last word of the id of the trial: `sweep`. */
  readonly idWord: string;
  /** How much of the pairing the trial names. */
  readonly names: 'filament' | 'machine' | 'nozzle';
  readonly job?: string;
  /** Lines of the conditions of the trial: `nozzleTemperature: 230 Cel`. */
  readonly conditions: readonly string[];
  /** Lines of YAML that follow the conditions. */
  readonly keys: readonly string[];
  /** What to know of the settings, and how to run and read them. */
  readonly settings: readonly string[];
  readonly howTo: readonly string[];
  readonly atHand: readonly string[];
  readonly given: readonly PlanColumn[];
  readonly read: readonly PlanColumn[];
  readonly hints?: readonly string[];
  readonly rows: readonly PlanRow[];
  readonly repeats: number;
}

/** A sheet with the empty trial of a pairing around what a method puts on it. */
export function planSheet(
  registry: Registry,
  pairing: FittedPairing,
  request: PlanRequest,
  content: SheetContent,
): BenchPlan {
  const { machine, nozzle, filament } = pairing;
  const { names, name, idWord, method, settings, howTo, atHand, given, read, rows, repeats } = content;
  const place = names === 'filament' ? '' : ` on ${machine.id}`;
  const withNozzle = names === 'nozzle' ? `, nozzle ${nozzle.id}` : '';
  const ids = names === 'filament' ? [filament.id, idWord] : [machine.id, filament.id, idWord];
  return {
    method,
    title: `${name} of ${filament.id}${place}${withNozzle}`,
    date: request.today,
    sections: [
      { heading: 'Settings', items: settings },
      { heading: 'How to', items: howTo },
      { heading: 'At hand', items: atHand },
    ],
    given,
    read,
    hints: content.hints ?? [],
    rows,
    repeats,
    cautions: planCautions(familiesOf(filament.data, registry)),
    trial: { id: freeTrialId(registry, ids), lines: draftLines(pairing, content), afterwards: [] },
    facts: {
      ...(names !== 'filament' && { machine: machine.id }),
      ...(names === 'nozzle' && { nozzle: nozzle.id }),
      filament: filament.id,
      ...(content.job !== undefined && { job: content.job }),
    },
  };
}

function draftLines({ machine, nozzle, filament }: FittedPairing, content: SheetContent): string[] {
  const { firmware } = machine.data;
  const named = content.names !== 'filament';
  return [
    '# operator: Who runs it',
    ...(named ? [`machine: ${machine.id}`] : []),
    ...(content.names === 'nozzle' ? [`nozzle: ${nozzle.id}`] : []),
    `filament: ${filament.id}`,
    ...(content.job === undefined ? [] : [`job: ${content.job}`]),
    '# batch: As printed on the spool',
    ...(named && firmware !== undefined ? [`firmware: ${firmware}`] : []),
    'conditions:',
    ...content.conditions.map((line) => `  ${line}`),
    '  # relativeHumidity: 45 %',
    ...content.keys,
  ];
}
