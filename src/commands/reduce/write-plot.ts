import { statSync } from 'node:fs';
import { dirname, resolve } from 'node:path';
import { writeFile } from '../../host/writing/write-files.ts';
import { drawPlot } from '../../plots/draw-plot.ts';
import { drawTextPlot } from '../../plots/draw-text-plot.ts';
import type { Plot } from '../../plots/plot.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { printable } from '../../text/printable.ts';
import type { CliContext } from '../cli-context.ts';
import type { AnswerFormat } from '../shared-options.ts';
import { usage } from '../usage.ts';

/** What `--plot` says: a file, `-` for characters, `--no-plot` for nothing; absent where the terminal decides. */
type PlotChoice = string | boolean | undefined;

/** What the user asks of a plot. */
export interface PlotRequest {
  readonly plot?: PlotChoice;
  readonly format: AnswerFormat;
}

/** Looks at the request before any work is done. Problems say what would do. */
export function checkPlotRequest({ plot, format }: PlotRequest, cwd: string): Result<null, Problem> {
  if (typeof plot !== 'string') return success(null);
  if (plot === '-') {
    return format === 'text'
      ? success(null)
      : usage(
          `--plot - prints characters, which have no place in ${format === 'json' ? 'JSON' : 'Markdown'}`,
          'Name a file, such as ladder.svg.',
        );
  }
  const shown = printable(plot);
  if (!/\.svg$/i.test(plot)) {
    return usage(`--plot ${shown}: a plot is an SVG picture`, 'End the name of the file with .svg.');
  }
  const path = resolve(cwd, plot);
  if (isFolder(path)) return usage(`--plot ${shown}: that is a folder`, 'Name a file in it.');
  if (isFolder(dirname(path))) return success(null);
  return usage(`--plot ${shown}: there is no folder ${dirname(shown)} to write into`, 'Make it first.');
}

function isFolder(path: string): boolean {
  try {
    return statSync(path).isDirectory();
  } catch {
    return false;
  }
}

/** Prints the plot in characters, or writes the picture, whole or not at all. Problems: there is no picture, or no way to write it. */
export async function showPlot(
  plot: Plot | null,
  { plot: choice, format }: PlotRequest,
  cli: CliContext,
): Promise<Result<null, Problem>> {
  if (plot === null) {
    return typeof choice === 'string'
      ? refusal('noCurve', 'These readings make no curve to plot', 'Leave --plot out.')
      : success(null);
  }
  if (typeof choice === 'string' && choice !== '-') return writePlot(plot, choice, cli);
  if (format === 'text') cli.out(plotInCharacters(plot, choice, cli.terminalColumns));
  return success(null);
}

async function writePlot(plot: Plot, file: string, { cwd, err }: CliContext): Promise<Result<null, Problem>> {
  const written = await writeFile(file, drawPlot(plot), cwd);
  if (written.ok) err(`Wrote ${printable(file)}.\n`);
  return written;
}

/** Width that a plot of characters needs and the most that it takes, columns. */
const textWidth = { least: 60, usual: 72, most: 76 };

/** The plot in characters where it was asked for, or where a terminal is wide enough for it; else nothing. */
function plotInCharacters(plot: Plot, choice: PlotChoice, terminalColumns: number | undefined): string {
  const columns = terminalColumns ?? (choice === '-' ? textWidth.usual : 0);
  const isWanted = choice === '-' || (choice !== false && columns >= textWidth.least);
  const width = Math.min(Math.max(columns, textWidth.least), textWidth.most);
  return isWanted ? `\n${drawTextPlot(plot, { width })}` : '';
}
