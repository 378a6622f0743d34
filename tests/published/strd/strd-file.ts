import { readFileSync } from 'node:fs';

/** The lines of a reference dataset. */
function strdLines(name: string): string[] {
  return readFileSync(new URL(`./${name}.dat`, import.meta.url), 'utf8').split(/\r?\n/);
}

const numbersIn = (line: string) => (line.match(/[-+]?\d*\.?\d+(?:[eE][-+]?\d+)?/g) ?? []).map(Number);

/** The observations, response first. */
export function strdRows(name: string): number[][] {
  const lines = strdLines(name);
  const head = lines.findIndex(
    (line) => /^Data:\s+y/i.test(line) && !/Response|World|Constructed/.test(line),
  );
  const start = /^-+$/.test(lines[head + 1]?.trim() ?? '') ? head + 2 : head + 1;
  return lines
    .slice(start)
    .map(numbersIn)
    .filter((row) => row.length > 0);
}

/** The number behind a label of the certified block. */
export function certified(name: string, label: RegExp): number {
  const line = strdLines(name).find((each) => label.test(each));
  const value = numbersIn(line?.replace(label, '') ?? '')[0];
  if (value === undefined) throw new Error(`${name} has no ${label}`);
  return value;
}

/** Rows `B0 …` or `b1 = …`: the numbers of each parameter. */
export function certifiedParameters(name: string): number[][] {
  return strdLines(name)
    .filter((line) => /^\s+[Bb]\d(?:\s|=)/.test(line) && !/^\s+\(/.test(line))
    .map((line) => numbersIn(line.replace(/^\s+[Bb]\d\s*=?/, '')))
    .filter((row) => row.length >= 2);
}

/** Digits of agreement: -log10 of the relative error, or of the absolute error where the certified value is 0; at most 15. */
export function digits(computed: number, exact: number): number {
  const error = exact === 0 ? Math.abs(computed) : Math.abs(computed - exact) / Math.abs(exact);
  return error === 0 ? 15 : Math.min(15, -Math.log10(error));
}
