import type { Pairing } from '../../knowledge/pairing.ts';
import { additionsTo } from '../../registry/addition.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { SourcedValue } from './sourced-value.ts';
import type { TableInput } from './speed-table.ts';

/** The documents that a table was derived from: machine, filament with its additions, policy, polymers and trials of its sourcedValues. */
export function tableInputs(
  registry: Registry,
  { machine, filament, policy }: Pairing,
  sourcedValues: readonly SourcedValue[],
): TableInput[] {
  const trials = [...new Set(sourcedValues.map(({ evidence }) => evidence ?? ''))].sort();
  const polymers = [
    ...new Set(sourcedValues.filter(({ kind }) => kind === 'polymer').map(({ id }) => id)),
  ].sort();
  return [
    input(machine, machine.data.version),
    input(filament, filament.data.version),
    ...additionsTo(filament.id, registry.addition).map((addition) => input(addition, addition.data.version)),
    input(policy, policy.data.version),
    ...polymers.flatMap((id) => {
      const polymer = registry.polymer.get(id);
      return polymer === undefined ? [] : [input(polymer, polymer.data.version)];
    }),
    ...trials.flatMap((id) => {
      const trial = registry.trial.get(id);
      return trial === undefined ? [] : [input(trial, null)];
    }),
  ];
}

function input(
  { kind, id, source }: Profile<'machine' | 'filament' | 'policy' | 'polymer' | 'trial' | 'addition'>,
  version: string | null,
): TableInput {
  return { kind, id, version, digest: source.digest };
}

/** An input in a line of text: kind, id, version and the whole digest. */
export function inputLine({ kind, id, version, digest }: TableInput): string {
  return `${kind} ${id}${version === null ? '' : ` ${version}`}, sha256 ${digest}`;
}

/** An input in short: kind, id, version and the first 16 digits of its digest. */
export function inputText({ kind, id, version, digest }: TableInput): string {
  return `${kind} ${id}${version === null ? '' : ` ${version}`} sha256:${digest.slice(0, 16)}`;
}
