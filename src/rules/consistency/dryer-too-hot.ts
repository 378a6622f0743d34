import { familiesOf } from '../../knowledge/families.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import { offsetText, partOffset } from '../../knowledge/part-offset.ts';
import { softeningOf } from '../../knowledge/softening.ts';
import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Machine } from '../../registry/generated/documents.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { DegreesCelsius } from '../../units/canonical.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['trial'],
  severity: 'warning',
  statement:
    'The dryer of a machine can be set below the softening temperature of the filaments that are run on it.',
  rationale:
    'A dryer fixed at 65 Cel fuses a spool that softens at 55 Cel into a block. The machine is right, and so is the filament: whoever puts the two together must know.',
  source: 'Softening of the filament, else glass transition or melting of its family in the polymer profile.',
  example: {
    kind: 'machine',
    bad: 'dryer: {setting: fixed, temperature: 65 Cel}',
    good: 'dryer: {setting: fixed, temperature: 50 Cel}',
  },
  *check(profile, { registry }) {
    const { machine, filament } = pairingOfTrial(profile.data, registry);
    const coldest = machine && coldestSetting(machine);
    if (machine === null || filament === null || coldest === null) return;
    if (!isFirstOfPairing(profile, registry)) return;
    const softening = softeningOf(filament, familiesOf(filament, registry));
    const offset = partOffset(machine, 'dryer', {});
    if (softening === null || coldest + (offset?.warmest ?? 0) < softening.value) return;
    yield {
      path: ['filament'],
      part: 'value',
      blames: [{ of: { kind: 'machine', id: machine.id }, path: ['dryer', settingKey(machine)] }],
      message: `The dryer of ${machine.id} runs at ${shown(coldest, 'temperature')} or hotter${offset === null ? '' : ` (${offsetText(offset)})`} and fuses spools of ${filament.id}: it is above ${softening.text}`,
      found: shown(coldest, 'temperature'),
      allowed: `below ${shown(softening.value, 'temperature')}`,
      source: softening.source,
      help: 'Keep the spool out of this dryer, say so in a field note of the machine, and acknowledge the finding; or correct the temperature of the dryer. Dryers can ignite: follow the manual, and do not leave one alone.',
    };
  },
};

/** One finding is enough for all trials of a machine and a filament. */
function isFirstOfPairing({ id, data }: Profile<'trial'>, registry: Registry): boolean {
  const trials = trialIndex(registry).byFilament.get(data.filament) ?? [];
  return trials.find((other) => other.data.machine === data.machine)?.id === id;
}

function coldestSetting({ dryer }: Machine): DegreesCelsius | null {
  if (dryer?.setting === 'fixed') return dryer.temperature ?? null;
  return dryer?.range?.low ?? null;
}

function settingKey({ dryer }: Machine): 'temperature' | 'range' {
  return dryer?.setting === 'fixed' ? 'temperature' : 'range';
}
