import { shapes } from '../../registry/generated/shapes.ts';
import { newKinds } from '../../registry/kind.ts';
import { exists } from '../../registry/registry.ts';
import { leavesOf } from '../../registry/shape.ts';
import { openKeys } from '../../scaffold/answers.ts';
import type { NewProfile } from './new-profile.ts';

/** What is left to do for a new profile: keys that are open, profiles that it names and that are not there yet. */
export function nextSteps(profile: NewProfile): string {
  const { kind, fields, answers, shown, path } = profile;
  const open = openKeys(fields, answers);
  const lines = [
    ...(open.length === 0 ? [] : [`Left to fill in: ${open.join(', ')}.`]),
    ...missingProfiles(profile).map((command) => `Not there yet: ${command}`),
    `Then: meltbounds check ${shown}${path}`,
    ...(kind === 'trial' && open.length === 0
      ? [`      meltbounds reduce ${String(answers.id)} --adopt`]
      : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** Commands that start the profiles that a new one refers to. */
function missingProfiles({ kind, answers, registry }: NewProfile): string[] {
  const commands = new Set<string>();
  for (const { shape, value } of leavesOf('reference', shapes[kind], answers)) {
    const { to } = shape;
    if (to === 'nozzle' || typeof value !== 'string' || exists(registry, to, value)) continue;
    commands.add(newKinds.includes(to) ? `meltbounds new ${to} ${value}` : `the ${to} ${value}`);
  }
  return [...commands];
}
