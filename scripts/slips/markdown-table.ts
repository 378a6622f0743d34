import type { Tallies, Tally } from './tally.ts';

/** The catch rates as the README shows them. */
export function markdownTables({ passing, refused, all }: Tallies): string {
  const head = [
    '| slip | planted | caught | 95 % interval | aim | as errors | median rank | first three |',
    '| --- | --: | --: | --: | --: | --: | --: | --: |',
  ];
  const table = (rows: readonly Tally[]) => [...head, ...rows.map(row)].join('\n');
  const parts = [
    ...(passing.length === 0 ? [] : [table([...passing, all])]),
    ...(refused.length === 0 ? [] : [`Refused by the form already:\n\n${table(refused)}`]),
  ];
  return parts.join('\n\n');
}

function row(tally: Tally): string {
  const { name, judged, caught, interval, aim, errors, medianRank, inFirstThree } = tally;
  const cells = [
    ...[name, judged, percent(caught), interval.map(percent).join(' to ')],
    ...[aim === null ? '' : percent(aim), percent(errors), medianRank ?? '-', percent(inFirstThree)],
  ];
  return `| ${cells.join(' | ')} |`;
}

/** A fraction in percent, rounded down, so that 100 % means all of them. */
export function percent(fraction: number): string {
  if (Number.isNaN(fraction)) return '-';
  return fraction === 1 ? '100 %' : `${(Math.floor(fraction * 1000) / 10).toFixed(1)} %`;
}
