import { resultOf } from '../../bench/methods.ts';
import { modelledPrintMass } from '../../bench/reference-print/modelled-mass.ts';
import { shown } from '../../units/wording.ts';
import { alike, prints } from '../engine/examples.ts';
import { printShares } from '../engine/print-shares.ts';
import type { ProfileRule } from '../engine/rule.ts';

const acceptedShare = printShares.mass;

export const rule: ProfileRule<'trial'> = {
  judges: 'profile',
  reach: 'neighbours',
  kinds: ['trial'],
  severity: 'warning',
  statement: `A reference print weighs what the paths of its job give, within ${100 * acceptedShare} %.`,
  rationale:
    'If not, the scale, the job or the density of the filament is wrong, or the print is not the one that the job describes.',
  source: 'Mass balance; the accepted share is common practice, no source.',
  formula: `|rho sum(A L)/m - 1| <= ${acceptedShare}, rho density of the filament, A cross-section of a bead, L length of its paths, m mass of a print that states its settings; no filament that foams`,
  example: alike(
    'trial',
    { bad: '19', good: '9' },
    (grams) => prints(`16.1, ${grams}.6`, `16.2, ${grams}.7`),
    { copied: true },
  ),
  *check({ id, data }, { registry, reduce }) {
    const modelled = modelledPrintMass(registry, data);
    if (modelled === null) return;
    const reduced = reduce(id);
    const printed = reduced.ok ? resultOf(reduced.value, 'printMass')?.value : undefined;
    if (printed === undefined || Math.abs(modelled / printed - 1) <= acceptedShare) return;
    yield {
      path: ['observations'],
      part: 'key',
      blames: [
        { path: ['observations'] },
        { of: { kind: 'job', id: data.job ?? '' }, path: ['features'] },
        { of: { kind: 'filament', id: data.filament }, path: ['density'] },
      ],
      message: `The print weighs ${shown(printed, 'mass')}, and the paths of its job ${shown(modelled, 'mass')} in this filament`,
      found: shown(printed, 'mass'),
      allowed: `within ${100 * acceptedShare} % of ${shown(modelled, 'mass')}`,
      help: 'Check the readings and the step of the scale, whether another part was weighed, the paths of the job, and the density of the filament.',
    };
  },
};
