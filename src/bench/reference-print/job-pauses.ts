import type { Filament, Machine, Statement } from '../../registry/generated/documents.ts';
import { type Conditions, chooseStatement } from '../../registry/statement.ts';
import type { Seconds } from '../../units/canonical.ts';
import type { PrintPauses } from './job-plan.ts';

/** What the profiles say of the times that a print takes besides its ways; null where they say nothing. */
type StatedPauses = { readonly [Name in keyof PrintPauses]: Statement<Seconds> | null };

type KnownPauses = { readonly [Name in keyof PrintPauses]: { readonly value: Seconds } | null };

export function statedPauses(machine: Machine, filament: Filament, conditions: Conditions): StatedPauses {
  return {
    layerChange: chooseStatement(machine.layerChangeTime, conditions),
    travel: chooseStatement(machine.travelPause, conditions),
    shortestLayerTime: chooseStatement(filament.shortestLayerTime, conditions),
  };
}

/** Times in s; what is unknown is not counted. */
export function secondsOfPauses({ layerChange, travel, shortestLayerTime }: KnownPauses): PrintPauses {
  return {
    layerChange: layerChange?.value ?? 0,
    travel: travel?.value ?? 0,
    shortestLayerTime: shortestLayerTime?.value ?? 0,
  };
}
