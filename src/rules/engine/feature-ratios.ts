import type { Job } from '../../registry/generated/documents.ts';

/** The kinds of path of a printed part. */
export type Feature = keyof Job['features'];

/** Between which factors one feature's figure lies of another's; an open end has no limit. */
export interface FeatureRatio {
  readonly of: Feature;
  readonly to: Feature;
  readonly low?: number;
  readonly high?: number;
}

/** A feature whose figure does not fit that of another one. */
interface UnfitFeature {
  readonly feature: Feature;
  readonly partner: Feature;
  readonly value: number;
  readonly partnerValue: number;
  /** Between which values the figure would fit its partner's. */
  readonly low: number;
  readonly high: number;
}

/** What would fit, in words: `from`, `up to`, or both ends. */
export function fittingText({ low, high }: UnfitFeature, show: (value: number) => string): string {
  if (low === 0) return `up to ${show(high)}`;
  return high === Number.POSITIVE_INFINITY ? `from ${show(low)}` : `${show(low)} to ${show(high)}`;
}

/**
 * The features that do not fit their partners; of a pair that does not fit, the one that is in most such pairs is
 * named, and each pair once.
 */
export function unfitFeatures(
  figures: Readonly<Partial<Record<Feature, number>>>,
  ratios: readonly FeatureRatio[],
): UnfitFeature[] {
  let unfit = ratios.filter((ratio) => isOutside(figures, ratio));
  const found: UnfitFeature[] = [];
  while (unfit.length > 0) {
    const feature = mostOften(unfit.flatMap(({ of, to }) => [of, to]));
    const own = unfit.find(({ of, to }) => of === feature || to === feature);
    unfit = unfit.filter(({ of, to }) => of !== feature && to !== feature);
    if (feature === null || own === undefined) break;
    found.push(unfitFeature(figures, own, feature));
  }
  return found;
}

function unfitFeature(
  figures: Readonly<Partial<Record<Feature, number>>>,
  { of, to, low = 0, high = Number.POSITIVE_INFINITY }: FeatureRatio,
  feature: Feature,
): UnfitFeature {
  const partner = feature === of ? to : of;
  const [value, partnerValue] = [figures[feature] ?? 0, figures[partner] ?? 0];
  const ends =
    feature === of
      ? { low: low * partnerValue, high: high * partnerValue }
      : { low: partnerValue / high, high: partnerValue / low };
  return { feature, partner, value, partnerValue, ...ends };
}

const roundOff = 1e-9;

function isOutside(
  figures: Readonly<Partial<Record<Feature, number>>>,
  { of, to, low = 0, high = Number.POSITIVE_INFINITY }: FeatureRatio,
): boolean {
  const [value, partner] = [figures[of], figures[to]];
  if (value === undefined || partner === undefined || value <= 0 || partner <= 0) return false;
  return value < low * partner * (1 - roundOff) || value > high * partner * (1 + roundOff);
}

/** The feature that is there most often, of several the first. */
function mostOften(features: readonly Feature[]): Feature | null {
  const counts = features.map((feature) => features.filter((other) => other === feature).length);
  return features[counts.indexOf(Math.max(...counts))] ?? null;
}
