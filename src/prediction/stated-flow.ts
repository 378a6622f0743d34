import type { FittedPairing } from '../knowledge/pairing.ts';
import { conditionsOf } from '../knowledge/pairing.ts';
import type { Registry } from '../registry/registry.ts';
import { type Basis, statementsByWeight } from '../registry/statement.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius } from '../units/canonical.ts';
import { shown } from '../units/wording.ts';
import { type MeltSetup, scaling } from './melt-setup.ts';

/** A flow that is stated for a hot end and was not measured, as it was written and scaled to a pairing. */
export interface StatedFlow {
  readonly value: CubicMillimetresPerSecond;
  readonly scaled: CubicMillimetresPerSecond;
  readonly spread: number;
  readonly basis: Basis;
  readonly source: string | null;
  readonly nozzle: string;
  /** The temperature that the statement names. */
  readonly nozzleTemperature: DegreesCelsius | null;
}

/** Claims of flow are rarely exceeded and often missed by a third (common practice, no source). */
const delivered = { share: 0.75, spread: 1.45 };

/** The flow stated for the hot end of a pairing that comes nearest to it; null where none is. */
export function statedFlow(registry: Registry, pairing: FittedPairing, setup: MeltSetup): StatedFlow | null {
  const statements = (pairing.hotEnd.meltFlow ?? []).filter(({ basis }) => basis !== 'measured');
  const byNearness = statementsByWeight(
    statements,
    ({ at: { nozzle: _, nozzleTemperature: __, ...rest } = {} }) => rest,
    conditionsOf(pairing),
  );
  const nearest =
    byNearness.find(({ at }) => at?.nozzle === undefined || at.nozzle === pairing.nozzle.id) ?? byNearness[0];
  if (nearest === undefined) return null;
  const nozzle = pairing.hotEnd.nozzles.find(({ id }) => id === nearest.at?.nozzle) ?? pairing.nozzle;
  const temperature = nearest.at?.nozzleTemperature ?? null;
  const scale = scaling(
    { ...setup, nozzle, nozzleTemperature: temperature ?? setup.nozzleTemperature },
    setup,
  );
  if (scale === null) return null;
  return {
    value: nearest.value,
    scaled: nearest.value * delivered.share * scale.factor,
    spread: delivered.spread * scale.spread,
    basis: nearest.basis,
    source: registry.source.get(nearest.source ?? '')?.data.title ?? nearest.source ?? null,
    nozzle: nozzle.id,
    nozzleTemperature: temperature,
  };
}

/** `60 mm3/s claimed for hs-0.6 at 230 Cel (title of the sheet)`. */
export function statedFlowText({ value, basis, nozzle, nozzleTemperature, source }: StatedFlow): string {
  const at = nozzleTemperature === null ? '' : ` at ${shown(nozzleTemperature, 'temperature')}`;
  return `${shown(value, 'volumeFlow')} ${basis} for ${nozzle}${at}${source === null ? '' : ` (${source})`}`;
}
