import { type Problem, type Result, success } from '../result.ts';
import type { BenchProblem } from './bench-problem.ts';
import type { Method } from './method.ts';
import { methodNames } from './method-facts.ts';
import { allMethods } from './methods.ts';
import { isNamedExactly } from './sheet/plain-sheet.ts';
import { readColumnHeads } from './sheet/sheet-columns.ts';
import type { SheetTable } from './sheet/sheet-table.ts';

/** Why the columns of a sheet do not tell its method. */
type FittingProblem = Problem<'severalMethods'>;

/**
 * The method whose columns a sheet has. Columns that are named as the method names them count before those whose words only fit.
 * The inner problems say what is wrong where none fits, by the method that comes nearest.
 */
export function fittingMethod({
  header,
}: SheetTable): Result<Result<Method, readonly BenchProblem[]>, FittingProblem> {
  const read = allMethods.map((method) => ({ method, columns: readColumnHeads(header, method) }));
  const fitting = read.flatMap(({ method, columns }) =>
    columns.ok ? [{ method, isExact: columns.value.every(isNamedExactly) }] : [],
  );
  const exact = fitting.filter(({ isExact }) => isExact);
  const [first, ...others] = exact.length > 0 ? exact : fitting;
  if (first === undefined) {
    const refused = read.flatMap(({ method, columns }) =>
      columns.ok ? [] : [{ method, problems: columns.error }],
    );
    return success({ ok: false, error: nearest(refused) });
  }
  if (others.length === 0) return success(success(first.method));
  const names = [first, ...others].map(({ method }) => method.method);
  return {
    ok: false,
    error: {
      code: 'severalMethods',
      message: `The columns fit several methods: ${names.join(', ')}`,
      help: 'Name one with --method.',
    },
  };
}

interface Refused {
  readonly method: Method;
  readonly problems: readonly BenchProblem[];
}

/** What is wrong by the method with the fewest problems, which is named first. */
function nearest(refused: readonly Refused[]): readonly BenchProblem[] {
  const [first, ...others] = refused;
  if (first === undefined) return [];
  const { method, problems } = others.reduce(
    (best, each) => (each.problems.length < best.problems.length ? each : best),
    first,
  );
  const [row] = problems.flatMap((problem) => problem.row ?? []);
  return [
    {
      code: 'noMethod',
      message: `no bench method has these columns; the nearest is ${method.method}`,
      help: `correct the header, or name another method with --method: ${methodNames.join(', ')}`,
      ...(row !== undefined && { row }),
    },
    ...problems,
  ];
}
