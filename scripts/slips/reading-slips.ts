import type { AnyProfile, Profile } from '../../src/registry/profile.ts';
import type { Registry } from '../../src/registry/registry.ts';
import { toPointer } from '../../src/registry/shape.ts';
import { type Slip, scalarSlip } from './slip.ts';

/** How far a reading is moved by each kind of slip, as factors. */
const factors = {
  'reading off by 20 %': [0.8, 1.2],
  'reading changed after adoption': [0.98, 1.02],
} as const;

type ReadingSlipKind = keyof typeof factors;

/** One weighing of a trial read too high or too low, for each of its weighings; by little where a limit rests on it. */
export function readingSlips(profile: AnyProfile, registry: Registry): Slip[] {
  if (profile.kind !== 'trial') return [];
  const isAdopted = registry.profiles.some(({ kind, data }) => kind !== 'trial' && restsOn(data, profile.id));
  return [
    ...slipsOfKind('reading off by 20 %', profile),
    ...(isAdopted ? slipsOfKind('reading changed after adoption', profile) : []),
  ];
}

function restsOn(data: unknown, trial: string): boolean {
  return JSON.stringify(data).includes(`"evidence":${JSON.stringify(trial)}`);
}

function slipsOfKind(kind: ReadingSlipKind, profile: Profile<'trial'>): Slip[] {
  const { columns, rows } = profile.data.observations;
  const column = Object.keys(columns ?? {}).indexOf('extrudedMass');
  const inline = (rows ?? []).flatMap((row, index) =>
    altered(kind, String(row[column])).flatMap((after) =>
      scalarSlip(kind, profile, ['observations', 'rows', index, column], after),
    ),
  );
  return [...inline, ...sheetSlips(kind, profile)];
}

function altered(kind: ReadingSlipKind, reading: string): string[] {
  const decimals = Math.max(2, reading.split('.')[1]?.length ?? 0);
  return factors[kind].map((factor) => (Number(reading) * factor).toFixed(decimals));
}

function sheetSlips(kind: ReadingSlipKind, profile: AnyProfile): Slip[] {
  if (!profile.attachment?.ok) return [];
  const lines = profile.attachment.source.text.split('\n');
  const column = (lines[0] ?? '').split(',').findIndex((name) => name.startsWith('extrudedMass'));
  return lines.flatMap((line, index) => {
    const cells = line.split(',');
    const reading = cells[column];
    if (index === 0 || reading === undefined) return [];
    return altered(kind, reading)
      .filter((after) => after !== reading)
      .map((after): Slip => {
        const changed = cells.with(column, after).join(',');
        return {
          kind,
          profile,
          inAttachment: true,
          text: lines.with(index, changed).join('\n'),
          pointer: toPointer(['observations', 'file']),
          before: line,
          after: changed,
        };
      });
  });
}
