import { trialIndex } from '../../knowledge/trial-index.ts';
import type { Profile } from '../../registry/profile.ts';
import type { Registry } from '../../registry/registry.ts';
import { cardMarkup } from '../../tables/card/card-as-html.ts';
import { cardView } from '../../tables/card/card-of-table.ts';
import { type FilesOfPlot, tableLongDocument, tablePlots } from '../../tables/card/table-as-html.ts';
import type { FullRequest } from '../../tables/derive/every-pairing.ts';
import type { SpeedTable } from '../../tables/derive/speed-table.ts';
import { formatTableAsCsv } from '../../tables/write/table-as-csv.ts';
import { formatTableAsJson, tableTitle } from '../../tables/write/table-as-json.ts';
import { type Block, code, list, paragraph, section } from '../../text/document.ts';
import { formatHtmlBlock } from '../../text/format-html.ts';
import { element } from '../../text/html-element.ts';
import { wordsOf } from '../../text/words.ts';
import { documentInPrint } from '../../units/in-print.ts';
import { besidePage, pairingPage, type WayTo, wayFrom } from '../address.ts';
import type { ReducedCatalogue } from '../catalogue.ts';
import type { SiteFile } from '../site-file.ts';
import { sitePage } from '../site-page.ts';
import { laddersPlot } from './ladders-plot.ts';
import { plotFiles, plotLinks, plotPicture } from './plot-files.ts';
import { profileLink } from './statement-table.ts';

/** The page of a pairing under house rules: the card, which prints on one page, and the long form behind it. */
export function* pairingFiles(
  request: FullRequest,
  table: SpeedTable,
  { registry, reductionOf }: ReducedCatalogue,
): Generator<SiteFile> {
  const path = pairingPage(request);
  const to = wayFrom(path);
  const filesOf: FilesOfPlot = (name) => plotLinks(path, name, to);
  const trials = trialsOf(request, registry);
  const ladders = laddersPlot(
    trials.flatMap(({ id, data }) => {
      const reduced = data.method === 'flowLadder' ? reductionOf(id) : null;
      if (!reduced?.ok || reduced.value.curve === null) return [];
      const nozzleTemperature = data.conditions.nozzleTemperature ?? null;
      return [{ trial: id, nozzleTemperature, curve: reduced.value.curve }];
    }),
    `${request.filament} on ${request.machine}`,
  );
  const evidence: Block[] = [
    ...(ladders === null
      ? []
      : [
          section(
            'Flow ladders',
            [
              plotPicture(
                path,
                'ladders',
                ladders,
                to,
                'Each ladder at its nozzle temperature; what the batches and days were stands on the pages of the trials.',
              ),
            ],
            'ladders',
          ),
        ]),
    ...trialSection(trials, registry, to),
    section('This pairing', [paragraph(pairingLinks(request, registry, to)), ...nextSteps(request)], 'next'),
  ];
  const long = tableLongDocument(table, filesOf);
  const { blocks } = documentInPrint({ ...long, blocks: [...long.blocks, ...evidence] });
  const main = element('main', {}, [
    cardMarkup(cardView(table)),
    element(
      'div',
      { class: 'behind' },
      blocks.map((block) => formatHtmlBlock(block, 2)),
    ),
  ]);
  yield sitePage(path, tableTitle(table), [main]);
  yield { path: besidePage(path, '.json'), text: formatTableAsJson(table) };
  yield { path: besidePage(path, '.csv'), text: formatTableAsCsv(table) };
  for (const { name, plot } of tablePlots(table)) yield* plotFiles(path, name, plot);
  if (ladders !== null) yield* plotFiles(path, 'ladders', ladders);
}

/** The trials of a pairing; one that names no machine belongs to every pairing of its filament. */
function trialsOf({ machine, nozzle, filament }: FullRequest, registry: Registry): Profile<'trial'>[] {
  return (trialIndex(registry).byFilament.get(filament) ?? []).filter(
    ({ data }) => (data.machine ?? machine) === machine && (data.nozzle ?? nozzle) === nozzle,
  );
}

function trialSection(trials: readonly Profile<'trial'>[], registry: Registry, to: WayTo): Block[] {
  if (trials.length === 0) return [];
  const items = trials.map(({ id, data }) => [
    profileLink(registry, 'trial', id, to),
    `: ${wordsOf(data.method)}, ${data.date}`,
  ]);
  return [section('Trials', [list(items)], 'trials')];
}

function pairingLinks({ machine, filament, policy }: FullRequest, registry: Registry, to: WayTo) {
  const own = pairingNames({ machine, filament, policy }, registry, to);
  return own.flatMap((each, index) => (index === 0 ? [each] : [' · ', each]));
}

function pairingNames(
  { machine, filament, policy }: Pick<FullRequest, 'machine' | 'filament' | 'policy'>,
  registry: Registry,
  to: WayTo,
) {
  return [
    profileLink(registry, 'machine', machine, to, `machine ${machine}`),
    profileLink(registry, 'filament', filament, to, `filament ${filament}`),
    profileLink(registry, 'policy', policy, to, `house rules ${policy}`),
  ];
}

/** What to type for the next bench run and for another table. */
function nextSteps({ machine, nozzle, filament, policy }: FullRequest): Block[] {
  return [
    paragraph('The next ladder, and the tables of every tested temperature, from a terminal:'),
    code(
      [
        `meltbounds plan ${machine} ${filament} --nozzle ${nozzle}`,
        `meltbounds tables ${machine} ${filament} --nozzle ${nozzle} --policy ${policy} --all-temperatures`,
      ].join('\n'),
      'sh',
    ),
  ];
}
