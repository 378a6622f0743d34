import { isNode } from 'yaml';
import { nozzleIds, nozzlesOf } from '../../src/registry/nozzle.ts';
import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { toPointer } from '../../src/registry/shape.ts';
import { statementsOf } from '../../src/registry/statement.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';
import { type Slip, scalarSlip } from './slip.ts';

/** All slips by which what belongs to one product stands in the profile of another, or as more than it is. */
export function originSlips(profile: AnyProfile, registry: Registry): Slip[] {
  return [
    ...foreignSources(profile, registry),
    ...promotedClaims(profile),
    ...foreignBlocks(profile, registry),
    ...sisterDiameters(profile),
    ...openChambers(profile),
    ...otherTips(profile),
    ...otherNozzles(profile, registry),
  ];
}

/** Each source of a claim replaced by the sheet of every other product of its kind. */
function foreignSources(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'machine' && profile.kind !== 'filament') return [];
  const own = profile.data.sheet;
  const sheets = [...registry[profile.kind].values()].map(({ data }) => data.sheet);
  const others = [...new Set(sheets)].filter((sheet) => sheet !== own);
  return [...statementsOf(profile)]
    .filter(({ statement: { source } }) => source === own)
    .flatMap(({ path }) =>
      others.flatMap((sheet) => scalarSlip('source of another product', profile, [...path, 'source'], sheet)),
    );
}

function promotedClaims(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'machine' && profile.kind !== 'filament') return [];
  return [...statementsOf(profile)]
    .filter(({ statement: { basis } }) => basis === 'claimed')
    .flatMap(({ path }) => [
      ...scalarSlip('claim called measured', profile, [...path, 'basis'], 'measured'),
      ...scalarSlip('claim called published', profile, [...path, 'basis'], 'published'),
    ]);
}

const thermal = ['softening', 'nozzleTemperature', 'bedTemperature', 'dryingTemperature'] as const;

/** The claimed thermal figures of each filament of another family in place of one's own. */
function foreignBlocks(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'filament') return [];
  return [...registry.filament.values()]
    .filter(({ data }) => data.polymer !== profile.data.polymer)
    .map((other) => {
      const changes = thermal.flatMap((key) => changedFigure(profile, other, key));
      const text = changes.reduceRight(
        (all, { start, end, after }) => all.slice(0, start) + after + all.slice(end),
        profile.source.text,
      );
      return {
        kind: 'block of another family',
        profile,
        inAttachment: false,
        text,
        pointer: toPointer(['polymer']),
        before: profile.data.polymer,
        after: `figures of ${other.id}`,
      };
    });
}

/** The first value of a key, written as the other filament has it, in the order of the text. */
function changedFigure(
  profile: Profile<'filament'>,
  other: Profile<'filament'>,
  key: (typeof thermal)[number],
) {
  const [here, there] = [profile, other].map(({ yaml }) => placeAt(yaml, [key, 0, 'value'])?.value);
  if (!isNode(here) || !isNode(there) || !here.range || !there.range) return [];
  const after = other.source.text.slice(there.range[0], there.range[1]);
  return [{ start: here.range[0], end: here.range[1], after }];
}

function sisterDiameters(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'filament') return [];
  const other = profile.data.diameter < 2 ? '2.85 mm' : '1.75 mm';
  return scalarSlip('diameter of the sister product', profile, ['diameter'], other);
}

function openChambers(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'machine' || !profile.data.chamber.enclosed) return [];
  return scalarSlip('open chamber', profile, ['chamber', 'enclosed'], 'false');
}

/** The material of each nozzle replaced by that of every other nozzle of the machine. */
function otherTips(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'machine') return [];
  const materials = new Set(nozzlesOf(profile.data).map(({ nozzle }) => nozzle.material));
  return profile.data.hotEnds.flatMap(({ nozzles }, end) =>
    nozzles.flatMap((_, index) => {
      const path = ['hotEnds', end, 'nozzles', index, 'material'];
      return [...materials].flatMap((tip) => scalarSlip('material of another nozzle', profile, path, tip));
    }),
  );
}

function otherNozzles(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'trial' || profile.data.job === undefined) return [];
  const machine = registry.machine.get(profile.data.machine ?? '')?.data;
  const ids = machine === undefined ? [] : nozzleIds(machine);
  return ids.flatMap((id) => scalarSlip('printed on another nozzle', profile, ['nozzle'], id));
}
