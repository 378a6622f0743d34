import type { FittedPairing } from '../../knowledge/pairing.ts';
import type { Polymer } from '../../registry/generated/documents.ts';
import type { Registry } from '../../registry/registry.ts';
import type { Problem, Result } from '../../result.ts';
import type { CubicMillimetresPerSecond, DegreesCelsius, Grams, Range } from '../../units/canonical.ts';

/** The nozzle temperatures that a pairing may have. */
export interface AllowedTemperatures extends Range {
  /** What bounds them, each in words: `up to 300 °C: the limit of the hot end`. */
  readonly bounds: readonly { readonly text: string }[];
}

/** A nozzle temperature to run at, and why. */
export interface PlannedTemperature {
  readonly value: DegreesCelsius;
  readonly reason: string;
}

/** The flow limit that a pairing is expected to have at a nozzle temperature. */
export interface ExpectedFlow {
  readonly value: CubicMillimetresPerSecond;
  /** Where the limit is thought to lie. */
  readonly range: Range;
  /** Highest flow that heater and drive allow. */
  readonly highest: CubicMillimetresPerSecond;
  /** The expectation in words, and everything that speaks for it. */
  readonly items: readonly string[];
  readonly reasons: readonly string[];
  /** The same for programs. */
  readonly facts: Readonly<Record<string, unknown>>;
}

/**
 * What a method is handed to lay out a run. What has to be predicted is asked for where a method needs it.
 */
export interface LayoutRequest {
  readonly registry: Registry;
  readonly pairing: FittedPairing;
  /** Polymer families of the filament. */
  readonly families: readonly Polymer[];
  /** What the run is about, for methods that need it: a setting, or a part of the machine. */
  readonly subject?: string;
  /** Smallest step of the scale. */
  readonly massResolution: Grams;
  readonly allowedTemperatures: () => Result<AllowedTemperatures, Problem<'noTemperature'>>;
  readonly nozzleTemperature: () => Result<PlannedTemperature, Problem<'noTemperature' | 'outsideWindow'>>;
  readonly expectedFlow: (nozzleTemperature: DegreesCelsius) => Result<ExpectedFlow, Problem<'nothingKnown'>>;
}
