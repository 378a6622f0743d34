import type { Source } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import { printable } from '../../text/printable.ts';
import { dimensionInfo } from '../../units/dimension.ts';
import { formatRange } from '../../units/format-quantity.ts';
import type { SourcedValue } from './sourced-value.ts';

/** Where a number comes from, in one line: basis, trial with its interval or source, and the place in the file. */
export function sourcedValueText(registry: Registry, ground: SourcedValue): string {
  const { basis, kind, id, pointer, place } = ground;
  const rests = [...trialText(ground), ...sourceText(registry, ground), ...reasonText(ground)];
  const whose = basis === null ? (kind === 'policy' ? 'house rule of' : 'fact of') : `${basis} in`;
  const about = rests.length === 0 ? '' : `; ${rests.join('; ')}`;
  return printable(`${whose} ${kind} ${id}, ${pointer.slice(1)}${about}; ${place.file}:${place.line}`);
}

function trialText({ evidence, interval, dimension }: SourcedValue): string[] {
  const unit = dimensionInfo[dimension].usualUnit;
  const format = { unit, significantDigits: 6 };
  const between =
    interval === null ? '' : `95 % interval ${formatRange(interval.low, interval.high, dimension, format)}`;
  if (evidence === null) return between === '' ? [] : [between];
  return [`trial ${evidence}${between === '' ? '' : `, ${between}`}`];
}

function sourceText(registry: Registry, { source, locator }: SourcedValue): string[] {
  if (source === null) return [];
  const cited = registry.source.get(source)?.data;
  const where = locator === null ? '' : `, ${locator}`;
  return [cited === undefined ? `source ${source}${where}` : `source ${citation(cited)}${where}`];
}

/** Authors and title; the profile of the source has the rest. */
function citation({ author = [], title }: Source): string {
  const names = author.map(({ family, literal }) => family ?? literal).filter((name) => name !== undefined);
  return names.length === 0 ? `"${title}"` : `${names.join(', ')}, "${title}"`;
}

function reasonText({ reason }: SourcedValue): string[] {
  return reason === null ? [] : [reason];
}
