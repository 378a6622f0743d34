import type { LimitLine } from '../../bench/limit-line/limit-line.ts';
import type { LimitAnswer } from '../../bench/limit-line/limit-line-answers.ts';
import type { PairingReduction } from '../../bench/limit-line/pairing-reduction.ts';
import { tableCautions } from '../../knowledge/cautions.ts';
import type { Origin } from '../../knowledge/origin.ts';
import { jsonText } from '../../text/json-text.ts';
import { clean } from '../../units/round-to-step.ts';
import { rounded } from '../../units/rounded.ts';
import { limitLineWarnings } from './limit-line-warnings.ts';

/** Version of the form of the JSON limit lines, see `schema/output/limit-line.schema.json`. */
const limitLineFormat = 'meltbounds-limit-line/1';

/**
 * What the flow ladders of a pairing say of the limit against the nozzle temperature, for programs. What behind it is simulated or
 * invented can be given, and is none otherwise.
 */
export function formatLimitLineAsJson(
  pairing: PairingReduction,
  answers: readonly LimitAnswer[],
  { simulated, invented }: Origin = { simulated: [], invented: [] },
): string {
  const { machine, filament, nozzle, otherNozzles, origin, acceptedDeficit } = pairing;
  const document = {
    format: limitLineFormat,
    ...{ machine, filament, nozzle, otherNozzles },
    origin,
    ...{ simulated, invented },
    acceptedDeficit: acceptedDeficit === null ? null : { value: acceptedDeficit, unit: '1' },
    limits: pairing.limits.map((limit) => ({ trial: limit.trial, ...jsonLimit(limit) })),
    bounds: pairing.bounds.map(({ trial, temperature, bound, censored }) => ({
      ...{ trial, nozzleTemperature: celsius(temperature), bound: flow(bound), censored },
    })),
    leftOut: pairing.leftOut,
    temperatures: pairing.temperatures.map((combined) => ({
      ...jsonLimit(combined),
      trials: combined.trials,
      agreement: combined.agreement === null ? null : clean(Number(combined.agreement.toPrecision(4))),
    })),
    line: pairing.line === null ? null : jsonLine(pairing.line),
    at: answers.map((answer) => ({ ...jsonLimit(answer), extrapolated: answer.extrapolated })),
    warnings: limitLineWarnings(pairing),
    cautions: tableCautions,
  };
  return jsonText(document);
}

function jsonLine(line: LimitLine) {
  const { slope, slopeUncertainty, intercept, interceptUncertainty, tested } = line;
  return {
    slope: {
      value: rounded(slope),
      unit: 'mm3/s/K',
      standardUncertainty: rounded(slopeUncertainty),
    },
    intercept: {
      ...flow(intercept),
      standardUncertainty: rounded(interceptUncertainty),
      at: celsius(0),
    },
    centre: {
      nozzleTemperature: celsius(rounded(line.centre.temperature)),
      limit: { ...flow(line.centre.limit), standardUncertainty: rounded(line.centre.uncertainty) },
    },
    tested: { low: tested.low, high: tested.high, unit: 'Cel' },
    residualDegreesOfFreedom: line.residualDegreesOfFreedom,
    birgeRatio: line.birgeRatio === null ? null : rounded(line.birgeRatio),
    effectiveDegreesOfFreedom:
      line.effectiveDegreesOfFreedom === null ? null : rounded(line.effectiveDegreesOfFreedom),
    coverageFactor: rounded(line.coverageFactor),
    coverage: 0.95,
  };
}

function jsonLimit({ temperature, limit, low, high }: Omit<LimitAnswer, 'extrapolated'>) {
  return {
    nozzleTemperature: celsius(temperature),
    limit: flow(limit),
    interval: { low: rounded(low), high: rounded(high), unit: 'mm3/s', coverage: 0.95 },
  };
}

function flow(value: number) {
  return { value: rounded(value), unit: 'mm3/s' };
}

function celsius(value: number) {
  return { value, unit: 'Cel' };
}
