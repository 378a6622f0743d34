import type { BenchProblem } from '../../bench/bench-problem.ts';
import { flowLadder } from '../../bench/flow-ladder/flow-ladder.ts';
import type { FedPieces } from '../../bench/flow-ladder/next-piece/lay-out-next-piece.ts';
import { readSheetTable } from '../../bench/sheet/bench-sheet.ts';
import { readInlineObservations } from '../../bench/sheet/inline-observations.ts';
import type { Observations } from '../../bench/sheet/observations.ts';
import { readSheetText } from '../../bench/sheet/sheet-table.ts';
import { withoutUnread } from '../../bench/sheet/unread-rows.ts';
import type { Profile } from '../../registry/profile.ts';
import { type Problem, type Result, refusal, success } from '../../result.ts';
import { shown } from '../../units/wording.ts';
import type { NextPieceRequest } from './plan-next-piece.ts';

/** Why a trial is no beginning of the ladder that is asked about. */
type OtherLadder = Problem<'otherMethod' | 'otherPairing' | 'otherTemperature'>;

/** A ladder that a trial has begun: what is asked of it, and its pieces. */
interface FedTrial {
  readonly request: NextPieceRequest;
  readonly fed: FedPieces;
}

/** No piece yet. */
const nothingFed: Observations = {
  columns: { commandedFlow: [], feedLength: [], extrudedMass: [] },
  rows: [],
};

/**
 * The pieces that a trial holds so far, with the nozzle, the temperature, the scale and the accepted deficit that it names. Outer
 * problems: it is a trial of something else than what is asked about; the inner ones are those of its sheet.
 */
export function fedTrial(
  trial: Profile<'trial'>,
  request: NextPieceRequest,
): Result<Result<FedTrial, readonly BenchProblem[]>, OtherLadder> {
  const other = otherLadder(trial, request);
  if (other !== null) return other;
  const observations = piecesOf(trial);
  if (!observations.ok) return success(observations);
  const { acceptedDeficit, feedLengthUncertainty, scale, nozzle, conditions, events = [] } = trial.data;
  const resolution = scale?.resolution ?? request.resolution;
  const nozzleTemperature = conditions.nozzleTemperature ?? request.nozzleTemperature;
  return success(
    success({
      request: {
        ...request,
        trial: trial.id,
        ...(nozzle !== undefined && { nozzle }),
        ...(nozzleTemperature !== undefined && { nozzleTemperature }),
        ...(resolution !== undefined && { resolution }),
      },
      fed: {
        observations: observations.value,
        ...(acceptedDeficit !== undefined && { acceptedDeficit }),
        ...(feedLengthUncertainty !== undefined && { feedLengthUncertainty }),
        ...(events.length > 0 && {
          haltedAt: Math.min(...events.map(({ commandedFlow }) => commandedFlow)),
        }),
      },
    }),
  );
}

function otherLadder({ id, data }: Profile<'trial'>, request: NextPieceRequest) {
  if (data.method !== 'flowLadder') {
    return refusal(
      'otherMethod',
      `${id} is a ${data.method}, and only a flowLadder is fed piece by piece`,
      'Name the sheet or the trial of a flow ladder.',
    );
  }
  for (const kind of ['machine', 'filament', 'nozzle'] as const) {
    const [found, asked] = [data[kind], request[kind]];
    if (found !== undefined && asked !== undefined && found !== asked) {
      return refusal(
        'otherPairing',
        `${id} was fed with the ${kind} ${found}, not ${asked}`,
        `Name the ${kind} of the trial, or another trial.`,
      );
    }
  }
  const [found, asked] = [data.conditions.nozzleTemperature, request.nozzleTemperature];
  if (found === undefined || asked === undefined || found === asked) return null;
  return refusal(
    'otherTemperature',
    `${id} is fed at ${shown(found, 'temperature')}, not at ${shown(asked, 'temperature')}: pieces of two temperatures make no ladder`,
    'Leave --temperature out, or begin a ladder at that temperature.',
  );
}

/** Rows of a trial whose reading is still to be written are no pieces yet. */
function piecesOf({
  data: { observations },
  attachment,
}: Profile<'trial'>): Result<Observations, readonly BenchProblem[]> {
  if (attachment?.ok) {
    const table = readSheetText(attachment.source.text, 0);
    if (!table.ok) return table;
    const weighed = withoutUnread(table.value, flowLadder, 'extrudedMass');
    if (!weighed.ok) return weighed;
    const read = readSheetTable(weighed.value, flowLadder);
    return read.ok ? success(read.value.observations) : read;
  }
  const { columns = {}, rows = [] } = observations;
  const weighed = rows.filter((cells) => cells.length >= Object.keys(columns).length);
  return weighed.length === 0
    ? success(nothingFed)
    : readInlineObservations({ columns, rows: weighed }, flowLadder);
}
