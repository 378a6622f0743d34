import { closest } from 'fastest-levenshtein';
import { failure, type Result, success } from '../../result.ts';
import { quote } from '../../text/quote.ts';
import { type Dimension, dimensionInfo } from '../../units/dimension.ts';
import { parseUnit } from '../../units/parse-quantity.ts';
import type { Unit } from '../../units/unit-table.ts';
import type { BenchProblem } from '../bench-problem.ts';
import { meaningOf, type NamedUnit } from './column-heading.ts';
import type { ColumnPlan } from './column-plan.ts';
import type { SheetRow } from './sheet-row.ts';

/** A column of a sheet: what it holds and the unit its numbers are in. */
export interface ColumnHead {
  readonly name: string;
  readonly unit: Unit;
}

/** A column of numbers and where it stands, or a column of notes. */
export type SheetColumn = { readonly head: ColumnHead | null; readonly heading: string };

/** Reads a header row, such as `name [unit]`, against the columns that must be there; a column without a head holds notes. */
export function readColumnHeads(
  header: SheetRow,
  plan: ColumnPlan,
): Result<SheetColumn[], readonly BenchProblem[]> {
  const headings = header.cells.map((cell) => `${cell}`.trim());
  const meanings = headings.map((heading) => ({ heading, meaning: meaningOf(heading, plan) }));
  const problems = meanings.flatMap(({ heading, meaning }) =>
    meaning.kind === 'malformed'
      ? [malformedHeader(heading, plan.columns, header.row)]
      : meaning.kind === 'several'
        ? [ambiguousHeader(heading, meaning.names, header.row)]
        : [],
  );
  if (problems.length > 0) return failure(problems);
  const written = meanings.flatMap(({ meaning }) => (meaning.kind === 'column' ? [meaning.written] : []));
  const heads = matchColumns(written, plan, header.row);
  if (!heads.ok) return heads;
  const left = [...heads.value];
  return success(
    meanings.map(({ heading, meaning }) => ({
      heading,
      head: meaning.kind === 'column' ? (left.shift() ?? null) : null,
    })),
  );
}

function ambiguousHeader(heading: string, names: readonly string[], row: number): BenchProblem {
  const columns = names.map((name) => `\`${name}\``);
  return {
    code: 'ambiguousColumn',
    message: `the header \`${quote(heading)}\` can be read as ${columns.join(' or as ')}`,
    found: quote(heading),
    help: 'write the name of the column that is meant',
    row,
  };
}

/** Matches named columns to the ones that must be there; `row` is where they were written, if anywhere. */
export function matchColumns(
  written: readonly NamedUnit[],
  plan: ColumnPlan,
  row?: number,
): Result<ColumnHead[], readonly BenchProblem[]> {
  const { columns } = plan;
  const place = row === undefined ? {} : { row };
  const problems: BenchProblem[] = [];
  const heads: ColumnHead[] = [];
  for (const { name, unit: unitText } of written) {
    const dimension = Object.hasOwn(columns, name) ? columns[name] : undefined;
    if (dimension === undefined) {
      problems.push({ ...unknownColumn(name, Object.keys(columns)), ...place });
    } else if (heads.some((head) => head.name === name)) {
      problems.push({ ...repeatedColumn(name), ...place });
    } else {
      const unit = parseUnit(unitText, dimension);
      if (unit.ok) heads.push({ name, unit: unit.value });
      else problems.push({ ...wrongUnit(name, unit.error), ...place });
    }
  }
  const missing = requiredColumns(plan).filter(([name]) => !written.some((head) => head.name === name));
  problems.push(
    ...missing.map(([name, dimension]) => ({ ...missingColumn(name, dimension, written), ...place })),
    ...(plan.eitherOf ?? [])
      .flatMap((group) => choiceProblems(written, group))
      .map((problem) => ({ ...problem, ...place })),
  );
  return problems.length > 0 ? failure(problems) : success(heads);
}

function requiredColumns({ columns, optional = [], eitherOf = [] }: ColumnPlan): [string, Dimension][] {
  return Object.entries(columns).filter(
    ([name]) => !optional.includes(name) && !eitherOf.flat().includes(name),
  );
}

function choiceProblems(written: readonly NamedUnit[], group: readonly string[]): BenchProblem[] {
  const there = group.filter((name) => written.some((head) => head.name === name));
  if (there.length === 1) return [];
  const names = group.map((name) => `\`${name}\``).join(' or ');
  return there.length === 0
    ? [{ code: 'missingColumn', message: `there is no column ${names}`, help: `add one of them` }]
    : [
        {
          code: 'repeatedColumn',
          message: `${there.join(' and ')} are both there`,
          help: 'keep the one that counts',
        },
      ];
}

function malformedHeader(
  cell: string,
  columns: Readonly<Record<string, Dimension>>,
  row: number,
): BenchProblem {
  const name = closest(cell.slice(0, 60), Object.keys(columns));
  const dimension = columns[name];
  const unit = dimension === undefined ? 'unit' : dimensionInfo[dimension].usualUnit;
  return {
    code: 'malformedHeader',
    message: `the header \`${quote(cell)}\` is not a name with its unit in brackets`,
    found: quote(cell),
    help: `write \`name [unit]\`, such as \`${name} [${unit}]\``,
    row,
  };
}

function unknownColumn(name: string, known: readonly string[]): BenchProblem {
  return {
    code: 'unknownColumn',
    message: `there is no column \`${quote(name)}\` in this method`,
    found: quote(name),
    help: `did you mean \`${closest(name.slice(0, 60), known)}\`? The columns are ${known.join(', ')}`,
  };
}

function repeatedColumn(name: string): BenchProblem {
  return {
    code: 'repeatedColumn',
    message: `the column \`${name}\` is there twice`,
    found: name,
    help: 'put repeated readings into rows of their own, or delete the copy',
  };
}

function wrongUnit(
  name: string,
  error: { readonly message: string; readonly found: string; readonly help: string },
): BenchProblem {
  return {
    code: 'wrongUnit',
    message: `the column \`${name}\`: ${error.message}`,
    found: error.found,
    help: error.help,
  };
}

function missingColumn(name: string, dimension: Dimension, written: readonly NamedUnit[]): BenchProblem {
  return {
    code: 'missingColumn',
    message: `the column \`${name}\` is missing`,
    found: written.map((head) => quote(head.name)).join(', '),
    help: `add \`${name} [${dimensionInfo[dimension].usualUnit}]\`, ${dimensionInfo[dimension].description} for every row`,
  };
}
