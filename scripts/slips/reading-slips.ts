import type { AnyProfile } from '../../src/registry/profile.ts';
import { toPointer } from '../../src/registry/shape.ts';
import { type Slip, scalarSlip } from './slip.ts';

/** One weighing of a trial read a fifth too high or too low, for each of its weighings. */
export function readingSlips(profile: AnyProfile): Slip[] {
  if (profile.kind !== 'trial') return [];
  const { columns, rows } = profile.data.observations;
  const column = Object.keys(columns ?? {}).indexOf('extrudedMass');
  const inline = (rows ?? []).flatMap((row, index) =>
    altered(String(row[column])).flatMap((after) =>
      scalarSlip('reading off by 20 %', profile, ['observations', 'rows', index, column], after),
    ),
  );
  return [...inline, ...sheetSlips(profile)];
}

function altered(reading: string): string[] {
  const decimals = Math.max(2, reading.split('.')[1]?.length ?? 0);
  return [0.8, 1.2].map((factor) => (Number(reading) * factor).toFixed(decimals));
}

function sheetSlips(profile: AnyProfile): Slip[] {
  if (!profile.attachment?.ok) return [];
  const lines = profile.attachment.source.text.split('\n');
  const column = (lines[0] ?? '').split(',').findIndex((name) => name.startsWith('extrudedMass'));
  return lines.flatMap((line, index) => {
    const cells = line.split(',');
    const reading = cells[column];
    if (index === 0 || reading === undefined) return [];
    return altered(reading).map((after): Slip => {
      const changed = cells.with(column, after).join(',');
      return {
        kind: 'reading off by 20 %',
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
