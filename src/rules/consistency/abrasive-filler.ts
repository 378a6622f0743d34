import { grindingFillers } from '../../knowledge/grinding-fillers.ts';
import { pairingOfTrial } from '../../knowledge/pairing-of-trial.ts';
import { restsOnTrial } from '../../knowledge/rests-on-trial.ts';
import { nozzleHardness } from '../../physics/hardness.ts';
import type { Filament } from '../../registry/generated/documents.ts';
import { findNozzle, type Nozzle } from '../../registry/nozzle.ts';
import type { AnyProfile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Path } from '../../registry/shape.ts';
import { statementsOf } from '../../registry/statement.ts';
import type { ProfileRule } from '../engine/rule.ts';

export const rule: ProfileRule = {
  judges: 'profile',
  reach: 'neighbours',
  severity: 'warning',
  statement: 'A filament with hard fillers is run through a nozzle that is not much softer than the fillers.',
  rationale:
    'Glass and carbon fibre wear out a brass nozzle within one spool, so the limit drifts while it is measured.',
  source:
    'Richardson, Wear 11 (1968) 245-275; Zum Gahr, Microstructure and Wear of Materials (1987); both from memory: abrasion is severe from a hardness ratio of about 1.2.',
  formula: 'H_filler/H_nozzle > 1.2, Vickers hardness',
  example: {
    kind: 'filament',
    bad: `
designation: PET-G-QD15
fillers:
  - {symbol: QD, massFraction: 15 %}`,
    good: `
designation: PET-G-WD15
fillers:
  - {symbol: WD, massFraction: 15 %}`,
  },
  *check(profile, { registry }) {
    for (const { path, nozzle, filament } of fedNozzles(profile, registry)) {
      const grinding = grindingFillers(filament, nozzle);
      if (grinding.length === 0) continue;
      yield {
        path,
        part: 'value',
        message: `${filament.id} contains ${grinding.join(' and ')}, which wears out a nozzle of ${nozzle.material}`,
        found: nozzle.material,
        allowed: harderThan(nozzle),
        help: 'Run it with a harder nozzle; if it has to be this one, measure the bore before and after.',
      };
    }
  },
};

interface FedNozzle {
  readonly path: Path;
  readonly nozzle: Nozzle;
  readonly filament: Filament;
}

/** The nozzles that a trial or a statement of a filament feeds with a known filament. */
function fedNozzles(profile: AnyProfile, registry: Registry): FedNozzle[] {
  if (profile.kind === 'trial') {
    const { nozzle, filament } = pairingOfTrial(profile.data, registry);
    return nozzle === null || filament === null ? [] : [{ path: ['nozzle'], nozzle, filament }];
  }
  if (profile.kind !== 'filament') return [];
  return [...statementsOf(profile)].flatMap(({ path, statement }) => {
    const { machine: id, nozzle = '' } = statement.at ?? {};
    const machine = id === undefined ? undefined : registry.machine.get(id)?.data;
    const fitted = machine && findNozzle(machine, nozzle);
    if (!fitted || restsOnTrial(statement, registry)) return [];
    return [{ path: [...path, 'at', 'nozzle'], nozzle: fitted.nozzle, filament: profile.data }];
  });
}

function harderThan({ material }: Nozzle): string {
  const floor = nozzleHardness[material].high;
  return Object.entries(nozzleHardness)
    .filter(([, { low }]) => low > floor)
    .map(([name]) => name)
    .join(', ');
}
