import { isScalar, isSeq } from 'yaml';
import type { Profile } from '../../src/registry/profile.ts';
import { placeAt } from '../../src/registry/yaml/yaml-document.ts';

/** The readings of a trial as they are written, in its file or in the sheet beside it. */
export interface WrittenReadings {
  /** The file that they stand in, from the root of the registry. */
  readonly file: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
  /** The text of the file with other rows. */
  readonly withRows: (rows: readonly (readonly string[])[]) => string;
}

/** The readings of a trial; null where they cannot be rewritten row by row. */
export function writtenReadings(trial: Profile<'trial'>): WrittenReadings | null {
  return trial.attachment?.ok ? inSheet(trial.attachment.source) : inTrial(trial);
}

function inSheet({ relativePath, text }: { relativePath: string; text: string }): WrittenReadings | null {
  const [head = '', ...lines] = text.split('\n').filter((line) => line !== '');
  if (text.includes('"')) return null;
  const rows = lines.map((line) => line.split(','));
  return {
    file: relativePath,
    columns: head.split(',').map((name) => name.replace(/ ?\[.*$/, '')),
    rows,
    withRows: (changed) => [head, ...changed.map((row) => row.join(',')), ''].join('\n'),
  };
}

function inTrial({ source: { text, relativePath }, data, yaml }: Profile<'trial'>): WrittenReadings | null {
  const list = placeAt(yaml, ['observations', 'rows'])?.value;
  const columns = Object.keys(data.observations.columns ?? {});
  if (!isSeq(list) || list.flow || !list.range) return null;
  const rows = list.items.map((row) =>
    isSeq(row)
      ? row.items.map((cell) =>
          isScalar(cell) && cell.range ? text.slice(cell.range[0], cell.range[1]) : '',
        )
      : [],
  );
  const start = list.range[0];
  const indent = ' '.repeat(start - text.lastIndexOf('\n', start) - 1);
  const end = list.range[1];
  return {
    ...{ file: relativePath, columns, rows },
    withRows: (changed) =>
      `${text.slice(0, start)}${changed.map((row) => `- [${row.join(', ')}]`).join(`\n${indent}`)}\n${text.slice(end)}`,
  };
}
