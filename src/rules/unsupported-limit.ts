import type { ReducedResult } from '../bench/reduction.ts';
import { statedRounding } from '../bench/stated-digits.ts';
import type { Statement } from '../registry/generated/documents.ts';
import type { Hit } from '../registry/hit.ts';
import type { Path } from '../registry/shape.ts';
import { statementsOf } from '../registry/statement.ts';
import type { Range } from '../units/canonical.ts';
import { formatQuantity, formatRange } from '../units/format-quantity.ts';
import type { ProfileRule } from './rule.ts';

export const unsupportedLimit: ProfileRule = {
  judges: 'profile',
  code: 'evidence/unsupported',
  severity: 'error',
  statement: 'A measured limit is not above what the readings of its trial give, and its interval is theirs.',
  rationale:
    'Tables are printed by this number: above what the bench has shown, the hot end starves or jams.',
  source:
    'JCGM 101:2008, clause 7: estimate and coverage interval, recomputed from the readings of the trial.',
  example: {
    kind: 'filament',
    bad: `meltFlow:
  - value: 24 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}`,
    good: `meltFlow:
  - value: 19 mm3/s
    basis: measured
    evidence: wren-clover-petg-245
    at: {machine: plumstead/wren, nozzle: hs-0.6, nozzleTemperature: 245 Cel}`,
  },
  *check(profile, { registry, reduce }) {
    for (const { path, statement } of statementsOf(profile)) {
      if (!path.includes('meltFlow') || statement.basis !== 'measured' || statement.evidence === undefined)
        continue;
      const trial = registry.trial.get(statement.evidence);
      // What is missing or cannot be used has a finding of its own.
      if (trial === undefined || !registry.filament.has(trial.data.filament)) continue;
      const reduced = reduce(statement.evidence);
      const result = reduced.ok
        ? reduced.value.results.find(({ quantity }) => quantity === 'meltFlow')
        : undefined;
      // Statements of a melt flow hold single volume flows, see the schema.
      const limit = statement as Statement<number>;
      yield* result === undefined ? [noResult(path, limit)] : judge(path, limit, result);
    }
  },
};

function noResult(path: Path, { evidence }: Statement<number>): Hit {
  return {
    path: [...path, 'evidence'],
    part: 'value',
    message: `The trial "${evidence}" cannot be reduced, so it supports no limit`,
    help: 'Mend the trial first; its own findings say what is wrong.',
  };
}

function* judge(path: Path, limit: Statement<number>, result: ReducedResult): Generator<Hit> {
  if (result.censored === 'below') {
    yield {
      path: [...path, 'evidence'],
      part: 'value',
      message: `In the trial "${limit.evidence}" the deficit is exceeded at the first step: it supports no limit`,
      help: 'Run a ladder that starts lower, or drop this statement.',
    };
    return;
  }
  const { low, high } = result.interval;
  const recomputed = low === null || high === null ? null : { low, high };
  if (limit.value > result.value * (1 + statedRounding)) yield tooHigh(path, limit, result, recomputed);
  if (limit.interval !== undefined && !agrees(limit.interval, recomputed)) {
    yield otherInterval(path, limit, limit.interval, recomputed);
  }
}

function agrees(stated: Range, recomputed: Range | null): boolean {
  if (recomputed === null) return false;
  const near = (a: number, b: number) => Math.abs(a - b) <= statedRounding * Math.max(a, b);
  return near(stated.low, recomputed.low) && near(stated.high, recomputed.high);
}

function tooHigh(path: Path, limit: Statement<number>, result: ReducedResult, interval: Range | null): Hit {
  const estimate = formatQuantity(result.value, 'volumeFlow', { significantDigits: 3 });
  const between = interval === null ? ', a lower bound' : ` (95 % interval ${rangeText(interval)})`;
  return {
    path: [...path, 'value'],
    part: 'value',
    message: `The limit ${formatQuantity(limit.value, 'volumeFlow')} is above what the trial "${limit.evidence}" supports: its readings give ${estimate}${between}`,
    found: formatQuantity(limit.value, 'volumeFlow'),
    allowed: `up to ${estimate}`,
    help: `Write ${estimate} or less, or run \`meltbounds reduce ${limit.evidence} --adopt\`.`,
  };
}

function otherInterval(path: Path, limit: Statement<number>, stated: Range, recomputed: Range | null): Hit {
  const given =
    recomputed === null ? 'none, since the ladder does not reach the deficit' : rangeText(recomputed);
  return {
    path: [...path, 'interval'],
    part: 'value',
    message: `The interval ${rangeText(stated)} is not the one that the readings of the trial "${limit.evidence}" give: ${given}`,
    found: rangeText(stated),
    allowed: given,
    help: `Run \`meltbounds reduce ${limit.evidence} --adopt\`; if the readings were corrected, check them against the bench sheet first.`,
  };
}

function rangeText({ low, high }: Range): string {
  return formatRange(low, high, 'volumeFlow', { significantDigits: 3 });
}
