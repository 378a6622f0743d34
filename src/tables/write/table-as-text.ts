import type { TextFormat } from '../../text/format-text.ts';
import { formatDocument } from '../../units/format-document.ts';
import type { SpeedTable } from '../derive/speed-table.ts';
import { tableTextDocument } from './table-text.ts';

/** The table for a terminal of 80 columns, or as many as the format says. */
export function formatTableAsText(speeds: SpeedTable, format: TextFormat = {}): string {
  return formatDocument(tableTextDocument(speeds), 'text', format);
}
