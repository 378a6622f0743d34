import { type MethodName, methodNames } from '../../bench/method-facts.ts';
import { methodOf } from '../../bench/methods.ts';
import { ladderSettingNames } from '../../bench/setting-ladder/ladder-settings.ts';
import { checkedParts } from '../../knowledge/part-offset.ts';
import { nozzlesOf } from '../../registry/nozzle.ts';
import type { Registry } from '../../registry/registry.ts';
import { familyOf } from './registry-part.ts';
import type { BenchPlaces } from './session.ts';
import type { WebEditor } from './web-editor.ts';

/** How the bench page stands to its repository. */
export interface BenchSetting extends BenchPlaces {
  readonly webEditor: WebEditor | null;
}

/** A thing to choose: what stands for it, and what people read. */
interface Choice {
  readonly id: string;
  readonly name: string;
}

/** What the bench page knows of the registry before anything is chosen. */
export interface BenchData {
  readonly machines: readonly (Choice & { readonly nozzles: readonly Choice[] })[];
  readonly filaments: readonly (Choice & { readonly family: string | null })[];
  readonly methods: readonly MethodChoice[];
  readonly policies: readonly string[];
  readonly setting: BenchSetting;
}

interface MethodChoice {
  readonly name: MethodName;
  /** Of what there must be one: settings that a ladder raises, parts that are checked; empty where nothing is to be chosen. */
  readonly subjects: readonly string[];
  /** What may be read instead of each other, the usual first; empty where there is no choice. */
  readonly reads: readonly string[];
}

export function benchData(registry: Registry, setting: BenchSetting): BenchData {
  return {
    machines: [...registry.machine.values()].map(({ id, data }) => ({
      id,
      name: data.name,
      nozzles: nozzlesOf(data).map(({ nozzle }) => ({
        id: nozzle.id,
        name: `${nozzle.id} (${nozzle.diameter} mm)`,
      })),
    })),
    filaments: [...registry.filament.values()].map((filament) => ({
      id: filament.id,
      name: filament.data.name,
      family: familyOf(filament, registry),
    })),
    methods: methodNames.map(methodChoice),
    policies: [...registry.policy.keys()],
    setting,
  };
}

const subjects: Partial<Record<MethodName, readonly string[]>> = {
  settingLadder: ladderSettingNames,
  setPointCheck: checkedParts,
};

function methodChoice(name: MethodName): MethodChoice {
  const { eitherOf = [] } = methodOf(name);
  const graded = eitherOf.find((group) => group.includes('grade')) ?? [];
  return {
    name,
    subjects: subjects[name] ?? [],
    reads: [...graded].sort((one, other) => Number(other === 'grade') - Number(one === 'grade')),
  };
}
