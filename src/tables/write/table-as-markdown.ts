import { formatDocument } from '../../units/format-document.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { tableDocument } from './table-document.ts';

/** The table as Markdown that also lines up as plain text. */
export function formatTableAsMarkdown(speeds: SpeedTable): string {
  return formatDocument(tableDocument(speeds), 'markdown');
}
