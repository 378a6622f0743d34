import type { BenchProblem } from '../../bench/bench-problem.ts';
import type { Reduction } from '../../bench/reduction.ts';
import { type Origin, originBlocks, originOf } from '../../knowledge/origin.ts';
import { quirkSections } from '../../knowledge/quirk-words.ts';
import { notesOf } from '../../knowledge/quirks.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { readingColumns, readingsCsv, readingsTable } from '../../report/reduction/readings.ts';
import { formatReductionAsJson } from '../../report/reduction/reduction-as-json.ts';
import { reductionDocument } from '../../report/reduction/reduction-document.ts';
import { reductionPlot } from '../../report/reduction/reduction-plot.ts';
import { type Block, type Document, facts, paragraph, section, warnings } from '../../text/document.ts';
import { link } from '../../text/inline.ts';
import { wordsOf } from '../../text/words.ts';
import { besidePage, profilePage, type WayTo, wayFrom } from '../address.ts';
import type { ReducedCatalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { documentPage } from '../site-page.ts';
import { plainFacts } from './plain-facts.ts';
import { plotFiles, plotPicture } from './plot-files.ts';
import { fileBlocks, profileJson } from './profile-page.ts';

/** The page of a trial, and beside it its document, reduction, readings and plot. */
export function* trialFiles(
  trial: Profile<'trial'>,
  { registry, reductionOf }: ReducedCatalogue,
): Generator<SiteFile> {
  const path = profilePage('trial', trial.id);
  const to = wayFrom(path);
  const origin = trialOrigin(trial, registry);
  const reduced = reductionOf(trial.id);
  const document = reduced.ok
    ? reductionDocument(reduced.value, { title: trial.id, subject: trial.data, origin })
    : refusedDocument(trial, origin, reduced.error);
  const plot = reduced.ok ? plotOf(reduced.value, trial) : null;
  const readings = readingColumns(trial);
  const caption = 'Readings with what was reduced from them.';
  const blocks = [
    ...document.blocks.filter(({ kind }) => kind !== 'cautions'),
    ...document.blocks.filter(({ kind }) => kind === 'cautions'),
    ...(plot === null ? [] : [section('Curve', [plotPicture(path, 'curve', plot, to, caption)])]),
    ...quirkSections(notesOf(trial)),
    ...(readings === null ? [] : [section('Readings', [readingsTable(readings)])]),
    section('Facts', [facts(...plainFacts(trial, registry, to))]),
    section('Files', [...fileBlocks(trial, path, to), fileLinks(path, reduced.ok, readings !== null, to)]),
  ];
  yield documentPage(
    path,
    document.title === null ? trial.id : `${trial.id}: ${wordsOf(trial.data.method)}`,
    { ...document, blocks },
  );
  yield { path: besidePage(path, '.json'), text: profileJson(trial) };
  if (reduced.ok)
    yield { path: besidePage(path, '--reduction.json'), text: formatReductionAsJson(reduced.value, origin) };
  if (readings !== null) yield { path: besidePage(path, '--readings.csv'), text: readingsCsv(readings) };
  if (plot !== null) yield* plotFiles(path, 'curve', plot);
}

function plotOf(reduction: Reduction, { id, data }: Profile<'trial'>) {
  return reductionPlot(reduction, id, data.events ?? []);
}

function trialOrigin({ id, data: { machine, filament } }: Profile<'trial'>, registry: Registry): Origin {
  const machines = machine === undefined ? [] : [{ kind: 'machine' as const, id: machine }];
  return originOf(registry, { profiles: [...machines, { kind: 'filament', id: filament }], trials: [id] });
}

/** What a trial says whose readings give no result. */
function refusedDocument(
  { id, data }: Profile<'trial'>,
  origin: Origin,
  problems: readonly BenchProblem[],
): Document {
  return {
    title: `${id}: ${wordsOf(data.method)}`,
    answer: 'No result: its readings cannot be reduced.',
    blocks: [
      ...originBlocks(origin),
      warnings(
        problems.map(
          ({ message, help, row }) => `${row === undefined ? '' : `row ${row}: `}${message}; ${help}`,
        ),
      ),
    ],
  };
}

function fileLinks(path: string, isReduced: boolean, hasReadings: boolean, to: WayTo): Block {
  const links = [
    ...(isReduced ? [link('Reduction (JSON)', to(besidePage(path, '--reduction.json')))] : []),
    ...(hasReadings ? [link('Readings (CSV)', to(besidePage(path, '--readings.csv')))] : []),
  ];
  return paragraph(links.flatMap((each) => [each, ' ']));
}
