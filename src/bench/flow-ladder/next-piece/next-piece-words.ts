import { counted } from '../../../text/words.ts';
import type { CubicMillimetresPerSecond, Fraction, Range } from '../../../units/canonical.ts';
import { formatNumber } from '../../../units/format-quantity.ts';
import { rounded } from '../../../units/rounded.ts';
import { shown, shownRange } from '../../../units/wording.ts';
import type { FlowLadderSettings } from '../flow-ladder-settings.ts';
import type { CeilingReason, FeedNext, LadderOutlook, NextPiece, StopReason } from './feeding-advice.ts';

/** A share in per cent with the digits that an interval holds: `4.6 %`. */
function percent(share: Fraction): string {
  return `${formatNumber(100 * share, { significantDigits: 2 })} %`;
}

const flowText = (flow: CubicMillimetresPerSecond) => shown(rounded(flow, 4), 'volumeFlow');

function rangeText({ low, high }: Range, digits = 4): string {
  const ends = { low: rounded(low, digits), high: rounded(high, digits) };
  return ends.low === ends.high ? flowText(ends.low) : shownRange(ends, 'volumeFlow');
}

/** What the answer speaks of besides the next piece. */
export interface PieceSetting {
  readonly settings: FlowLadderSettings;
  readonly outlook: LadderOutlook;
  /** Where the asked width comes from, in words. */
  readonly askedBy: string;
}

/** The answer in one sentence. */
export function answerText(piece: NextPiece, { outlook: { askedWidth } }: PieceSetting): string {
  const { next, width, pieces } = piece;
  if (next.step === 'stop') return `Stop: ${stopText[next.reason](piece, askedWidth)}.`;
  const flow = flowText(next.flow);
  if (pieces === 0) return `Feed ${flow} first.`;
  if (width === null) return `Feed ${flow} next: the limit is not bracketed yet.`;
  const then = next.expectedWidth === null ? '' : ` and would become about ${percent(next.expectedWidth)}`;
  return `Feed ${flow} next: the 95 % interval is ${percent(width)} wide${then}.`;
}

const stopText: Readonly<Record<StopReason, (piece: NextPiece, asked: Fraction) => string>> = {
  reached: ({ width }, asked) =>
    `the 95 % interval is ${percent(width ?? Number.NaN)} wide, and ${percent(asked)} was asked for`,
  heldToTop: ({ ceiling }) =>
    `every flow up to ${flowText(ceiling.flow)} held, and none above it is proposed, so that the limit is known as a lower bound only`,
  nearHalt: (_, asked) =>
    `the limit lies between the highest flow that held and the halt, which are less than ${percent(asked)} apart`,
  cannotNarrow: ({ width }) =>
    width === null
      ? 'no flow is left to feed between the steps, and the limit is not bracketed'
      : `ten more pieces would leave more than nine tenths of the interval, which is ${percent(width)} wide`,
};

/** What has been weighed, what it gives, and how far that is from what is asked. */
export function soFarItems(
  { pieces, flows, result, width, next }: NextPiece,
  { settings, outlook, askedBy }: PieceSetting,
): string[] {
  const asked = `asked for: an interval ${percent(outlook.askedWidth)} wide (${askedBy})`;
  const halted =
    settings.haltedAt === undefined
      ? []
      : [`the run stopped at ${flowText(settings.haltedAt)}: pieces from there on do not count`];
  if (flows === null) return [...halted, 'no piece has been weighed yet', asked];
  return [
    `${counted(pieces, 'piece')} at ${counted(flows.count, 'flow')}, ${rangeText(flows)}`,
    ...halted,
    limitText(result, width),
    asked,
    ...(next.step === 'feed' ? [toGoText(next)] : []),
  ];
}

