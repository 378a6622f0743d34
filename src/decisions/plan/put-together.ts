import { machineKey, nozzleKey } from '../../bench/facts/trial-key.ts';
import type { RunLayout } from '../../bench/layout/run-layout.ts';
import type { Method } from '../../bench/method.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import { familiesOf } from '../../knowledge/families.ts';
import { originOf } from '../../knowledge/origin.ts';
import type { FittedPairing } from '../../knowledge/pairing.ts';
import { quirksOf } from '../../knowledge/quirks.ts';
import { pairingWarnings } from '../../knowledge/suitability/pairing-warnings.ts';
import type { Polymer } from '../../registry/generated/documents.ts';
import type { Kind } from '../../registry/kind.ts';
import { brokenKey, type Registry } from '../../registry/registry.ts';
import type { BenchPlan } from './bench-plan.ts';

/** How much of a pairing the trials of a method name. */
interface Named {
  readonly machine: boolean;
  readonly nozzle: boolean;
}

/** What a method has laid out. */
interface LaidOut {
  readonly method: Method;
  readonly layout: RunLayout;
  /** Day of the plan, YYYY-MM-DD. */
  readonly date: string;
  /** The trials that it shows. */
  readonly trials: Iterable<string>;
}

/** A plan with its empty trial, from what a method has laid out for a pairing. */
export function putTogether(
  registry: Registry,
  pairing: FittedPairing,
  { method, layout, date, trials }: LaidOut,
): BenchPlan {
  const { machine, nozzle, filament } = pairing;
  const named = {
    machine: method.requiredKeys.includes(machineKey),
    nozzle: method.requiredKeys.includes(nozzleKey),
  };
  const {
    name,
    detail,
    idWord,
    job,
    answer,
    nextStep,
    sections,
    given,
    read,
    hints = [],
    rows,
    repeats,
  } = layout;
  const place = `${named.machine ? ` on ${machine.id}` : ''}${named.nozzle ? `, nozzle ${nozzle.id}` : ''}`;
  const words = [...(named.machine ? [machine.id] : []), filament.id, idWord];
  return {
    method: method.method,
    title: `${name} of ${filament.id}${place}${detail === undefined ? '' : `, ${detail}`}`,
    date,
    ...(answer !== undefined && { answer }),
    ...(nextStep !== undefined && { nextStep }),
    ...{ sections, given, read, hints, rows, repeats },
    cautions: planCautions(familiesOf(filament.data, registry)),
    ...knownOf(registry, pairing, named, trials),
    trial: {
      id: freeTrialId(registry, words),
      lines: draftLines(pairing, named, layout),
      afterwards: layout.afterwards ?? [],
    },
    facts: {
      ...(named.machine && { machine: machine.id }),
      ...(named.nozzle && { nozzle: nozzle.id }),
      filament: filament.id,
      ...(job !== undefined && { job }),
      ...layout.facts,
    },
  };
}

/** Warnings, quirks and origin, as far as they are about what the method needs. */
function knownOf(
  registry: Registry,
  pairing: FittedPairing,
  named: Named,
  trials: Iterable<string>,
): Pick<BenchPlan, 'warnings' | 'quirks' | 'origin'> {
  const { machine, filament } = pairing;
  const isAbout = (kind: Kind) => named.machine || kind === 'filament' || kind === 'addition';
  return {
    warnings: named.nozzle ? pairingWarnings(registry, pairing) : [],
    quirks: quirksOf(registry, pairing).filter(({ of }) => isAbout(of.kind)),
    origin: originOf(registry, { profiles: named.machine ? [machine, filament] : [filament], trials }),
  };
}

function draftLines(
  { machine, nozzle, filament }: FittedPairing,
  named: Named,
  { job, conditions, keys }: RunLayout,
): string[] {
  const { firmware } = machine.data;
  return [
    '# operator: Who runs it',
    ...(named.machine ? [`machine: ${machine.id}`] : []),
    ...(named.nozzle ? [`nozzle: ${nozzle.id}`] : []),
    `filament: ${filament.id}`,
    ...(job === undefined ? [] : [`job: ${job}`]),
    '# batch: As printed on the spool',
    ...(named.machine && firmware !== undefined ? [`firmware: ${firmware}`] : []),
    'conditions:',
    ...conditions.map((line) => `  ${line}`),
    '  # relativeHumidity: 45 %',
    ...keys,
  ];
}

/** What stands below every plan: the usual dangers, and what the profiles of the families say. */
function planCautions(families: readonly Polymer[]): string[] {
  return [
    'Stay with the machine for the whole run; keep pets, children and anything flammable away from it.',
    ...new Set([...tableCautions, ...families.flatMap((family) => family.cautions ?? [])]),
  ];
}

/** An id for a new trial: words joined by hyphens, with a number behind them where the registry has it already. */
function freeTrialId(registry: Registry, words: readonly string[]): string {
  const id = words.map((word) => word.split('/').at(-1)).join('-');
  const isTaken = (candidate: string) =>
    registry.trial.has(candidate) || registry.broken.has(brokenKey('trial', candidate));
  if (!isTaken(id)) return id;
  let number = 2;
  while (isTaken(`${id}-${number}`)) number += 1;
  return `${id}-${number}`;
}
