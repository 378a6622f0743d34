import type { Filament, Machine, Polymer } from '../../registry/generated/documents.ts';
import { highestStated } from '../../registry/stated.ts';
import type { Range } from '../../units/canonical.ts';
import { shown, shownRange } from '../../units/wording.ts';
import { offsetText, partOffset } from '../part-offset.ts';
import { softeningOf } from '../softening.ts';
import type { Aspect, SuitabilityReason, WarningCode } from './suitability.ts';

/** What a dryer may be colder than the drying temperature of a sheet, in K (common practice, no source). */
const nearEnough = 5;

/** What speaks for and against dryer, spool holder and part cooling of a machine. */
export function supplyReasons(
  machine: Machine,
  filament: Filament,
  families: readonly Polymer[],
): SuitabilityReason[] {
  return [...dryer(machine, filament, families), ...spool(machine, filament), ...cooling(machine, filament)];
}

function dryer(machine: Machine, filament: Filament, families: readonly Polymer[]): SuitabilityReason[] {
  const settings = settingsOf(machine.dryer);
  const wanted = highestStated(filament.dryingTemperature);
  if (settings === null) {
    if (wanted === null) return [];
    const text = `no dryer is known: dry at ${shown(wanted, 'temperature')} elsewhere`;
    return [{ aspect: 'dryer', verdict: 'suits', text }];
  }
  const offset = partOffset(machine, 'dryer', {});
  const has = `${settingText(settings)}${offset === null ? '' : `, ${offsetText(offset)},`}`;
  const softening = softeningOf(filament, families);
  if (softening !== null && settings.low + (offset?.warmest ?? 0) >= softening.value) {
    const text = `the dryer ${has} and would fuse the spool, which softens at ${softening.text}: keep it out`;
    return [{ aspect: 'dryer', verdict: 'limited', warning: 'dryerTooHot', text }];
  }
  if (wanted === null) return [];
  const dries = settings.high + (offset?.value ?? 0) >= wanted - nearEnough;
  const text = `the dryer ${has.replace(/,$/, '')}, the filament needs ${shown(wanted, 'temperature')}${dries ? '' : ': dry it elsewhere'}`;
  return [against('dryer', !dries, 'dryerTooCold', text)];
}

function settingsOf(dryer: Machine['dryer']): Range | null {
  if (dryer?.setting === 'fixed')
    return dryer.temperature === undefined ? null : { low: dryer.temperature, high: dryer.temperature };
  return dryer?.range ?? null;
}

function settingText(settings: Range): string {
  return settings.low === settings.high
    ? `is fixed at ${shown(settings.low, 'temperature')}`
    : `runs at ${shownRange(settings, 'temperature')}`;
}

function spool({ spool: holder }: Machine, { spoolMass }: Filament): SuitabilityReason[] {
  if (holder === undefined || spoolMass === undefined) return [];
  const fits = spoolMass <= holder.mass;
  const text = `the holder takes ${shown(holder.mass, 'mass')}, the spool holds ${shown(spoolMass, 'mass')}${fits ? '' : ': feed it from a stand'}`;
  return [against('spool', !fits, 'spoolTooHeavy', text)];
}

function cooling({ partCooling }: Machine, { fan }: Filament): SuitabilityReason[] {
  const window = fan?.[0]?.value;
  if (window === undefined) return [];
  const wants = `the filament needs the fan at ${shownRange(window, 'ratio')}`;
  if (partCooling === undefined) {
    return [against('cooling', window.low > 0, 'coolingUnknown', `${wants}; no part cooling is known`)];
  }
  const adjustable = partCooling.adjustable || window.high >= 1;
  const has = partCooling.adjustable ? 'it is adjustable' : 'it runs at full speed only';
  return [against('cooling', !adjustable, 'coolingNotAdjustable', `${wants}; ${has}`)];
}

/** A reason that limits a pairing under a condition, and else speaks for it. */
function against(aspect: Aspect, limits: boolean, warning: WarningCode, text: string): SuitabilityReason {
  return limits ? { aspect, verdict: 'limited', warning, text } : { aspect, verdict: 'suits', text };
}
