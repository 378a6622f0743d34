import { filamentFeed, filamentMass } from '../../../physics/filament-geometry.ts';
import { failure, type Result, success } from '../../../result.ts';
import type { Fraction } from '../../../units/canonical.ts';
import { amountOf } from '../../../units/rounded.ts';
import { shown, shownNumber } from '../../../units/wording.ts';
import type { BenchProblem } from '../../bench-problem.ts';
import type { LayoutRequest } from '../../layout/layout-request.ts';
import type { PlanProblem } from '../../layout/plan-problem.ts';
import type { PlanRow, RunLayout } from '../../layout/run-layout.ts';
import type { Observations } from '../../sheet/observations.ts';
import { type FlowLadderSettings, usualAcceptedDeficit } from '../flow-ladder-settings.ts';
import { haltItems } from '../halt-advice.ts';
import { type LadderPlan, ladderPlan } from '../ladder-plan.ts';
import { ladderPlanFacts } from '../ladder-plan-facts.ts';
import type { FeedNext, NextPiece } from './feeding-advice.ts';
import { nextPiece } from './next-piece.ts';
import { answerText, type PieceSetting, soFarItems, whyItems } from './next-piece-words.ts';

/** What was fed so far, and how it is judged where that is not as usual. */
export interface FedPieces extends Pick<FlowLadderSettings, 'feedLengthUncertainty' | 'haltedAt'> {
  readonly observations: Observations;
  readonly acceptedDeficit?: Fraction;
}

/** How narrow the interval shall become, and who asks for it. */
interface AskedWidth {
  readonly share: Fraction;
  /** `policy workshop`. */
  readonly by: string;
}

/** A ladder that has begun, with its next piece. */
interface BegunLadder {
  readonly request: LayoutRequest;
  readonly ladder: LadderPlan;
  readonly setting: PieceSetting;
  readonly piece: NextPiece;
  readonly fed: FedPieces;
}

/** The next piece of a flow ladder, laid out like a run of one row, or of none where feeding may stop. */
export function layOutNextPiece(
  request: LayoutRequest,
  fed: FedPieces,
  asked: AskedWidth,
): Result<Result<RunLayout, readonly BenchProblem[]>, PlanProblem> {
  const planned = ladderPlan(request);
  if (!planned.ok) return planned;
  const ladder = planned.value;
  const settings = settingsOf(request, ladder, fed);
  const { flows } = ladder.steps;
  const outlook = {
    lowest: flows[0] ?? Number.NaN,
    highest: flows.at(-1) ?? Number.NaN,
    expected: { ...ladder.expected.range, value: ladder.expected.value },
    askedWidth: asked.share,
  };
  const piece = nextPiece({ observations: fed.observations, settings }, outlook);
  if (!piece.ok) return success(failure(piece.error));
  const setting = { settings, outlook, askedBy: asked.by };
  return success(success(layoutOf({ request, ladder, setting, piece: piece.value, fed })));
}

function settingsOf(
  { pairing, massResolution }: LayoutRequest,
  { density }: LadderPlan,
  { observations: _, acceptedDeficit = usualAcceptedDeficit, ...known }: FedPieces,
): FlowLadderSettings {
  return {
    ...known,
    ...{ acceptedDeficit, massResolution, density },
    filamentDiameter: pairing.filament.data.diameter,
  };
}