function limitText(result: NextPiece['result'], width: Fraction | null): string {
  if (result === null) return 'no limit yet: a reduction needs four different flows';
  const { value, interval, censored } = result;
  if (censored === 'below') return `the limit is below ${flowText(value)}, the lowest flow`;
  if (interval.low === null || interval.high === null || width === null) {
    return `the limit is above ${flowText(value)}: the deficit is not reached yet`;
  }
  const range = rangeText({ low: interval.low, high: interval.high });
  return `melt flow limit ${flowText(value)}, 95 % interval ${range}, ${percent(width)} wide`;
}

function toGoText({ piecesToGo }: FeedNext): string {
  if (piecesToGo === null) return 'how many pieces that takes cannot be told yet, or more than 20';
  return `that likely takes ${counted(piecesToGo, 'more piece')}, this one among them`;
}

/** Why this flow, with the figures that speak for it; and why to stop. */
export function whyItems(piece: NextPiece, setting: PieceSetting): string[] {
  const { next, ceiling } = piece;
  const top = `no flow above ${flowText(ceiling.flow)} is proposed: ${ceilingText[ceiling.reason]}`;
  if (next.step === 'stop') return [afterwardsText[next.reason], top];
  return [reasonText(next, piece, setting), top];
}

const ceilingText: Readonly<Record<CeilingReason, string>> = {
  ladder: 'there the whole ladder of this pairing ends',
  farPast: 'there far more than the accepted deficit is missing',
  halt: 'the run stopped not far above it',
};

const afterwardsText: Readonly<Record<StopReason, string>> = {
  reached: 'further pieces cost filament and time and are not asked for; `meltbounds reduce` gives the limit',
  heldToTop:
    'put the trial into the registry: the bound that it gives raises what is expected of the pairing, and a new plan may go higher',
  nearHalt:
    '`meltbounds reduce` gives the lower bound; look for what stopped the machine before another ladder',
  cannotNarrow:
    'what is left comes from the scatter of the pieces: longer pieces, a finer scale, a cleaner cut or a steadier temperature narrow it, more of the same pieces do not',
};

function reasonText(next: FeedNext, { width }: NextPiece, { settings, outlook }: PieceSetting): string {
  const accepted = percent(settings.acceptedDeficit);
  const { below, above, counts } = next;
  switch (next.reason) {
    case 'fullDelivery':
      return `the limit is expected within ${rangeText(outlook.expected, 3)}; well below that a piece shows what full delivery weighs, and all others are compared with it`;
    case 'climb':
      return `at ${besideText(below)}, and ${accepted} is accepted: go up in coarse steps until clearly more is missing`;
    case 'between':
      return `at ${besideText(below)}, at ${besideText(above)}: the accepted ${accepted} lies between, and a reduction needs four different flows`;
    case 'lower':
      return `the limit lies so near to the lowest flow${above === null ? '' : `, ${flowText(above.flow)},`} that none shows full delivery: go below it`;
    case 'belowHalt':
      return `at ${besideText(below)}, and the run stopped at ${flowText(settings.haltedAt ?? Number.NaN)}: the middle between them halves what is open`;
    case 'gap':
      return `the readings jump between two flows, so that the limit may lie anywhere between them: the middle halves the gap`;
    case 'repeat':
      return 'the interval is narrow enough, unless by chance: a second piece at this flow shows how well pieces repeat';
    case 'baseline':
      return `the scatter of the pieces decides now: a deficit compares two masses, and ${counted(counts?.full ?? 0, 'piece')} at full delivery stand against ${counts?.near ?? 0} near the limit`;
    case 'onset':
      return `of all flows a piece there is expected to narrow the interval most, from ${percent(width ?? Number.NaN)} to about ${percent(next.expectedWidth ?? Number.NaN)} of the limit`;
    default:
      return next.reason satisfies never;
  }
}

function besideText(step: FeedNext['below']): string {
  if (step === null) return 'lower flows nothing is missing';
  const missing = step.missing < 0.001 ? 'nothing' : percent(step.missing);
  return `${flowText(step.flow)} ${missing} is missing`;
}
