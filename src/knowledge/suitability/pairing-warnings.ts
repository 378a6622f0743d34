import type { Registry } from '../../registry/registry.ts';
import { capitalised } from '../../text/words.ts';
import { familiesOf } from '../families.ts';
import type { FittedPairing } from '../pairing.ts';
import { nozzleReasons } from './nozzle-suitability.ts';
import {
  type Aspect,
  type SuitabilityReason,
  type Verdict,
  type WarningCode,
  worstFirst,
} from './suitability.ts';
import { supplyReasons } from './supply-suitability.ts';
import { surroundingReasons } from './surroundings-suitability.ts';

/** Something about a pairing to know before it is heated up. */
export interface PairingWarning {
  readonly code: WarningCode;
  readonly aspect: Aspect;
  /** How far it goes: `unsuitable` should not be run at all. */
  readonly verdict: Verdict;
  /** One sentence with its numbers, quantities with their unit codes. */
  readonly text: string;
}

/** What speaks for and against a machine, a nozzle and a filament, whatever was measured with them. */
export function pairingReasons(registry: Registry, pairing: FittedPairing): SuitabilityReason[] {
  const { machine, filament } = pairing;
  const families = familiesOf(filament.data, registry);
  return [
    ...surroundingReasons(machine.data, filament.data, families),
    ...nozzleReasons(pairing),
    ...supplyReasons(machine.data, filament.data, families),
  ];
}

/** What whoever runs a pairing must know before: a nozzle that wears, a dryer that is too hot, and so on; the worst first. */
export function pairingWarnings(registry: Registry, pairing: FittedPairing): PairingWarning[] {
  return worstFirst(pairingReasons(registry, pairing)).flatMap(({ warning, aspect, verdict, text }) =>
    warning === undefined ? [] : [{ code: warning, aspect, verdict, text: `${capitalised(text)}.` }],
  );
}