function layoutOf(begun: BegunLadder): RunLayout {
  const { request, ladder, setting, piece } = begun;
  const temperature = shown(ladder.nozzleTemperature.value, 'temperature');
  const { next } = piece;
  return {
    name: 'Next piece of the flow ladder',
    detail: temperature,
    idWord: temperature.replace(/ .*/, ''),
    answer: answerText(piece, setting),
    nextStep: next.step === 'feed' ? feedingText : stopText,
    sections: [
      { heading: 'So far', items: soFarItems(piece, setting) },
      { heading: 'Why', items: whyItems(piece, setting) },
      ...(next.step === 'feed'
        ? [
            { heading: 'Feed it', items: feedingItems(begun, next) },
            {
              heading: 'If the machine stops',
              items: haltItems(request.pairing.machine.data, next.flow),
            },
          ]
        : []),
    ],
    given: [
      { name: 'commandedFlow', unit: 'mm3/s' },
      { name: 'feedLength', unit: 'mm' },
    ],
    read: [{ name: 'extrudedMass', unit: 'g' }],
    hints: ['feed mm/s', 'feed mm/min', 'piece s', 'full mass g'],
    rows: next.step === 'feed' ? [rowOf(begun, next)] : [],
    repeats: 1,
    conditions: [`nozzleTemperature: ${temperature}`, '# ambientTemperature: 22 Cel'],
    keys: [
      `acceptedDeficit: ${shown(setting.settings.acceptedDeficit, 'ratio')}`,
      `scale: {resolution: ${shown(ladder.resolution, 'mass')}}`,
    ],
    facts: { ...ladderPlanFacts(ladder), nextPiece: factsOf(begun) },
  };
}

const feedingText =
  'Next: weigh the piece, write its row at the end of the sheet, and ask again with the same command.';
const stopText = 'Next: `meltbounds reduce` with the sheet or the trial gives the limit with its interval.';

/** As long as the pieces before it, so that all of them compare; else as long as the whole ladder would have it. */
function lengthOf({ fed, ladder }: BegunLadder): number {
  return fed.observations.columns.feedLength?.at(-1) ?? ladder.piece.length;
}

function rowOf(begun: BegunLadder, { flow }: FeedNext): PlanRow {
  const { filamentDiameter, density } = begun.setting.settings;
  const length = lengthOf(begun);
  const feed = filamentFeed(flow, filamentDiameter);
  const mass = filamentMass(length, density, filamentDiameter);
  return {
    given: [flow, length],
    hints: [feed.toFixed(2), (feed * 60).toFixed(0), (length / feed).toFixed(1), mass.toFixed(3)],
  };
}

function feedingItems(begun: BegunLadder, { flow }: FeedNext): string[] {
  const { ladder, fed, setting } = begun;
  const { filamentDiameter, density } = setting.settings;
  const length = lengthOf(begun);
  const mass = filamentMass(length, density, filamentDiameter);
  const before = fed.observations.columns.commandedFlow?.at(-1) ?? 0;
  return [
    `nozzle at ${shown(ladder.nozzleTemperature.value, 'temperature')}, as for every piece of this ladder (${ladder.nozzleTemperature.reason})`,
    `feed ${shown(length, 'length')} of filament into free air, fans off; at full delivery the piece weighs ${shown(Number(mass.toPrecision(4)), 'mass')} and the resolution of the scale, ${shown(setting.settings.massResolution, 'mass')}, is ${shownNumber(Number(((100 * setting.settings.massResolution) / mass).toPrecision(2)))} %`,
    before > flow
      ? `the piece before was fed faster, at ${shown(before, 'volumeFlow')}: purge slowly until the melt comes out full, since a hot end that has run dry needs a while, then purge a little at this flow`
      : 'purge a little at this flow before it',
    'cut, let it cool, weigh it, write it down; leave nothing out and round nothing',
  ];
}

function factsOf({ piece, setting }: BegunLadder): Record<string, unknown> {
  const { next, pieces, result, width, ceiling } = piece;
  return {
    step: next.step,
    reason: next.reason,
    piecesSoFar: pieces,
    limit: result && {
      value: amountOf(result.value, 'mm3/s'),
      low: result.interval.low === null ? null : amountOf(result.interval.low, 'mm3/s'),
      high: result.interval.high === null ? null : amountOf(result.interval.high, 'mm3/s'),
      censored: result.censored,
    },
    width: width === null ? null : amountOf(width, '1'),
    askedWidth: amountOf(setting.outlook.askedWidth, '1'),
    flow: next.step === 'feed' ? amountOf(next.flow, 'mm3/s') : null,
    expectedWidth:
      next.step === 'feed' && next.expectedWidth !== null ? amountOf(next.expectedWidth, '1') : null,
    piecesToGo: next.step === 'feed' ? next.piecesToGo : null,
    ceiling: amountOf(ceiling.flow, 'mm3/s'),
  };
}
