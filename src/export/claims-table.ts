import type { JudgedClaim } from '../decisions/claims/claim-verdict.ts';
import { judgeClaims } from '../decisions/claims/judge-claims.ts';
import type { DecisionRule } from '../knowledge/decision-rule.ts';
import { dimensionInfo } from '../units/dimension.ts';
import { figure, flag, quantity, whole, words } from './column.ts';
import { type ExportedRow, type ExportSource, type ExportTable, refersTo, rowOf } from './export-table.ts';

interface ExportedClaim {
  readonly machine: string;
  readonly index: number;
  readonly judged: JudgedClaim;
  readonly rule: DecisionRule;
}

/** One row per claim of a data sheet. */
export const claimsTable: ExportTable<ExportedClaim> = {
  name: 'claims',
  title: 'Claims of data sheets',
  description:
    'One row per claim that the sheet of a machine makes, with what the trials of the registry say of it. Numbers are in the unit of the row.',
  primaryKey: ['machine_id', 'claim_no'],
  foreignKeys: [refersTo('trials', 'trial_id'), refersTo('sources', 'source_id')],
  columns: [
    words('machine_id', 'Machine', ({ machine }) => machine),
    whole('claim_no', 'Place among the claims of the machine, from 1', ({ index }) => index + 1),
    words('property', 'What is claimed, such as topSpeed', ({ judged }) => judged.claim.property),
    words('label', 'The same in words', ({ judged }) => judged.claim.label),
    figure('claimed', 'The value that the sheet claims', ({ judged }) => judged.claim.statement.value),
    words(
      'unit',
      'UCUM code of the unit',
      ({ judged }) => dimensionInfo[judged.claim.dimension].canonicalUnit,
    ),
    words(
      'status',
      'What has become of it: held, accepted, notContradicted, rejected, notReached, notReachable or untested',
      ({ judged }) => judged.status,
    ),
    words('decision_rule', 'Rule by which it was decided (JCGM 106)', ({ rule }) => rule),
    figure(
      'found',
      'What the evidence found that counts first, or what the machine was set to in it',
      ({ judged }) => judged.evidence[0]?.value,
    ),
    figure(
      'found_low',
      'Lower end of its 95 % coverage interval',
      ({ judged }) => judged.evidence[0]?.interval?.low,
    ),
    figure('found_high', 'Upper end of it', ({ judged }) => judged.evidence[0]?.interval?.high),
    quantity(
      'shortfall',
      'ratio',
      'by how much the claim is missed, of what is claimed',
      ({ judged }) => judged.shortfall?.share,
    ),
    words(
      'found_how',
      'measured, or set: what a machine was set to in a trial does not decide',
      ({ judged }) => judged.evidence[0]?.how,
    ),
    words('trial_id', 'Trial that it was found in', ({ judged }) => judged.evidence[0]?.trial),
    flag(
      'is_simulated',
      'Whether no bench has read it; empty where nothing was found',
      ({ judged }) => judged.evidence[0]?.simulated,
    ),
    words('source_id', 'Sheet that claims it', ({ judged }) => judged.claim.statement.source),
    words('verdict', 'One sentence with the numbers', ({ judged }) => judged.text),
  ],
};

/** The claims of every machine, in the order of its files. */
export function* claimRows({ registry, today, reduce }: ExportSource): Generator<ExportedRow> {
  for (const machine of registry.machine.keys()) {
    const report = judgeClaims(registry, machine, { today, reduce });
    if (!report.ok) continue;
    const { rule } = report.value.decision;
    for (const [index, judged] of report.value.claims.entries()) {
      yield rowOf(claimsTable, { machine, index, judged, rule });
    }
  }
}
