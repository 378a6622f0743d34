import { trialIndex } from '../../knowledge/trial-index.ts';
import { shown } from '../../units/wording.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule<'filament'> = {
  judges: 'profile',
  reach: 'registry',
  kinds: ['filament'],
  severity: 'note',
  statement: 'The spool of a filament is not too heavy for the holders of the machines it was run on.',
  rationale:
    'A spool that is too heavy drags on the drive, so the limit found may be that of the holder; one on a stand beside the machine does not.',
  source: 'Format of the registry: the machine states the largest spool that its holder takes.',
  example: {
    kind: 'machine',
    bad: 'spool: {mass: 750 g}',
    good: 'spool: {mass: 1 kg}',
  },
  *check(profile, { registry }) {
    if (profile.data.spoolMass === undefined) return;
    const mass = profile.data.spoolMass;
    const trials = trialIndex(registry).byFilament.get(profile.id) ?? [];
    const machines = [...new Set(trials.map(({ data }) => data.machine))].flatMap(
      (id) => registry.machine.get(id ?? '')?.data ?? [],
    );
    const weak = machines.filter(({ spool }) => spool !== undefined && spool.mass < mass);
    if (weak.length === 0) return;
    const named = weak.map(({ id, spool }) => `${id} takes ${shown(spool?.mass ?? 0, 'mass')}`).join(', ');
    yield {
      path: ['spoolMass'],
      part: 'value',
      message: `A spool of ${shown(mass, 'mass')} is too heavy for machines it was run on: ${named}`,
      found: shown(mass, 'mass'),
      allowed: `up to ${shown(Math.min(...weak.map(({ spool }) => spool?.mass ?? 0)), 'mass')}`,
      help: 'Check the digits and units of both. If it ran from a stand beside the machine, say so in a field note; the finding can be left standing.',
    };
  },
};
