import { nozzlesOf } from '../registry/nozzle.ts';
import type { AnyProfile } from '../registry/profile.ts';
import type { Registry } from '../registry/registry.ts';
import { formatQuantity } from '../units/format-quantity.ts';
import type { ReferencePlace } from './reference-at.ts';

/** Something that can be referred to, in words. */
interface ReferenceChoice {
  readonly id: string;
  /** What it is, on one line. */
  readonly title: string;
  /** Whether it is about the document that refers to it. */
  readonly isLikely: boolean;
}

/** Everything in a registry that a reference may name, in the order of the files. */
export function referenceChoices(registry: Registry, place: ReferencePlace): ReferenceChoice[] {
  if (place.to === 'nozzle') return nozzleChoices(registry, place);
  return [...registry[place.to].values()].map((profile) => ({
    id: profile.id,
    title: titleOf(profile),
    isLikely: isAbout(profile, place),
  }));
}

/** The nozzles of the machine that is named beside the reference, or else those of all machines. */
function nozzleChoices(registry: Registry, { kind, id, machine }: ReferencePlace): ReferenceChoice[] {
  const own = registry.machine.get(machine ?? (kind === 'machine' ? id : ''));
  const machines = own === undefined ? [...registry.machine.values()] : [own];
  const nozzles = machines.flatMap((each) =>
    nozzlesOf(each.data).map(({ nozzle }) => ({
      id: nozzle.id,
      title: `${formatQuantity(nozzle.diameter, 'length')} ${nozzle.material}, ${each.id}`,
      isLikely: own !== undefined,
    })),
  );
  return nozzles.filter(({ id: each }, index) => nozzles.findIndex((other) => other.id === each) === index);
}

/** What a document is, on one line. */
function titleOf({ kind, data }: AnyProfile): string {
  switch (kind) {
    case 'trial':
      return [data.method, data.machine, data.nozzle, data.filament, data.date]
        .filter((part) => part !== undefined)
        .join(', ');
    case 'source':
      return data.title;
    case 'machine':
    case 'filament':
      return `${data.maker} ${data.name}`;
    case 'addition':
      return data.filament;
    default:
      return data.name;
  }
}

/** Trials of the machine or filament that cites them, and its own sheet. */
function isAbout(profile: AnyProfile, { kind, id }: ReferencePlace): boolean {
  if (id === '') return false;
  if (profile.kind === 'trial')
    return (
      (kind === 'machine' && profile.data.machine === id) ||
      (kind === 'filament' && profile.data.filament === id)
    );
  return profile.kind === 'source' && profile.id.startsWith(`${id.replaceAll('/', '-')}-`);
}
