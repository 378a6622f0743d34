import { resultOf } from '../bench/methods.ts';
import { densityEnvelope, densityOff } from '../knowledge/density-envelope.ts';
import { fitsHotEnd, isNearNominal, nominalDiameters } from '../knowledge/filament-diameters.ts';
import { pairingOfTrial } from '../knowledge/pairing-of-trial.ts';
import { trialIndex } from '../knowledge/trial-index.ts';
import type { Filament, Trial } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { Profile } from '../registry/profile.ts';
import { chooseStatement } from '../registry/statement.ts';
import type { Fraction } from '../units/canonical.ts';
import { shown, shownNumber } from '../units/wording.ts';
import type { EvidenceContext } from './evidence-context.ts';

/** What diameter, density and scale of a sound run explain of a share that is not 1 (common practice, no source). */
export const explainedOff: Fraction = 0.08;
/** What nothing but a wrong figure explains (common practice, no source). */
export const impossiblyOff: Fraction = 0.2;

/** What came out at the lowest steps of a ladder against what was fed, where that is too little or too much. */
interface OddDelivery {
  readonly isImpossible: boolean;
  readonly hit: Hit;
}

/**
 * Whether the lowest steps of a ladder deliver what diameter and density say, as a share of it. A survey of the strand, a stated
 * tolerance and a stated uncertainty of the fed length explain more; so does a ladder that starves from its first step on,
 * which is not held to be impossible. Null where the share is as it should be, or a figure of the filament is judged itself.
 */
export function oddDelivery(trial: Profile<'trial'>, context: EvidenceContext): OddDelivery | null {
  if (trial.data.method !== 'flowLadder') return null;
  const filament = context.registry.filament.get(trial.data.filament)?.data;
  const reduced = context.reduce(trial.id);
  if (!reduced.ok || filament === undefined) return null;
  const start = resultOf(reduced.value, 'startDeficit');
  if (start === undefined) return null;
  const strand = surveyedStrand(trial, context);
  const share = (1 - start.value) / (1 + (strand?.areaError ?? 0));
  const doubt = statedDoubt(trial.data, filament, strand);
  const off = Math.abs(share - 1);
  if (off <= Math.max(explainedOff, doubt) || isJudgedItself(trial.data, filament, context)) return null;
  const starves = share < 1 && resultOf(reduced.value, 'meltFlow')?.censored === 'below';
  return {
    isImpossible: off > Math.max(impossiblyOff, doubt) && !starves,
    hit: hitOf({ share, doubt, strand, filament, starves }),
  };
}

interface Strand {
  /** Relative deviation of the cross section from the nominal one. */
  readonly areaError: number;
  readonly trial: string;
}

/** The strand as a survey of the same filament found it, of the same batch where both name one. */
function surveyedStrand(
  { data: { filament, batch } }: Profile<'trial'>,
  { registry, reduce }: EvidenceContext,
): Strand | null {
  for (const { id, data } of trialIndex(registry).byFilament.get(filament) ?? []) {
    if (data.method !== 'diameterSurvey' || (data.batch ?? batch) !== (batch ?? data.batch)) continue;
    const reduced = reduce(id);
    const found = reduced.ok ? resultOf(reduced.value, 'flowError') : undefined;
    if (found !== undefined) return { areaError: found.value, trial: id };
  }
  return null;
}

/** What the profiles themselves leave open of the fed mass, as a share. */
function statedDoubt(
  { feedLengthUncertainty = 0 }: Trial,
  { diameter, diameterTolerance = 0 }: Filament,
  strand: Strand | null,
): Fraction {
  const ofDiameter = strand === null ? (2 * diameterTolerance) / diameter : 0;
  return ofDiameter + 2 * feedLengthUncertainty;
}

/** A diameter or density that no filament of its family has is found at the filament. */
function isJudgedItself(trial: Trial, filament: Filament, { registry }: EvidenceContext): boolean {
  const { hotEnd } = pairingOfTrial(trial, registry);
  const { diameter } = filament;
  if (!isNearNominal(diameter) || !fitsHotEnd(diameter, hotEnd?.filamentDiameter ?? diameter)) return true;
  const density = densityOf(trial, filament);
  const envelope = densityEnvelope(filament, registry);
  if (density === undefined || envelope === null) return false;
  const off = densityOff(density, envelope);
  return off < -envelope.slack.below || off > envelope.slack.above;
}

function densityOf({ machine }: Trial, { density, id }: Filament): number | undefined {
  return chooseStatement(density, { ...(machine !== undefined && { machine }), filament: id })?.value;
}

interface Judged {
  readonly share: number;
  readonly doubt: Fraction;
  readonly strand: Strand | null;
  readonly filament: Filament;
  readonly starves: boolean;
}

function hitOf({ share, doubt, strand, filament, starves }: Judged): Hit {
  const percent = (value: number) => `${shownNumber(Number((100 * value).toPrecision(3)))} %`;
  const limit = Math.max(explainedOff, doubt);
  const measured = strand === null ? '' : ` and the survey "${strand.trial}"`;
  return {
    path: ['observations'],
    part: 'key',
    message: `At the lowest steps ${percent(share)} came out of what was fed, by the diameter of ${shown(filament.diameter, 'length')} and the density of the filament's profile${measured}`,
    found: percent(share),
    allowed: `${percent(1 - limit)} to ${percent(1 + limit)}`,
    help: helpFor(share, filament, starves),
  };
}

const asGood = 0.08;

function helpFor(share: number, { diameter }: Filament, starves: boolean): string {
  // One taken for the other shows as the square of their ratio.
  const real = nominalDiameters.find(
    (other) => !fitsHotEnd(other, diameter) && Math.abs(share / (other / diameter) ** 2 - 1) < asGood,
  );
  if (real !== undefined) {
    return `That is what filament of ${shown(real, 'length')} would give: check the diameter in the filament's profile, and which filament was loaded.`;
  }
  if (starves) {
    return 'The hot end may starve from the first step on: run the ladder again from a far lower flow. Else check the fed length, the diameter and the density.';
  }
  return 'Check the fed length and its unit, the zero of the scale, and the diameter and density of the filament; a foaming filament needs the density of the strand, not that of the foam. Measure the strand (diameterSurvey) if it is thinner or thicker than it should be.';
}
